import { describe, expect, test } from 'vitest';
import { placeThere } from '../../../src/editor/placing.ts';
import { createAimTool } from '../../../src/editor/tools/aim.ts';
import { createCableTool } from '../../../src/editor/tools/cable.ts';
import { needKind } from '../../../src/gear/index.ts';
import { mates } from '../../../src/plan/connectors.ts';
import { kindOf, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { outletsOf } from '../../../src/plan/ports.ts';
import { gearLines } from '../../../src/report/gear-lines.ts';
import { addBox, addMark, addUnit, click, drag, floorRig, pointer } from '../../support/floor.ts';

const quad = needKind('north-america', 'quad-box-20', 'box');
const lunch = needKind('north-america', 'box-100-pin-5x20', 'box');

const setup = () => {
  const rig = floorRig();
  const unit = addUnit(rig, 'led-panel-60x60', 1500, 1500);
  const box = addBox(rig, lunch, 4500, 3500);
  const tool = createCableTool();
  const state = () => rig.session.getState();
  const cables = () => recordsOf(state().plan, 'cable');
  return { rig, unit, box, tool, state, cables };
};

describe('cable tool', () => {
  test.each(['unit first', 'box first'])('runs a fitting cable, %s', (order) => {
    const { rig, unit, box, tool, state, cables } = setup();
    const ends =
      order === 'unit first'
        ? [
            [1500, 1500],
            [4500, 3500],
          ]
        : [
            [4500, 3500],
            [1500, 1500],
          ];
    for (const [x, y] of ends) click(rig, tool, x ?? 0, y ?? 0);
    const [cable] = cables();
    expect(cable?.from.recordId).toBe(box);
    expect(cable?.to.recordId).toBe(unit);
    const kind = cable && kindOf(state().plan, cable.kindId, 'cable');
    const port = outletsOf(state().plan, box).find((o) => o.id === cable?.from.portId);
    expect(mates(port?.connector ?? '', kind?.plug ?? '')).toBe(true);
    // The box's ways are 20 A: a cord for less is not what the tool takes when the book has a heavier one.
    expect(kind?.ampacityA).toBeGreaterThanOrEqual(20);
    expect(state().undoStack).toHaveLength(1);
    expect(state().message).toContain('K1');
    expect(state().overlay.rubber).toBeUndefined();
  });

  test('puts an adapter in an outlet that no cable leads from to the unit, in one step and told in words', () => {
    const rig = floorRig();
    const box = addBox(rig, needKind('north-america', 'box-100-6x20', 'box'), 4500, 3500);
    const unit = addUnit(rig, 'tungsten-fresnel-2kw', 1500, 1500);
    const tool = createCableTool();
    const undo = rig.session.getState().undoStack.length;
    click(rig, tool, 1500, 1500);
    click(rig, tool, 4500, 3500);
    const { plan, message, undoStack } = rig.session.getState();
    const [cable, ...others] = recordsOf(plan, 'cable');
    expect(others).toEqual([]);
    expect(cable?.to.recordId).toBe(unit);
    const adapter = cable && recordOf(plan, 'box', cable.from.recordId);
    expect(adapter && kindOf(plan, adapter.kindId, 'adapter')?.what).toBe('adapter');
    expect(adapter?.plugsInto?.recordId).toBe(box);
    const kind = cable && kindOf(plan, cable.kindId, 'cable');
    expect(kind?.plug).toBe(kind?.socket);
    expect(undoStack).toHaveLength(undo + 1);
    expect(message).toMatch(/Adapter, 20 A household to .*stage pin, with Stage pin/);
    const counted = gearLines(plan, String).filter((l) => l.kindId === adapter?.kindId);
    expect(counted.map((l) => l.count)).toEqual([1]);
    // A cable in its place needs no adapter, so that goes too.
    const pins = addBox(rig, needKind('north-america', 'box-100-6x20-pin', 'box'), 4500, 1500);
    click(rig, tool, 1500, 1500);
    click(rig, tool, 4500, 1500);
    const after = rig.session.getState().plan;
    expect(recordsOf(after, 'cable').map((c) => c.from.recordId)).toEqual([pins]);
    expect(new Set(recordsOf(after, 'box').map((x) => x.id))).toEqual(new Set([box, pins]));
  });

  test('a second unit takes a way of its own before the second socket of a way in use', () => {
    const rig = floorRig();
    const box = addBox(rig, needKind('north-america', 'box-100-6x20', 'box'), 4500, 3500);
    addUnit(rig, 'led-panel-60x60', 1500, 1500);
    addUnit(rig, 'led-panel-60x60', 1500, 3500);
    const ways = new Map(outletsOf(rig.session.getState().plan, box).map((o) => [o.id, o.wayId]));
    expect(new Set(ways.values()).size).toBeLessThan(ways.size);
    for (const y of [1500, 3500]) {
      const tool = createCableTool();
      click(rig, tool, 1500, y);
      click(rig, tool, 4500, 3500);
    }
    const used = recordsOf(rig.session.getState().plan, 'cable').map((c) => ways.get(c.from.portId));
    expect(used).toHaveLength(2);
    expect(new Set(used).size).toBe(2);
  });

  test('dragging from one to the other does the same', () => {
    const { rig, tool, cables } = setup();
    drag(rig, tool, [
      [1500, 1500],
      [3000, 2500],
      [4500, 3500],
    ]);
    expect(cables()).toHaveLength(1);
  });

  test('each unit gets a free outlet, and a full box is refused in words', () => {
    const { rig, unit, tool, state, cables } = setup();
    const small = addBox(rig, quad, 3000, 800);
    const count = outletsOf(state().plan, small).length;
    const units = [unit];
    for (let i = 0; i < count; i++) units.push(addUnit(rig, 'led-spot-60w', 700 + i * 900, 4300));
    for (const id of units) {
      const at = recordOf(state().plan, 'fixture', id)?.at;
      click(rig, tool, at?.xMm ?? 0, at?.yMm ?? 0);
      click(rig, tool, 3000, 800);
    }
    expect(cables()).toHaveLength(count);
    expect(new Set(cables().map((c) => c.from.portId)).size).toBe(count);
    expect(state().message).toContain('taken');
  });

  test('an inlet that had a feed changes over to the new one', () => {
    const { rig, tool, cables } = setup();
    const other = addBox(rig, lunch, 4500, 1000);
    for (const y of [3500, 1000]) {
      click(rig, tool, 1500, 1500);
      click(rig, tool, 4500, y);
    }
    expect(cables().map((c) => c.from.recordId)).toEqual([other]);
  });

  test('refuses a ring in words', () => {
    const { rig, tool, state, cables } = setup();
    addBox(rig, quad, 3000, 800);
    addBox(rig, quad, 5000, 800);
    click(rig, tool, 3000, 800);
    click(rig, tool, 5000, 800);
    expect(cables()).toHaveLength(1);
    click(rig, tool, 5000, 800);
    click(rig, tool, 3000, 800);
    expect(cables()).toHaveLength(1);
    expect(state().message).toMatch(/ring/i);
  });

  test('refuses connectors that do not mate and names both', () => {
    const { rig, tool, state, cables } = setup();
    addUnit(rig, 'tungsten-fresnel-10kw', 1500, 3500);
    addBox(rig, quad, 3000, 800);
    click(rig, tool, 1500, 3500);
    click(rig, tool, 3000, 800);
    expect(cables()).toHaveLength(0);
    expect(state().message).toMatch(
      /No cable of the gear book leads, even with an adapter, from Box K\d \(.+\) to unit 2 \(.+\)/,
    );
    expect(state().undoStack).toHaveLength(0);
  });

  test('a discharge head is fed through its ballast, and without one there is nothing to plug', () => {
    const { rig, tool, state, cables } = setup();
    const placed = placeThere(
      state().plan,
      rig.book,
      { slug: 'discharge-par-1200w', floorId: rig.floorId, at: { xMm: 1500, yMm: 3500 }, facingDeg: 0 },
      rig.session.newId,
    );
    if (!placed.ok) throw new Error(placed.error.what);
    rig.add(placed.value.changes);
    click(rig, tool, 1500, 3500);
    click(rig, tool, 4500, 3500);
    const [ballast] = recordsOf(state().plan, 'ballast');
    expect(cables().map((c) => c.to.recordId)).toEqual([ballast?.id]);
    addUnit(rig, 'discharge-par-1200w', 3000, 800);
    click(rig, tool, 3000, 800);
    expect(state().message).toContain('Nothing to plug there');
  });

  test('two units cannot feed each other', () => {
    const { rig, tool, state, cables } = setup();
    addUnit(rig, 'led-spot-60w', 1500, 3500);
    click(rig, tool, 1500, 1500);
    click(rig, tool, 1500, 3500);
    expect(cables()).toHaveLength(0);
    expect(state().message).toMatch(/gives power/);
  });

  test('Escape forgets the first end', () => {
    const { rig, tool, state, cables } = setup();
    click(rig, tool, 1500, 1500);
    tool.onPointerMove(rig.ctx, pointer(rig.session, 3000, 2500));
    expect(state().overlay.rubber?.what).toBe('cable');
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(true);
    expect(state().overlay.rubber).toBeUndefined();
    click(rig, tool, 4500, 3500);
    expect(cables()).toHaveLength(0);
  });
});

describe('aim tool', () => {
  test('a drag to a spot sets the facing, near a mark the unit follows the mark', () => {
    const { rig, unit, state } = setup();
    const mark = addMark(rig, 3000, 4500);
    const tool = createAimTool();
    const aim = () => recordOf(state().plan, 'fixture', unit)?.aim;
    drag(rig, tool, [
      [1500, 1500],
      [1500, 2500],
      [1500, 4000],
    ]);
    expect(aim()).toMatchObject({ at: 'facing', facingDeg: 90 });
    // What is selected aims where is pressed, without a drag from it.
    click(rig, tool, 4500, 1500);
    expect(aim()).toMatchObject({ at: 'facing', facingDeg: 0 });
    rig.session.undo();
    expect(aim()).toMatchObject({ at: 'facing', facingDeg: 90 });
    drag(rig, tool, [
      [1500, 1500],
      [2500, 2500],
      [3020, 4490],
    ]);
    expect(aim()).toEqual({ at: 'mark', markId: mark });
    expect(state().undoStack).toHaveLength(2);
    drag(
      rig,
      tool,
      [
        [1500, 1500],
        [2500, 2500],
        [3020, 4490],
      ],
      { alt: true },
    );
    expect(aim()).toMatchObject({ at: 'facing' });
  });
});
