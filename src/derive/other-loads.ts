import type { LoadSpec } from '../plan/kinds/ports.ts';
import type { OtherLoad } from '../plan/records/index.ts';
import { type LoadBranch, NEUTRAL } from './supply-types.ts';
import { legVoltsV, lineToLineV, type SystemShape } from './systems.ts';

/**
 * How someone else's load lies over the legs of its way or port: leg to neutral on every leg where there is a neutral, else
 * leg to leg. Amps given are those of each leg. Gives words instead where nothing can be reckoned.
 */
export const otherLoadBranches = (
  shape: SystemShape | undefined,
  legs: readonly number[],
  neutral: boolean,
  o: OtherLoad,
): { readonly load: LoadSpec; readonly branches: readonly LoadBranch[] } | string => {
  const [a, b, c] = legs;
  if (!shape || a === undefined) return 'no leg reaches it';
  if (!neutral && b === undefined) return 'one leg reaches it and no neutral';
  if (!(o.powerFactor > 0 && o.powerFactor <= 1)) return `its power factor is ${o.powerFactor}`;
  const given = o.amps ?? o.wattsW;
  if (given === undefined) return 'neither its amps nor its watts are given';
  if (!(given >= 0) || !Number.isFinite(given)) return `it draws ${given}`;
  const ll = (x: number, y: number, share: number): LoadBranch => ({
    from: x,
    to: y,
    share,
    nominalV: lineToLineV(shape, x, y),
  });
  const branches = neutral
    ? legs.map(
        (l): LoadBranch => ({ from: l, to: NEUTRAL, share: 1 / legs.length, nominalV: legVoltsV(shape, l) }),
      )
    : c === undefined
      ? [ll(a, b ?? a, 1)]
      : [ll(a, b ?? a, 1 / 3), ll(b ?? a, c, 1 / 3), ll(c, a, 1 / 3)];
  // Volt-amperes of so many amps a leg: three lines in delta carry √3 times the amps of a side.
  const first = branches[0]?.nominalV ?? 0;
  const voltAmps = (amps: number): number =>
    neutral
      ? branches.reduce((sum, x) => sum + amps * x.nominalV, 0)
      : c === undefined
        ? amps * first
        : Math.sqrt(3) * amps * first;
  const wattsW = o.amps === undefined ? (o.wattsW ?? 0) : voltAmps(o.amps) * o.powerFactor;
  // With legs of unlike volts each leg still carries the amps given.
  const total = branches.reduce((sum, x) => sum + x.nominalV, 0);
  const shares =
    o.amps === undefined || !neutral ? branches : branches.map((x) => ({ ...x, share: x.nominalV / total }));
  return {
    branches: shares,
    load: {
      wattsW,
      standbyW: 0,
      powerFactor: o.powerFactor,
      leading: false,
      model: o.amps === undefined ? 'constant-power' : 'constant-current',
      thirdHarmonicPct: 0,
      leakageMa: 0,
      voltsMinV: 0,
      voltsMaxV: Number.POSITIVE_INFINITY,
    },
  };
};
