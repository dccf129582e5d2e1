import fc from 'fast-check';
import { it } from 'vitest';
import { reusesRightly } from '../support/assess-reuse-laws.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { dice } from '../support/random-edits.ts';

it('power-incremental: an assessment made with the one before is the one made from nothing, after any edits', () => {
  const plan = demoPlan('study');
  fc.assert(
    fc.property(fc.array(dice, { minLength: 4, maxLength: 10 }), (edits) => reusesRightly(plan, edits)),
    { numRuns: 12 },
  );
}, 120_000);
