import { expect, it } from 'vitest';
import { gearList } from '../../../src/papers/lists.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { setPackFrom } from '../../../src/plan/edits/floor-packs.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { gearLines } from '../../../src/report/gear-lines.ts';
import { kindCounts } from '../../../src/report/kind-counts.ts';
import { demoPlan } from '../../support/demo-plan.ts';

/** The street, with a converter at the end of each lead from a pack on the floor; its kind stands in for one. */
const withConverters = (): { plan: Plan; kindId: string; units: number } => {
  const plan = demoPlan('street');
  const kindId = recordsOf(plan, 'charger')[0]?.kindId ?? '';
  const fed = recordsOf(plan, 'fixture').filter((f) => f.packFrom);
  const made = fed.reduce(
    (p, f) =>
      f.packFrom ? applyChanges(p, setPackFrom(p, [f.id], { ...f.packFrom, converterId: kindId })) : p,
    plan,
  );
  return { plan: made, kindId, units: fed.length };
};

it('converters at the end of leads from packs on the floor are counted in every list of gear', () => {
  const { plan, kindId, units } = withConverters();
  expect(units).toBeGreaterThan(1);
  const before = kindCounts(demoPlan('street')).get(kindId) ?? 0;
  expect(kindCounts(plan).get(kindId)).toBe(before + units);
  expect(gearLines(plan, String).find((l) => l.kindId === kindId)?.count).toBe(before + units);
  const { head, rows } = gearList(plan);
  const count = (p: Plan): number => {
    const name = recordsOf(p, 'kind').find((k) => k.id === kindId)?.name;
    return Number(rows.find((r) => r[head.indexOf('kind')] === name)?.[head.indexOf('count')]);
  };
  expect(count(plan)).toBe(before + units);
});

it('nothing of a kind is no line', () => {
  const plan = demoPlan('study');
  for (const n of kindCounts(plan).values()) expect(n).toBeGreaterThan(0);
});
