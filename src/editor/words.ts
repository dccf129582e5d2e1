import { compareNatural, type Id } from '../kernel/ids.ts';
import { takenOffPacks } from '../plan/edits/floor-packs.ts';
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

/** Most units that are named one by one. */
const MOST_NAMED = 6;

/** What a change left without a pack to hang on, as a sentence after others; empty where nothing. */
export const unpluggedWords = (before: Plan, after: Plan): string => {
  const units = takenOffPacks(before, after)
    .map((x) => recordName(before, x.unitId))
    .sort(compareNatural);
  if (units.length === 0) return '';
  const named =
    units.length > MOST_NAMED
      ? `${units.length} units`
      : [units.slice(0, -1).join(', '), units.at(-1)].filter(Boolean).join(' and ');
  return ` ${capital(named)} ${units.length === 1 ? 'hung on it and is' : 'hung on it and are'} left without a pack: choose another under Day, Packs.`;
};
