import type { Id } from '../kernel/ids.ts';
import { compareIds } from '../kernel/ids.ts';
import { levelOf, type Plan, recordOf, recordsOf, setupsOf } from '../plan/plan.ts';
import { LAST_MINUTE } from '../plan/records/day.ts';
import type { Block } from '../plan/records/index.ts';
import { isNoted, rememberedEach } from '../plan/remembered.ts';

/** A fixture that burns: how bright, in which setup, and whether its level is in the plan. */
export interface Burning {
  readonly levelPct: number;
  readonly setupId: Id;
  readonly assumed: boolean;
}

/** A stretch between two edges of blocks, in which nothing changes. */
export interface Segment {
  readonly startMin: number;
  readonly endMin: number;
  readonly blocks: readonly Block[];
  /** What burns, by fixture id. Fixtures that are off are left out. */
  readonly burning: ReadonlyMap<Id, Burning>;
}

/** One shooting day. Times are minutes after its 00:00. */
export interface Day {
  readonly day: number;
  /** Date by the plan's list of dates, `2027-03-04`; undefined where there is none. */
  readonly date: string | undefined;
  readonly blocks: readonly Block[];
  readonly startMin: number;
  readonly endMin: number;
  readonly segments: readonly Segment[];
}

/** Why a block takes no part in the day. */
export type BlockFault = 'empty' | 'outside' | 'no-setup';

/** What is wrong with a block; undefined where it can be used. */
export const blockFault = (plan: Plan, b: Block): BlockFault | undefined => {
  if (!Number.isFinite(b.startMin) || !Number.isFinite(b.endMin) || !(b.endMin > b.startMin)) return 'empty';
  if (b.startMin < 0 || b.endMin > LAST_MINUTE) return 'outside';
  const needed = b.what === 'setup' || b.what === 'pre-light';
  if ((needed || b.setupId !== undefined) && !recordOf(plan, 'setup', b.setupId ?? '')) return 'no-setup';
  return undefined;
};

const byTime = (a: Block, b: Block): number =>
  a.startMin - b.startMin || a.endMin - b.endMin || compareIds(a.id, b.id);

/** Blocks of one day in the order of their times, those with faults among them. */
export const blocksOfDay = (plan: Plan, day: number): readonly Block[] =>
  recordsOf(plan, 'block')
    .filter((b) => b.day === day)
    .sort(byTime);

/** Days that have blocks, in order. */
export const dayNumbers = (plan: Plan): readonly number[] =>
  [...new Set(recordsOf(plan, 'block').map((b) => b.day))].sort((a, b) => a - b);

/** The setup a block burns at, or for what burns through it the setup of its crew before it; undefined where there is none. */
const setupOfBlock = (plan: Plan, b: Block, before: readonly Block[]): Id | undefined => {
  if (b.setupId !== undefined) return b.setupId;
  const last = before.filter((x) => x.setupId !== undefined && x.startMin <= b.startMin);
  return (last.filter((x) => x.crew === b.crew).at(-1) ?? last.at(-1))?.setupId ?? setupsOf(plan)[0]?.id;
};

/** The setup at whose levels a block burns, or what is named to stay on through it; undefined where there is none. */
export const setupBurnt = (plan: Plan, b: Block): Id | undefined =>
  setupOfBlock(
    plan,
    b,
    blocksOfDay(plan, b.day).filter((x) => byTime(x, b) < 0 && blockFault(plan, x) === undefined),
  );

/** Ids of the fixtures: the very same list for as long as none comes or goes, however often they are moved. */
const fixtureIds = (() => {
  let last: readonly Id[] = [];
  return (plan: Plan): readonly Id[] => {
    const fixtures = recordsOf(plan, 'fixture');
    const same = fixtures.length === last.length && fixtures.every((f, i) => f.id === last[i]);
    if (!same) last = fixtures.map((f) => f.id);
    return last;
  };
})();

const burningIn = (plan: Plan, b: Block, fixtures: readonly Id[]): ReadonlyMap<Id, Burning> => {
  const setupId = setupBurnt(plan, b);
  const burning = new Map<Id, Burning>();
  if (setupId === undefined) return burning;
  const whole = b.what === 'setup' || b.what === 'pre-light';
  const there = whole ? undefined : new Set(fixtures);
  const ids = there ? b.burnsThrough.filter((id) => there.has(id)) : fixtures;
  for (const id of ids) {
    const { levelPct, assumed } = levelOf(plan, setupId, id);
    if (levelPct > 0) burning.set(id, { levelPct: Math.min(100, levelPct), setupId, assumed });
  }
  return burning;
};

