import type { Range } from '../../src/engines/battery/tables.ts';
import type { BatteryUnit } from '../../src/engines/battery/types.ts';
import { packKindSchema } from '../../src/plan/kinds/pack.ts';
import { recordSchemas } from '../../src/plan/records/index.ts';

const all = (value: number): Range => ({ low: value, plan: value, high: value });

/** A pack with so many ampere-hours that no current is beyond its rated test. */
const pack = (energyWh: number) =>
  packKindSchema.parse({
    id: 'pack',
    type: 'kind',
    slug: 'pack',
    name: 'pack',
    sizeMm: { lengthMm: 100, widthMm: 100 },
    massKg: 1,
    symbol: 'pack',
    basis: {},
    origin: { book: 'user', version: '1' },
    family: 'pack',
    chemistry: 'li-ion',
    plate: 'v-plate',
    cells: 4,
    voltsV: 14.4,
    fullV: 16.8,
    emptyV: 12,
    capacityAh: 1e6,
    energyWh,
    continuousA: 12,
    peakA: 16,
    chargeW: 60,
    chargeMin: 180,
  });

/** A unit on a pack, with every share given, so that a printed example can be worked through the engine. */
export const batteryUnit = (u: {
  readonly wh: number;
  readonly watts: number;
  readonly usable?: number;
  readonly soh?: number;
  readonly temperature?: number;
  readonly efficiency?: number;
}): BatteryUnit => ({
  fixture: recordSchemas.fixture.parse({
    id: 'unit-1',
    type: 'fixture',
    floorId: 'floor',
    kindId: 'kind',
    at: { xMm: 0, yMm: 0 },
    heightMm: 0,
    aim: { at: 'facing', facingDeg: 0 },
    support: { on: 'floor' },
    unit: '1',
  }),
  label: 'Unit 1',
  kindName: 'unit',
  mode: 'packs',
  pack: pack(u.wh),
  count: 1,
  joined: 'parallel',
  ratedWh: u.wh,
  usable: all((u.usable ?? 0.9) * (u.soh ?? 1) * (u.temperature ?? 1)),
  soh: all(u.soh ?? 1),
  temperature: all(u.temperature ?? 1),
  efficiency: u.efficiency ?? 1,
  idleW: 0,
  cutOff: undefined,
  floorPack: undefined,
  lead: undefined,
  loopOhm: 0,
  ratedW: u.watts,
  standbyW: 0,
  maxW: Number.POSITIVE_INFINITY,
  hotSwap: false,
  swapMin: 2,
  problem: undefined,
});
