import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AssignOptions,
  assignAddresses,
  controlFindings,
  DEFAULT_ASSIGN,
  universeUse,
} from '../../src/engines/control/index.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { footprintOf, patchedMode } from '../../src/plan/footprint.ts';
import { type Plan, recordOf, recordsOf } from '../../src/plan/plan.ts';
import { patchRig, type RigUnit } from '../support/patch-rig.ts';

const slots = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 1, max: 60 }) },
  { weight: 2, arbitrary: fc.integer({ min: 60, max: 512 }) },
);
const pixelUnit = fc
  .record({
    parts: fc.integer({ min: 2, max: 220 }),
    partSlots: fc.integer({ min: 1, max: 8 }),
    own: fc.nat(4),
  })
  .map(({ parts, partSlots, own }): RigUnit => ({ slots: own + parts * partSlots, parts, partSlots }));
const unit = fc.oneof(
  { weight: 3, arbitrary: slots.map((n): RigUnit => ({ slots: n })) },
  { weight: 1, arbitrary: pixelUnit },
);
const options = fc.record({
  order: fc.constantFrom<AssignOptions['order']>('unit', 'channel', 'left-right', 'top-bottom', 'path'),
  start: fc.record({ universe: fc.integer({ min: 1, max: 3 }), address: fc.integer({ min: 1, max: 512 }) }),
  step: fc.constantFrom(1, 1, 4, 10),
  gapSlots: fc.constantFrom(0, 0, 3),
  spareSlots: fc.constantFrom(0, 0, 51),
  keepPatched: fc.boolean(),
  together: fc.constantFrom<AssignOptions['together']>('nothing', 'group', 'kind'),
  ownUniverse: fc.constantFrom<AssignOptions['ownUniverse']>('nothing', 'nothing', 'group', 'link'),
  fewest: fc.boolean(),
  part: fc.boolean(),
});

/** Random rigs: some units are locked where they are, some patched, some in groups. */
const rig = fc
  .array(fc.record({ unit, locked: fc.boolean(), group: fc.nat(3), x: fc.nat(9000), y: fc.nat(9000) }), {
    minLength: 1,
    maxLength: 30,
  })
  .map((list) => {
    const { b, fixtures } = patchRig(
      list.map(({ unit: u, group, x, y }) => ({
        ...u,
        more: { ...(group > 0 ? { groupId: `g${group}` } : {}), at: { xMm: x, yMm: y } },
      })),
      2,
    );
    // Every third one that fits lies somewhere from the start, clear of the others.
    let at = 1;
    for (const [i, f] of fixtures.entries()) {
      const n = list[i]?.unit.slots ?? 1;
      if (i % 3 !== 0 || at + n - 1 > 512) continue;
      b.put({
        ...f,
        locked: list[i]?.locked ?? false,
        patch: { modeId: 'm', universeId: 'universe-2', address: at, paired: false },
      });
      at += n + (i % 7);
    }
    return b.plan();
  });

/** What must hold of any plan after an assignment, told by what the engine itself finds and by counting slots anew. */
const lawful = (plan: Plan, spare: number, moved: ReadonlySet<string>): void => {
  expect(controlFindings(plan)).toEqual([]);
  for (const u of universeUse(plan)) {
    const taken = new Set<number>();
    for (const r of u.rows) {
      expect(r.last).toBeLessThanOrEqual(moved.has(r.fixtureId) ? 512 - spare : 512);
      for (let s = r.address; s <= r.last; s++) {
        expect(taken.has(s)).toBe(false);
        taken.add(s);
      }
      const f = recordOf(plan, 'fixture', r.fixtureId);
      const mode = f && patchedMode(plan, f);
      if (mode && r.fromSlot > 1) expect(footprintOf(mode).cuts).toContain(r.fromSlot - 1);
    }
    expect(taken.size).toBe(u.usedSlots);
  }
};

