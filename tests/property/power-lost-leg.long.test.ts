import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computePower, lostLeg } from '../../src/engines/power/index.ts';
import { checkNetworks } from '../support/laws.ts';
import { buildRig, randomRig } from '../support/random-rig.ts';

describe('lost legs on random plans', () => {
  it('power-what-if: the laws of circuits hold, and the open leg of the source carries nothing', () => {
    let tried = 0;
    fc.assert(
      fc.property(randomRig, fc.nat(2), (rig, pick) => {
        const power = computePower(buildRig(rig).plan);
        for (const { model, setups } of power.sources.values())
          for (const solved of setups) {
            if (!solved.sweep.settled) continue;
            const leg = pick % model.shape.legs;
            const lost = lostLeg(model, solved, leg);
            if (!lost) continue;
            tried++;
            const { amps, volts } = lost.solved.sweep;
            expect(Math.hypot(amps[leg * 2] ?? 1, amps[leg * 2 + 1] ?? 1)).toBeLessThan(1e-6);
            // The other legs of the source stand where they stood.
            for (let w = 0; w < 8; w++)
              if (w >> 1 !== leg) expect(volts[w]).toBeCloseTo(model.feeder.sourceV[w] ?? Number.NaN, 9);
            checkNetworks([{ model: { ...lost.model, basis: 'given' }, setups: [lost.solved] }]);
          }
      }),
      { numRuns: 150 },
    );
    expect(tried).toBeGreaterThan(50);
  });
});
