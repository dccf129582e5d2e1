import { describe, expect, test } from 'vitest';
import { insideMeasures, roomFaces } from '../../../src/drawing/room-faces.ts';
import { clipText, pasteClip } from '../../../src/editor/clipboard.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { createMeasureTool } from '../../../src/editor/tools/measure.ts';
import { createOpeningTool } from '../../../src/editor/tools/opening.ts';
import { createOutletTool } from '../../../src/editor/tools/outlet.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import type { Tool } from '../../../src/editor/tools/tool.ts';
import { createWallTool } from '../../../src/editor/tools/wall.ts';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addCircuit, addSourceWithCircuit } from '../../../src/plan/edits/circuits.ts';
import { replaceChosen } from '../../../src/plan/edits/kinds.ts';
import { newPlan } from '../../../src/plan/edits/new-plan.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, click, countingIds, drag, type FloorRig, floorRig, pointer } from '../../support/floor.ts';

const emptyRig = (): FloorRig => {
  const newId = countingIds();
  return floorRig(
    newPlan({ title: 'E', production: 'E', practice: 'north-america', lengthUnits: 'imperial' }, newId),
  );
};

const type = (rig: FloorRig, tool: Tool, text: string, ...keys: readonly string[]): void => {
  for (const k of [...text, ...keys]) tool.onKey(rig.ctx, k);
};

const walls = (rig: FloorRig) => recordsOf(rig.session.getState().plan, 'wall');

describe('wall tool', () => {
  test('a room from typed lengths and arrow keys has those lengths on the inside', () => {
    const rig = emptyRig();
    const tool = createWallTool();
    type(rig, tool, '', 'Enter');
    for (const [arrow, text] of [
      ['ArrowRight', `24' 6"`],
      ['ArrowDown', `18'`],
      ['ArrowLeft', `24' 6"`],
      ['ArrowUp', `18'`],
    ] as const)
      type(rig, tool, '', arrow, ...text, 'Enter');
    const [room, ...more] = roomFaces(walls(rig));
    expect(more).toEqual([]);
    const size = room && insideMeasures(room);
    expect(size?.lengthMm).toBeCloseTo(24.5 * 304.8, 3);
    expect(size?.widthMm).toBeCloseTo(18 * 304.8, 3);
    expect(rig.session.getState().message).toMatch(/closed/);
    for (let i = 0; i < 4; i++) rig.session.undo();
    expect(walls(rig)).toHaveLength(0);
  });

  test('by pointer it goes square, free with shift, and closes on its start', () => {
    const rig = emptyRig();
    const tool = createWallTool();
    for (const [x, y] of [
      [0, 0],
      [4000, 130],
      [4000, 3000],
    ] as const) {
      tool.onPointerMove(rig.ctx, pointer(rig.session, x, y));
      click(rig, tool, x, y);
    }
    tool.onPointerMove(rig.ctx, pointer(rig.session, 20, 20));
    click(rig, tool, 20, 20);
    expect(roomFaces(walls(rig))).toHaveLength(1);
    expect(walls(rig)).toHaveLength(3);
  });

  test.each(['banana', '0', '-'])('“%s” is refused in words and nothing is lost', (text) => {
    const rig = emptyRig();
    const tool = createWallTool();
    type(rig, tool, '', 'Enter', 'ArrowRight', '9', 'Enter', 'ArrowDown', ...text, 'Enter');
    expect(walls(rig)).toHaveLength(1);
    expect(rig.session.getState().message).not.toBe('');
    type(rig, tool, '', ...[...text].map(() => 'Backspace'), '8', 'Enter');
    expect(walls(rig)).toHaveLength(2);
  });

  test('letters are text only while a wall is drawn', () => {
    const rig = emptyRig();
    const tool = createWallTool();
    expect(tool.onKey(rig.ctx, 'c')).toBe(false);
    tool.onKey(rig.ctx, 'Enter');
    expect(tool.onKey(rig.ctx, 'c')).toBe(true);
    tool.onKey(rig.ctx, 'Escape');
    tool.onKey(rig.ctx, 'Escape');
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(false);
    expect(walls(rig)).toHaveLength(0);
  });
});

