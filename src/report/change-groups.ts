import { canonicalJson } from '../kernel/canonical.ts';
import type { Box } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { levelId, type Plan, planRecord, recordOf, wholeLevelPct } from '../plan/plan.ts';
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
              .map(
                ({ id, unit }) =>
                  `unit ${unit} now ${levelText(after, setupId, id)}, was ${levelText(before, setupId, id)}`,
              )
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
      const words = !b
        ? `${name} has a place of its own ${in_}`
        : !a
          ? `${name} no longer moves ${in_}`
          : `${name} has another place ${in_}`;
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

const FIELDS: Readonly<Record<string, string>> = {
  title: 'Title',
  production: 'Production',
  scene: 'Scene / set',
  location: 'Location',
  drawingNumber: 'Identification number',
  owner: 'Legal owner',
  dates: 'Dates',
  practice: 'Practice',
  lengthUnits: 'Units of length',
  frequencyHz: 'Mains frequency, Hz',
  ambientC: 'Ambient temperature, °C',
  altitudeM: 'Altitude, m',
  windMps: 'Wind to reckon with, m/s',
  windIsMean: 'Wind given as a mean',
};

const plain = (v: unknown): string =>
  v === undefined || v === '' ? 'none' : Array.isArray(v) ? v.map(String).join(', ') || 'none' : String(v);

/** Title block, people, limits and what holds for the whole plan. Sheet, scale and order of the papers are not told. */
export const planFieldChanges = (before: Plan, after: Plan): readonly PlanChange[] => {
  const [b, a] = [planRecord(before), planRecord(after)];
  if (b === a) return [];
  const field = (key: string): unknown => (key in a ? (a as Record<string, unknown>)[key] : undefined);
  const old = (key: string): unknown => (key in b ? (b as Record<string, unknown>)[key] : undefined);
  const same = (x: unknown, y: unknown): boolean => canonicalJson(x ?? null) === canonicalJson(y ?? null);
  const words: string[] = Object.entries(FIELDS)
    .filter(([key]) => !same(field(key), old(key)))
    .map(([key, word]) => `${word} now ${plain(field(key))}, was ${plain(old(key))}`);
  for (const role of [...new Set([...Object.keys(b.people), ...Object.keys(a.people)])].sort())
    if ((b.people[role] ?? '') !== (a.people[role] ?? '')) {
      const name = role.replaceAll('-', ' ');
      words.push(
        `${name.charAt(0).toUpperCase()}${name.slice(1)} now ${plain(a.people[role])}, was ${plain(b.people[role])}`,
      );
    }
  for (const [key, word] of [
    ['batteries', 'Settings for packs'],
    ['place', 'Place on earth'],
    ['radio', 'Settings for radio'],
  ] as const)
    if (!same(field(key), old(key))) words.push(`${word} changed`);
  for (const limit of [...new Set([...b.limits, ...a.limits].map((l) => l.limit))].sort()) {
    const [x, y] = [b.limits.find((l) => l.limit === limit), a.limits.find((l) => l.limit === limit)];
    if (!same(x, y))
      words.push(`Limit ${limit} now ${y ? y.value : 'the table’s'}, was ${x ? x.value : 'the table’s'}`);
  }
  return words.map((w) => ({
    what: 'changed',
    words: w,
    recordIds: ['plan'],
    floorId: undefined,
    box: undefined,
  }));
};
