import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawContext } from '../../../src/drawing/context.ts';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { partColumns } from '../../../src/drawing/parts.ts';
import type { Result } from '../../../src/kernel/result.ts';
import type { ChangeSet } from '../../../src/plan/change-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { setLevelCells } from '../../../src/plan/edits/day.ts';
import { setLevels } from '../../../src/plan/edits/document.ts';
import {
  clearParts,
  copyParts,
  fillParts,
  gradientParts,
  mixColors,
  partsNow,
  setParts,
} from '../../../src/plan/edits/parts.ts';
import { partCount, partGrid } from '../../../src/plan/part-levels.ts';
import { levelId, levelOf, type Plan, recordOf, wholeLevelPct } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { explain } from '../../../src/report/explain.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

/** A row of four parts and a field of sixteen, of 100 W each, on one circuit, and a setup. */
const rig = () => {
  const b = new PlanBuilder();
  b.sourceKind('gen', {
    ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
    outlets: [{ id: 'o', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '1' }],
    ratedKw: 10,
  });
  b.cableKind('w');
  const kind = (slug: string, style: string, parts: number) =>
    b.fixtureKind(
      slug,
      { wattsW: 100, standbyW: 20 },
      { style, modes: [{ id: 'm', name: 'm', slots: parts * 3, parts }] },
    );
  kind('row', 'pixel-bar', 4);
  kind('field', 'mat', 16);
  kind('one', 'spot', 1);
  b.put({ id: 's', type: 'setup', order: 1, name: 'Night', scene: '' });
  const row = b.fixture('row', { id: 'row1', unit: '1' });
  const field = b.fixture('field', { id: 'field1', unit: '2' });
  const one = b.fixture('one', { id: 'one1', unit: '3' });
  return { b, row, field, one, plan: b.plan() };
};

const done = (plan: Plan, r: Result<ChangeSet>): Plan => {
  if (!r.ok) throw new Error(r.error.what);
  return applyChanges(plan, r.value);
};

