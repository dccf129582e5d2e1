import type { Id } from '../kernel/ids.ts';
import { recordName } from '../plan/names.ts';
import type { Plan } from '../plan/plan.ts';

/** A set of records in the user's words: `unit 7`, or `3 things`. Stands under their units are not counted. */
export const wordsFor = (plan: Plan, ids: Iterable<Id>): string => {
  const all = [...ids];
  const carried = new Set<Id>();
  for (const id of all) {
    const r = plan.records.get(id);
    if (r?.type === 'fixture' && r.support.on === 'stand') carried.add(r.support.standId);
  }
  const named = all.filter((id) => !carried.has(id));
  const [first] = named;
  return named.length === 1 && first !== undefined ? recordName(plan, first) : `${named.length} things`;
};

/** The text with a capital first letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
