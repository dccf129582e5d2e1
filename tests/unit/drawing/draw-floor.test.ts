import { describe, expect, it } from 'vitest';
import type { DisplayItem, PathCommand } from '../../../src/drawing/display-list.ts';
import { drawFloor, floorExtents } from '../../../src/drawing/draw-floor.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { emptyPlan, type Plan, recordOf } from '../../../src/plan/plan.ts';
import type { AnyRecord, Wall } from '../../../src/plan/records/index.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const SCALE = 48;
const draw = (plan: Plan, setupId = 'su-1') =>
  drawFloor(plan, { floorId: 'fl-1', setupId, nominalScale: SCALE });
const item = (items: readonly DisplayItem[], key: string): DisplayItem => {
  const found = items.find((i) => i.key === key);
  if (!found) throw new Error(`no item ${key}`);
  return found;
};
const replace = (plan: Plan, id: string, patch: Record<string, unknown>): Plan => {
  const from = plan.records.get(id);
  if (!from) throw new Error(`no record ${id}`);
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, ...patch } as AnyRecord }],
  });
};
const strokes = (i: DisplayItem): (readonly PathCommand[])[] =>
  i.primitives.flatMap((p) => (p.kind === 'path' && p.stroke ? [p.d] : []));

const wallPlan = (...walls: (Partial<Wall> & Pick<Wall, 'id' | 'from' | 'to'>)[]): Plan => {
  const head = samplePlan().records.get('plan');
  const records: AnyRecord[] = [
    ...(head ? [head] : []),
    { id: 'fl-1', type: 'floor', name: 'F', levelMm: 0, northDeg: 270 },
    ...walls.map(
      (w): AnyRecord => ({
        type: 'wall',
        floorId: 'fl-1',
        thicknessMm: 100,
        heightMm: 2700,
        material: 'wood',
        ...w,
      }),
    ),
  ];
  return { ...emptyPlan, records: new Map(records.map((r) => [r.id, r])) };
};

describe('identity', () => {
  const plan = samplePlan();
  const before = draw(plan);

  it('keeps every item of an unchanged plan', () => {
    const again = draw(plan);
    expect(again.items.every((i, k) => i === before.items[k])).toBe(true);
  });

  it('renews only what a moved stand touches', () => {
    const moved = draw(replace(plan, 'st-12', { at: { xMm: 5100, yMm: 4600 } }));
    const same = new Set(before.items);
    const fresh = moved.items.filter((i) => !same.has(i)).map((i) => i.key);
    expect(fresh).toContain('fixture:fx-12');
    expect(fresh).toContain('stand:st-12');
    const geometry = fresh.filter((k) => !k.startsWith('label:') && !k.startsWith('throw:'));
    expect(geometry.filter((k) => !/12$|^cable:/.test(k))).toEqual([]);
    expect(moved.items.filter((i) => i.layer === 'architecture').every((i) => same.has(i))).toBe(true);
  });

  it('does not depend on what was drawn before', () => {
    const other = draw(samplePlan());
    expect(JSON.stringify(other)).toBe(JSON.stringify(before));
  });
});

describe('fixtures', () => {
  it('are broken in the setup they are off in, and only there', () => {
    const broken = (setup: string): boolean =>
      item(draw(samplePlan(), setup).items, 'fixture:fx-06').primitives.some(
        (p) => p.kind === 'symbol' && p.broken,
      );
    expect(broken('su-1')).toBe(true);
    expect(broken('su-2')).toBe(false);
  });

  it('stand where their stand stands, at true size, facing their mark', () => {
    const p = item(draw(samplePlan()).items, 'fixture:fx-07').primitives[0];
    if (p?.kind !== 'symbol') throw new Error('a fixture is a symbol');
    const stand = recordOf(samplePlan(), 'stand', 'st-7');
    expect([p.xMm, p.yMm]).toEqual([stand?.at.xMm, stand?.at.yMm]);
    expect([p.lengthMm, p.widthMm]).toEqual([150, 640]);
    const mark = recordOf(samplePlan(), 'mark', 'mk-1');
    const deg = (Math.atan2((mark?.at.yMm ?? 0) - p.yMm, (mark?.at.xMm ?? 0) - p.xMm) * 180) / Math.PI;
    expect(p.rotationDeg).toBeCloseTo((deg + 360) % 360, 6);
  });

  it('tell the throw in space, not its shadow on the floor', () => {
    // A fixture 3 m off its mark and 4 m higher: 5 m.
    let plan = replace(samplePlan(), 'mk-1', { at: { xMm: 3000, yMm: 0 }, heightMm: 1000 });
    plan = replace(plan, 'plan', { lengthUnits: 'metric' });
    plan = replace(plan, 'st-7', { at: { xMm: 0, yMm: 0 }, heightMm: 5000 });
    const texts = item(draw(plan).items, 'throw:fx-07').primitives.flatMap((p) =>
      p.kind === 'text' ? [p.text] : [],
    );
    expect(texts).toEqual(['5.00 m']);
  });
});

