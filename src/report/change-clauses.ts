import { distanceMm } from '../kernel/geometry.ts';
import { facingOf, tiltOf } from '../plan/edits/arrange.ts';
import { recordName } from '../plan/names.ts';
import { fixturePlace, kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord, Ballast, Cable, Fixture, Stand } from '../plan/records/index.ts';
import { feedClauses, runClauses } from './change-feeds.ts';
import {
  changed,
  fieldClauses,
  fieldsOf,
  LEAST_DEG,
  LEAST_MM,
  moved,
  same,
  turned,
  valueText,
} from './change-fields.ts';

const degrees = (deg: number): string => `${String(Math.round(deg)).replace('-', '−')}°`;

const kindChanged = (before: Plan, after: Plan, from: string, to: string, word = ''): readonly string[] => {
  if (from === to) return [];
  const [was, now] = [kindOf(before, from)?.name ?? from, kindOf(after, to)?.name ?? to];
  return [
    was === now
      ? `figures of its ${word || 'kind'} (${now}) changed`
      : `${word ? `${word} ` : ''}now ${now}, was ${was}`,
  ];
};

const floorChanged = (before: Plan, after: Plan, from: string, to: string): readonly string[] => {
  if (from === to) return [];
  const name = (plan: Plan, id: string, lead: string): string => {
    const text = recordOf(plan, 'floor', id)?.name;
    return text ? `${lead}${text}` : 'a floor without a name';
  };
  return [`now on ${name(after, to, 'floor ')}, was on ${name(before, from, '')}`];
};

const addressOf = (plan: Plan, f: Fixture): string => {
  const u = f.patch && recordOf(plan, 'universe', f.patch.universeId);
  return f.patch ? `U${u?.number ?? '?'} ${f.patch.address}` : 'none';
};

const modeOf = (plan: Plan, f: Fixture): string =>
  f.patch
    ? (kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === f.patch?.modeId)?.name ?? f.patch.modeId)
    : 'none';

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

const carrierOf = (f: Fixture): string | undefined =>
  f.support.on === 'stand' ? f.support.standId : f.support.on === 'rigged' ? f.support.riggingId : undefined;

const supportChanged = (before: Plan, after: Plan, b: Fixture, a: Fixture): readonly string[] => {
  const [was, now] = [supportOf(before, b), supportOf(after, a)];
  if (was !== now) return [`now ${now}, was ${was}`];
  return carrierOf(b) === carrierOf(a)
    ? []
    : [`now on another ${a.support.on === 'stand' ? 'stand' : 'one'} of the same kind`];
};

const powerOf = (f: Fixture): string =>
  f.onPacks ? (f.packFrom ? 'a pack on the floor' : f.packs ? 'packs' : 'own cells') : 'mains';

const aimOf = (plan: Plan, f: Fixture): string =>
  f.aim.at === 'mark' ? valueText(plan, 'markId', f.aim.markId) : 'none';

const standOf = (plan: Plan, f: Fixture): Stand | undefined =>
  f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;

const ballastOf = (plan: Plan, id: string): Ballast | undefined =>
  recordsOf(plan, 'ballast').find((x) => x.fixtureId === id);

/** The first unit on a stand tells of the stand; the others only of where they are. */
const tellsOfStand = (plan: Plan, f: Fixture, s: Stand): boolean =>
  recordsOf(plan, 'fixture').find((x) => x.support.on === 'stand' && x.support.standId === s.id)?.id === f.id;

const STAND_IN_UNIT: ReadonlySet<string> = new Set(['at', 'heightMm', 'kindId', 'floorId']);
const BALLAST_IN_UNIT: ReadonlySet<string> = new Set(['kindId', 'fixtureId']);

const standClauses = (before: Plan, after: Plan, b: Fixture, a: Fixture): readonly string[] => {
  const [was, now] = [standOf(before, b), standOf(after, a)];
  if (!was || !now || was.id !== now.id || !tellsOfStand(after, a, now)) return [];
  const kind = kindOf(before, was.kindId)?.name === kindOf(after, now.kindId)?.name;
  return [
    ...(kind ? kindChanged(before, after, was.kindId, now.kindId, 'stand') : []),
    ...(b.floorId === a.floorId ? floorChanged(before, after, was.floorId, now.floorId) : []).map(
      (c) => `stand ${c}`,
    ),
    ...fieldClauses(before, after, fieldsOf(was), fieldsOf(now), STAND_IN_UNIT).map((c) => `stand ${c}`),
  ];
};

const ballastClauses = (before: Plan, after: Plan, id: string): readonly string[] => {
  const [was, now] = [ballastOf(before, id), ballastOf(after, id)];
  if (!was || !now)
    return was || now
      ? [now ? `now with a ballast, ${kindOf(after, now.kindId)?.name ?? ''}` : 'now without its ballast']
      : [];
  return [
    ...kindChanged(before, after, was.kindId, now.kindId, 'ballast'),
    ...fieldClauses(before, after, fieldsOf(was), fieldsOf(now), BALLAST_IN_UNIT).map((c) => `ballast ${c}`),
  ];
};