describe('opening and outlet tools', () => {
  test('a typed width, a press on the wall, a drag along it', () => {
    const rig = floorRig();
    rig.session.set({ tool: 'opening' });
    const tool = createOpeningTool();
    type(rig, tool, `3'`);
    click(rig, tool, 3000, -75);
    const [door] = recordsOf(rig.session.getState().plan, 'opening');
    expect(door?.widthMm).toBeCloseTo(914.4, 3);
    click(rig, tool, 3000, 2500);
    expect(rig.session.getState().message).toMatch(/No wall there/);
    drag(
      rig,
      createSelectTool(),
      [
        [3000, -75],
        [3500, 300],
        [4200, 900],
      ],
      { alt: true },
    );
    const moved = recordsOf(rig.session.getState().plan, 'opening')[0];
    expect((moved?.offsetMm ?? 0) - (door?.offsetMm ?? 0)).toBeCloseTo(1200, 0);
  });

  test('outlets stand on the face that was pressed, facing the room, several on one breaker', () => {
    const rig = floorRig();
    const kind = needKind('north-america', 'house-panel-120-240', 'source');
    const tool = createOutletTool();
    click(rig, tool, 3000, 40);
    expect(rig.session.getState().floorView.ask).toBe('circuit');
    const made = addSourceWithCircuit(
      rig.session.getState().plan,
      { kind, floorId: rig.floorId, at: { xMm: 0, yMm: 0 } },
      { label: '7', breakerA: 20, leg: 0 },
      rig.session.newId,
    );
    rig.add(made.changes);
    rig.add(
      addCircuit(rig.session.getState().plan, made.sourceId, { label: '9', breakerA: 15, leg: 1 }).changes,
    );
    rig.session.set({ floorView: { ...rig.session.getState().floorView, circuit: made } });
    click(rig, tool, 3000, 40);
    click(rig, tool, 5960, 2000);
    const outlets = recordsOf(rig.session.getState().plan, 'outlet');
    expect(outlets.map((o) => [o.wayId, o.rotationDeg])).toEqual([
      [made.wayId, 90],
      [made.wayId, 180],
    ]);
    expect(outlets[0]?.at.yMm).toBeCloseTo(0, 6);
    expect(outlets[1]?.at.xMm).toBeCloseTo(6000, 6);
  });
});

describe('choosing', () => {
  const three = () => {
    const rig = floorRig();
    const ids = [1000, 2500, 4000].map((x) => addUnit(rig, 'led-panel-60x60', x, 2000));
    return { rig, ids, state: () => rig.session.getState() };
  };

  test('a marquee takes what it encloses, with Ctrl what it touches, a loop what it holds', () => {
    const { rig, ids, state } = three();
    const tool = createSelectTool();
    drag(rig, tool, [
      [200, 800],
      [2500, 2900],
    ]);
    expect(state().selection).toEqual(new Set([ids[0]]));
    drag(
      rig,
      tool,
      [
        [200, 800],
        [2500, 2900],
      ],
      { ctrl: true },
    );
    expect(state().selection).toEqual(new Set([ids[0], ids[1]]));
    drag(
      rig,
      tool,
      [
        [2000, 800],
        [5500, 800],
        [5500, 3500],
        [2000, 3500],
      ],
      { alt: true },
    );
    expect(state().selection).toEqual(new Set([ids[1], ids[2]]));
  });

  test('a group is chosen and moved as one; Alt takes one out of it', () => {
    const { rig, ids, state } = three();
    rig.session.set({ selection: new Set(ids.slice(0, 2)) });
    command('group').perform(rig);
    const tool = createSelectTool();
    click(rig, tool, 4000, 2000);
    click(rig, tool, 1000, 2000);
    expect(state().selection).toEqual(new Set(ids.slice(0, 2)));
    click(rig, tool, 1000, 2000, { alt: true });
    expect(state().selection).toEqual(new Set([ids[0]]));
    rig.session.set({ selection: new Set() });
    drag(
      rig,
      tool,
      [
        [1000, 2000],
        [1300, 2600],
      ],
      {},
    );
    expect(recordOf(state().plan, 'fixture', ids[1] ?? '')?.at.yMm).not.toBe(2000);
  });

  test('even spacing, one line, mirrored and turned together', () => {
    const { rig, ids, state } = three();
    const at = (i: number) => recordOf(state().plan, 'fixture', ids[i] ?? '')?.at;
    rig.session.set({ selection: new Set([ids[1] ?? '']) });
    command('nudge-right-far').perform(rig);
    command('nudge-down-far').perform(rig);
    rig.session.set({ selection: new Set(ids) });
    command('distribute-across').perform(rig);
    command('align-centre-down').perform(rig);
    expect(at(1)?.xMm).toBeCloseTo(2500, 6);
    expect(new Set([0, 1, 2].map((i) => Math.round(at(i)?.yMm ?? 0))).size).toBe(1);
    command('mirror-upright').perform(rig);
    expect(at(0)?.xMm).toBeCloseTo(4000, 6);
    const facing = recordOf(state().plan, 'fixture', ids[0] ?? '')?.aim;
    expect(facing).toMatchObject({ at: 'facing', facingDeg: 180 });
    for (let i = 0; i < 6; i++) command('turn-together-right').perform(rig);
    expect(Math.abs((at(0)?.yMm ?? 0) - (at(2)?.yMm ?? 0))).toBeCloseTo(3000, 3);
  });
});

