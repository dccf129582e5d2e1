import { canonicalJson } from '../kernel/canonical.ts';
import { distanceMm, type Point } from '../kernel/geometry.ts';
import { formatClock, formatLength, formatWind } from '../kernel/units.ts';
import { portName, recordName } from '../plan/names.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';

/** What is not worth a figure: rounding of a drag, a turn nobody sees. */
export const LEAST_MM = 5;
export const LEAST_DEG = 1;
/** What is left of reckoning to and fro. */
const NOISE_MM = 0.001;
const NOISE_DEG = 1e-6;
/** Texts longer than this are cut where they stand inside a sentence. */
const LONGEST_TEXT = 80;

export type Fields = Readonly<Record<string, unknown>>;

export const fieldsOf = (r: object | undefined): Fields => (r ?? {}) as Fields;

/** Nothing there, an empty text and an empty list say the same. */
const orNone = (v: unknown): unknown =>
  v === undefined || v === '' || (Array.isArray(v) && v.length === 0) ? null : v;

export const same = (x: unknown, y: unknown): boolean =>
  canonicalJson(orNone(x)) === canonicalJson(orNone(y));

/** Fields that are no change of the design: where a thing is in its list, what it is grouped with, what is locked on screen. */
export const NOT_TOLD: ReadonlySet<string> = new Set(['id', 'type', 'order', 'locked', 'groupId']);

/** Words for fields whose name is none. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  sillMm: 'sill',
  offsetMm: 'place along the wall',
  viewDeg: 'angle of view',
  bags: 'sand bags',
  tiltDeg: 'lean',
  guys: 'lines',
  zoomPct: 'zoom',
  doors: 'barn doors',
  ownCells: 'when its cells are empty',
  packFrom: 'pack on the floor',
  what: 'sort',
  cctK: 'colour temperature',
  northDeg: 'north',
  levelMm: 'level',
  burnsThrough: 'burns through',
  sohPct: 'state of health',
  linkId: 'radio link with',
  listensToId: 'listens to',
  linksMax: 'most links',
  onPaper: 'printed',
  deviceTest: 'device test',
  mmPerUnit: 'size of a unit',
  plugsInto: 'plugs into',
  standId: 'on',
  riggingId: 'hangs on',
  supports: 'stands under it',
  sourceId: 'fed from',
  remote: 'remote management',
};

/** Units by the end of a field's name. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Pct$/, ' %'],
  [/Deg$/, '°'],
  [/Kva$/, ' kVA'],
  [/Kw$/, ' kW'],
  [/Kg$/, ' kg'],
  [/Ohm$/, ' Ω'],
  [/Dbm$/, ' dBm'],
  [/Mps$/, ' m/s'],
  [/Hz$/, ' Hz'],
  [/Min$/, ' min'],
  [/(?<=[a-z])A$/, ' A'],
  [/(?<=[a-z])V$/, ' V'],
  [/(?<=[a-z])W$/, ' W'],
  [/(?<=[a-z])C$/, ' °C'],
  [/(?<=[a-z])L$/, ' L'],
  [/(?<=[a-z])M$/, ' m'],
  [/(?<=cct)K$/, ' K'],
];
const CLOCK = new Set(['startMin', 'endMin']);
/** Lists of ids whose name does not say so. */
const ID_LISTS = new Set(['stops', 'supports', 'accessories', 'burnsThrough', 'photoIds']);
const FREE_TEXT = new Set(['notes', 'text', 'caption', 'use']);

const unitOf = (key: string): readonly [RegExp, string] | undefined => UNITS.find(([end]) => end.test(key));

/** A field in words: `main breaker`, `height`. */
export const fieldWord = (key: string): string =>
  FIELD_WORDS[key] ??
  key
    .replace(/Mm$|Ids?$/, '')
    .replace(unitOf(key)?.[0] ?? /$^/, '')
    .replace(/([A-Z])/g, (c) => ` ${c.toLowerCase()}`);

const AXES: ReadonlySet<string> = new Set(['xMm', 'yMm']);

const isFields = (v: unknown): v is Fields => typeof v === 'object' && v !== null && !Array.isArray(v);
const isPoint = (v: unknown): v is Point => isFields(v) && 'xMm' in v && 'yMm' in v;

/** A port, a way or a thing that is named by its record. */
const isPlugged = (v: unknown): v is Fields => isFields(v) && typeof v.recordId === 'string';

const pluggedText = (plan: Plan, v: Fields): string => {
  const recordId = String(v.recordId);
  if (typeof v.portId === 'string') return portName(plan, { recordId, portId: v.portId });
  const way = waysOf(plan, recordId).find((w) => w.id === v.wayId);
  return `${idText(plan, recordId)}${way ? ` way ${way.label}` : ''}`;
};

const idText = (plan: Plan, id: string): string => {
  const r = plan.records.get(id);
  if (r?.type === 'kind') return r.name;
  return r ? recordName(plan, r) : id.startsWith('blob:') ? 'another one' : id;
};

