import { describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { setFacings } from '../../../src/plan/edits/many.ts';
import { placeMark } from '../../../src/plan/edits/place.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { floorRig } from '../../support/floor.ts';

/** A camera at (1000, 2500) looking across with an angle of 40°, and an actor 3 m in front of its lens, `off` to the side. */
const scene = (off: number | undefined) => {
  const rig = floorRig(undefined, 'metric');
  let plan: Plan = rig.session.getState().plan;
  const camera = placeMark(plan, 'camera', rig.floorId, { xMm: 1000, yMm: 2500 }, rig.session.newId);
  plan = applyChanges(plan, camera.changes);
  plan = applyChanges(plan, setFacings(plan, [camera.mark.id], 0));
  if (off !== undefined) {
    const at = { xMm: 1290 + 3000, yMm: 2500 + off };
    plan = applyChanges(plan, placeMark(plan, 'talent', rig.floorId, at, rig.session.newId).changes);
  }
  const item = drawFloor(plan, { floorId: rig.floorId, setupId: undefined, nominalScale: 50 }).items.find(
    (i) => i.key === `mark:${camera.mark.id}`,
  );
  const lines = (item?.primitives ?? []).flatMap((p) => (p.kind === 'path' && p.stroke ? [p] : []));
  return {
    frame: lines.find((l) => l.stroke?.dashMm !== undefined),
    text: item?.primitives.flatMap((p) => (p.kind === 'text' ? [p.text] : [])).join(),
  };
};

describe('frame lines of a camera', () => {
  test('the frame across at the actor is 2·d·tan(angle / 2) wide, and says so', () => {
    const { frame, text } = scene(200);
    const ys = frame?.d.flatMap((c) => (c[0] === 'M' || c[0] === 'L' ? [c[2]] : [])) ?? [];
    const wide = 2 * 3000 * Math.tan((20 * Math.PI) / 180);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(wide, 3);
    expect(text).toContain('frame 2.18');
  });

  test('an actor beside the frame makes none', () => {
    expect(scene(1500).frame).toBeUndefined();
    expect(scene(undefined).frame).toBeUndefined();
  });
});
