import { expect, test } from 'vitest';
import { balanceLegs } from '../../../src/report/balance.ts';
import { demoPlan } from '../../support/demo-plan.ts';

// Sums kept up plug by plug drift: a search that takes the drift of a long cable list for a gain never ends.
test.each(['study', 'street', 'stage'] as const)(
  'balancing the %s comes to an end and loses nothing',
  (name) => {
    const r = balanceLegs(demoPlan(name), {});
    expect(r.sources.length).toBeGreaterThan(0);
    for (const s of r.sources) {
      expect(s.after.overloads).toBeLessThanOrEqual(s.before.overloads);
      if (s.after.overloads === s.before.overloads)
        expect(s.after.worstLegA).toBeLessThanOrEqual(s.before.worstLegA + 1e-6);
    }
  },
);
