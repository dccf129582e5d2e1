import { beforeEach, describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { point } from '../../../src/kernel/geometry.ts';
import { addFloor, removeFloor, reorderFloor } from '../../../src/plan/edits/floors.ts';
import { addOpening, USUAL_OPENING } from '../../../src/plan/edits/openings.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { floorBeneath, floorsOf } from '../../../src/plan/floors.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { addMark, addUnit, type FloorRig, floorRig } from '../../support/floor.ts';
import { need } from '../../support/storage-world.ts';

let rig: FloorRig;
const plan = (): Plan => rig.session.getState().plan;
const add = (name: string, wallsOf?: string) => {
  const made = addFloor(plan(), { name, wallsOf }, rig.session.newId);
  rig.session.commit(`Add ${name}`, made.changes);
  return made.floor;
};
beforeEach(() => {
  rig = floorRig(undefined, 'metric');
});

describe('floors', () => {
  test('a new one lies above the highest, with the walls and openings of another when asked', () => {
    const [w] = recordsOf(plan(), 'wall');
    const door = { wallId: w?.id ?? '', what: 'door' as const, at: point(2000, 0), ...USUAL_OPENING.door };
    const placed = addOpening(plan(), door, rig.session.newId);
    rig.session.commit('Door', need(placed).changes);
    const attic = add('Attic', rig.floorId);
    expect(attic.levelMm).toBe(3300);
    expect(recordsOf(plan(), 'wall').filter((x) => x.floorId === attic.id)).toHaveLength(4);
    expect(recordsOf(plan(), 'opening')).toHaveLength(2);
    expect(new Set(recordsOf(plan(), 'opening').map((o) => o.wallId)).size).toBe(2);
    const roof = add('');
    expect(roof).toMatchObject({ name: 'Floor 3', levelMm: 6600 });
    expect(floorBeneath(plan(), roof.id)?.id).toBe(attic.id);
    expect(floorBeneath(plan(), rig.floorId)).toBeUndefined();
  });

  test('they are listed from the lowest up, or as put by hand', () => {
    const attic = add('Attic');
    const names = () => floorsOf(plan()).map((f) => f.name);
    expect(names()).toEqual(['Ground', 'Attic']);
    rig.session.commit('Up', reorderFloor(plan(), attic.id, -1));
    expect(names()).toEqual(['Attic', 'Ground']);
    rig.session.commit('Up', reorderFloor(plan(), attic.id, -1));
    expect(names()).toEqual(['Attic', 'Ground']);
    add('Roof');
    expect(names()).toEqual(['Attic', 'Ground', 'Roof']);
  });

  test('one that goes takes everything on it along, locked or not; undo brings all of it back; the last one stays', () => {
    const alone = removeFloor(plan(), rig.floorId);
    expect(alone.ok ? '' : alone.error.what).toMatch(/at least one floor/);
    const unit = addUnit(rig, 'led-panel-60x60', 1000, 1000);
    const attic = add('Attic', rig.floorId);
    const [wall] = recordsOf(plan(), 'wall').filter((w) => w.floorId === rig.floorId);
    if (!wall) throw new Error('no wall');
    rig.add({ added: [], updated: [{ from: wall, to: { ...wall, locked: true } }], removed: [] });
    const before = serialisePlan(plan());
    rig.session.commit('Remove', need(removeFloor(plan(), rig.floorId)));
    expect(plan().records.has(unit)).toBe(false);
    expect([...plan().records.values()].some((r) => 'floorId' in r && r.floorId === rig.floorId)).toBe(false);
    expect(rig.session.getState().floorId).toBe(attic.id);
    rig.session.undo();
    expect(serialisePlan(plan())).toBe(before);
  });

  test('the one beneath is drawn faintly under everything, its architecture only, and is not labelled', () => {
    addMark(rig, 1000, 1000);
    const attic = add('Attic');
    const draw = (beneathId?: string) =>
      drawFloor(plan(), { floorId: attic.id, setupId: undefined, nominalScale: 50, beneathId }).items;
    expect(draw()).toEqual([]);
    const items = draw(rig.floorId);
    expect(items).toHaveLength(4);
    expect(new Set(items.map((i) => i.layer))).toEqual(new Set(['underlay']));
    const roles = items.flatMap((i) =>
      i.primitives.flatMap((p) => ('stroke' in p && p.stroke ? [p.stroke.role] : [])),
    );
    expect(new Set(roles)).toEqual(new Set(['ink-faint']));
  });
});
