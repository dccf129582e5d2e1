import { beforeEach, describe, expect, test } from 'vitest';
import { createOutletTool } from '../../../src/editor/tools/outlet.ts';
import { needKind } from '../../../src/gear/index.ts';
import { distanceMm, nearestOnSegment, point } from '../../../src/kernel/geometry.ts';
import { moveRecords, removeRecords } from '../../../src/plan/edits/arrange.ts';
import { addSourceWithCircuit } from '../../../src/plan/edits/circuits.ts';
import { changeRecord } from '../../../src/plan/edits/document.ts';
import { joinWalls, setWallLength, splitWall } from '../../../src/plan/edits/walls.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import type { Outlet, Wall } from '../../../src/plan/records/index.ts';
import { click, type FloorRig, floorRig } from '../../support/floor.ts';
import { need } from '../../support/storage-world.ts';

let rig: FloorRig;
const plan = (): Plan => rig.session.getState().plan;
const outlet = (): Outlet => {
  const [o] = recordsOf(plan(), 'outlet');
  if (!o) throw new Error('no outlet');
  return o;
};
const wallOf = (o: Outlet): Wall => {
  const w = recordOf(plan(), 'wall', o.wallId ?? '');
  if (!w) throw new Error('the outlet is on no wall');
  return w;
};
/** How far an outlet is off the face of its wall. */
const off = (o: Outlet): number => {
  const w = wallOf(o);
  return Math.abs(distanceMm(o.at, nearestOnSegment(o.at, w.from, w.to).at) - w.thicknessMm / 2);
};

beforeEach(() => {
  rig = floorRig(undefined, 'metric');
  const kind = needKind('north-america', 'house-panel-120-240', 'source');
  const made = addSourceWithCircuit(
    plan(),
    { kind, floorId: rig.floorId, at: point(3000, 2500) },
    { label: '1', breakerA: 20, leg: 0 },
    rig.session.newId,
  );
  rig.session.commit('Panel', made.changes);
  // On the upper wall of the room, 1 m from its inner corner.
  click(rig, createOutletTool(), 1000, 20);
});

describe('a wall outlet', () => {
  test('is tied to the wall it was placed on', () => {
    expect(outlet()).toMatchObject({ at: { xMm: 1000, yMm: 0 }, rotationDeg: 90 });
    // Walls start half a thickness before the inner corner.
    expect(outlet().offsetMm).toBeCloseTo(1075, 6);
    expect(off(outlet())).toBeCloseTo(0, 6);
  });

  test('goes with its wall when that is moved, made thicker or longer', () => {
    const w = wallOf(outlet());
    rig.session.commit('Move', moveRecords(plan(), new Set([w.id]), point(0, -700)));
    expect(outlet().at).toMatchObject({ xMm: 1000, yMm: -700 });
    rig.session.commit('Thicker', need(changeRecord(plan(), wallOf(outlet()), { thicknessMm: 350 })));
    expect(off(outlet())).toBeCloseTo(0, 6);
    rig.session.commit('Shorter', need(setWallLength(plan(), w.id, 600)));
    expect(off(outlet())).toBeCloseTo(0, 6);
    expect(outlet().offsetMm).toBeLessThanOrEqual(600);
    rig.session.undo();
    rig.session.undo();
    rig.session.undo();
    expect(outlet().at).toMatchObject({ xMm: 1000, yMm: 0 });
  });

  test('slides along it, changes to another wall, and lets go far from any', () => {
    const first = wallOf(outlet()).id;
    rig.session.commit('Slide', moveRecords(plan(), new Set([outlet().id]), point(1500, 130)));
    expect(outlet()).toMatchObject({ wallId: first, at: { xMm: 2500, yMm: 0 } });
    rig.session.commit('Over', moveRecords(plan(), new Set([outlet().id]), point(3450, 2000)));
    expect(outlet().wallId).not.toBe(first);
    expect(outlet().at.xMm).toBeCloseTo(6000, 6);
    expect(outlet().rotationDeg).toBeCloseTo(180, 6);
    rig.session.commit('Off', moveRecords(plan(), new Set([outlet().id]), point(-3000, 0)));
    expect(outlet().wallId).toBeUndefined();
    expect(outlet().at).toMatchObject({ xMm: 3000 });
  });

  test('stays in place when its wall is cut, joined or taken away', () => {
    const w = wallOf(outlet()).id;
    const at = outlet().at;
    const cut = need(splitWall(plan(), w, 500, rig.session.newId));
    rig.session.commit('Cut', cut.changes);
    expect(outlet()).toMatchObject({ wallId: cut.second, at });
    expect(outlet().offsetMm).toBeCloseTo(575, 6);
    rig.session.commit('Join', need(joinWalls(plan(), w, cut.second)));
    expect(outlet()).toMatchObject({ wallId: w, at });
    expect(outlet().offsetMm).toBeCloseTo(1075, 6);
    rig.session.commit('Delete', removeRecords(plan(), new Set([w])));
    expect(outlet().at).toEqual(at);
    expect(outlet().wallId).toBeUndefined();
  });
});
