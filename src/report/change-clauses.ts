import { cableLength } from '../derive/lengths.ts';
import { canonicalJson } from '../kernel/canonical.ts';
import { distanceMm, type Point } from '../kernel/geometry.ts';
import { formatCableLength, formatLength } from '../kernel/units.ts';
import { facingOf, tiltOf } from '../plan/edits/arrange.ts';
import { recordName } from '../plan/names.ts';
import { fixturePlace, kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord, Cable, Fixture } from '../plan/records/index.ts';
import { feedClause, feedOf } from './change-words.ts';

/** What is not worth a word: rounding of a drag, a turn nobody sees. */
const LEAST_MM = 5;
const LEAST_DEG = 1;

const moved = (plan: Plan, from: Point, to: Point): readonly string[] => {
  const mm = distanceMm(from, to);
  if (mm < LEAST_MM) return [];
  const { lengthUnits } = planRecord(plan);
  return [
    `moved ${lengthUnits === 'metric' && mm >= 950 ? `${(mm / 1000).toFixed(1)} m` : formatLength(mm, lengthUnits)}`,
  ];
};

const degrees = (deg: number): string => `${String(Math.round(deg)).replace('-', '−')}°`;

const turned = (from: number, to: number): readonly string[] => {
  const deg = ((((to - from) % 360) + 540) % 360) - 180;
  return Math.abs(deg) < LEAST_DEG ? [] : [`turned ${Math.round(Math.abs(deg))}°`];
};

const valueText = (v: unknown): string =>
  v === undefined || v === '' ? 'none' : typeof v === 'object' ? 'set' : String(v);

const changed = (word: string, from: unknown, to: unknown): readonly string[] =>
  canonicalJson(from ?? null) === canonicalJson(to ?? null) || valueText(from) === valueText(to)
    ? []
    : [`${word} now ${valueText(to)}, was ${valueText(from)}`];

const lengthChanged = (plan: Plan, word: string, from: number, to: number): readonly string[] =>
  Math.abs(from - to) < LEAST_MM
    ? []
    : changed(
        word,
        formatLength(from, planRecord(plan).lengthUnits),
        formatLength(to, planRecord(plan).lengthUnits),
      );

const kindChanged = (before: Plan, after: Plan, from: string, to: string): readonly string[] => {
  if (from === to) return [];
  const [was, now] = [kindOf(before, from)?.name ?? from, kindOf(after, to)?.name ?? to];
  return [was === now ? `figures of its kind (${now}) changed` : `now ${now}, was ${was}`];
};

const addressOf = (plan: Plan, f: Fixture): string => {
  const u = f.patch && recordOf(plan, 'universe', f.patch.universeId);
  return f.patch && u ? `U${u.number} ${f.patch.address}` : '';
};

const modeOf = (plan: Plan, f: Fixture): string =>
  f.patch ? (kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === f.patch?.modeId)?.name ?? '') : '';

const supportOf = (plan: Plan, f: Fixture): string => {
  if (f.support.on === 'stand') {
    const stand = recordOf(plan, 'stand', f.support.standId);
    return `on ${(stand && kindOf(plan, stand.kindId)?.name) ?? 'a stand'}`;
  }
  if (f.support.on === 'rigged') {
    const on = f.support.riggingId === undefined ? undefined : recordOf(plan, 'rigging', f.support.riggingId);
    return on ? `on ${recordName(plan, on)}` : 'rigged';
  }
  return f.support.on === 'floor' ? 'on the floor' : 'held';
};

const powerOf = (f: Fixture): string => (f.onPacks ? (f.packs ? 'packs' : 'own cells') : 'mains');

const lengthsOf = (plan: Plan, c: Cable): string => {
  const units = planRecord(plan).lengthUnits;
  return (cableLength(plan, c)?.piecesMm ?? []).map((mm) => formatCableLength(mm, units)).join(' + ');
};

const feedCable = (plan: Plan, id: string): Cable | undefined => {
  const ballast = recordsOf(plan, 'ballast').find((b) => b.fixtureId === id);
  const at = ballast?.id ?? id;
  return recordsOf(plan, 'cable').find((c) => c.to.recordId === at);
};

/** The cable that feeds a thing, where it feeds from the same outlet as before: pieces and kind. */
const runClauses = (before: Plan, after: Plan, id: string): readonly string[] => {
  const [b, a] = [feedCable(before, id), feedCable(after, id)];
  if (
    !a ||
    !b ||
    (a === b &&
      feedOf(before, id)?.text === feedOf(after, id)?.text &&
      lengthsOf(before, b) === lengthsOf(after, a))
  )
    return [];
  return [
    ...(b.kindId === a.kindId
      ? []
      : changed('cable', kindOf(before, b.kindId)?.name, kindOf(after, a.kindId)?.name)),
    ...changed('cable pieces', lengthsOf(before, b), lengthsOf(after, a)),
  ];
};

