import { assignAddresses, DEFAULT_ASSIGN } from '../../src/engines/control/index.ts';
import { patchRig } from '../support/patch-rig.ts';
import { interleaved, line, ms, timed } from './measure.ts';

/** Addresses for 2,000 units of 4 to 28 slots, which take 63 to 64 universes. */
export const benchPatch = (): void => {
  const sizes = Array.from({ length: 2000 }, (_, i) => 4 + ((i * 7) % 25));
  const spread = (): ReturnType<typeof patchRig>['plan'] =>
    patchRig(
      sizes.map((slots, i) => ({
        slots,
        more: { at: { xMm: (i % 50) * 900, yMm: Math.floor(i / 50) * 1100 } },
      })),
    ).plan;
  const run = (more: Partial<typeof DEFAULT_ASSIGN>) => (): number => {
    const plan = spread();
    return timed(() => assignAddresses(plan, { ...DEFAULT_ASSIGN, ...more }));
  };
  const m = interleaved({
    unit: run({}),
    path: run({ order: 'path' }),
    fewest: run({ fewest: true }),
  });
  const r = assignAddresses(spread(), DEFAULT_ASSIGN);
  const universes = r.ok ? r.value.universes.length : 0;
  line('assign 2,000 units, by unit number', ms(m.unit), `${universes} universes; aim: under 100 ms`);
  line('  along a path', ms(m.path));
  line('  into the fewest universes', ms(m.fewest));
};
