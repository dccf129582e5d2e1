import { describe, expect, test } from 'vitest';
import type { DisplayItem } from '../../../src/drawing/display-list.ts';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { poolOf } from '../../../src/drawing/pools.ts';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges, type ChangeSet } from '../../../src/plan/change-set.ts';
import { changeRecord } from '../../../src/plan/edits/document.ts';
import { placeGrip, setCloth } from '../../../src/plan/edits/grip.ts';
import { setTilts } from '../../../src/plan/edits/many.ts';
import { type Plan, recordOf } from '../../../src/plan/plan.ts';
import { addUnit, floorRig } from '../../support/floor.ts';

const SPOT = 'tungsten-fresnel-650w';

/** A fresnel at (1000, 2500) facing across the room, 2 m up, and grip 1.2 m in front of it. */
const rigWith = (slug?: string, clothSlug?: string) => {
  const rig = floorRig();
  const id = addUnit(rig, SPOT, 1000, 2500);
  let plan: Plan = rig.session.getState().plan;
  const take = (c: ChangeSet): void => {
    plan = applyChanges(plan, c);
  };
  if (slug !== undefined) {
    const kind = needKind('north-america', slug, 'grip');
    const made = placeGrip(
      plan,
      { kind, floorId: rig.floorId, at: { xMm: 2200, yMm: 2500 }, rotationDeg: 0 },
      rig.session.newId,
    );
    take(made.changes);
    take({
      added: [],
      updated: [{ from: made.grip, to: { ...made.grip, heightMm: 2000 } }],
      removed: [],
    });
    if (clothSlug !== undefined) {
      const grip = recordOf(plan, 'grip', made.grip.id);
      if (grip) take(setCloth(plan, grip, needKind('north-america', clothSlug, 'grip')));
    }
  }
  const beam = (fields = false): DisplayItem | undefined =>
    drawFloor(plan, {
      floorId: rig.floorId,
      setupId: undefined,
      nominalScale: 48,
      options: { labels: false, fields },
    }).items.find((i) => i.key === `beam:${id}`);
  const unit = () => {
    const f = recordOf(plan, 'fixture', id);
    if (!f) throw new Error('unit gone');
    return f;
  };
  return { rig, id, take, beam, unit, plan: () => plan };
};

/** The furthest that anything of a beam reaches across, and whether it has dashed lines. */
const reach = (item: DisplayItem | undefined) => {
  const lines = (item?.primitives ?? []).flatMap((p) => (p.kind === 'path' && p.stroke ? [p] : []));
  const xOf = (p: (typeof lines)[number]): number =>
    Math.max(...p.d.flatMap((c) => (c[0] === 'M' || c[0] === 'L' ? [c[1]] : [])));
  return {
    solid: Math.max(...lines.filter((l) => !l.stroke?.dashMm).map(xOf)),
    dashed: Math.max(...lines.filter((l) => l.stroke?.dashMm).map(xOf)),
  };
};

