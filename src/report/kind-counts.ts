import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';

const PLACED = [
  ...(['fixture', 'ballast', 'stand', 'grip', 'rigging', 'source', 'box', 'device'] as const),
  'charger',
] as const;

/**
 * How many pieces of each kind the plan holds, by kind id: what is placed, accessories, cloths, converters between packs and
 * what runs on them, and packs as they are in stock. Cable is counted by its pieces elsewhere.
 */
export const kindCounts = (plan: Plan): ReadonlyMap<Id, number> => {
  const counts = new Map<Id, number>();
  const count = (kindId: Id | undefined, n = 1): void => {
    if (kindId !== undefined && n > 0) counts.set(kindId, (counts.get(kindId) ?? 0) + n);
  };
  for (const type of PLACED) for (const r of recordsOf(plan, type)) count(r.kindId);
  for (const f of recordsOf(plan, 'fixture')) {
    for (const id of f.accessories ?? []) count(id);
    count(f.packs?.converterId);
    count(f.packFrom?.converterId);
  }
  for (const d of recordsOf(plan, 'device')) count(d.packs?.converterId);
  for (const g of recordsOf(plan, 'grip')) count(g.clothId);
  for (const s of recordsOf(plan, 'stock')) count(s.kindId, s.count);
  return counts;
};
