import { describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { needKind } from '../../../src/gear/book.ts';
import { kindRecord } from '../../../src/gear/index.ts';
import { fixtureKindSchema } from '../../../src/plan/kinds/kinds.ts';
import { fixturePlace, type Plan, recordOf } from '../../../src/plan/plan.ts';
import { type AnyRecord, recordSchemas } from '../../../src/plan/records/index.ts';
import { smallPlan } from '../../support/small-plan.ts';

const led = needKind('europe', 'led-panel-60x60', 'fixture');
const cStand = needKind('europe', 'c-stand-40', 'stand');
const arm = needKind('europe', 'arm-grip-40', 'rigging');

const withRecords = (...records: readonly AnyRecord[]): Plan => {
  const base = smallPlan('Outlines', 0);
  return { ...base, records: new Map([...base.records, ...records.map((r) => [r.id, r] as const)]) };
};

const unit = (more: Record<string, unknown>): AnyRecord =>
  recordSchemas.fixture.parse({
    id: 'fx-1',
    type: 'fixture',
    floorId: 'floor-1',
    kindId: led.id,
    at: { xMm: 1000, yMm: 1000 },
    heightMm: 2000,
    aim: { at: 'facing', facingDeg: 0, tiltDeg: 0 },
    support: { on: 'floor' },
    unit: '1',
    ...more,
  });

const drawn = (plan: Plan, key: string) =>
  drawFloor(plan, { floorId: 'floor-1', setupId: undefined, nominalScale: 50 }).items.find(
    (i) => i.key === key,
  );

describe('a unit with a top view of its own', () => {
  // 600 mm across, 200 mm deep, a lens at the front (the lower edge of the file's view).
  const kind = kindRecord(
    fixtureKindSchema.parse({
      ...led,
      slug: 'own-view',
      sizeMm: { lengthMm: 200, widthMm: 600 },
      outlineSvg:
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-300 -100 600 200"><path d="M-300 -100L300 -100L300 100L-300 100Z"/><path d="M-20 60L20 60L20 100L-20 100Z"/></svg>',
    }),
  );

  test('is drawn by it at true size, its front where it faces', () => {
    const item = drawn(withRecords(kind, unit({ kindId: kind.id })), 'fixture:fx-1');
    expect(item?.primitives.map((p) => p.kind)).toEqual(['path', 'path']);
    const xs = (i: number): number[] => {
      const p = item?.primitives[i];
      return p?.kind === 'path' ? p.d.flatMap((c) => (c[0] === 'Z' ? [] : [Number(c[1])])) : [];
    };
    expect([Math.min(...xs(0)), Math.max(...xs(0))]).toEqual([900, 1100]);
    // It faces +x, so the lens is at the right.
    expect([Math.min(...xs(1)), Math.max(...xs(1))]).toEqual([1060, 1100]);
  });

  test('keeps its symbol where the view is too much or none', () => {
    for (const outlineSvg of ['', '<svg/>', `<path d="M0 0${'L1 1'.repeat(5000)}"/>`]) {
      const odd = kindRecord({ ...kind, outlineSvg } as typeof kind);
      const item = drawn(withRecords(odd, unit({ kindId: odd.id })), 'fixture:fx-1');
      expect(item?.primitives.map((p) => p.kind)).toEqual(['symbol']);
    }
  });
});

describe('a unit on an arm', () => {
  const stand: AnyRecord = recordSchemas.stand.parse({
    id: 'st-1',
    type: 'stand',
    floorId: 'floor-1',
    kindId: cStand.id,
    at: { xMm: 3000, yMm: 3000 },
    heightMm: 2200,
  });
  const on = (more: Record<string, unknown> = {}, fixture: Record<string, unknown> = {}) =>
    withRecords(
      led,
      cStand,
      arm,
      stand,
      unit({
        support: { on: 'stand', standId: 'st-1' },
        accessories: [arm.id],
        arm: { outMm: 800, ...more },
        ...fixture,
      }),
    );
  const place = (plan: Plan) => {
    const f = recordOf(plan, 'fixture', 'fx-1');
    return f && fixturePlace(plan, f);
  };

  test('is where the arm puts it, the way it faces unless a direction is given', () => {
    expect(place(on())).toEqual({ at: { xMm: 3800, yMm: 3000 }, heightMm: 2200 });
    expect(place(on({ directionDeg: 90 }))?.at).toEqual({ xMm: 3000, yMm: 3800 });
    expect(place(on({ outMm: 0 }))?.at).toEqual({ xMm: 3000, yMm: 3000 });
    // Without a figure the arm reaches as far as it goes.
    expect(place(on({ outMm: undefined }))?.at.xMm).toBe(3000 + (arm.reachMm ?? 0));
  });

  test('is drawn with the arm from the stand to the unit, and its counterweight on the other side', () => {
    const item = drawn(on({ counterKg: 5, counterMm: 400 }), 'arm:fx-1');
    expect(item?.primitives[0]).toMatchObject({
      kind: 'symbol',
      symbolId: arm.symbol,
      xMm: 3000,
      rotationDeg: 0,
    });
    expect(item?.box.maxX).toBeGreaterThanOrEqual(3800);
    expect(item?.primitives.at(-1)).toMatchObject({ kind: 'circle', xMm: 2600, yMm: 3000 });
    expect(drawn(on({}, { accessories: [] }), 'arm:fx-1')).toBeUndefined();
  });
});

describe('wall outlets', () => {
  const outlet = (more: Record<string, unknown>): AnyRecord =>
    recordSchemas.outlet.parse({
      id: 'ol-1',
      type: 'outlet',
      floorId: 'floor-1',
      at: { xMm: 0, yMm: 0 },
      sourceId: 'none',
      wayId: 'none',
      connector: 'nema-5-20',
      label: 'W1',
      ...more,
    });
  test.each([
    ['nema-5-20', undefined, 'outlet-duplex'],
    ['schuko-16', undefined, 'wall-outlet'],
    ['nema-5-20', 1, 'wall-outlet'],
    ['schuko-16', 2, 'outlet-duplex'],
    ['schuko-16', 4, 'outlet-quad'],
  ])('%s with %s sockets is drawn as %s, its back on the wall', (connector, sockets, symbolId) => {
    const item = drawn(withRecords(outlet({ connector, sockets })), 'outlet:ol-1');
    expect(item?.primitives[0]).toMatchObject({ symbolId });
    expect(item?.box.minX).toBeCloseTo(-0.25 * 50, 6);
  });
});