describe('walls', () => {
  it('of an L meet in one corner outside and one inside', () => {
    const plan = wallPlan(
      { id: 'a', from: { xMm: 0, yMm: 0 }, to: { xMm: 2000, yMm: 0 } },
      { id: 'b', from: { xMm: 2000, yMm: 0 }, to: { xMm: 2000, yMm: 2000 } },
    );
    const points = draw(plan)
      .items.filter((i) => i.layer === 'architecture')
      .flatMap(strokes)
      .flatMap((d) =>
        d.flatMap((c) => (c[0] === 'Z' ? [] : [`${Math.round(Number(c[1]))},${Math.round(Number(c[2]))}`])),
      );
    expect(points).toContain('2050,-50');
    expect(points).toContain('1950,50');
    // No line runs through the corner where the two bodies join.
    expect(points).not.toContain('2000,50');
    expect(points).not.toContain('2000,-50');
  });

  it('that butt into another draw no line inside it', () => {
    const plan = wallPlan(
      { id: 'a', from: { xMm: 0, yMm: 0 }, to: { xMm: 4000, yMm: 0 } },
      { id: 'b', from: { xMm: 2000, yMm: 0 }, to: { xMm: 2000, yMm: 2000 } },
    );
    const lines = draw(plan)
      .items.filter((i) => i.layer === 'architecture')
      .flatMap(strokes);
    // The near face of the long wall is open where the short one joins: 1950 to 2050.
    const near = lines.filter((d) => d.every((c) => c[0] !== 'Z' && Math.abs(Number(c[2]) - 50) < 0.5));
    const spans = near.map((d) => d.map((c) => Number(c[1])).sort((x, y) => x - y));
    expect(spans.some(([x0 = 0, x1 = 0]) => x0 < 2000 && x1 > 2000)).toBe(false);
    expect(near.length).toBe(2);
  });

  it('that meet three at a point leave no notch at the outer corner', () => {
    const plan = wallPlan(
      { id: 'a', from: { xMm: -2000, yMm: 0 }, to: { xMm: 0, yMm: 0 } },
      { id: 'b', from: { xMm: 0, yMm: 0 }, to: { xMm: 0, yMm: 2000 } },
      { id: 'c', from: { xMm: 0, yMm: 0 }, to: { xMm: -1500, yMm: 1500 } },
    );
    const points = draw(plan)
      .items.filter((i) => i.layer === 'architecture')
      .flatMap(strokes)
      .flatMap((d) =>
        d.flatMap((c) => (c[0] === 'Z' ? [] : [`${Math.round(Number(c[1]))},${Math.round(Number(c[2]))}`])),
      );
    expect(points).toContain('50,-50');
  });

  it('leave openings out of their solid', () => {
    const hatched = item(draw(samplePlan()).items, 'wall:wl-2').primitives.filter(
      (p) => p.kind === 'path' && p.fill?.hatch,
    );
    expect(hatched.length).toBe(2);
  });
});

describe('floor extents', () => {
  it('hold everything that stands on the floor', () => {
    const box = floorExtents(samplePlan(), 'fl-1');
    const wall = recordOf(samplePlan(), 'wall', 'wl-1');
    expect(box?.minX ?? 0).toBeLessThan(wall?.from.xMm ?? 0);
    const gen = recordOf(samplePlan(), 'source', 'so-2');
    expect(box?.maxX ?? 0).toBeGreaterThan(gen?.at.xMm ?? 0);
  });

  it('are nothing for an empty floor', () => {
    expect(floorExtents(wallPlan(), 'fl-1')).toBeUndefined();
  });
});

describe('labels', () => {
  it('are placed the same on every run and differ by scale only as they must', () => {
    const a = drawFloor(samplePlan(), { floorId: 'fl-1', setupId: 'su-1', nominalScale: 96 });
    const b = drawFloor(samplePlan(), { floorId: 'fl-1', setupId: 'su-1', nominalScale: 96 });
    expect(JSON.stringify(a.items)).toBe(JSON.stringify(b.items));
    const all = a.labels.full + a.labels.numberOnly.length + a.labels.leftOut.length;
    expect(all).toBe(14);
  });

  it('fall back to the number where there is no room, and say how many', () => {
    const small = drawFloor(samplePlan(), {
      floorId: 'fl-1',
      setupId: 'su-1',
      nominalScale: 400,
      bounds: { minX: -3000, minY: -3000, maxX: 12000, maxY: 9000 },
    });
    expect(small.labels.numberOnly.length + small.labels.leftOut.length).toBeGreaterThan(0);
  });

  it('number every unit once', () => {
    const texts = draw(samplePlan()).items.flatMap((i) =>
      i.key.startsWith('label:fx-')
        ? i.primitives.flatMap((p) => (p.kind === 'text' && p.capMm > 2 ? [p.text] : []))
        : [],
    );
    expect(texts.sort((a, b) => Number(a) - Number(b))).toEqual(
      Array.from({ length: 14 }, (_, i) => String(i + 1)),
    );
  });
});
