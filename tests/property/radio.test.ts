import fc from 'fast-check';
import { expect, test } from 'vitest';
import { groundOf, hopsTo } from '../../src/engines/radio/budget.ts';
import { coverage, endAt } from '../../src/engines/radio/coverage.ts';
import { binOf, byDirection } from '../../src/engines/radio/directions.ts';
import { bestSpots, computeRadio } from '../../src/engines/radio/index.ts';
import { barriersDb } from '../../src/engines/radio/path.ts';
import { sceneOf } from '../../src/engines/radio/scene.ts';
import { hopTerms } from '../../src/engines/radio/terms.ts';
import { wallMaterials } from '../../src/plan/records/place.ts';
import { RadioRig } from '../support/radio-rig.ts';

const metres = fc.integer({ min: 0, max: 30_000 }).map((mm) => mm / 1000);
const spot = fc.tuple(metres, metres);
const height = fc.integer({ min: 0, max: 6000 });

const world = fc.record({
  walls: fc.array(
    fc.record({
      from: spot,
      to: spot,
      material: fc.constantFrom(...wallMaterials),
      heightMm: fc.integer({ min: 200, max: 5000 }),
      thicknessMm: fc.double({ min: 5, max: 400, noNaN: true }),
      hole: fc.boolean(),
    }),
    { maxLength: 25 },
  ),
  pieces: fc.array(fc.record({ at: spot, heightMm: height, known: fc.boolean() }), { maxLength: 10 }),
  tx: fc.record({ at: spot, heightMm: height }),
  units: fc.array(fc.record({ at: spot, heightMm: height }), { minLength: 1, maxLength: 6 }),
  crowd: fc.constantFrom('none', 'few', 'many', undefined),
  wifi: fc.option(fc.array(fc.constantFrom(1, 6, 11, 13, 36), { maxLength: 4 }), { nil: undefined }),
  ceilingMm: fc.option(fc.integer({ min: 2000, max: 9000 }), { nil: undefined }),
});

type World = typeof world extends fc.Arbitrary<infer T> ? T : never;

const rigOf = (w: World): { b: RadioRig; txId: string; unitIds: string[] } => {
  const b = new RadioRig({
    radio: {
      ...(w.crowd === undefined ? {} : { crowd: w.crowd }),
      ...(w.wifi === undefined ? {} : { wifiChannels: w.wifi }),
    },
  });
  if (w.ceilingMm !== undefined) b.put({ ...b.records.get('floor'), ceilingMm: w.ceilingMm } as never);
  for (const x of w.walls) {
    const wall = b.wall(x.from, x.to, x.material, { heightMm: x.heightMm, thicknessMm: x.thicknessMm });
    if (x.hole) b.opening(wall.id, { what: 'door', offsetMm: 500, widthMm: 1500, heightMm: 2100 });
  }
  for (const p of w.pieces) {
    const { material, ...bare } = b.piece(p.at[0], p.at[1], { heightMm: p.heightMm });
    b.put(p.known ? { ...bare, material } : bare);
  }
  const tx = b.device(w.tx.at[0], w.tx.at[1], { heightMm: w.tx.heightMm });
  const unitIds = w.units.map((u) => b.unit(u.at[0], u.at[1], { heightMm: u.heightMm }).id);
  return { b, txId: tx.id, unitIds };
};

test('radio-margin: is a number for every pair, and the sum of its terms', () => {
  fc.assert(
    fc.property(world, (w) => {
      const { b, txId, unitIds } = rigOf(w);
      const r = computeRadio(b.plan());
      const s = r.model.senders.get(txId);
      for (const id of unitIds) {
        const link = r.links.get(id);
        const l = r.model.listeners.get(id);
        if (!s || !l || !link) throw new Error('no link');
        expect(Number.isFinite(link.marginDb)).toBe(true);
        const terms = hopTerms(r.grounds(s.fMhz), s, l, (x) => x);
        expect(terms.reduce((sum, t) => sum + t.db, 0)).toBeCloseTo(link.marginDb, 6);
        expect(terms.every((t) => t.from !== '')).toBe(true);
      }
    }),
    { numRuns: 150 },
  );
});