describe('light', () => {
  test('goes on where nothing is in the way', () => {
    expect(reach(rigWith().beam()).solid).toBeGreaterThan(2800);
  });

  test('stops at a flag', () => {
    const { beam } = rigWith('flag-4x4');
    const hatch = beam()?.primitives.find((p) => p.kind === 'path' && p.fill?.hatch);
    const xs = hatch?.kind === 'path' ? hatch.d.flatMap((c) => (c[0] === 'L' ? [c[1]] : [])) : [];
    const middle = xs[Math.floor(xs.length / 2)] ?? 0;
    expect(middle).toBeLessThanOrEqual(2201);
    expect(reach(beam()).dashed).toBe(Number.NEGATIVE_INFINITY);
  });

  test('stops at a cloth that lets light through, from where a soft edge goes on', () => {
    const { beam } = rigWith('frame-12x12', 'silk-12x12');
    const { solid, dashed } = reach(beam());
    expect(solid).toBeLessThanOrEqual(2201);
    expect(dashed).toBeGreaterThan(3000);
  });

  test('does not go on behind a solid cloth, and passes a frame without one', () => {
    expect(reach(rigWith('frame-12x12', 'solid-12x12').beam()).solid).toBeLessThanOrEqual(2201);
    expect(reach(rigWith('frame-12x12', 'solid-12x12').beam()).dashed).toBe(Number.NEGATIVE_INFINITY);
    expect(reach(rigWith('frame-12x12').beam()).solid).toBeGreaterThan(2800);
  });

  test('is as wide as its zoom is set, and barn doors cut it', () => {
    const { take, unit, plan, beam } = rigWith();
    const wide = beam()?.box;
    const change = (patch: object): void => {
      const r = changeRecord(plan(), unit(), patch);
      if (!r.ok) throw new Error(r.error.what);
      take(r.value);
    };
    change({ zoomPct: 0 });
    const narrow = beam()?.box;
    const high = (b: { minY: number; maxY: number } | undefined): number => (b ? b.maxY - b.minY : 0);
    expect(high(narrow)).toBeLessThan(high(wide) * 0.6);
    change({ zoomPct: 100, doors: { leftDeg: 5, rightDeg: 60 } });
    const cut = beam()?.box;
    // Facing across to the right, the left leaf is up the page.
    expect((cut?.minY ?? 0) - 2500).toBeGreaterThan((wide?.minY ?? 0) - 2500 + 200);
    expect(cut?.maxY).toBeCloseTo(wide?.maxY ?? 0, 0);
  });

  test('leaves above and below are drawn where they are given: shorter the more they stand up, that below dashed', () => {
    const { take, unit, plan, beam } = rigWith();
    const leaves = (doors: object) => {
      const r = changeRecord(plan(), unit(), { doors: doors as never });
      if (!r.ok) throw new Error(r.error.what);
      take(r.value);
      const open = (beam()?.primitives ?? []).flatMap((p) =>
        p.kind === 'path' && p.stroke?.role === 'gear' && p.d.length === 4 ? [p] : [],
      );
      return open.map((p) => {
        const xs = p.d.flatMap((c) => (c[0] === 'M' || c[0] === 'L' ? [c[1]] : []));
        return { longMm: Math.max(...xs) - Math.min(...xs), dashed: p.stroke?.dashMm !== undefined };
      });
    };
    const sides = { leftDeg: 45, rightDeg: 45 };
    expect(leaves(sides)).toEqual([]);
    const [flat] = leaves({ ...sides, topDeg: 0 });
    const [up] = leaves({ ...sides, topDeg: 60 });
    expect(up?.longMm).toBeCloseTo((flat?.longMm ?? 0) / 2, 6);
    expect(leaves({ ...sides, topDeg: 60, bottomDeg: 20 }).map((l) => l.dashed)).toEqual([false, true]);
  });
});

describe('where light falls on the floor', () => {
  test('straight down it is a circle of h·tan β', () => {
    const pool = poolOf(3000, -90, 40);
    expect(pool?.outMm).toBeCloseTo(0, 6);
    expect(pool?.alongMm).toBeCloseTo(3000 * Math.tan((20 * Math.PI) / 180), 6);
    expect(pool?.acrossMm).toBeCloseTo(pool?.alongMm ?? 0, 6);
  });

  test('tilted it is the ellipse a plane cuts from a cone: every edge ray lands on it', () => {
    const [h, tilt, beta] = [3000, 60, 15];
    const pool = poolOf(h, -tilt, 2 * beta);
    if (!pool) throw new Error('no pool');
    const rad = Math.PI / 180;
    // The cone's rays by hand: the axis turned down by the tilt, a ray β off it turned about it.
    for (let k = 0; k < 12; k++) {
      const phi = (k * 30 * Math.PI) / 180;
      const [a, u, v] = [
        Math.cos(beta * rad),
        Math.sin(beta * rad) * Math.cos(phi),
        Math.sin(beta * rad) * Math.sin(phi),
      ];
      const x = a * Math.cos(tilt * rad) + u * Math.sin(tilt * rad);
      const z = -a * Math.sin(tilt * rad) + u * Math.cos(tilt * rad);
      const t = h / -z;
      expect(((x * t - pool.outMm) / pool.alongMm) ** 2 + ((v * t) / pool.acrossMm) ** 2).toBeCloseTo(1, 6);
    }
  });

  test('is drawn where fields are wanted, not else', () => {
    const { take, plan, beam, id } = rigWith();
    take(setTilts(plan(), [id], -80));
    expect(beam(false)).toBeUndefined();
    expect(beam(true)?.primitives.some((p) => p.kind === 'path' && p.d.some((c) => c[0] === 'C'))).toBe(true);
  });
});
