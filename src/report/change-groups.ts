import type { Box } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { levelId, type Plan, recordOf, wholeLevelPct } from '../plan/plan.ts';
import { fieldClauses, fieldsOf } from './change-fields.ts';
import type { Pair, PlanChange } from './change-types.ts';
import { nameOf } from './change-words.ts';

type PlaceBox = (plan: Plan, id: Id) => { readonly floorId: Id; readonly box: Box } | undefined;

/** Up to so many units of one setup are told one by one with both levels. */
const TOLD_SINGLY = 4;

const setupName = (before: Plan, after: Plan, id: Id): string =>
  (recordOf(after, 'setup', id) ?? recordOf(before, 'setup', id))?.name ?? id;

const levelText = (plan: Plan, setupId: Id, fixtureId: Id): string => {
  const l = recordOf(plan, 'level', levelId(setupId, fixtureId));
  const pct = l
    ? `${Math.round(wholeLevelPct(l))} %${l.parts && l.parts.length > 0 ? ` over ${l.parts.length} parts` : ''}`
    : 'full (assumed)';
  return [pct, l?.color ?? '', l?.cctK ? `${l.cctK} K` : ''].filter(Boolean).join(', ');
};

/** Changed levels, one line per setup; units that came or went are told in their own line. */
export const levelChanges = (
  before: Plan,
  after: Plan,
  pairs: ReadonlyMap<Id, Pair>,
): readonly PlanChange[] => {
  const bySetup = new Map<Id, Id[]>();
  for (const { before: b, after: a } of pairs.values()) {
    const r = a ?? b;
    if (r?.type !== 'level') continue;
    const both = (id: Id): boolean => before.records.has(id) && after.records.has(id);
    if (!both(r.fixtureId) || !both(r.setupId)) continue;
    bySetup.set(r.setupId, [...(bySetup.get(r.setupId) ?? []), r.fixtureId]);
  }
  return [...bySetup]
    .sort(([a], [b]) => compareNatural(setupName(before, after, a), setupName(before, after, b)))
    .map(([setupId, ids]): PlanChange => {
      const units = ids
        .map((id) => ({ id, unit: recordOf(after, 'fixture', id)?.unit ?? '' }))
        .sort((a, b) => compareNatural(a.unit, b.unit));
      const words =
        units.length <= TOLD_SINGLY
          ? units
              .map(({ id, unit }) => {
                const [was, now] = [levelText(before, setupId, id), levelText(after, setupId, id)];
                return was === now
                  ? `unit ${unit} set otherwise at ${now}`
                  : `unit ${unit} now ${now}, was ${was}`;
              })
              .join('; ')
          : `levels of ${units.length} units changed: ${units.map((u) => u.unit).join(', ')}`;
      return {
        what: 'changed',
        words: `Setup ${setupName(before, after, setupId)}: ${words}`,
        recordIds: [setupId, ...units.map((u) => u.id)],
        floorId: undefined,
        box: undefined,
      };
    });
};

/** Places that things have in single setups. */
export const moveChanges = (
  before: Plan,
  after: Plan,
  pairs: ReadonlyMap<Id, Pair>,
  placeBox: PlaceBox,
): readonly PlanChange[] =>
  [...pairs.values()]
    .flatMap(({ before: b, after: a }): PlanChange[] => {
      const r = a ?? b;
      if (r?.type !== 'move' || !after.records.has(r.recordId) || !before.records.has(r.recordId)) return [];
      const name = nameOf(after, r.recordId);
      const in_ = `in setup ${setupName(before, after, r.setupId)}`;
      const clauses = b && a ? fieldClauses(before, after, fieldsOf(b), fieldsOf(a)) : [];
      if (b && a && clauses.length === 0) return [];
      const words = !b
        ? `${name} has a place of its own ${in_}`
        : !a
          ? `${name} no longer moves ${in_}`
          : `${name} ${in_} ${clauses.join(', ')}`;
      return [
        {
          what: 'changed',
          words,
          recordIds: [r.recordId, r.setupId],
          floorId: undefined,
          box: undefined,
          ...placeBox(after, r.recordId),
        },
      ];
    })
    .sort((a, b) => compareNatural(a.words, b.words));
