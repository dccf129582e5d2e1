import { describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { createScene } from '../../../src/editor/scene.ts';
import type { Id } from '../../../src/kernel/ids.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { addUnit, floorRig } from '../../support/floor.ts';

const twoOnTop = () => {
  const rig = floorRig();
  const under = addUnit(rig, 'led-panel-60x60', 3000, 2500);
  const over = addUnit(rig, 'led-panel-60x60', 3100, 2500);
  const scene = createScene(rig.session);
  const pick = (): Id | undefined => scene.picker.pick({ xMm: 3050, yMm: 2500 }, 10);
  const drawn = (): readonly Id[] =>
    drawFloor(rig.session.getState().plan, { floorId: rig.floorId, setupId: undefined, nominalScale: 48 })
      .items.filter((i) => i.layer === 'gear')
      .map((i) => i.recordId);
  return { rig, under, over, pick, drawn };
};

describe('what lies above what', () => {
  test('what is brought to the front is drawn last and picked first; sent back, the other way round', () => {
    const { rig, under, over, pick, drawn } = twoOnTop();
    expect(pick()).toBe(over);
    rig.session.set({ selection: new Set([under]) });
    command('stack-front').perform(rig);
    expect(drawn().at(-1)).toBe(under);
    expect(pick()).toBe(under);
    command('stack-back').perform(rig);
    expect(drawn()[0]).toBe(under);
    expect(pick()).toBe(over);
  });

  test('several brought forward keep their order among themselves, and one step undoes it', () => {
    const { rig, under, over, drawn } = twoOnTop();
    const third = addUnit(rig, 'led-panel-60x60', 3200, 2500);
    const before = serialisePlan(rig.session.getState().plan);
    rig.session.set({ selection: new Set([over, under]) });
    command('stack-front').perform(rig);
    expect(drawn()).toEqual([third, under, over]);
    rig.session.undo();
    expect(serialisePlan(rig.session.getState().plan)).toBe(before);
  });
});

describe('hidden things', () => {
  test('are neither drawn, labelled nor picked, and come back as they were', () => {
    const { rig, under, over, pick } = twoOnTop();
    rig.session.set({ selection: new Set([over]) });
    command('put-on-stand').perform(rig);
    const before = serialisePlan(rig.session.getState().plan);
    command('hide').perform(rig);
    const { plan } = rig.session.getState();
    const stand = [...plan.records.values()].find((r) => r.type === 'stand');
    const { items } = drawFloor(plan, { floorId: rig.floorId, setupId: undefined, nominalScale: 48 });
    expect(items.some((i) => i.recordId === over || i.recordId === stand?.id)).toBe(false);
    expect(pick()).toBe(under);
    command('show-all').perform(rig);
    expect(serialisePlan(rig.session.getState().plan)).toBe(before);
  });
});
