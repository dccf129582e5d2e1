import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computePower, lostNeutral } from '../../src/engines/power/index.ts';
import { buildRig, randomRig } from '../support/random-rig.ts';

describe('lost neutrals on random plans', () => {
  it('power-what-if: the open neutral carries nothing, and behind it what the legs bring is what the loads take, all else lost in cables', () => {
    let tried = 0;
    fc.assert(
      fc.property(randomRig, fc.nat(50), (rig, pick) => {
        const power = computePower(buildRig(rig).plan);
        for (const { model, setups } of power.sources.values())
          for (const solved of setups) {
            if (!solved.sweep.settled || (model.feeder.couplings?.length ?? 0) > 0) continue;
            const node = pick % model.feeder.nodes;
            const lost = lostNeutral(model, solved, node);
            if (!lost) continue;
            tried++;
            const { amps, volts } = lost.sweep;
            expect(Math.hypot(amps[node * 8 + 6] ?? 1, amps[node * 8 + 7] ?? 1)).toBeLessThan(1e-6);
            // Power into the node over its legs: nothing comes or goes by the neutral.
            const below = new Uint8Array(model.feeder.nodes);
            below[node] = 1;
            for (let k = node + 1; k < below.length; k++) below[k] = below[model.feeder.parent[k] ?? 0] ?? 0;
            let inW = 0;
            for (let w = 0; w < 6; w += 2) {
              const at = node * 8 + w;
              inW += (volts[at] ?? 0) * (amps[at] ?? 0) + (volts[at + 1] ?? 0) * (amps[at + 1] ?? 0);
            }
            let takenW = 0;
            lost.branches.node.forEach((k, b) => {
              if (below[k]) takenW += lost.wattsW[b] ?? 0;
            });
            let lossW = 0;
            for (let k = node + 1; k < below.length; k++)
              if (below[k])
                for (let w = 0; w < 8; w += 2) {
                  const r = model.feeder.impedance.ohms[k * 8 + w] ?? 0;
                  lossW += r * ((amps[k * 8 + w] ?? 0) ** 2 + (amps[k * 8 + w + 1] ?? 0) ** 2);
                }
            expect(Math.abs(inW - takenW - lossW)).toBeLessThan(1e-6 * Math.max(1, inW));
          }
      }),
      { numRuns: 150 },
    );
    expect(tried).toBeGreaterThan(50);
  });
});
