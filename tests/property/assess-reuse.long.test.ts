import fc from 'fast-check';
import { it } from 'vitest';
import { reusesRightly } from '../support/assess-reuse-laws.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { dice } from '../support/random-edits.ts';

it.each([
  ['study', 60],
  ['street', 20],
  ['stage', 15],
] as const)(
  'power-incremental: on the %s plan an assessment made with the one before is the one made from nothing',
  (name, numRuns) => {
    const plan = demoPlan(name);
    fc.assert(
      fc.property(fc.array(dice, { minLength: 4, maxLength: 12 }), (edits) => reusesRightly(plan, edits)),
      { numRuns },
    );
  },
  120_000,
);