/** A value of a field as a person reads it, with its unit; `none` where there is none. */
export const valueText = (plan: Plan, key: string, v: unknown): string => {
  if (v === undefined || v === '' || v === null) return 'none';
  if (typeof v === 'boolean') return v ? 'yes' : 'no';
  if (typeof v === 'number') {
    if (CLOCK.has(key)) return formatClock(v);
    if (key.endsWith('Mm')) return formatLength(v, planRecord(plan).lengthUnits);
    if (key.endsWith('Mps')) return formatWind(v, planRecord(plan).lengthUnits);
    return `${String(Number(v.toFixed(3))).replace('-', '−')}${unitOf(key)?.[1] ?? ''}`;
  }
  if (typeof v === 'string') {
    if (/Ids?$/.test(key) || ID_LISTS.has(key)) return idText(plan, v);
    const short = v.length > LONGEST_TEXT ? `${v.slice(0, LONGEST_TEXT - 1)}…` : v;
    return FREE_TEXT.has(key) ? `“${short}”` : short;
  }
  if (Array.isArray(v))
    return v.length === 0
      ? 'none'
      : v.map((x) => valueText(plan, key, x)).join(v.some(isFields) ? '; ' : ', ');
  if (isPoint(v)) return 'a spot';
  if (isPlugged(v)) return pluggedText(plan, v);
  return isFields(v)
    ? Object.keys(v)
        .filter((k) => v[k] !== undefined && v[k] !== '')
        .map((k) => `${fieldWord(k)} ${valueText(plan, k, v[k])}`)
        .join(', ') || 'none'
    : String(v);
};

/** `gel now CTO, was none`; nothing where both read the same. */
export const changed = (word: string, was: string, now: string): readonly string[] =>
  was === now ? [] : [`${word} now ${now}, was ${was}`];

/** `moved 1.2 m` in the plan's units; nothing where it is the same spot. */
export const moved = (plan: Plan, from: Point, to: Point): readonly string[] => {
  const mm = distanceMm(from, to);
  if (mm < NOISE_MM) return [];
  const { lengthUnits } = planRecord(plan);
  if (mm < LEAST_MM) return [`moved less than ${lengthUnits === 'metric' ? '5 mm' : '¼″'}`];
  return [
    `moved ${lengthUnits === 'metric' && mm >= 950 ? `${(mm / 1000).toFixed(1)} m` : formatLength(mm, lengthUnits)}`,
  ];
};

export const turned = (from: number, to: number): readonly string[] => {
  const deg = Math.abs(((((to - from) % 360) + 540) % 360) - 180);
  if (deg < NOISE_DEG) return [];
  return [deg < LEAST_DEG ? 'turned less than 1°' : `turned ${Math.round(deg)}°`];
};

/** Things in a list that have ids of their own, like the ways of a box. */
const byId = (v: unknown): ReadonlyMap<string, Fields> | undefined =>
  Array.isArray(v) && v.every((x) => isFields(x) && typeof x.id === 'string')
    ? new Map(v.map((x: Fields) => [String(x.id), x]))
    : undefined;

const listClauses = (
  before: Plan,
  after: Plan,
  word: string,
  was: ReadonlyMap<string, Fields>,
  now: ReadonlyMap<string, Fields>,
): readonly string[] => {
  const one = word.replace(/s$/, '');
  return [...new Set([...was.keys(), ...now.keys()])].flatMap((id) => {
    const [b, a] = [was.get(id), now.get(id)];
    const name = `${one} ${String(a?.label ?? b?.label ?? id)}`;
    if (!b) return [`${name} now its own`];
    if (!a) return [`${name} no longer its own`];
    const own = fieldClauses(before, after, b, a).map((c) => `${name} ${c}`);
    return own.length > 0 || same(a, b) ? own : [`${name} set otherwise`];
  });
};

const fieldClause = (before: Plan, after: Plan, key: string, b: unknown, a: unknown): readonly string[] => {
  const word = fieldWord(key);
  if (key === 'hidden') return [a ? 'now hidden' : 'no longer hidden'];
  if (isPoint(b) && isPoint(a))
    return [...moved(after, b, a), ...fieldClauses(before, after, fieldsOf(b), fieldsOf(a), AXES)].map((m) =>
      key === 'at' ? m : `${word} ${m}`,
    );
  if (isFields(b) && isFields(a) && !isPlugged(a)) {
    const own = fieldClauses(before, after, b, a).map((c) => `${word} ${c}`);
    return own.length > 0 ? own : [`${word} set otherwise`];
  }
  const [listWas, listNow] = [byId(b ?? []), byId(a ?? [])];
  if (listWas && listNow && listWas.size + listNow.size > 0)
    return listClauses(before, after, word, listWas, listNow);
  if ([b, a].some((v) => Array.isArray(v) && v.some(isPoint))) return [`${word} drawn otherwise`];
  const [was, now] = [valueText(before, key, b), valueText(after, key, a)];
  if (was === now && key.endsWith('Mm') && typeof b === 'number' && typeof a === 'number')
    return Math.abs(a - b) < NOISE_MM
      ? []
      : [`${word} changed by less than ${Math.ceil(Math.abs(a - b))} mm`];
  const out = changed(word, was, now);
  return out.length > 0 ? out : [`${word} set otherwise`];
};

/** What is different in the fields of two things, field by field, but those in `skip`; every difference has a clause. */
export const fieldClauses = (
  before: Plan,
  after: Plan,
  b: Fields,
  a: Fields,
  skip: ReadonlySet<string> = new Set(),
): readonly string[] =>
  [...new Set([...Object.keys(b), ...Object.keys(a)])]
    .sort()
    .filter((key) => !NOT_TOLD.has(key) && !skip.has(key) && !same(b[key], a[key]))
    .flatMap((key) => fieldClause(before, after, key, b[key], a[key]));
