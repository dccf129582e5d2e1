import { breakerSizes } from '../../../derive/breakers.ts';
import { always, type EngineFinding } from '../../../derive/findings.ts';
import { planRecord } from '../../../plan/plan.ts';
import type { Judged } from '../types.ts';

/** Ways whose breaker has a rating that the practice's table of standard sizes does not have: mostly a slip in typing. */
export const breakerSizesOdd = (c: Judged): readonly EngineFinding[] => {
  const { ratingsA, source } = breakerSizes(planRecord(c.plan).practice);
  const known = new Set(ratingsA);
  return c.part.flatMap((n) => {
    const breakerA = n.way?.breakerA;
    if (breakerA === undefined || known.has(breakerA) || n.notComputed !== undefined) return [];
    const below = ratingsA.filter((a) => a < breakerA).at(-1);
    const above = ratingsA.find((a) => a > breakerA);
    const sizes = [below, above].flatMap((a) => (a === undefined ? [] : [`${a} A`])).join(' and ');
    return [
      always('power-breaker-size', 'note', n.key, [n.recordId], { label: n.label, breakerA, sizes, source }),
    ];
  });
};
