import { limitOf } from '../../derive/limits.ts';
import { compareIds } from '../../kernel/ids.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import { checkPatch } from './check.ts';
import { packetUs } from './timing.ts';
import type { Gap, PatchRow, UniverseUse } from './types.ts';

const memo = new WeakMap<Plan, readonly UniverseUse[]>();

/** Free stretches between rows that are in address order. */
export const gapsBetween = (
  rows: readonly { readonly address: number; readonly last: number }[],
  size: number,
) => {
  const gaps: Gap[] = [];
  let next = 1;
  for (const r of rows) {
    if (r.address > next) gaps.push({ from: next, to: r.address - 1 });
    next = Math.max(next, r.last + 1);
  }
  if (next <= size) gaps.push({ from: next, to: size });
  return gaps;
};

const useOf = (u: { id: string; number: number }, all: readonly PatchRow[], size: number): UniverseUse => {
  const rows = all.filter((r) => r.slots > 0);
  const gaps = gapsBetween(rows, size);
  const freeSlots = gaps.reduce((s, g) => s + g.to - g.from + 1, 0);
  const highestSlot = rows.reduce((h, r) => Math.max(h, r.last), 0);
  const time = packetUs(highestSlot);
  return {
    universeId: u.id,
    number: u.number,
    rows: all,
    usedSlots: size - freeSlots,
    freeSlots,
    highestSlot,
    gaps,
    fixtures: new Set(all.map((r) => r.fixtureId)).size,
    packetUs: time,
    refreshHz: 1e6 / time,
  };
};

/** Every universe of the plan with its fixtures and the slots they take, in the order of its number. */
export const universeUse = (plan: Plan): readonly UniverseUse[] => {
  const known = memo.get(plan);
  if (known) return known;
  const size = limitOf(plan, 'universe-slots').value;
  const { byUniverse } = checkPatch(plan);
  const done = [...recordsOf(plan, 'universe')]
    .sort((a, b) => a.number - b.number || compareIds(a.id, b.id))
    .map((u) => useOf(u, byUniverse.get(u.id) ?? [], size));
  memo.set(plan, done);
  return done;
};