/** As `burningIn`, of many blocks; from edit to edit only those are looked at anew whose levels were touched. */
const burningInEach = rememberedEach(burningIn);

const makeDay = (plan: Plan, day: number, blocks: readonly Block[], burnt: BurntIn): Day => {
  const burning = blocks.map((b) => burnt.get(b.id));
  const edges = [...new Set(blocks.flatMap((b) => [b.startMin, b.endMin]))].sort((a, b) => a - b);
  const segments = edges.slice(1).map((endMin, i): Segment => {
    const startMin = edges[i] ?? endMin;
    const on = new Map<Id, Burning>();
    const here: Block[] = [];
    blocks.forEach((b, k) => {
      if (b.startMin > startMin || b.endMin < endMin) return;
      here.push(b);
      // Two crews may light one unit at once: the brighter counts.
      for (const [id, x] of burning[k] ?? []) if (x.levelPct > (on.get(id)?.levelPct ?? 0)) on.set(id, x);
    });
    return { startMin, endMin, blocks: here, burning: on };
  });
  return {
    day,
    date: planDates(plan)[day - 1],
    blocks,
    startMin: edges[0] ?? 0,
    endMin: edges.at(-1) ?? 0,
    segments,
  };
};

const planDates = (plan: Plan): readonly string[] => recordOf(plan, 'plan', 'plan')?.dates ?? [];

type BurntIn = ReadonlyMap<Id, ReadonlyMap<Id, Burning>>;

const memo = new WeakMap<Plan, readonly Day[]>();

/** The shooting days of a plan: who burns when. Blocks with faults take no part. */
export const shootingDays = (plan: Plan): readonly Day[] => {
  const known = memo.get(plan);
  if (known) return known;
  const ofDay = dayNumbers(plan).map((day) => ({
    day,
    blocks: blocksOfDay(plan, day).filter((b) => blockFault(plan, b) === undefined),
  }));
  const all = ofDay.flatMap((d) => d.blocks);
  const ids = fixtureIds(plan);
  const made = isNoted(plan) ? all.map((b) => burningIn(plan, b, ids)) : burningInEach(plan, all, ids);
  const burnt: BurntIn = new Map(all.map((b, i) => [b.id, made[i] ?? new Map()]));
  const days = ofDay.map(({ day, blocks }) => makeDay(plan, day, blocks, burnt));
  memo.set(plan, days);
  return days;
};

/** A stretch in which one fixture burns at one level. */
export interface Stretch {
  readonly startMin: number;
  readonly endMin: number;
  readonly levelPct: number;
  readonly setupId: Id;
}

/** When a fixture burns on a day, stretches of one level and setup joined. */
export const stretchesOf = (day: Day, fixtureId: Id): readonly Stretch[] => {
  const out: Stretch[] = [];
  for (const s of day.segments) {
    const b = s.burning.get(fixtureId);
    if (!b) continue;
    const last = out.at(-1);
    if (last?.endMin === s.startMin && last.levelPct === b.levelPct && last.setupId === b.setupId)
      out[out.length - 1] = { ...last, endMin: s.endMin };
    else out.push({ startMin: s.startMin, endMin: s.endMin, levelPct: b.levelPct, setupId: b.setupId });
  }
  return out;
};

const anyBurns = (s: Segment, fixtureIds: ReadonlySet<Id>): boolean => {
  const [few, many] = fixtureIds.size < s.burning.size ? [fixtureIds, s.burning] : [s.burning, fixtureIds];
  for (const id of few.keys()) if (many.has(id)) return true;
  return false;
};

/** Minutes of a day in which at least one of some fixtures burns: in all, and the longest stretch with pauses under `restMin`. */
export const minutesOn = (
  day: Day,
  fixtureIds: ReadonlySet<Id>,
  restMin: number,
): { readonly totalMin: number; readonly longestMin: number } => {
  let totalMin = 0;
  let longestMin = 0;
  let from: number | undefined;
  let until = 0;
  for (const s of day.segments) {
    if (!anyBurns(s, fixtureIds)) continue;
    totalMin += s.endMin - s.startMin;
    if (from === undefined || s.startMin - until >= restMin) from = s.startMin;
    until = s.endMin;
    longestMin = Math.max(longestMin, until - from);
  }
  return { totalMin, longestMin };
};
