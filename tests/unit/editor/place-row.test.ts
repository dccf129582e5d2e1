import { describe, expect, test } from 'vitest';
import { command } from '../../../src/editor/commands/index.ts';
import { notePointer } from '../../../src/editor/pointer-spot.ts';
import { createPlaceTool } from '../../../src/editor/tools/place.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { floorRig, pointer } from '../../support/floor.ts';

const rigPlacing = () => {
  const rig = floorRig();
  rig.session.set({ placing: { kindSlug: 'led-panel-60x60' }, tool: 'place' });
  const tool = createPlaceTool();
  const units = () => recordsOf(rig.session.getState().plan, 'fixture');
  return { rig, tool, units };
};

describe('placing several along a line', () => {
  test('with shift held a drag is a row, evenly spaced from the press to where it is let go', () => {
    const { rig, tool, units } = rigPlacing();
    const { ctx, session } = rig;
    const before = serialisePlan(session.getState().plan);
    const held = { shift: true, alt: true };
    tool.onPointerDown(ctx, pointer(session, 1000, 1000, held));
    tool.onPointerMove(ctx, pointer(session, 2000, 1500, held));
    expect(tool.onKey(ctx, '5')).toBe(true);
    tool.onPointerMove(ctx, pointer(session, 5000, 3000, held));
    expect(session.getState().overlay.measures).toHaveLength(4);
    tool.onPointerUp(ctx, pointer(session, 5000, 3000, held));
    const spots = units()
      .map((f) => [Math.round(f.at.xMm), Math.round(f.at.yMm)])
      .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
    expect(spots).toEqual([
      [1000, 1000],
      [2000, 1500],
      [3000, 2000],
      [4000, 2500],
      [5000, 3000],
    ]);
    expect(new Set(units().map((f) => f.unit)).size).toBe(5);
    expect(session.getState().selection.size).toBe(5);
    session.undo();
    expect(serialisePlan(session.getState().plan)).toBe(before);
  });

  test('Escape leaves nothing behind', () => {
    const { rig, tool, units } = rigPlacing();
    const { ctx, session } = rig;
    tool.onPointerDown(ctx, pointer(session, 1000, 1000, { shift: true }));
    tool.onPointerMove(ctx, pointer(session, 4000, 1000, { shift: true }));
    tool.onKey(ctx, 'Escape');
    tool.onPointerUp(ctx, pointer(session, 4000, 1000, { shift: true }));
    expect(units()).toEqual([]);
    expect(session.getState().preview).toBeUndefined();
  });
});

describe('placing from the keyboard', () => {
  test('goes under the pointer while it is over the floor, else to the middle of the view', () => {
    const { rig } = rigPlacing();
    const marks = () => recordsOf(rig.session.getState().plan, 'mark').map((m) => m.at);
    notePointer(rig.session, { xMm: 1234.4, yMm: 2345.6 });
    command('add-talent').perform(rig);
    expect(marks()).toEqual([{ xMm: 1234, yMm: 2346 }]);
    notePointer(rig.session, undefined);
    command('add-talent').perform(rig);
    expect(marks()).toContainEqual({ xMm: 3000, yMm: 2500 });
  });
});