describe('part levels', () => {
  it('a flat unit with a square number of parts is a field, a bar is a row', () => {
    const { plan, row, field } = rig();
    expect(partGrid(recordOf(plan, 'kind', 'field') as never, partCount(plan, field))).toMatchObject({
      rows: 4,
      columns: 4,
    });
    expect(partGrid(recordOf(plan, 'kind', 'row') as never, partCount(plan, row))).toMatchObject({
      rows: 1,
      columns: 4,
    });
  });

  it('the unit as a whole is at the mean of its parts', () => {
    const { plan } = rig();
    const after = done(
      plan,
      setParts(
        plan,
        's',
        'row1',
        [100, 50, 0, 30].map((levelPct) => ({ levelPct })),
      ),
    );
    expect(levelOf(after, 's', 'row1')).toEqual({ levelPct: 45, assumed: false });
    expect(recordOf(after, 'level', levelId('s', 'row1'))?.levelPct).toBe(45);
  });

  it('parts go before the level of the record where a file has both', () => {
    expect(wholeLevelPct({ levelPct: 100, parts: [{ levelPct: 0 }, { levelPct: 50 }] })).toBe(25);
    expect(wholeLevelPct({ levelPct: 70, parts: [] })).toBe(70);
  });

  it('a gradient runs evenly along a row, and mixes colours', () => {
    const { plan } = rig();
    const after = done(
      plan,
      gradientParts(plan, 's', 'row1', { levelPct: 0, color: '#000000' }, { levelPct: 90, color: '#ff0000' }),
    );
    expect(partsNow(after, 's', 'row1').map((p) => [p.levelPct, p.color])).toEqual([
      [0, '#000000'],
      [30, '#550000'],
      [60, '#aa0000'],
      [90, '#ff0000'],
    ]);
    expect(mixColors('#ffffff', '#000000', 0.5)).toBe('#808080');
  });

  it('over a field it runs across, down or from corner to corner', () => {
    const { plan } = rig();
    const levels = (way: 'across' | 'down' | 'corner') =>
      partsNow(
        done(plan, gradientParts(plan, 's', 'field1', { levelPct: 0 }, { levelPct: 60 }, way)),
        's',
        'field1',
      ).map((p) => p.levelPct);
    expect(levels('across').slice(0, 8)).toEqual([0, 20, 40, 60, 0, 20, 40, 60]);
    expect(levels('down').slice(0, 8)).toEqual([0, 0, 0, 0, 20, 20, 20, 20]);
    expect([levels('corner')[0], levels('corner')[5], levels('corner')[15]]).toEqual([0, 20, 60]);
  });

  it('a fill of some parts leaves the others, and a colour alone leaves levels', () => {
    const { plan } = rig();
    const some = done(plan, fillParts(plan, 's', 'row1', { levelPct: 20 }, new Set([1, 2])));
    expect(partsNow(some, 's', 'row1').map((p) => p.levelPct)).toEqual([100, 20, 20, 100]);
    const red = done(some, fillParts(some, 's', 'row1', { color: '#FF0000' }));
    expect(partsNow(red, 's', 'row1').map((p) => [p.levelPct, p.color])).toEqual([
      [100, '#ff0000'],
      [20, '#ff0000'],
      [20, '#ff0000'],
      [100, '#ff0000'],
    ]);
  });

  it('copies to a unit with another number of parts are spread evenly', () => {
    const { plan } = rig();
    const from = done(
      plan,
      setParts(
        plan,
        's',
        'row1',
        [0, 10, 20, 30].map((levelPct) => ({ levelPct })),
      ),
    );
    const to = done(from, copyParts(from, 's', 'row1', ['field1']));
    expect(partsNow(to, 's', 'field1').map((p) => p.levelPct)).toEqual([
      0, 0, 0, 0, 10, 10, 10, 10, 20, 20, 20, 20, 30, 30, 30, 30,
    ]);
    expect(copyParts(from, 's', 'row1', ['one1']).ok).toBe(false);
  });

  it('refuses what is no level, no colour, or not as many as there are parts', () => {
    const { plan } = rig();
    const four = [1, 2, 3, 4].map((levelPct) => ({ levelPct }));
    expect(setParts(plan, 's', 'row1', four.slice(1)).ok).toBe(false);
    expect(setParts(plan, 's', 'row1', [...four.slice(1), { levelPct: 101 }]).ok).toBe(false);
    expect(setParts(plan, 's', 'row1', [...four.slice(1), { levelPct: 1, color: 'red' }]).ok).toBe(false);
    expect(setParts(plan, 's', 'one1', [{ levelPct: 1 }]).ok).toBe(false);
    expect(setParts(plan, 'gone', 'row1', four).ok).toBe(false);
  });

  it('a level typed for the whole unit is that of every part, colours kept; cleared parts leave their mean', () => {
    const { plan } = rig();
    const from = done(
      plan,
      gradientParts(plan, 's', 'row1', { levelPct: 0, color: '#112233' }, { levelPct: 90 }),
    );
    for (const set of [
      applyChanges(from, setLevels(from, 's', ['row1'], 40)),
      applyChanges(from, setLevelCells(from, [{ setupId: 's', fixtureId: 'row1', levelPct: 40 }])),
    ]) {
      expect(partsNow(set, 's', 'row1').map((p) => p.levelPct)).toEqual([40, 40, 40, 40]);
      expect(partsNow(set, 's', 'row1')[0]?.color).toBe('#112233');
    }
    const cleared = applyChanges(from, clearParts(from, 's', ['row1']));
    expect(recordOf(cleared, 'level', levelId('s', 'row1'))).toMatchObject({ levelPct: 45 });
    expect(recordOf(cleared, 'level', levelId('s', 'row1'))?.parts).toBeUndefined();
  });

  it('power-load: the watts of a unit follow the mean of its parts, and the working says so', () => {
    const { b } = rig();
    b.source('gen', { id: 'g', label: 'G1', voltsV: 120 });
    b.cable('w', ['g', 'o'], ['row1', 'in']);
    const start = b.plan();
    const plan = done(
      start,
      setParts(
        start,
        's',
        'row1',
        [100, 50, 0, 50].map((levelPct) => ({ levelPct })),
      ),
    );
    const a = assess(plan, { revision: 0 });
    const e = a.entities.find((x) => x.recordId === 'row1' && x.what === 'load');
    // 20 W + 80 W × 50 %.
    expect(e && a.figures.get(e.key, 'loadW', 0)).toBeCloseTo(60, 9);
    const working = explain(plan, `loadW@${e?.key}@s`);
    expect(JSON.stringify(working)).toContain('level of its 4 parts');
  });

  it('power-level: a part outside 0 to 100 % is not computed', () => {
    const { b } = rig();
    b.source('gen', { id: 'g', label: 'G1', voltsV: 120 });
    b.cable('w', ['g', 'o'], ['row1', 'in']);
    b.put({
      id: levelId('s', 'row1'),
      type: 'level',
      setupId: 's',
      fixtureId: 'row1',
      levelPct: 50,
      parts: [{ levelPct: 150 }, { levelPct: 1 }, { levelPct: 1 }, { levelPct: 1 }],
    });
    expect(assess(b.plan(), { revision: 0 }).findings.map((f) => f.rule)).toContain('power-level');
  });

  it('the drawing shows a column of parts in its colour, and none without parts', () => {
    const { plan } = rig();
    const after = done(
      plan,
      setParts(
        plan,
        's',
        'field1',
        Array.from({ length: 16 }, (_, i) => ({ levelPct: i === 5 ? 80 : 0, color: '#00ff00' })),
      ),
    );
    const f = recordOf(after, 'fixture', 'field1');
    const ctx = drawContext(after, { floorId: 'floor', setupId: 's', nominalScale: 50 });
    expect(f && partColumns(ctx, f)?.map((c) => c.levelPct)).toEqual([0, 20, 0, 0]);
    const drawn = drawFloor(after, {
      floorId: 'floor',
      setupId: 's',
      nominalScale: 50,
      options: { labels: false },
    });
    const fills = (id: string) =>
      drawn.items
        .find((i) => i.key === `fixture:${id}`)
        ?.primitives.filter((p) => p.kind === 'path' && p.fill?.color !== undefined).length;
    expect([fills('field1'), fills('row1')]).toEqual([1, 0]);
  });

  it('whatever the parts, the mean is within them, and setting them back is the same', () => {
    const { plan } = rig();
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 4, maxLength: 4 }), (levels) => {
        const after = done(
          plan,
          setParts(
            plan,
            's',
            'row1',
            levels.map((levelPct) => ({ levelPct })),
          ),
        );
        const { levelPct } = levelOf(after, 's', 'row1');
        expect(levelPct).toBeGreaterThanOrEqual(Math.min(...levels));
        expect(levelPct).toBeLessThanOrEqual(Math.max(...levels));
        expect(partsNow(after, 's', 'row1').map((p) => p.levelPct)).toEqual(levels);
      }),
    );
  });
});
