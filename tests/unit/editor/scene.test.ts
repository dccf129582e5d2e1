import { describe, expect, test } from 'vitest';
import { runBetween } from '../../../src/editor/connect.ts';
import { createScene } from '../../../src/editor/scene.ts';
import { needKind } from '../../../src/gear/index.ts';
import { noChanges } from '../../../src/plan/change-set.ts';
import { aimAtMark, moveRecords } from '../../../src/plan/edits/arrange.ts';
import { plug } from '../../../src/plan/edits/plug.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { addBox, addMark, addUnit, floorRig } from '../../support/floor.ts';

const rigWithRun = () => {
  const rig = floorRig();
  const unit = addUnit(rig, 'led-panel-60x60', 1500, 1500);
  const other = addUnit(rig, 'led-panel-60x60', 1500, 4500);
  const box = addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 4500, 3500);
  const mark = addMark(rig, 3000, 1000);
  const state = () => rig.session.getState();
  const run = runBetween(state().plan, box, unit, rig.book.cables());
  if (!run.ok) throw new Error(run.error.what);
  rig.add(plug(state().plan, run.value.from, run.value.to, run.value.bridge.cable, rig.session.newId));
  rig.add(aimAtMark(state().plan, [other], mark));
  return { rig, unit, other, box, mark, state, scene: createScene(rig.session) };
};

const by = { xMm: 300, yMm: 200 };

describe('scene', () => {
  test('the list stays the same one until something it shows changes', () => {
    const { rig, unit, scene, state } = rigWithRun();
    const first = scene.list();
    rig.session.set({ selection: new Set([unit]), message: 'x' });
    expect(scene.list()).toBe(first);
    rig.session.commit('Move', moveRecords(state().plan, new Set([unit]), by));
    expect(scene.list()).not.toBe(first);
  });

  test('a drag hides what moves and what follows, and shows them in their new place', () => {
    const { rig, box, unit, scene, state } = rigWithRun();
    const cable = recordsOf(state().plan, 'cable')[0]?.id ?? '';
    scene.list();
    rig.session.set({ preview: moveRecords(state().plan, new Set([box]), by) });
    const shown = new Set(scene.preview().map((p) => p.item.recordId));
    expect(shown).toContain(box);
    expect(shown).toContain(cable);
    expect(shown).not.toContain(unit);
    const drawnIds = (scene.list()?.items ?? [])
      .filter((i) => scene.hidden().has(i.key))
      .map((i) => i.recordId);
    expect(new Set(drawnIds)).toEqual(new Set([box, cable]));
    rig.session.set({ preview: undefined });
    expect(scene.preview()).toHaveLength(0);
    expect(scene.hidden().size).toBe(0);
  });

  test('moving a mark turns the units that follow it and takes their old throw away', () => {
    const { rig, other, mark, scene, state } = rigWithRun();
    scene.list();
    rig.session.set({ preview: moveRecords(state().plan, new Set([mark]), by) });
    expect(scene.preview().some((p) => p.item.recordId === other && p.item.layer === 'gear')).toBe(true);
    expect(scene.hidden()).toContain(`throw:${other}`);
    expect(scene.preview().some((p) => p.item.key === `throw:${other}`)).toBe(false);
  });

  test('labels go along with their unit', () => {
    const { rig, unit, scene, state } = rigWithRun();
    scene.list();
    rig.session.set({ preview: moveRecords(state().plan, new Set([unit]), by) });
    const label = scene.preview().find((p) => p.item.recordId === unit && p.item.layer === 'labels');
    expect(label).toMatchObject({ dxMm: 300, dyMm: 200 });
  });

  test('what is gathered for the view stays the same one while the view moves a little', () => {
    const { rig, scene, state } = rigWithRun();
    const first = scene.visible();
    const { camera } = state();
    rig.session.set({
      camera: { ...camera, center: { xMm: camera.center.xMm + 500, yMm: camera.center.yMm } },
    });
    expect(scene.visible()).toBe(first);
    rig.session.set({ camera: { ...camera, center: { xMm: 90_000, yMm: 0 } } });
    expect(scene.visible()).not.toBe(first);
    expect(scene.visible()).toHaveLength(0);
  });

  test('an empty preview shows nothing', () => {
    const { rig, scene } = rigWithRun();
    scene.list();
    rig.session.set({ preview: noChanges });
    expect(scene.preview()).toHaveLength(0);
  });
});
