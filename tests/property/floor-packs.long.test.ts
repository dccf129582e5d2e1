import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shootingDays } from '../../src/derive/schedule.ts';
import {
  batteryUnits,
  dayOf,
  drawAt,
  leastPacks,
  rotationOf,
  sharedPacks,
  supplyOf,
} from '../../src/engines/battery/index.ts';
import { burdened } from '../../src/engines/battery/model.ts';
import { levelOf, type Plan } from '../../src/plan/plan.ts';
import { recordSchemas } from '../../src/plan/records/index.ts';
import { daySummary } from '../../src/report/day.ts';
import { chargeParts } from '../../src/report/station-charge.ts';
import { batteryRig } from '../support/battery-plan.ts';
import { keepsItsLaws } from '../support/rotation-laws.ts';

/** Up to four units on one pack on the floor and one on a pack of its own, in two setups over two to four blocks. */
const shared: fc.Arbitrary<Plan> = fc
  .record({
    levels: fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })), {
      minLength: 1,
      maxLength: 4,
    }),
    blocks: fc.array(fc.tuple(fc.integer({ min: 10, max: 180 }), fc.integer({ min: 0, max: 60 })), {
      minLength: 2,
      maxLength: 4,
    }),
    count: fc.integer({ min: 1, max: 2 }),
    packs: fc.integer({ min: 1, max: 9 }),
    bays: fc.integer({ min: 0, max: 2 }),
    leadMm: fc.integer({ min: 0, max: 8000 }),
    hotSwap: fc.boolean(),
  })
  .map(({ levels, blocks, count, packs, bays, leadMm, hotSwap }) => {
    const r = batteryRig({ batteries: { sohPct: 100, cellC: 20, swapAtPct: 5 } });
    const other = r.b.setup('Other', 2);
    r.b.put(
      recordSchemas.pack.parse({
        id: 'p1',
        type: 'pack',
        floorId: 'floor',
        kindId: 'brick',
        at: { xMm: 0, yMm: 0 },
        label: 'P1',
        count,
        hotSwap,
      }),
    );
    levels.forEach(([a, b], i) => {
      const id = String(i + 1);
      r.b.fixture('lamp', {
        id,
        unit: id,
        onPacks: true,
        packFrom: { packId: 'p1', lead: { lengthMm: leadMm, conductor: 'mm2:2.5' } },
      });
      r.b.level(r.setup.id, id, a);
      r.b.level(other.id, id, b);
    });
    r.unit('9', { kindId: 'brick', count: 1, joined: 'parallel' });
    let at = 480;
    blocks.forEach(([long, gap], i) => {
      r.block(at, at + long, i % 2 === 0 ? {} : { setupId: other.id });
      at += long + gap;
    });
    r.stock('brick', packs);
    if (bays > 0) r.placeCharger('C1', bays);
    return r.b.plan();
  });

const play = (plan: Plan) => {
  const [day] = shootingDays(plan);
  if (!day) throw new Error('no day');
  const r = rotationOf(plan, day);
  return { day, r, result: dayOf(r, supplyOf(r)) };
};

describe('packs on the floor over a day', () => {
  it('battery-shared: no pack is in two places or used while it charges, and what leaves it is what its units and leads draw', () => {
    fc.assert(
      fc.property(shared, (plan) => {
        const { r, result } = play(plan);
        keepsItsLaws(r, result, supplyOf(r)('brick'));
        for (const l of leastPacks(r)) keepsItsLaws(r, l.day, l.packs);
        const [s] = sharedPacks(plan);
        const first = s?.units[0];
        if (!s || !first) throw new Error('no pack');
        for (const span of daySummary(plan, 1).sharedPacks[0]?.spans ?? []) {
          if (span.state === 'dark') continue;
          const watts = s.units.reduce((sum, u) => {
            const { levelPct } = levelOf(plan, span.setupId, u.fixture.id);
            return levelPct > 0 ? sum + drawAt(u, levelPct).packW : sum;
          }, 0);
          const gives = first.ratedWh * first.usable.plan * burdened(first, watts).rate.plan;
          const given = (span.fromSoc - span.toSoc) * gives;
          expect(given).toBeCloseTo((watts * (span.endMin - span.startMin)) / 60, 6);
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('battery-shared: every minute a unit should burn is burnt or told as dark, in step with its pack', () => {
    fc.assert(
      fc.property(shared, (plan) => {
        const s = daySummary(plan, 1);
        const [pack] = s.sharedPacks;
        for (const u of batteryUnits(plan)) {
          const lane = s.lanes.find((l) => l.fixtureId === u.fixture.id);
          const asked = s.blocks.reduce((sum, b) => {
            const { levelPct } = levelOf(plan, b.block.setupId ?? '', u.fixture.id);
            return levelPct > 0 ? sum + b.block.endMin - b.block.startMin : sum;
          }, 0);
          expect((lane?.burnsMin ?? 0) + (lane?.darkMin ?? 0)).toBeCloseTo(asked, 6);
          if (!u.floorPack) continue;
          for (const x of lane?.spans ?? [])
            expect(
              pack?.spans.some(
                (p) => p.state === x.state && p.startMin <= x.startMin + 1e-6 && p.endMin >= x.endMin - 1e-6,
              ),
            ).toBe(true);
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('battery-more: with one more pack in stock no unit goes dark sooner', () => {
    const darkMin = (plan: Plan): number => play(plan).result.firstDark?.darkMin ?? Number.POSITIVE_INFINITY;
    fc.assert(
      fc.property(shared, (plan) => {
        const stock = [...plan.records.values()].find((x) => x.type === 'stock');
        if (stock?.type !== 'stock') throw new Error('no stock');
        const more: Plan = {
          ...plan,
          records: new Map(plan.records).set(stock.id, { ...stock, count: stock.count + 1 }),
        };
        const short = (p: Plan): number => play(p).result.firstShort?.dueMin ?? Number.POSITIVE_INFINITY;
        expect(short(more)).toBeGreaterThanOrEqual(short(plan) - 1e-6);
        if (darkMin(plan) === Number.POSITIVE_INFINITY) expect(darkMin(more)).toBe(Number.POSITIVE_INFINITY);
      }),
      { numRuns: 80 },
    );
  }, 60_000);
});

describe('charging a power station', () => {
  const charger = fc.record({
    cellsW: fc.integer({ min: 20, max: 3000 }),
    usableWh: fc.integer({ min: 200, max: 5000 }),
    changeOver: fc.constantFrom(0.5, 0.8, 0.95),
    endC: fc.constantFrom(0.02, 0.05, 0.1),
  });

  it('station-charge: what goes in is what its charge rises by, never past full, never at more than its power', () => {
    fc.assert(
      fc.property(
        charger,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 900 }),
        (c, share, minutes) => {
          const parts = chargeParts(c, share, minutes);
          let at = share;
          for (const p of parts) {
            expect(p.fromShare).toBeCloseTo(at, 9);
            expect(((p.toMin - p.fromMin) / 60) * p.cellsW).toBeCloseTo(
              (p.toShare - p.fromShare) * c.usableWh,
              6,
            );
            expect(p.cellsW).toBeLessThanOrEqual(c.cellsW * (1 + 1e-9));
            expect(p.toMin).toBeLessThanOrEqual(minutes + 1e-9);
            at = p.toShare;
          }
          expect(at).toBeLessThanOrEqual(1 + 1e-9);
          // More time never gives less.
          expect(chargeParts(c, share, minutes + 10).at(-1)?.toShare ?? share).toBeGreaterThanOrEqual(
            at - 1e-9,
          );
        },
      ),
    );
  });
});