describe('assigning addresses to random rigs', () => {
  it('assign-law: nothing overlaps or crosses an end, locked ones stay, and every slot is somewhere', () => {
    fc.assert(
      fc.property(rig, options, (plan, o) => {
        const r = assignAddresses(plan, o);
        if (!r.ok) throw new Error(r.error.what);
        const after = applyChanges(plan, r.value.changes);
        const moved = new Set(r.value.rows.map((row) => row.fixtureId));
        lawful(after, o.spareSlots, moved);
        for (const f of recordsOf(plan, 'fixture')) {
          if (!moved.has(f.id)) expect(recordOf(after, 'fixture', f.id)).toBe(f);
          if (f.locked) expect(moved.has(f.id)).toBe(false);
        }
        // Whoever is left out is told of or was to be left.
        const told = r.value.notices.filter((n) => n.includes('fit no universe')).length;
        expect(r.value.rows.length + r.value.kept.length + told).toBe(recordsOf(plan, 'fixture').length);
        for (const row of r.value.rows) {
          const own = universeUse(after).flatMap((u) => u.rows.filter((x) => x.fixtureId === row.fixtureId));
          expect(own.reduce((s, x) => s + x.slots, 0)).toBe(row.slots);
          expect(new Set(own.map((x) => x.universeId)).size).toBe(own.length);
          for (const p of row.after) expect((p.address - 1) % o.step).toBe(0);
        }
        expect(r.value.universes.length).toBeGreaterThanOrEqual(r.value.lowerBound);
        expect(assignAddresses(plan, o)).toEqual(r);
      }),
      { numRuns: 1000 },
    );
  });

  it('assign-order: addresses rise with the order', () => {
    fc.assert(
      fc.property(fc.array(slots, { minLength: 2, maxLength: 40 }), (sizes) => {
        const r = assignAddresses(patchRig(sizes).plan, DEFAULT_ASSIGN);
        if (!r.ok) throw new Error(r.error.what);
        const at = r.value.rows.map((x) => (x.after[0]?.universe ?? 0) * 1000 + (x.after[0]?.address ?? 0));
        expect(at).toEqual([...at].sort((a, b) => a - b));
      }),
    );
  });

  it('assign-together: a group that fits a universe lies in one, side by side', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 80 }), fc.nat(4)), { maxLength: 30 }),
        fc.boolean(),
        (list, fewest) => {
          const { plan } = patchRig(
            list.map(([n, g]) => ({ slots: n, more: g > 0 ? { groupId: `g${g}` } : {} })),
          );
          const r = assignAddresses(plan, { ...DEFAULT_ASSIGN, together: 'group', fewest });
          if (!r.ok) throw new Error(r.error.what);
          for (const g of [1, 2, 3, 4]) {
            const rows = r.value.rows.filter(
              (x) => recordOf(plan, 'fixture', x.fixtureId)?.groupId === `g${g}`,
            );
            const total = rows.reduce((s, x) => s + x.slots, 0);
            if (rows.length === 0 || total > 512) continue;
            expect(new Set(rows.map((x) => x.after[0]?.universe)).size).toBe(1);
            const from = Math.min(...rows.map((x) => x.after[0]?.address ?? 0));
            const to = Math.max(...rows.map((x) => (x.after[0]?.address ?? 0) + x.slots - 1));
            expect(to - from + 1).toBe(total);
          }
        },
      ),
    );
  });
});

/** First-fit decreasing, written down again as plainly as can be. */
const firstFitDecreasing = (sizes: readonly number[]): number => {
  const free: number[] = [];
  for (const n of [...sizes].sort((a, b) => b - a)) {
    const i = free.findIndex((f) => f >= n);
    if (i < 0) free.push(512 - n);
    else free[i] = (free[i] ?? 0) - n;
  }
  return free.length;
};

it('assign-fewest: never more universes than first-fit decreasing', () => {
  fc.assert(
    fc.property(fc.array(slots, { minLength: 1, maxLength: 120 }), (sizes) => {
      const r = assignAddresses(patchRig(sizes).plan, { ...DEFAULT_ASSIGN, fewest: true });
      if (!r.ok) throw new Error(r.error.what);
      expect(r.value.universes.length).toBeLessThanOrEqual(firstFitDecreasing(sizes));
      expect(r.value.universes.length).toBeGreaterThanOrEqual(r.value.lowerBound);
    }),
  );
});
