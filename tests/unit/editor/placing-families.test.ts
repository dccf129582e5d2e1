import { describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { symbolIds } from '../../../src/drawing/symbols.ts';
import { bookOf } from '../../../src/editor/book.ts';
import { placeThere } from '../../../src/editor/placing.ts';
import { gearBook } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { removeRecords } from '../../../src/plan/edits/arrange.ts';
import { duplicateRecords } from '../../../src/plan/edits/duplicate.ts';
import type { KindFamily } from '../../../src/plan/kinds/kinds.ts';
import { smallPlan } from '../../support/small-plan.ts';

/** Families that are not put on the floor by themselves: they come with, on or along something. */
const NOT_ALONE: readonly KindFamily[] = ['cable', 'dataCable', 'ballast'];
/** Kinds that one thing stands for on the drawing, by the circle of its legs. */
const BY_CIRCLE: readonly KindFamily[] = ['stand'];
/** Drawn as lines of their symbol, lighter than gear. */
const BY_LINES: readonly KindFamily[] = ['furniture', 'vehicle'];

const counter = () => {
  let n = 0;
  return (prefix: string): string => `${prefix}-${++n}`;
};

describe.each(['north-america', 'europe'] as const)('every kind of the %s book', (practice) => {
  const kinds = gearBook(practice);
  const book = bookOf(kinds);
  const plan = smallPlan('Placing', 0);

  test.each([...new Set(kinds.map((k) => k.family))])('%s', (family) => {
    for (const kind of kinds.filter((k) => k.family === family)) {
      const newId = counter();
      const where = { slug: kind.slug, floorId: 'floor-1', at: { xMm: 3000, yMm: 2000 }, facingDeg: 90 };
      const placed = placeThere(plan, book, where, newId);
      if (NOT_ALONE.includes(family)) {
        expect(placed.ok, kind.slug).toBe(false);
        if (!placed.ok) expect(placed.error.todo, kind.slug).toBeTruthy();
        continue;
      }
      if (!placed.ok) throw new Error(`${kind.slug}: ${placed.error.what}`);
      const { id } = placed.value;
      const after = applyChanges(plan, placed.value.changes);
      expect(referenceProblems(after), kind.slug).toEqual([]);
      const drawn = drawFloor(after, { floorId: 'floor-1', setupId: undefined, nominalScale: 50 })
        .items.filter((i) => i.recordId === id && i.layer !== 'labels')
        .flatMap((i) => i.primitives);
      const symbols = drawn.flatMap((p) => (p.kind === 'symbol' ? [p.symbolId] : []));
      if (BY_LINES.includes(family)) expect(drawn.length, kind.slug).toBeGreaterThan(0);
      else if (!BY_CIRCLE.includes(family)) expect(symbols, kind.slug).toContain(kind.symbol);
      if (!BY_CIRCLE.includes(family)) expect(symbolIds, kind.slug).toContain(kind.symbol);

      const copies = duplicateRecords(after, new Set([id]), { xMm: 500, yMm: 0 }, newId);
      const twice = applyChanges(after, copies.changes);
      expect(referenceProblems(twice), kind.slug).toEqual([]);
      expect(twice.records.size, kind.slug).toBeGreaterThan(after.records.size);

      const gone = applyChanges(after, removeRecords(after, new Set([id])));
      expect(gone.records.has(id), kind.slug).toBe(false);
      expect(referenceProblems(gone), kind.slug).toEqual([]);
    }
  });
});
