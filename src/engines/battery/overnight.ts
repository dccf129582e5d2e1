import { type Day, shootingDays } from '../../derive/schedule.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import { chargeFrom } from './charge.ts';
import { dayAtHand } from './least.ts';
import { rotationOf } from './rotation.ts';
import type { Rotation, RotationPool, RotationResult } from './rotation-types.ts';

const MINUTES_A_DAY = 1440;

/** Packs of one pool that are not full again when the next shooting day wants them. Times are minutes after this day's 00:00. */
export interface Overnight {
  readonly day: number;
  readonly nextDay: number;
  readonly pool: Id;
  readonly name: string;
  readonly exchange: boolean;
  /** Bays that take them; 0 where the plan has none, and they charge elsewhere. */
  readonly bays: number;
  /** When the next day first burns a unit of theirs. */
  readonly wantedMin: number;
  /** Packs the next day uses, and those that are full by then, charged without a pause from when they come off. */
  readonly wants: number;
  readonly full: number;
  /** When the last one is full; undefined where no bay takes them. */
  readonly readyMin: number | undefined;
}

/** Minutes from one day's 00:00 to another's: by their dates, where both are known and in order, else by their numbers. */
export const minutesBetween = (a: Day, b: Day): number => {
  const byDate =
    a.date === undefined || b.date === undefined
      ? Number.NaN
      : (Date.parse(`${b.date}T00:00:00Z`) - Date.parse(`${a.date}T00:00:00Z`)) / 60_000;
  return byDate > 0 ? byDate : (b.day - a.day) * MINUTES_A_DAY;
};

/** A pack that was used: what it holds when it was last on a unit or in a bay, and when that ended. */
interface Left {
  readonly pool: RotationPool;
  readonly soc: number;
  readonly fromMin: number;
}

/** What every pack that was used holds when its day is over; those in a bay then stay until they are full. */
const leftOf = (r: Rotation, d: RotationResult): readonly Left[] => {
  const last = new Map<string, Left>();
  const note = (pool: string, pack: string, soc: number, fromMin: number): void => {
    const p = r.pools.find((x) => x.id === pool);
    const key = `${pool}/${pack}`;
    if (p && fromMin >= (last.get(key)?.fromMin ?? Number.NEGATIVE_INFINITY))
      last.set(key, { pool: p, soc, fromMin });
  };
  const ends = [
    ...d.spans
      .filter((s) => s.state === 'burning')
      .flatMap((s) =>
        s.packs.map((pack) => ({
          pool: r.units[s.unit]?.pool ?? '',
          pack,
          soc: s.toSoc,
          startMin: s.startMin,
          endMin: s.endMin,
        })),
      ),
    ...d.bays.map((b) => ({ ...b, soc: 1 })),
  ].sort((a, b) => a.startMin - b.startMin);
  for (const e of ends) note(e.pool, e.pack, e.soc, e.endMin);
  return [...last.values()];
};

/** When the packs that were used are full: those charged last by their charge, of the others the shortest charges first, each in the bay it is full soonest in. */
const readyTimes = (r: Rotation, d: RotationResult): ReadonlyMap<Id, readonly number[]> => {
  const free = r.bays.map((_, i) => Math.max(0, ...d.bays.filter((b) => b.bay === i).map((b) => b.endMin)));
  const ready = new Map<Id, number[]>();
  const jobs = leftOf(r, d)
    .map((e) => ({ ...e, minutes: chargeFrom(r, e.soc, e.pool.chargeMin) }))
    .sort((a, b) => a.minutes - b.minutes || a.fromMin - b.fromMin);
  for (const { pool, minutes, fromMin } of jobs) {
    const list = ready.get(pool.id) ?? [];
    ready.set(pool.id, list);
    if (minutes <= 1e-9) {
      list.push(fromMin);
      continue;
    }
    if (pool.exchange) {
      list.push(fromMin + minutes);
      continue;
    }
    let at = -1;
    let soonest = Number.POSITIVE_INFINITY;
    r.bays.forEach((b, i) => {
      if (!b.pools.has(pool.id)) return;
      const end = Math.max(fromMin, free[i] ?? 0) + minutes * (b.slower.get(pool.id) ?? 1);
      if (end < soonest) [at, soonest] = [i, end];
    });
    if (at >= 0) free[at] = soonest;
    list.push(soonest);
  }
  return ready;
};

const after = (plan: Plan, day: Day, next: Day): readonly Overnight[] => {
  const gap = minutesBetween(day, next);
  const r = rotationOf(plan, day);
  const then = rotationOf(plan, next);
  const ready = readyTimes(r, dayAtHand(r));
  const used = dayAtHand(then).used;
  return r.pools.flatMap((p): Overnight[] => {
    const starts = then.units
      .filter((u) => u.pool === p.id)
      .flatMap((u) => u.stretches.map((s) => s.startMin));
    const wants = used.get(p.id) ?? 0;
    const late = ready.get(p.id) ?? [];
    if (starts.length === 0 || wants === 0 || late.length === 0) return [];
    const wantedMin = gap + Math.min(...starts);
    const atHand = p.packs ?? Math.max(wants, late.length);
    const full = Math.max(0, atHand - late.filter((m) => m > wantedMin + 1e-6).length);
    if (full >= wants) return [];
    const readyMin = Math.max(...late);
    return [
      {
        day: day.day,
        nextDay: next.day,
        pool: p.id,
        name: p.name,
        exchange: p.exchange,
        bays: r.bays.filter((b) => b.pools.has(p.id)).length,
        wantedMin,
        wants,
        full,
        readyMin: Number.isFinite(readyMin) ? readyMin : undefined,
      },
    ];
  });
};

const memo = new WeakMap<Plan, readonly Overnight[]>();

/**
 * Every day is reckoned with full packs. Where two shooting days follow each other, this tells which packs are not full by
 * then: fewer than the next day uses, though every bay charges without a pause, the shortest charges first.
 */
export const overnight = (plan: Plan): readonly Overnight[] => {
  const known = memo.get(plan);
  if (known) return known;
  const days = shootingDays(plan).filter((d) => d.segments.length > 0);
  const found = days.slice(1).flatMap((next, i) => {
    const day = days[i];
    return day ? after(plan, day, next) : [];
  });
  memo.set(plan, found);
  return found;
};
