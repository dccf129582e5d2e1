import { canonicalJson } from '../kernel/canonical.ts';
import { type Box, boxOf, growBox, type Point } from '../kernel/geometry.ts';
import { compareIds, compareNatural, type Id } from '../kernel/ids.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { AnyRecord, RecordType } from '../plan/records/index.ts';
import { cableClauses, fixtureClauses, thingClauses } from './change-clauses.ts';
import { planFieldChanges } from './change-document.ts';
import { levelChanges, moveChanges } from './change-groups.ts';
import type { Pair, PlanChange } from './change-types.ts';
import { addedWords, changedWords, nameOf, removedWords } from './change-words.ts';

export type { PlanChange } from './change-types.ts';

/**
 * What has no line of its own: kinds and pictures tell by what uses them; levels, places by setup and the title block have
 * their own words; views, places of labels, ticked steps and issues are no change of the design.
 */
const SKIPPED: ReadonlySet<RecordType> = new Set([
  ...(['kind', 'blob', 'level', 'move', 'plan'] as const),
  ...(['view', 'labelPlace', 'tick', 'issue'] as const),
]);

const ORDER: readonly RecordType[] = [
  'fixture',
  'ballast',
  'source',
  'box',
  'outlet',
  'cable',
  'stand',
  'grip',
];

const pairsOf = (before: Plan, after: Plan): ReadonlyMap<Id, Pair> => {
  const out = new Map<Id, Pair>();
  for (const [id, b] of before.records) {
    const a = after.records.get(id);
    if (a !== b && (!a || canonicalJson(a) !== canonicalJson(b))) out.set(id, { before: b, after: a });
  }
  for (const [id, a] of after.records)
    if (!before.records.has(id)) out.set(id, { before: undefined, after: a });
  return out;
};

/** Things whose line of words tells of a record: units of their stand, their ballast and what feeds them. */
const subjectsOf = (plan: Plan, r: AnyRecord): readonly Id[] => {
  if (r.type === 'ballast') return [recordOf(plan, 'fixture', r.fixtureId)?.id ?? r.id];
  if (r.type === 'stand') {
    const on = recordsOf(plan, 'fixture').filter(
      (f) => f.support.on === 'stand' && f.support.standId === r.id,
    );
    return on.length > 0 ? on.map((f) => f.id) : [r.id];
  }
  if (r.type === 'cable') {
    const fed = plan.records.get(r.to.recordId);
    return fed && fed.type !== 'cable' ? subjectsOf(plan, fed) : [r.id];
  }
  return [r.id];
};

/** Box of floor around a record, and its floor. */
const placeBox = (plan: Plan, id: Id): { readonly floorId: Id; readonly box: Box } | undefined => {
  const r = plan.records.get(id);
  if (!r) return undefined;
  if (r.type === 'wall') return { floorId: r.floorId, box: boxOf([r.from, r.to]) };
  if (r.type === 'opening') {
    const wall = recordOf(plan, 'wall', r.wallId);
    if (!wall) return undefined;
    const long = Math.hypot(wall.to.xMm - wall.from.xMm, wall.to.yMm - wall.from.yMm) || 1;
    const at = (mm: number) => ({
      xMm: wall.from.xMm + ((wall.to.xMm - wall.from.xMm) * mm) / long,
      yMm: wall.from.yMm + ((wall.to.yMm - wall.from.yMm) * mm) / long,
    });
    return { floorId: wall.floorId, box: boxOf([at(r.offsetMm), at(r.offsetMm + r.widthMm)]) };
  }
  if (r.type === 'cable') {
    const from = placeOf(plan, r.from.recordId);
    const to = placeOf(plan, r.to.recordId);
    const mid = r.route.points[Math.floor(r.route.points.length / 2)];
    const spot = mid ?? to?.at;
    return from && to && spot ? { floorId: to.floorId, box: growBox(boxOf([spot]), 150) } : undefined;
  }
  if (r.type === 'dimension') return { floorId: r.floorId, box: growBox(boxOf([r.from.at, r.to.at]), 100) };
  if (r.type === 'feature') return { floorId: r.floorId, box: growBox(boxOf(r.points), r.radiusMm ?? 0) };
  if (r.type === 'fixture')
    return {
      floorId: r.floorId,
      box: turnedBox(fixturePlace(plan, r).at, kindOf(plan, r.kindId)?.sizeMm, facingOf(plan, r)),
    };
  if (r.type === 'setPiece') {
    const o = r.outline;
    const half =
      o.shape === 'polygon'
        ? Math.max(...o.points.map((p) => Math.hypot(p.xMm, p.yMm)))
        : Math.hypot(o.lengthMm, o.widthMm) / 2;
    return { floorId: r.floorId, box: growBox(boxOf([r.at]), half) };
  }
  if (!('at' in r) || !('floorId' in r) || typeof r.floorId !== 'string') return undefined;
  const at = r.at as { xMm: number; yMm: number };
  const kind = 'kindId' in r && typeof r.kindId === 'string' ? kindOf(plan, r.kindId) : undefined;
  const turn = 'facingDeg' in r ? r.facingDeg : 'rotationDeg' in r ? r.rotationDeg : 0;
  return { floorId: r.floorId, box: turnedBox(at, kind?.sizeMm, typeof turn === 'number' ? turn : 0) };
};

