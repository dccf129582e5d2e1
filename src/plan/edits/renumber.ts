import { type Point, point } from '../../kernel/geometry.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { fixturePlace, type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Fixture } from '../records/index.ts';

/**
 * How units follow one another: across from left to right; row by row as one reads; the nearest one next from the left
 * on; by what carries them; by group; in the order of the numbers they have.
 */
export const unitOrders = ['across', 'rows', 'path', 'position', 'group', 'number'] as const;
export type UnitOrder = (typeof unitOrders)[number];

export interface UnitRule {
  readonly order: UnitOrder;
  /** Letters before the number, like `A`; may be empty. */
  readonly prefix: string;
  readonly start: number;
  readonly step: number;
  /** With `position` and `group`: each begins at the next round number of this kind, like 10 or 100; 0 runs on. */
  readonly round: number;
}

export interface NewNumber {
  readonly id: Id;
  readonly from: string;
  readonly to: string;
}

/** Whether another unit than these has this number. */
export const unitTaken = (plan: Plan, unit: string, but: ReadonlySet<Id>): boolean =>
  recordsOf(plan, 'fixture').some((f) => f.unit === unit && !but.has(f.id));

interface Placed {
  readonly f: Fixture;
  readonly at: Point;
}

/** Units whose middles are so near in height on the drawing stand in one row. */
const ROW_MM = 900;

const byNumber = (a: Placed, b: Placed): number =>
  compareNatural(a.f.unit, b.f.unit) || compareNatural(a.f.id, b.f.id);
const byAcross = (a: Placed, b: Placed): number =>
  a.at.xMm - b.at.xMm || a.at.yMm - b.at.yMm || byNumber(a, b);

const inRows = (all: readonly Placed[]): readonly Placed[] => {
  const down = [...all].sort((a, b) => a.at.yMm - b.at.yMm || byAcross(a, b));
  const rows: Placed[][] = [];
  for (const p of down) {
    const row = rows.at(-1);
    if (row?.[0] && p.at.yMm - row[0].at.yMm <= ROW_MM) row.push(p);
    else rows.push([p]);
  }
  return rows.flatMap((row) => row.sort(byAcross));
};

const alongPath = (all: readonly Placed[]): readonly Placed[] => {
  const left = [...all].sort(byAcross);
  const path: Placed[] = [];
  for (let now = left.shift(); now; ) {
    path.push(now);
    const { at } = now;
    let near = 0;
    const off = (i: number): number => {
      const p = left[i];
      return p ? Math.hypot(p.at.xMm - at.xMm, p.at.yMm - at.yMm) : Number.POSITIVE_INFINITY;
    };
    for (let i = 1; i < left.length; i++) if (off(i) < off(near)) near = i;
    [now] = left.splice(near, 1);
  }
  return path;
};

/** What carries a unit, as a name to sort by: tubes and points by their labels, then stands, the floor, hands. */
const positionOf = (plan: Plan, f: Fixture): string => {
  const s = f.support;
  if (s.on === 'rigged') {
    const rig = s.riggingId === undefined ? undefined : recordOf(plan, 'rigging', s.riggingId);
    return rig ? `1 ${rig.label || rig.id}` : '2';
  }
  return { stand: '3', floor: '4', held: '5' }[s.on];
};

/** Parts in their order, each from left to right. */
const inParts = (all: readonly Placed[], nameOf: (p: Placed) => string): readonly (readonly Placed[])[] => {
  const parts = new Map<string, Placed[]>();
  for (const p of all) {
    const part = parts.get(nameOf(p));
    if (part) part.push(p);
    else parts.set(nameOf(p), [p]);
  }
  return [...parts].sort(([a], [b]) => compareNatural(a, b)).map(([, part]) => part.sort(byAcross));
};

const partsFor = (plan: Plan, ids: ReadonlySet<Id>, order: UnitOrder): readonly (readonly Placed[])[] => {
  const all = recordsOf(plan, 'fixture')
    .filter((f) => ids.has(f.id) && !f.locked)
    .map((f) => ({ f, at: point(fixturePlace(plan, f).at.xMm, fixturePlace(plan, f).at.yMm) }));
  switch (order) {
    case 'across':
      return [[...all].sort(byAcross)];
    case 'rows':
      return [inRows(all)];
    case 'path':
      return [alongPath(all)];
    case 'number':
      return [[...all].sort(byNumber)];
    case 'position':
      return inParts(all, (p) => positionOf(plan, p.f));
    case 'group': {
      // Groups follow one another by their leftmost unit; what is in no group comes last.
      const firsts = new Map<string, number>();
      for (const p of all) {
        const g = p.f.groupId;
        if (g !== undefined) firsts.set(g, Math.min(firsts.get(g) ?? Number.POSITIVE_INFINITY, p.at.xMm));
      }
      const rank = new Map([...firsts].sort(([, a], [, b]) => a - b).map(([g], i) => [g, i]));
      return inParts(all, (p) =>
        p.f.groupId === undefined ? '2' : `1 ${rank.get(p.f.groupId) ?? 0} ${p.f.groupId}`,
      );
    }
  }
};

/**
 * New numbers for these units by a rule. Numbers of units that are not among them are passed over, so that every number
 * stays the only one; locked units keep theirs. What does not change is in the list too, in its place.
 */
export const renumberUnits = (
  plan: Plan,
  ids: ReadonlySet<Id>,
  rule: UnitRule,
): Result<{ readonly changes: ChangeSet; readonly numbers: readonly NewNumber[] }> => {
  const { start, step, round, prefix } = rule;
  if (!Number.isInteger(start) || start < 0 || start > 99_999)
    return fail({ what: 'The first number is not a whole number.', todo: 'Write one from 0 to 99999.' });
  if (!Number.isInteger(step) || step < 1 || step > 1000)
    return fail({
      what: 'The step is not a whole number.',
      todo: 'Write how far it is from one to the next, like 1.',
    });
  const parts = partsFor(plan, ids, rule.order);
  const chosen = new Set(parts.flat().map((p) => p.f.id));
  if (chosen.size === 0)
    return fail({
      what: 'None of what is selected has a unit number.',
      todo: 'Select fixtures that are not locked.',
    });
  const used = new Set(recordsOf(plan, 'fixture').flatMap((f) => (chosen.has(f.id) ? [] : [f.unit])));
  const draft = new Draft(plan);
  const numbers: NewNumber[] = [];
  let next = start;
  parts.forEach((part, i) => {
    if (i > 0 && round > 1) next = start + Math.ceil((next - start) / round) * round;
    for (const { f } of part) {
      while (used.has(`${prefix}${next}`)) next += step;
      const to = `${prefix}${next}`;
      next += step;
      numbers.push({ id: f.id, from: f.unit, to });
      if (to !== f.unit) draft.put({ ...f, unit: to });
    }
  });
  return ok({ changes: draft.changes(), numbers });
};
