import { describe, expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/book.ts';
import { kindOf, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { swapChoices } from '../../../src/ui/power/swap-choices.ts';
import { demoPlan } from '../../support/demo-plan.ts';

describe('sources that may come in place of one', () => {
  const plan = demoPlan('street');
  const sources = gearBook(planRecord(plan).practice).flatMap((k) => (k.family === 'source' ? [k] : []));
  const set = recordsOf(plan, 'source').find((s) => kindOf(plan, s.kindId, 'source')?.what === 'generator');
  const own = set && kindOf(plan, set.kindId, 'source');

  it('are each offered once, those of the same system first, and the next larger of them at once', () => {
    const { groups, first } = swapChoices(plan, sources, set?.id ?? '');
    expect(groups.flatMap((g) => g.kinds.map((k) => k.slug)).sort()).toEqual(
      sources.map((k) => k.slug).sort(),
    );
    expect(new Set(groups[0]?.kinds.map((k) => k.system))).toEqual(new Set([own?.system]));
    expect(first?.system).toBe(own?.system);
    expect(first?.slug).not.toBe(own?.slug);
    expect(first?.ratedKva ?? first?.ratedKw ?? 0).toBeGreaterThan(own?.ratedKw ?? 0);
  });

  it('are all the others where nothing is known of it', () => {
    expect(swapChoices(plan, sources, 'none').groups).toHaveLength(1);
    expect(swapChoices(plan, [], 'none').first).toBeUndefined();
  });
});