/** Box round a thing of this size in plan, turned; at least 200 mm across. */
const turnedBox = (
  at: Point,
  size: { readonly lengthMm: number; readonly widthMm: number } | undefined,
  deg: number,
): Box => {
  const [c, s] = [Math.abs(Math.cos((deg * Math.PI) / 180)), Math.abs(Math.sin((deg * Math.PI) / 180))];
  const [l, w] = [size?.lengthMm ?? 300, size?.widthMm ?? 300];
  const halfX = Math.max(100, (l * c + w * s) / 2);
  const halfY = Math.max(100, (l * s + w * c) / 2);
  return { minX: at.xMm - halfX, maxX: at.xMm + halfX, minY: at.yMm - halfY, maxY: at.yMm + halfY };
};

const clausesFor = (before: Plan, after: Plan, id: Id): readonly string[] => {
  const [b, a] = [before.records.get(id), after.records.get(id)];
  if (a?.type === 'fixture' && b?.type === 'fixture') return fixtureClauses(before, after, b, a);
  if (a?.type === 'cable' && b?.type === 'cable') return cableClauses(before, after, b, a);
  return a && b ? thingClauses(before, after, b, a) : [];
};

const rank = (plan: Plan, id: Id): number => {
  const at = ORDER.indexOf(plan.records.get(id)?.type ?? 'plan');
  return at < 0 ? ORDER.length : at;
};

/**
 * What is different between two states of one plan, in words for the crew and with where it is drawn: units first, then
 * what feeds them, then the rest, then levels by setup and the title block. A unit's stand, ballast and cable are told in
 * the unit's own line. The same two plans always give the same list; equal plans give none. Not told: locks, groups and
 * order of drawing, views, places of labels, ticked steps, issues, and the sheets the papers are on.
 */
export const planChanges = (before: Plan, after: Plan): readonly PlanChange[] => {
  const pairs = pairsOf(before, after);
  const subjects = new Map<Id, Id[]>();
  for (const [id, { before: b, after: a }] of pairs) {
    const r = a ?? b;
    if (!r || SKIPPED.has(r.type)) continue;
    // What left one thing for another is told at both.
    for (const subject of new Set([
      ...(b ? subjectsOf(before, b) : []),
      ...(a ? subjectsOf(after, a) : []),
    ])) {
      const list = subjects.get(subject) ?? [];
      if (id !== subject) list.push(id);
      subjects.set(subject, list);
    }
  }
  const plan = (id: Id): Plan => (after.records.has(id) ? after : before);
  const told = [...subjects]
    .sort(
      ([a], [b]) =>
        rank(plan(a), a) - rank(plan(b), b) ||
        compareNatural(nameOf(plan(a), a), nameOf(plan(b), b)) ||
        compareIds(a, b),
    )
    .flatMap(([id, others]): PlanChange[] => {
      const what = !before.records.has(id) ? 'added' : !after.records.has(id) ? 'removed' : 'changed';
      const words =
        what === 'added'
          ? addedWords(after, id)
          : what === 'removed'
            ? removedWords(before, id)
            : changedWords(before, after, id, clausesFor(before, after, id));
      // Only what is no change of the design is different, like a lock or the order of drawing.
      if (words === undefined) return [];
      return [
        {
          what,
          words,
          recordIds: [id, ...others.sort(compareIds)],
          floorId: undefined,
          box: undefined,
          ...placeBox(plan(id), id),
        },
      ];
    });
  return [
    ...told,
    ...moveChanges(before, after, pairs, placeBox),
    ...levelChanges(before, after, pairs),
    ...planFieldChanges(before, after),
  ];
};
