import { describe, expect, test } from 'vitest';
import type { DisplayItem } from '../../../src/drawing/display-list.ts';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { createScene } from '../../../src/editor/scene.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import { boxesMeet } from '../../../src/kernel/geometry.ts';
import { labelPlaceOf } from '../../../src/plan/edits/label-places.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { addUnit, drag, floorRig } from '../../support/floor.ts';

const rigWithLabel = () => {
  const rig = floorRig();
  const a = addUnit(rig, 'led-panel-60x60', 2000, 2000);
  const b = addUnit(rig, 'led-panel-60x60', 4500, 3500);
  const plan = () => rig.session.getState().plan;
  const labels = (): ReadonlyMap<string, DisplayItem> =>
    new Map(
      drawFloor(plan(), { floorId: rig.floorId, setupId: undefined, nominalScale: 48 })
        .items.filter((i) => i.layer === 'labels' && i.anchor)
        .map((i) => [i.recordId, i]),
    );
  const anchor = (id: string): { xMm: number; yMm: number } => {
    const spot = createScene(rig.session)
      .list()
      ?.items.find((i) => i.layer === 'labels' && i.recordId === id)?.anchor;
    if (!spot) throw new Error(`no label for ${id}`);
    return spot;
  };
  return { rig, a, b, plan, labels, anchor, tool: createSelectTool() };
};

describe('a label moved by hand', () => {
  test('stays where it was dropped, keeps its unit where it was, and has a leader; one undo step', () => {
    const { rig, a, plan, labels, anchor, tool } = rigWithLabel();
    const before = serialisePlan(plan());
    const from = anchor(a);
    drag(rig, tool, [
      [from.xMm, from.yMm],
      [from.xMm - 200, from.yMm + 300],
      [3300, 900],
    ]);
    expect(recordOf(plan(), 'fixture', a)?.at).toMatchObject({ xMm: 2000, yMm: 2000 });
    const label = labels().get(a);
    expect(label?.anchor?.xMm).toBeCloseTo(3300, -1);
    expect(label?.anchor?.yMm).toBeCloseTo(900, -1);
    const leader = label?.primitives.find((p) => p.kind === 'path' && p.stroke);
    expect(leader).toBeDefined();
    rig.session.undo();
    expect(serialisePlan(plan())).toBe(before);
  });

  test('goes along with its unit, at the next drawing and during the drag', () => {
    const { rig, a, plan, labels, anchor, tool } = rigWithLabel();
    const from = anchor(a);
    drag(rig, tool, [
      [from.xMm, from.yMm],
      [2600, 2800],
    ]);
    const scene = createScene(rig.session, { labelsLater: true });
    scene.list();
    drag(
      rig,
      tool,
      [
        [2000, 2000],
        [2500, 2100],
      ],
      { alt: true },
    );
    expect(labels().get(a)?.anchor).toMatchObject({ xMm: 3100, yMm: 2900 });
    expect(labelPlaceOf(plan(), a)).toMatchObject({ dxMm: 600, dyMm: 800 });
  });

  test('the labels that find their own place keep clear of it', () => {
    const { rig, a, b, labels, anchor, tool } = rigWithLabel();
    const [from, other] = [anchor(a), anchor(b)];
    drag(rig, tool, [
      [from.xMm, from.yMm],
      [from.xMm + 100, from.yMm],
      [other.xMm, other.yMm],
    ]);
    const now = labels();
    const [mine, theirs] = [now.get(a), now.get(b)];
    expect(mine?.anchor?.xMm).toBeCloseTo(other.xMm, -1);
    expect(theirs?.anchor).not.toEqual(other);
    const texts = (i: DisplayItem | undefined) =>
      (i?.primitives ?? []).flatMap((p) =>
        p.kind === 'circle' && p.rMm > 1
          ? [{ minX: p.xMm - 130, minY: p.yMm - 130, maxX: p.xMm + 130, maxY: p.yMm + 130 }]
          : [],
      );
    for (const p of texts(mine)) for (const q of texts(theirs)) expect(boxesMeet(p, q)).toBe(false);
  });

  test('finds its own place again when it is let go, and goes with the unit when that is deleted', () => {
    const { rig, a, plan, labels, anchor, tool } = rigWithLabel();
    const was = labels().get(a)?.anchor;
    const from = anchor(a);
    drag(rig, tool, [
      [from.xMm, from.yMm],
      [3300, 900],
    ]);
    rig.session.set({ selection: new Set([a]) });
    command('reset-labels').perform(rig);
    expect(labels().get(a)?.anchor).toEqual(was);
    rig.session.undo();
    rig.session.set({ selection: new Set([a]) });
    command('delete').perform(rig);
    expect(labelPlaceOf(plan(), a)).toBeUndefined();
  });
});
