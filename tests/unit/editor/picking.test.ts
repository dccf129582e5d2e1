import { describe, expect, test } from 'vitest';
import type { DisplayItem, DisplayList } from '../../../src/drawing/display-list.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { runBetween } from '../../../src/editor/connect.ts';
import { createPicker } from '../../../src/editor/picking.ts';
import { createScene } from '../../../src/editor/scene.ts';
import { needKind } from '../../../src/gear/index.ts';
import { point } from '../../../src/kernel/geometry.ts';
import { plug } from '../../../src/plan/edits/plug.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addBox, addUnit, floorRig } from '../../support/floor.ts';

describe('picking', () => {
  test('a fixture comes before its stand, which is found beside it', () => {
    const rig = floorRig();
    const unit = addUnit(rig, 'led-panel-60x60', 2000, 2000);
    rig.session.set({ selection: new Set([unit]) });
    command('put-on-stand').perform(rig);
    const { picker } = createScene(rig.session);
    const stand = recordsOf(rig.session.getState().plan, 'stand')[0];
    expect(picker.pick(point(2000, 2000), 10)).toBe(unit);
    const box = stand && picker.boxOf(stand.id);
    expect(box).toBeDefined();
    const edge = [0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330].map((deg) => {
      const r = ((box?.maxX ?? 0) - (box?.minX ?? 0)) / 2;
      const rad = (deg * Math.PI) / 180;
      return picker.pick(point(2000 + r * Math.cos(rad), 2000 + r * Math.sin(rad)), 40);
    });
    expect(edge).toContain(stand?.id);
  });

  test('a cable comes before the wall it crosses, the wall is found alone', () => {
    const rig = floorRig();
    const unit = addUnit(rig, 'led-panel-60x60', 3000, 2500);
    addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 3000, 7000);
    const { session, book } = rig;
    const boxId = recordsOf(session.getState().plan, 'box')[0]?.id ?? '';
    rig.add(plugged(rig, boxId, unit));
    const { picker } = createScene(session);
    const cable = recordsOf(session.getState().plan, 'cable')[0];
    expect(book.cables().length).toBeGreaterThan(0);
    const wallY = 5075;
    const types = [];
    for (let x = 2600; x <= 3400; x += 10) {
      const id = picker.pick(point(x, wallY), 15);
      types.push(session.getState().plan.records.get(id ?? '')?.type);
    }
    expect(types).toContain('cable');
    expect(types).toContain('wall');
    expect(cable).toBeDefined();
  });

  test('only a full enclosure counts as within; touching is enough for touching', () => {
    const rig = floorRig();
    const unit = addUnit(rig, 'led-panel-60x60', 2000, 2000);
    const { picker } = createScene(rig.session);
    const half = { minX: 2000, minY: 1000, maxX: 3000, maxY: 3000 };
    expect(picker.within(half)).not.toContain(unit);
    expect(picker.touching(half)).toContain(unit);
    expect(picker.within({ ...half, minX: 1000 })).toContain(unit);
  });

  test('only items that changed are exchanged in the index', () => {
    const picker = createPicker();
    const rig = floorRig();
    const { plan } = rig.session.getState();
    const [wall] = recordsOf(plan, 'wall');
    const item = (key: string, x: number): DisplayItem => ({
      key,
      recordId: wall?.id ?? '',
      layer: 'architecture',
      primitives: [
        {
          kind: 'path',
          d: [
            ['M', x, 0],
            ['L', x, 100],
          ],
        },
      ],
      box: { minX: x, minY: 0, maxX: x, maxY: 100 },
    });
    const list = (items: DisplayItem[]): DisplayList => ({ floorId: 'f', nominalScale: 48, items });
    const a = item('a', 0);
    const b = item('b', 500);
    picker.update(list([a, b]), plan);
    const everything = { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 };
    expect(picker.itemsIn(everything)).toEqual([a, b]);
    const moved = item('b', 900);
    picker.update(list([moved, a]), plan);
    expect(picker.itemsIn(everything)).toEqual([moved, a]);
    expect(picker.itemsIn({ ...everything, minX: 400, maxX: 600 })).toEqual([]);
  });

  test('the record picked belongs to the plan as it is after an edit', () => {
    const rig = floorRig();
    const unit = addUnit(rig, 'led-panel-60x60', 2000, 2000);
    const { picker } = createScene(rig.session);
    expect(picker.pick(point(2000, 2000), 10)).toBe(unit);
    rig.session.set({ selection: new Set([unit]) });
    command('nudge-right-far').perform(rig);
    command('nudge-right-far').perform(rig);
    command('nudge-right-far').perform(rig);
    expect(picker.pick(point(2000, 2000), 10)).toBeUndefined();
    const at = recordOf(rig.session.getState().plan, 'fixture', unit)?.at;
    expect(at && picker.pick(at, 10)).toBe(unit);
  });
});

const plugged = (rig: ReturnType<typeof floorRig>, from: string, to: string) => {
  const { plan } = rig.session.getState();
  const run = runBetween(plan, from, to, rig.book.cables());
  if (!run.ok) throw new Error(run.error.what);
  return plug(plan, run.value.from, run.value.to, run.value.bridge.cable, rig.session.newId);
};
