import { beforeEach, describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { createCrossingTool } from '../../../src/editor/tools/crossing.ts';
import { createFeatureTool } from '../../../src/editor/tools/feature.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import { needKind } from '../../../src/gear/index.ts';
import { point } from '../../../src/kernel/geometry.ts';
import { moveRecords, rotateRecords } from '../../../src/plan/edits/arrange.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import type { Feature, FeatureWhat } from '../../../src/plan/records/index.ts';
import { addBox, click, drag, type FloorRig, floorRig, pointer } from '../../support/floor.ts';

let rig: FloorRig;
const plan = (): Plan => rig.session.getState().plan;
const next = (what: FeatureWhat, more: { heightMm?: number; voltsV?: number } = {}): void => {
  const { floorView } = rig.session.getState();
  rig.session.set({
    floorView: { ...floorView, feature: { heightMm: 0, voltsV: undefined, ...more, what } },
  });
};
const only = (): Feature => {
  const [f, ...more] = recordsOf(plan(), 'feature');
  if (!f || more.length > 0) throw new Error(`${more.length + (f ? 1 : 0)} features`);
  return f;
};
beforeEach(() => {
  rig = floorRig(undefined, 'metric');
});

describe('the outdoors tool', () => {
  test('an area corner by corner, closed on its first one; the pointer shows it before', () => {
    next('road');
    const tool = createFeatureTool();
    for (const [x, y] of [
      [0, 7000],
      [6000, 7000],
      [6000, 9000],
    ] as const)
      click(rig, tool, x, y, { alt: true });
    tool.onPointerMove(rig.ctx, pointer(rig.session, 0, 9000, { alt: true }));
    expect(rig.session.getState().preview?.added).toHaveLength(1);
    click(rig, tool, 0, 9000, { alt: true });
    click(rig, tool, 10, 7010, { alt: true });
    expect(only()).toMatchObject({ what: 'road', closed: true });
    expect(only().points).toHaveLength(4);
    expect(rig.session.getState().undoStack).toHaveLength(1);
  });

  test('a line ends with Enter, with height and volts where it is a power line; a spot at one press', () => {
    next('power-line', { heightMm: 6000, voltsV: 11_000 });
    const tool = createFeatureTool();
    click(rig, tool, -1000, -1000, { alt: true });
    click(rig, tool, 7000, -1200, { alt: true });
    tool.onKey(rig.ctx, 'Enter');
    expect(only()).toMatchObject({ what: 'power-line', closed: false, heightMm: 6000, voltsV: 11_000 });
    rig.session.undo();
    next('tree');
    click(rig, tool, 7000, 2000, { alt: true });
    expect(only()).toMatchObject({ what: 'tree', points: [{ xMm: 7000, yMm: 2000 }] });
    expect(only().voltsV).toBeUndefined();
  });

  test('too few corners are told and cost nothing; Backspace and Escape go back', () => {
    next('fire-lane');
    const tool = createFeatureTool();
    click(rig, tool, 0, 7000, { alt: true });
    click(rig, tool, 3000, 7000, { alt: true });
    tool.onKey(rig.ctx, 'Enter');
    expect(rig.session.getState().message).toMatch(/three corners/);
    expect(recordsOf(plan(), 'feature')).toHaveLength(0);
    tool.onKey(rig.ctx, 'Backspace');
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(true);
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(false);
    expect(rig.session.getState().undoStack).toHaveLength(0);
  });

  test('what is drawn moves as a whole and by its corners, and never catches the hand before what stands on it', () => {
    next('wet-area');
    const tool = createFeatureTool();
    for (const [x, y] of [
      [1000, 1000],
      [3000, 1000],
      [3000, 3000],
      [1000, 3000],
    ] as const)
      click(rig, tool, x, y, { alt: true });
    tool.onKey(rig.ctx, 'Enter');
    const { id } = only();
    rig.session.commit('Move', moveRecords(plan(), new Set([id]), point(500, 0)));
    expect(only().points[0]).toMatchObject({ xMm: 1500, yMm: 1000 });
    const select = createSelectTool();
    rig.session.set({ selection: new Set([id]) });
    drag(
      rig,
      select,
      [
        [3500, 3000],
        [3800, 3300],
        [4000, 3500],
      ],
      { alt: true },
    );
    expect(only().points[2]).toMatchObject({ xMm: 4000, yMm: 3500 });
    const box = addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 2500, 2000);
    rig.session.set({ selection: new Set() });
    click(rig, select, 2500, 2000);
    expect([...rig.session.getState().selection]).toEqual([box]);
    click(rig, select, 2500, 2700);
    expect([...rig.session.getState().selection]).toEqual([id]);
  });

  test('every sort is drawn, and no two of one shape look the same', () => {
    const pictures = new Map<string, string>();
    for (const [what, points] of [
      ['ground', 4],
      ['road', 4],
      ['water', 4],
      ['wet-area', 4],
      ['fire-lane', 4],
      ['kerb', 2],
      ['facade', 2],
      ['power-line', 2],
      ['tree', 1],
      ['pole', 1],
      ['exit', 1],
    ] as const) {
      next(what);
      const tool = createFeatureTool();
      for (const [x, y] of (
        [
          [0, 7000],
          [4000, 7000],
          [4000, 9000],
          [0, 9000],
        ] as const
      ).slice(0, points))
        click(rig, tool, x, y, { alt: true });
      if (points > 1) tool.onKey(rig.ctx, 'Enter');
      const { id } = only();
      const items = drawFloor(plan(), { floorId: rig.floorId, setupId: undefined, nominalScale: 50 }).items;
      const own = items.filter((i) => i.recordId === id);
      expect(own.length, what).toBe(1);
      pictures.set(what, JSON.stringify(own[0]?.primitives));
      rig.session.undo();
    }
    expect(new Set(pictures.values()).size).toBe(pictures.size);
  });
});

describe('the crossing tool', () => {
  test('lies along the cable over the whole road; elsewhere where it was pressed', () => {
    next('road');
    const tool = createFeatureTool();
    for (const [x, y] of [
      [1000, 1000],
      [3000, 1000],
      [3000, 4000],
      [1000, 4000],
    ] as const)
      click(rig, tool, x, y, { alt: true });
    tool.onKey(rig.ctx, 'Enter');
    const quad = needKind('north-america', 'quad-box-20', 'box');
    const [a, b] = [addBox(rig, quad, 200, 2000), addBox(rig, quad, 5500, 2000)];
    rig.add({
      added: [
        {
          id: 'run',
          type: 'cable',
          kindId: 'none',
          from: { recordId: a, portId: 'x' },
          to: { recordId: b, portId: 'in' },
          route: { auto: false, points: [] },
          label: '',
        },
      ],
      updated: [],
      removed: [],
    });
    const crossing = createCrossingTool();
    click(rig, crossing, 2200, 2050);
    const [x] = recordsOf(plan(), 'crossing');
    expect(x).toMatchObject({ how: 'ramp', rotationDeg: 0, lengthMm: 2600 });
    expect(x?.at).toMatchObject({ xMm: 2000, yMm: 2000 });
    click(rig, crossing, 5000, 4500);
    expect(recordsOf(plan(), 'crossing')).toHaveLength(2);
    if (x) rig.session.commit('Turn', rotateRecords(plan(), new Set([x.id]), 90));
    expect(
      recordsOf(plan(), 'crossing')
        .map((c) => c.rotationDeg)
        .sort(),
    ).toEqual([0, 90]);
  });
});
