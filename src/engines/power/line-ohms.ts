import { fail, ok, type Result } from '../../kernel/result.ts';
import type { Complex, ComplexMatrix } from './feeder.ts';

/** One conductor of an overhead line: resistance in ohms a mile, geometric mean radius in feet, and where it hangs, in feet. */
export interface OverheadConductor {
  readonly ohmPerMile: number;
  readonly gmrFt: number;
  readonly xFt: number;
  readonly yFt: number;
}

/** Constants of Carson's equations, modified, at 60 Hz and 100 Ω·m of earth; both go with the frequency. */
const EARTH_OHM = 0.0953;
const REACTANCE = 0.12134;
const DEPTH = 7.93402;

/**
 * Series impedance of an overhead line with earth return in ohms a mile, mutuals included, by rows in the order of its
 * conductors (legs, then the neutral): z_ii = r + 0.0953 + j 0.12134 (ln(1 ÷ GMR) + 7.93402), z_ij the same without r and with
 * the distance in place of the radius. Carson's equations as modified in Kersting, Distribution System Modeling and
 * Analysis, chapter 4 (from memory); 60 Hz and earth of 100 Ω·m unless told. `foldNeutral` makes 3×3 of it.
 */
export const overheadOhmPerMile = (
  conductors: readonly OverheadConductor[],
  frequencyHz = 60,
): Result<ComplexMatrix> => {
  const bad = conductors.findIndex(
    (c) => !(c.ohmPerMile >= 0) || !(c.gmrFt > 0) || !Number.isFinite(c.xFt) || !Number.isFinite(c.yFt),
  );
  if (bad >= 0 || !(frequencyHz > 0))
    return fail({
      what: bad >= 0 ? `Conductor ${bad + 1} of the line has no values.` : 'The frequency is none.',
      todo: 'Give its ohms a mile, its mean radius and its place.',
    });
  const share = frequencyHz / 60;
  const rows: Complex[][] = [];
  for (const [i, a] of conductors.entries()) {
    const row: Complex[] = [];
    for (const [j, b] of conductors.entries()) {
      const apart = i === j ? a.gmrFt : Math.hypot(a.xFt - b.xFt, a.yFt - b.yFt);
      if (!(apart > 0))
        return fail({
          what: `Conductors ${i + 1} and ${j + 1} of the line hang in one place.`,
          todo: 'Set their places right.',
        });
      row.push([
        (i === j ? a.ohmPerMile : 0) + EARTH_OHM * share,
        REACTANCE * share * (Math.log(1 / apart) + DEPTH - Math.log(share) / 2),
      ]);
    }
    rows.push(row);
  }
  return ok(rows);
};

/**
 * A 3×3 series impedance from positive and zero sequence, as cables are often given: (2 Z₁ + Z₀) ÷ 3 on the diagonal,
 * (Z₀ − Z₁) ÷ 3 beside it; a line that is the same seen from every leg. Times a length, in whatever unit both are.
 */
export const sequenceOhm = (z1: Complex, z0: Complex, length = 1): ComplexMatrix => {
  const own: Complex = [((2 * z1[0] + z0[0]) / 3) * length, ((2 * z1[1] + z0[1]) / 3) * length];
  const mutual: Complex = [((z0[0] - z1[0]) / 3) * length, ((z0[1] - z1[1]) / 3) * length];
  return [0, 1, 2].map((i) => [0, 1, 2].map((j): Complex => (i === j ? own : mutual)));
};