/** What a unit does or has otherwise than before, each as a few words; its stand, ballast and cable counted in. */
export const fixtureClauses = (before: Plan, after: Plan, b: Fixture, a: Fixture): readonly string[] => {
  const [was, now] = [fixturePlace(before, b), fixturePlace(after, a)];
  return [
    ...kindChanged(before, after, b.kindId, a.kindId),
    ...moved(after, was.at, now.at),
    ...(b.floorId === a.floorId ? [] : [`now on ${recordName(after, a.floorId)}`]),
    ...lengthChanged(after, 'height', was.heightMm, now.heightMm),
    ...(distanceMm(was.at, now.at) < LEAST_MM || a.aim.at === 'facing'
      ? turned(facingOf(before, b), facingOf(after, a))
      : []),
    ...(a.aim.at === 'facing' && Math.abs(tiltOf(before, b) - tiltOf(after, a)) >= LEAST_DEG
      ? [`tilt now ${degrees(tiltOf(after, a))}, was ${degrees(tiltOf(before, b))}`]
      : []),
    ...feedClause(before, after, a.id),
    ...changed('power from', powerOf(b), powerOf(a)),
    ...runClauses(before, after, a.id),
    ...changed('address', addressOf(before, b), addressOf(after, a)),
    ...changed('mode', modeOf(before, b), modeOf(after, a)),
    ...changed('channel', b.channel, a.channel),
    ...changed('gel', b.gel, a.gel),
    ...changed('accessories', accessoriesOf(before, b), accessoriesOf(after, a)),
    ...(canonicalJson(b.arm ?? null) === canonicalJson(a.arm ?? null) ? [] : ['its arm set otherwise']),
    ...(b.use === a.use ? [] : [`use now “${a.use}”, was “${b.use}”`]),
    ...(supportOf(before, b) === supportOf(after, a)
      ? []
      : [`now ${supportOf(after, a)}, was ${supportOf(before, b)}`]),
  ];
};

const accessoriesOf = (plan: Plan, f: Fixture): string =>
  (f.accessories ?? []).map((id) => kindOf(plan, id)?.name ?? 'kind missing').join(', ');

export const cableClauses = (before: Plan, after: Plan, b: Cable, a: Cable): readonly string[] => [
  ...kindChanged(before, after, b.kindId, a.kindId),
  ...changed('pieces', lengthsOf(before, b), lengthsOf(after, a)),
  ...(canonicalJson(b.route.points) === canonicalJson(a.route.points) ? [] : ['laid another way']),
];

/** Words for fields of records that have no clause of their own. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  heightMm: 'height',
  thicknessMm: 'thickness',
  widthMm: 'width',
  sillMm: 'sill',
  offsetMm: 'place along the wall',
  ratedKw: 'rated kW',
  ratedKva: 'rated kVA',
  mainBreakerA: 'main breaker',
  voltsV: 'volts',
  viewDeg: 'angle of view',
  startMin: 'start',
  endMin: 'end',
  bags: 'sand bags',
  tiltDeg: 'lean, degrees',
  guys: 'lines',
};
const NO_WORDS: ReadonlySet<string> = new Set([
  'id',
  'type',
  'at',
  'rotationDeg',
  'facingDeg',
  'kindId',
  'label',
  'name',
  'unit',
  'order',
]);

/** Clauses for anything else: moved, turned, another kind, another feed, and the fields that differ. */
export const thingClauses = (before: Plan, after: Plan, b: AnyRecord, a: AnyRecord): readonly string[] => {
  const out: string[] = [];
  const [bf, af] = [b as unknown as Record<string, unknown>, a as unknown as Record<string, unknown>];
  if (typeof bf.kindId === 'string' && typeof af.kindId === 'string')
    out.push(...kindChanged(before, after, bf.kindId, af.kindId));
  if (b.type === 'wall' && a.type === 'wall') {
    const both = [...moved(after, b.from, a.from), ...moved(after, b.to, a.to)];
    if (both.length > 0) out.push(both.length === 2 && both[0] === both[1] ? (both[0] ?? '') : 'ends moved');
  } else if (bf.at && af.at) out.push(...moved(after, bf.at as Point, af.at as Point));
  const angle = 'facingDeg' in af ? 'facingDeg' : 'rotationDeg';
  if (typeof bf[angle] === 'number' && typeof af[angle] === 'number')
    out.push(...turned(bf[angle], af[angle]));
  out.push(...feedClause(before, after, a.id), ...runClauses(before, after, a.id));
  for (const key of [...new Set([...Object.keys(bf), ...Object.keys(af)])].sort()) {
    if (NO_WORDS.has(key) || (b.type === 'wall' && (key === 'from' || key === 'to'))) continue;
    if (canonicalJson(bf[key] ?? null) === canonicalJson(af[key] ?? null)) continue;
    const word =
      FIELD_WORDS[key] ??
      key.replace(/(Mm|Deg|Pct|Min|Kg|V|A|W)$/, '').replace(/([A-Z])/g, (c) => ` ${c.toLowerCase()}`);
    const plain = [bf[key], af[key]].every((v) => v === undefined || typeof v !== 'object');
    if (key.endsWith('Mm') && typeof bf[key] === 'number' && typeof af[key] === 'number')
      out.push(...lengthChanged(after, word, bf[key], af[key]));
    else if (plain) out.push(...changed(word, bf[key], af[key]));
    else out.push(`${word} changed`);
  }
  return out;
};
