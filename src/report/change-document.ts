import { type Plan, planRecord } from '../plan/plan.ts';
import { changed, fieldClauses, fieldsOf, NOT_TOLD, same, valueText } from './change-fields.ts';
import type { PlanChange } from './change-types.ts';

const FIELDS: Readonly<Record<string, string>> = {
  title: 'Title',
  production: 'Production',
  scene: 'Scene / set',
  location: 'Location',
  drawingNumber: 'Identification number',
  owner: 'Legal owner',
  dates: 'Dates',
  practice: 'Practice',
  country: 'Country',
  lengthUnits: 'Units of length',
  frequencyHz: 'Mains frequency',
  ambientC: 'Ambient temperature',
  altitudeM: 'Altitude',
  windMps: 'Wind to reckon with',
  windIsMean: 'Wind given as a mean',
};
const SETTINGS: Readonly<Record<string, string>> = {
  batteries: 'Settings for packs:',
  place: 'Place on earth:',
  radio: 'Settings for radio:',
};
/** Fields of the plan with words of their own below, and what the papers are printed on. */
const APART: ReadonlySet<string> = new Set(['people', 'limits', 'paper']);

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Title block, people, limits and what holds for the whole plan. Sheet, scale and order of the papers are not told. */
export const planFieldChanges = (before: Plan, after: Plan): readonly PlanChange[] => {
  const [b, a] = [planRecord(before), planRecord(after)];
  if (b === a) return [];
  const [bf, af] = [fieldsOf(b), fieldsOf(a)];
  const value = (plan: Plan, key: string, v: unknown): string => valueText(plan, key, v);
  const words = Object.entries(FIELDS).flatMap(([key, word]) => {
    const [was, now] = [value(before, key, bf[key]), value(after, key, af[key])];
    // Two values may read the same once rounded; a change is told all the same.
    return was === now && !same(bf[key], af[key])
      ? [`${word} set otherwise, still ${now}`]
      : changed(word, was, now);
  });
  for (const role of [...new Set([...Object.keys(b.people), ...Object.keys(a.people)])].sort())
    words.push(
      ...changed(capital(role.replaceAll('-', ' ')), b.people[role] || 'none', a.people[role] || 'none'),
    );
  for (const [key, word] of Object.entries(SETTINGS))
    if (!same(bf[key], af[key]))
      words.push(
        `${word} ${fieldClauses(before, after, fieldsOf(Object(bf[key])), fieldsOf(Object(af[key]))).join(', ')}`,
      );
  for (const limit of [...new Set([...b.limits, ...a.limits].map((l) => l.limit))].sort()) {
    const [x, y] = [b.limits.find((l) => l.limit === limit), a.limits.find((l) => l.limit === limit)];
    if (same(x, y)) continue;
    if (x && y && x.value === y.value)
      words.push(`Limit ${limit}: reason now “${y.reason}”, was “${x.reason}”`);
    else words.push(`Limit ${limit} now ${y ? y.value : 'the table’s'}, was ${x ? x.value : 'the table’s'}`);
  }
  const told = new Set([...Object.keys(FIELDS), ...Object.keys(SETTINGS), ...APART, ...NOT_TOLD]);
  words.push(...fieldClauses(before, after, bf, af, told).map(capital));
  return words.map((w) => ({
    what: 'changed',
    words: w,
    recordIds: ['plan'],
    floorId: undefined,
    box: undefined,
  }));
};