test('radio-wall: what is in the way costs the same from either end', () => {
  fc.assert(
    fc.property(world, (w) => {
      const scene = sceneOf(rigOf(w).b.plan(), 2400);
      const p = { x: w.tx.at[0], y: w.tx.at[1], z: w.tx.heightMm / 1000 };
      for (const u of w.units) {
        const q = { x: u.at[0], y: u.at[1], z: u.heightMm / 1000 };
        expect(barriersDb(scene, p, q)).toBeCloseTo(barriersDb(scene, q, p), 6);
        expect(barriersDb(scene, p, q)).toBeGreaterThanOrEqual(0);
      }
    }),
    { numRuns: 150 },
  );
});

test('radio-wall: one wall more never makes a link better', () => {
  fc.assert(
    fc.property(world, spot, spot, (w, from, to) => {
      // With a ceiling given, so that another wall does not change which walls have room above them.
      const { b, unitIds } = rigOf({ ...w, ceilingMm: w.ceilingMm ?? 6000 });
      const before = computeRadio(b.plan());
      b.wall(from, to, 'brick');
      const after = computeRadio(b.plan());
      for (const id of unitIds)
        expect(after.links.get(id)?.marginDb ?? 0).toBeLessThanOrEqual(
          (before.links.get(id)?.marginDb ?? 0) + 1e-9,
        );
    }),
    { numRuns: 100 },
  );
});

test('radio-coverage: looking only at the walls in a direction gives what all walls give', () => {
  fc.assert(
    fc.property(world, fc.array(spot, { minLength: 5, maxLength: 20 }), (w, places) => {
      const scene = sceneOf(rigOf(w).b.plan(), 2400);
      const p = { x: w.tx.at[0], y: w.tx.at[1], z: w.tx.heightMm / 1000 };
      const bins = byDirection(scene, p.x, p.y);
      for (const [x, y] of places) {
        const q = { x, y, z: 1.4 };
        const only = bins[binOf(x - p.x, y - p.y)] ?? [];
        expect(barriersDb(scene, p, q, undefined, only)).toBeCloseTo(barriersDb(scene, p, q), 9);
      }
    }),
    { numRuns: 150 },
  );
});

test('radio-coverage: a place of the picture has the margin of a link to it', () => {
  fc.assert(
    fc.property(world, fc.nat(), (w, pick) => {
      const { b, txId } = rigOf(w);
      const plan = b.plan();
      const grid = coverage(plan, { floorId: 'floor', senderIds: [txId], stepM: 1.5, heightM: 1.2 });
      if (!grid) throw new Error('no picture');
      const r = computeRadio(plan);
      const s = r.model.senders.get(txId);
      if (!s) throw new Error('no sender');
      const hop = hopsTo(groundOf(plan, r.model.air, s.fMhz), s, 'floor');
      for (let k = 0; k < 10; k++) {
        const i = (pick + k * 7919) % grid.marginDb.length;
        const xMm = grid.originXMm + (i % grid.columns) * grid.stepMm;
        const yMm = grid.originYMm + Math.floor(i / grid.columns) * grid.stepMm;
        const end = endAt(plan, 'floor', xMm, yMm, 1.2);
        const m = hop({ ...end, gainDbi: 0, sensitivityDbm: grid.sensitivityDbm });
        expect(grid.marginDb[i]).toBeCloseTo(m, 3);
      }
    }),
    { numRuns: 60 },
  );
});

test('radio-spots: no free place is better for the worst unit than the best one found', () => {
  fc.assert(
    fc.property(world, (w) => {
      const { b, txId, unitIds } = rigOf(w);
      const plan = b.plan();
      const found = bestSpots(plan, { floorId: 'floor', count: 1, senderId: txId, runnersUp: 3 });
      const [best, ...rest] = found.choices;
      if (!best) return;
      const at = best.places[0];
      for (const c of rest) expect(c.worstDb).toBeLessThanOrEqual(best.worstDb + 1e-4);
      // Moved there, the plan itself has that margin.
      const d = b.records.get(txId);
      if (d?.type !== 'device' || !at) throw new Error('no transmitter');
      b.put({ ...d, at: { xMm: at.xMm, yMm: at.yMm }, heightMm: at.heightMm });
      const moved = computeRadio(b.plan());
      const worst = Math.min(...unitIds.map((id) => moved.links.get(id)?.marginDb ?? Number.NaN));
      expect(worst).toBeCloseTo(best.worstDb, 3);
    }),
    { numRuns: 25 },
  );
});