describe('copies', () => {
  test('a copy goes into another plan with its kind, and unit numbers stay unique', () => {
    const rig = floorRig();
    const id = addUnit(rig, 'led-panel-60x60', 1000, 2000);
    rig.session.set({ selection: new Set([id]) });
    command('put-on-stand').perform(rig);
    const text = clipText(rig.session.getState().plan, new Set([id]));
    const other = emptyRig();
    for (let i = 0; i < 2; i++) {
      const { plan } = other.session.getState();
      const made = pasteClip(plan, text, other.floorId, { xMm: 0, yMm: 0 }, other.session.newId);
      if (!made.ok) throw new Error(made.error.what);
      other.add(made.value.changes);
    }
    const { plan } = other.session.getState();
    expect(recordsOf(plan, 'fixture').map((f) => f.unit)).toEqual(['1', '2']);
    expect(recordsOf(plan, 'stand')).toHaveLength(2);
    expect(recordsOf(plan, 'fixture').every((f) => plan.records.has(f.kindId))).toBe(true);
    expect(recordsOf(plan, 'fixture').every((f) => f.floorId === other.floorId)).toBe(true);
  });

  test.each([
    '',
    'hello',
    '{"format":"lampwright-clip","version":1,"rec',
    '{"format":"lampwright-clip","records":[{"type":"fixture"}]}',
  ])('what is no copy of ours is refused in words: %s', (text) => {
    const rig = emptyRig();
    const made = pasteClip(
      rig.session.getState().plan,
      text,
      rig.floorId,
      { xMm: 0, yMm: 0 },
      rig.session.newId,
    );
    expect(!made.ok && made.error.what).toMatch(/copied/);
  });

  test('chosen units get another kind and keep place, aim and number', () => {
    const rig = floorRig();
    const [a = '', b = ''] = [1000, 3000].map((x) => addUnit(rig, 'led-panel-60x60', x, 2000));
    const kind = needKind('north-america', 'led-spot-60w', 'fixture');
    const { plan } = rig.session.getState();
    const made = replaceChosen(plan, new Set([a]), kind);
    if (!made.ok) throw new Error(made.error.what);
    const after = applyChanges(plan, made.value.changes);
    const was = recordOf(plan, 'fixture', a);
    expect(recordOf(after, 'fixture', a)).toEqual({ ...was, kindId: kind.id });
    expect(recordOf(after, 'fixture', b)).toBe(recordOf(plan, 'fixture', b));
  });
});

describe('measure tool', () => {
  test('shows distance and area, and keeps the last stretch as a line that follows', () => {
    const rig = floorRig();
    const id = addUnit(rig, 'led-panel-60x60', 1500, 2000);
    const tool = createMeasureTool();
    for (const [x, y] of [
      [1500, 2000],
      [4500, 2000],
    ] as const)
      click(rig, tool, x, y, { alt: true });
    expect(rig.session.getState().overlay.measures?.map((m) => m.text)).toEqual([`9′-10″`]);
    expect(tool.onKey(rig.ctx, 'k')).toBe(true);
    const [kept] = recordsOf(rig.session.getState().plan, 'dimension');
    expect(kept?.from.recordId).toBe(id);
  });
});