const IN_WORDS: ReadonlySet<string> = new Set([
  ...['kindId', 'at', 'floorId', 'heightMm', 'aim', 'support', 'accessories', 'unit', 'onPacks'],
  ...['channel', 'gel', 'use', 'patch'],
]);
const SUPPORT_IN_WORDS: ReadonlySet<string> = new Set(['on', 'standId', 'riggingId']);
const AIM_IN_WORDS: ReadonlySet<string> = new Set(['at', 'markId', 'facingDeg', 'tiltDeg']);
const PATCH_IN_WORDS: ReadonlySet<string> = new Set(['universeId', 'address', 'modeId']);

/** What a unit does or has otherwise than before, each as a few words; its stand, ballast and cables counted in. */
export const fixtureClauses = (before: Plan, after: Plan, b: Fixture, a: Fixture): readonly string[] => {
  const [was, now] = [fixturePlace(before, b), fixturePlace(after, a)];
  const stays = distanceMm(was.at, now.at) < LEAST_MM;
  const turnedTo = stays || a.aim.at === 'facing' ? turned(facingOf(before, b), facingOf(after, a)) : [];
  const tilt = a.aim.at === 'facing' ? [tiltOf(before, b), tiltOf(after, a)] : [0, 0];
  const [tiltWas = 0, tiltNow = 0] = tilt;
  return [
    ...kindChanged(before, after, b.kindId, a.kindId),
    ...moved(after, was.at, now.at),
    ...floorChanged(before, after, b.floorId, a.floorId),
    ...fieldClauses(before, after, { heightMm: was.heightMm }, { heightMm: now.heightMm }),
    ...turnedTo,
    ...(Math.abs(tiltWas - tiltNow) >= LEAST_DEG
      ? [`tilt now ${degrees(tiltNow)}, was ${degrees(tiltWas)}`]
      : tiltWas === tiltNow
        ? []
        : ['tilted less than 1°']),
    ...changed('follows', aimOf(before, b), aimOf(after, a)),
    ...feedClauses(before, after, a.id),
    ...changed('power from', powerOf(b), powerOf(a)),
    ...changed('address', addressOf(before, b), addressOf(after, a)),
    ...changed('mode', modeOf(before, b), modeOf(after, a)),
    ...(b.patch && a.patch ? fieldClauses(before, after, b.patch, a.patch, PATCH_IN_WORDS) : []),
    ...changed('channel', b.channel || 'none', a.channel || 'none'),
    ...changed('gel', b.gel || 'none', a.gel || 'none'),
    ...accessoriesChanged(before, after, b, a),
    ...(b.use === a.use ? [] : [`use now “${a.use}”, was “${b.use}”`]),
    ...supportChanged(before, after, b, a),
    ...standClauses(before, after, b, a),
    ...ballastClauses(before, after, a.id),
    ...fieldClauses(before, after, fieldsOf(b.support), fieldsOf(a.support), SUPPORT_IN_WORDS),
    ...fieldClauses(before, after, fieldsOf(b.aim), fieldsOf(a.aim), AIM_IN_WORDS),
    ...fieldClauses(before, after, fieldsOf(b), fieldsOf(a), IN_WORDS),
  ];
};

const accessoriesChanged = (before: Plan, after: Plan, b: Fixture, a: Fixture): readonly string[] => {
  if (same(b.accessories ?? [], a.accessories ?? [])) return [];
  const out = changed(
    'accessories',
    valueText(before, 'accessories', b.accessories),
    valueText(after, 'accessories', a.accessories),
  );
  return out.length > 0 ? out : ['figures of its accessories changed'];
};

/** A run of cable that leads to nothing in the plan. */
export const cableClauses = (before: Plan, after: Plan, b: Cable, a: Cable): readonly string[] => [
  ...runClauses(before, after, b, a),
  ...fieldClauses(before, after, { from: b.from, to: b.to }, { from: a.from, to: a.to }),
];

/** Fields that say what a thing is called: a new name is told as one. */
const NAMES: ReadonlySet<string> = new Set(['label', 'name', 'number']);

/** Clauses for anything else: another kind, moved, turned, another feed, and the fields that differ. */
export const thingClauses = (before: Plan, after: Plan, b: AnyRecord, a: AnyRecord): readonly string[] => {
  const [bf, af] = [fieldsOf(b), fieldsOf(a)];
  const skip = new Set([...NAMES, 'kindId', 'floorId', 'rotationDeg', 'facingDeg', 'at']);
  const out: string[] = [];
  if (typeof bf.kindId === 'string' && typeof af.kindId === 'string')
    out.push(...kindChanged(before, after, bf.kindId, af.kindId));
  else skip.delete('kindId');
  if (b.type === 'wall' && a.type === 'wall') {
    skip.add('from').add('to');
    const by = (end: 'from' | 'to'): string => `${a[end].xMm - b[end].xMm} ${a[end].yMm - b[end].yMm}`;
    if (by('from') === by('to')) out.push(...moved(after, b.from, a.from));
    else out.push('ends moved');
  } else if (!same(bf.at, af.at)) out.push(...fieldClauses(before, after, { at: bf.at }, { at: af.at }));
  if (typeof bf.floorId === 'string' && typeof af.floorId === 'string')
    out.push(...floorChanged(before, after, bf.floorId, af.floorId));
  for (const angle of ['facingDeg', 'rotationDeg'] as const) {
    if (typeof bf[angle] === 'number' && typeof af[angle] === 'number')
      out.push(...turned(bf[angle], af[angle]));
    else skip.delete(angle);
  }
  out.push(...feedClauses(before, after, a.id), ...fieldClauses(before, after, bf, af, skip));
  return out;
};
