import { chargerKindSchema } from '../../src/plan/kinds/charger.ts';
import type { ChargerKind, PackIn, PackKind } from '../../src/plan/kinds/kinds.ts';
import { packKindSchema } from '../../src/plan/kinds/pack.ts';
import type { Block, PackUse, RecordOf } from '../../src/plan/records/index.ts';
import { recordSchemas } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

const common = (slug: string) => ({
  id: slug,
  type: 'kind',
  slug,
  name: slug,
  sizeMm: { lengthMm: 100, widthMm: 100 },
  massKg: 1,
  symbol: slug,
  basis: {},
  origin: { book: 'user', version: '1' },
});

/** A plan with packs: a brick of 98 Wh and a charger for it, units of 60 W with a plate, one setup. */
export const batteryRig = (plan: Partial<RecordOf<'plan'>> = {}) => {
  const b = new PlanBuilder(plan);
  const setup = b.setup('Day', 1);
  const pack = (slug: string, k: Partial<PackKind> = {}): PackKind =>
    b.put(
      packKindSchema.parse({
        ...common(slug),
        family: 'pack',
        chemistry: 'li-ion',
        plate: 'v-plate',
        cells: 4,
        voltsV: 14.4,
        fullV: 16.8,
        emptyV: 12,
        capacityAh: 6.8,
        energyWh: 98,
        continuousA: 10,
        peakA: 14,
        chargeW: 50,
        chargeMin: 170,
        ...k,
      }),
    );
  const brick = pack('brick');
  const charger: ChargerKind = b.put(
    chargerKindSchema.parse({
      ...common('charger-2'),
      family: 'charger',
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      load: { wattsW: 120, powerFactor: 1, model: 'constant-power', voltsMinV: 100, voltsMaxV: 250 },
      plates: ['v-plate'],
      chemistries: ['li-ion'],
      packVolts: { minV: 14.4, maxV: 14.8 },
      bays: 2,
      together: 2,
      bayW: 50,
    }),
  );
  const packIn: PackIn = {
    plates: ['v-plate'],
    packs: 1,
    joined: 'parallel',
    minV: 11,
    maxV: 17,
    hotSwap: false,
  };
  b.fixtureKind('lamp', { wattsW: 60 }, { packIn });
  const unit = (id: string, use?: PackUse, kindId = 'lamp') =>
    b.fixture(kindId, { id, unit: id, onPacks: true, ...(use ? { packs: use } : {}) });
  let blocks = 0;
  const block = (startMin: number, endMin: number, x: Partial<Block> = {}): Block =>
    b.put(
      recordSchemas.block.parse({
        id: `block-${++blocks}`,
        type: 'block',
        day: 1,
        startMin,
        endMin,
        what: 'setup',
        setupId: setup.id,
        ...x,
      }),
    );
  const stock = (kindId: string, count: number, reserve = 0) =>
    b.put(recordSchemas.stock.parse({ id: `stock-${kindId}`, type: 'stock', kindId, count, reserve }));
  const placeCharger = (id: string, bays?: number) =>
    b.put(
      recordSchemas.charger.parse({
        id,
        type: 'charger',
        floorId: 'floor',
        kindId: charger.id,
        at: { xMm: 0, yMm: 0 },
        label: id,
        ...(bays === undefined ? {} : { bays }),
      }),
    );
  return { b, setup, brick, pack, charger, unit, block, stock, placeCharger };
};
