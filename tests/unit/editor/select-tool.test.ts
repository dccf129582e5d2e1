import { describe, expect, test } from 'vitest';
import { ringFor } from '../../../src/editor/handles.ts';
import { OPTIONS } from '../../../src/editor/options.ts';
import { NO_OVERLAY } from '../../../src/editor/overlay.ts';
import { placeThere } from '../../../src/editor/placing.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { addMark, addUnit, click, drag, floorRig, pointer } from '../../support/floor.ts';

const rigWithUnits = () => {
  const rig = floorRig();
  const a = addUnit(rig, 'led-panel-60x60', 1533, 1511);
  const b = addUnit(rig, 'led-panel-60x60', 4111, 3233);
  const tool = createSelectTool();
  const at = (id: string) => recordOf(rig.session.getState().plan, 'fixture', id)?.at;
  return { rig, a, b, tool, at, state: () => rig.session.getState() };
};

describe('select tool', () => {
  test('a click selects what is there, a click on the empty floor selects nothing', () => {
    const { rig, a, tool, state } = rigWithUnits();
    click(rig, tool, 1533, 1511);
    expect([...state().selection]).toEqual([a]);
    click(rig, tool, 3000, 2400);
    expect(state().selection.size).toBe(0);
    expect(state().undoStack).toHaveLength(0);
  });

  test('shift adds to the selection and takes off it', () => {
    const { rig, a, b, tool, state } = rigWithUnits();
    click(rig, tool, 1533, 1511);
    click(rig, tool, 4111, 3233, { shift: true });
    expect(new Set(state().selection)).toEqual(new Set([a, b]));
    click(rig, tool, 1533, 1511, { shift: true });
    expect([...state().selection]).toEqual([b]);
  });

  test('a drag is one undo step however many moves it took', () => {
    const { rig, a, tool, at, state } = rigWithUnits();
    const before = serialisePlan(state().plan);
    drag(
      rig,
      tool,
      [
        [1533, 1511],
        [1700, 1600],
        [2100, 2300],
        [2233, 2011],
      ],
      { alt: true },
    );
    expect(at(a)).toMatchObject({ xMm: 2233, yMm: 2011 });
    expect(state().undoStack).toHaveLength(1);
    expect(state().undoStack[0]?.label).toBe('Move unit 1');
    expect(state().preview).toBeUndefined();
    rig.session.undo();
    expect(serialisePlan(state().plan)).toBe(before);
  });

  test('while dragging the plan stays as it was and the preview shows the move', () => {
    const { rig, a, tool, at, state } = rigWithUnits();
    const { ctx, session } = rig;
    tool.onPointerDown(ctx, pointer(session, 1533, 1511));
    tool.onPointerMove(ctx, pointer(session, 2533, 1511, { alt: true }));
    expect(at(a)).toMatchObject({ xMm: 1533, yMm: 1511 });
    expect(state().preview?.updated.map((u) => u.to.id)).toEqual([a]);
    expect(state().undoStack).toHaveLength(0);
  });

  test('Escape bails out of a drag and leaves no trace', () => {
    const { rig, tool, state } = rigWithUnits();
    const { ctx, session } = rig;
    const before = state();
    tool.onPointerDown(ctx, pointer(session, 1533, 1511));
    tool.onPointerMove(ctx, pointer(session, 2533, 2511));
    expect(state().preview).toBeDefined();
    expect(tool.onKey(ctx, 'Escape')).toBe(true);
    tool.onPointerUp(ctx, pointer(session, 2533, 2511));
    expect(state().plan).toBe(before.plan);
    expect(state().selection).toBe(before.selection);
    expect(state().preview).toBeUndefined();
    expect(state().overlay).toBe(NO_OVERLAY);
    expect(state().undoStack).toHaveLength(0);
    expect(tool.onKey(ctx, 'Escape')).toBe(false);
  });

  test('a tremble shorter than the drag distance is a click', () => {
    const { rig, tool, a, at, state } = rigWithUnits();
    const mm = (OPTIONS.dragPx - 1) / state().camera.pxPerMm;
    drag(rig, tool, [
      [1533, 1511],
      [1533 + mm, 1511],
    ]);
    expect(at(a)).toMatchObject({ xMm: 1533, yMm: 1511 });
    expect([...state().selection]).toEqual([a]);
  });

  test('a drag that ends where it began is no edit', () => {
    const { rig, tool, state } = rigWithUnits();
    drag(
      rig,
      tool,
      [
        [1533, 1511],
        [2533, 1511],
        [1533, 1511],
      ],
      { alt: true },
    );
    expect(state().undoStack).toHaveLength(0);
    expect(state().preview).toBeUndefined();
  });

  test('a marquee selects what it encloses, not what it only touches', () => {
    const { rig, a, tool, state } = rigWithUnits();
    drag(rig, tool, [
      [700, 700],
      [2600, 2500],
    ]);
    expect([...state().selection]).toEqual([a]);
    drag(rig, tool, [
      [700, 700],
      [1533, 2500],
    ]);
    expect(state().selection.size).toBe(0);
    drag(rig, tool, [
      [-900, -900],
      [7000, 6000],
    ]);
    expect(state().selection.size).toBe(2);
    expect(state().overlay.marquee).toBeUndefined();
  });

  test('furniture is dragged only once it is selected', () => {
    const { rig, tool, state } = rigWithUnits();
    const desk = placeThere(
      state().plan,
      rig.book,
      { slug: 'table-desk', floorId: rig.floorId, at: { xMm: 3000, yMm: 4500 }, facingDeg: 0 },
      rig.session.newId,
    );
    if (!desk.ok) throw new Error(desk.error.what);
    rig.add(desk.value.changes);
    const lengthMm = rig.book.find('table-desk')?.sizeMm.lengthMm ?? 0;
    const edge = 3000 + lengthMm / 2;
    const x = () => recordOf(state().plan, 'setPiece', desk.value.id)?.at.xMm;
    drag(
      rig,
      tool,
      [
        [edge, 4500],
        [edge + 500, 4500],
      ],
      { alt: true },
    );
    expect(x()).toBe(3000);
    click(rig, tool, edge, 4500);
    drag(
      rig,
      tool,
      [
        [edge, 4500],
        [edge + 500, 4500],
      ],
      { alt: true },
    );
    expect(x()).toBe(3500);
  });

  test('the turn handle turns in steps and the aim handle finds the mark', () => {
    const { rig, a, tool, state } = rigWithUnits();
    const mark = addMark(rig, 5000, 1000);
    click(rig, tool, 1533, 1511);
    const handle = (what: string) => {
      const h = ringFor(state().plan, state())?.handles.find((x) => x.what === what);
      if (!h) throw new Error(`no ${what} handle`);
      return [h.at.xMm, h.at.yMm] as const;
    };
    const turn = handle('turn');
    drag(rig, tool, [turn, [1533, 500], [1533, 400]]);
    const aim = () => recordOf(state().plan, 'fixture', a)?.aim;
    expect(aim()).toMatchObject({ at: 'facing', facingDeg: 90 });
    drag(rig, tool, [handle('aim'), [4000, 1100], [5010, 1010]]);
    expect(aim()).toEqual({ at: 'mark', markId: mark });
    expect(state().undoStack.map((t) => t.label)).toEqual(['Turn unit 1', 'Aim unit 1']);
  });

  test('a read-only plan can be selected in but not dragged', () => {
    const { rig, a, tool, at, state } = rigWithUnits();
    rig.session.set({ readOnly: true });
    click(rig, tool, 1533, 1511);
    expect([...state().selection]).toEqual([a]);
    drag(rig, tool, [
      [1533, 1511],
      [2533, 1511],
    ]);
    expect(at(a)).toMatchObject({ xMm: 1533 });
  });
});
