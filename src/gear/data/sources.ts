import type { System } from '../../plan/kinds/kinds.ts';
import type { Practice } from '../../plan/records/index.ts';
import { mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';
import { group, type WayGroup, waysAndOutlets } from '../ways.ts';

const LEGS: Readonly<Record<System, number>> = {
  '120': 1,
  '120/240': 2,
  '120/208': 3,
  '120/240-delta': 3,
  '277/480': 3,
  '347/600': 3,
  '230': 1,
  '230/400': 3,
  '230-it': 3,
};

interface SourceRow {
  readonly slug: string;
  readonly name: string;
  readonly what: 'generator' | 'service' | 'house-panel' | 'wall-circuit' | 'power-station';
  readonly system: System;
  readonly massKg: number;
  readonly size: readonly [widthMm: number, lengthMm: number];
  readonly ratedKw?: number;
  readonly mainA?: number;
  readonly groups?: readonly WayGroup[];
  readonly also?: string;
  /** Of a power station: what its cells hold. */
  readonly storedWh?: number;
  /** What it draws at its inlet while it is charged, and the share its inverter gives of what it takes from the cells. */
  readonly chargeW?: number;
  readonly inverterPct?: number;
}

const SYMBOLS = {
  service: 'service',
  'house-panel': 'house-panel',
  'wall-circuit': 'wall-circuit',
  'power-station': 'power-station',
} as const;

/** Carried by hand up to so many kW; from so many kW on the bed of a truck. */
const PORTABLE_KW = 6;
const TRUCK_KW = 140;

const symbolOf = (r: SourceRow): string => {
  if (r.what !== 'generator') return SYMBOLS[r.what];
  const kw = r.ratedKw ?? 0;
  return kw <= PORTABLE_KW ? 'generator-portable' : kw < TRUCK_KW ? 'generator' : 'generator-truck';
};

const generator = (
  system: System,
  ratedKw: number,
  mainA: number,
  massKg: number,
  size: readonly [number, number],
  groups: readonly WayGroup[],
  also = '',
): SourceRow => {
  const phase = LEGS[system] === 3 ? 'three-phase' : 'single-phase';
  const three = LEGS[system] === 3 ? '-3ph' : '-1ph';
  return {
    slug: `generator-${String(ratedKw).replace('.', '-')}kw${three}`,
    name: `Generator ${ratedKw} kW, ${phase} ${system} V`,
    what: 'generator',
    system,
    massKg,
    size,
    ratedKw,
    mainA,
    groups,
    also,
  };
};

const gfci = { rcdMa: 5 };
const rcd30 = { rcdMa: 30 };
const cam3 = 'single-pole-400-3';
const cam2 = 'single-pole-400-2';

// Main breakers: a standard size at or below full-load amps at 0.8 power factor.
const northAmerica: readonly SourceRow[] = [
  generator(
    '120',
    2,
    16,
    21,
    [300, 510],
    [group(1, 16, 'nema-5-20', 'na', { ...gfci, outlets: 2 })],
    'portable,inverter,petrol',
  ),
  generator(
    '120/240',
    6,
    30,
    90,
    [520, 700],
    [group(2, 20, 'nema-5-20', 'na', gfci), group(1, 30, 'nema-l14-30', 'na')],
    'portable,petrol',
  ),
  generator(
    '120/240',
    20,
    100,
    900,
    [1000, 2300],
    [group(1, 100, cam2, 'na'), group(2, 20, 'nema-5-20', 'na', gfci), group(1, 50, 'ca-50', 'na')],
    'towable,diesel,quiet',
  ),
  generator(
    '120/240',
    45,
    200,
    1600,
    [1300, 3200],
    [group(1, 200, cam2, 'na'), group(4, 20, 'nema-5-20', 'na', gfci)],
    'towable,diesel,quiet',
  ),
  generator(
    '120/208',
    20,
    70,
    950,
    [1000, 2300],
    [group(1, 70, cam3, 'na'), group(3, 20, 'nema-5-20', 'na', gfci)],
    'towable,diesel,quiet',
  ),
  generator(
    '120/208',
    45,
    150,
    1700,
    [1300, 3200],
    [group(1, 150, cam3, 'na'), group(3, 20, 'nema-5-20', 'na', gfci)],
    'towable,diesel,quiet',
  ),
  generator(
    '120/208',
    60,
    200,
    2200,
    [1400, 3600],
    [group(1, 200, cam3, 'na'), group(3, 20, 'nema-5-20', 'na', gfci)],
    'towable,diesel,quiet',
  ),
  generator(
    '120/208',
    100,
    300,
    3100,
    [1700, 4200],
    [group(1, 300, cam3, 'na'), group(3, 20, 'nema-5-20', 'na', gfci)],
    'towable,diesel,quiet',
  ),
  generator(
    '120/208',
    144,
    500,
    4500,
    [2100, 5200],
    [group(2, 300, cam3, 'na'), group(3, 20, 'nema-5-20', 'na', gfci)],
    'towable,truck,diesel,quiet',
  ),
  {
    slug: 'house-panel-120-240',
    name: 'House panel, single-phase 120/240 V',
    what: 'house-panel',
    system: '120/240',
    massKg: 0,
    size: [400, 120],
    also: 'breaker panel',
  },
  {
    slug: 'house-panel-120-208',
    name: 'House panel, three-phase 120/208 V',
    what: 'house-panel',
    system: '120/208',
    massKg: 0,
    size: [500, 150],
    also: 'breaker panel',
  },
  {
    slug: 'wall-circuit-15',
    name: 'Wall circuit 15 A, 120 V',
    what: 'wall-circuit',
    system: '120',
    massKg: 0,
    size: [120, 60],
    groups: [group(1, 15, 'nema-5-15', 'na', { outlets: 2 })],
  },
  {
    slug: 'wall-circuit-20',
    name: 'Wall circuit 20 A, 120 V',
    what: 'wall-circuit',
    system: '120',
    massKg: 0,
    size: [120, 60],
    groups: [group(1, 20, 'nema-5-20', 'na', { outlets: 2 })],
  },
  {
    slug: 'service-200',
    name: 'Service 200 A, three-phase 120/208 V',
    what: 'service',
    system: '120/208',
    massKg: 0,
    size: [800, 300],
    mainA: 200,
    groups: [group(1, 200, cam3, 'na')],
    also: 'company switch,tie-in',
  },
  {
    slug: 'service-400',
    name: 'Service 400 A, three-phase 120/208 V',
    what: 'service',
    system: '120/208',
    massKg: 0,
    size: [900, 350],
    mainA: 400,
    groups: [group(1, 400, cam3, 'na')],
    also: 'company switch,tie-in',
  },
  {
    slug: 'service-200-1ph',
    name: 'Service 200 A, single-phase 120/240 V',
    what: 'service',
    system: '120/240',
    massKg: 0,
    size: [800, 300],
    mainA: 200,
    groups: [group(1, 200, cam2, 'na')],
    also: 'company switch,tie-in',
  },
  {
    slug: 'service-200-delta',
    name: 'Service 200 A, 120/240 V delta with a high leg',
    what: 'service',
    system: '120/240-delta',
    massKg: 0,
    size: [800, 300],
    mainA: 200,
    groups: [group(1, 200, cam3, 'na')],
    also: 'tie-in,wild leg,red leg',
  },
  {
    slug: 'service-200-480',
    name: 'Service 200 A, three-phase 277/480 V, for a transformer',
    what: 'service',
    system: '277/480',
    massKg: 0,
    size: [800, 350],
    mainA: 200,
    groups: [group(1, 200, cam3, 'na'), group(1, 100, cam2, 'na')],
    also: 'tie-in',
  },
  {
    slug: 'service-200-600',
    name: 'Service 200 A, three-phase 347/600 V, for a transformer',
    what: 'service',
    system: '347/600',
    massKg: 0,
    size: [800, 350],
    mainA: 200,
    groups: [group(1, 200, cam3, 'na')],
    also: 'tie-in,canada',
  },
  {
    slug: 'power-station-600w',
    name: 'Power station 600 W, 120 V',
    what: 'power-station',
    system: '120',
    massKg: 7,
    size: [200, 290],
    ratedKw: 0.6,
    storedWh: 550,
    chargeW: 200,
    inverterPct: 85,
    groups: [group(1, 15, 'nema-5-15', 'na', { outlets: 2 })],
    also: 'battery',
  },
  {
    slug: 'power-station-1800w',
    name: 'Power station 1.8 kW, 120 V',
    what: 'power-station',
    system: '120',
    massKg: 22,
    size: [280, 420],
    ratedKw: 1.8,
    storedWh: 1500,
    chargeW: 800,
    inverterPct: 88,
    groups: [group(1, 20, 'nema-5-20', 'na', { outlets: 4 })],
    also: 'battery',
  },
  {
    slug: 'power-station-3600w',
    name: 'Power station 3.6 kW, 120 V',
    what: 'power-station',
    system: '120',
    massKg: 50,
    size: [320, 650],
    ratedKw: 3.6,
    storedWh: 3600,
    chargeW: 1400,
    inverterPct: 90,
    mainA: 30,
    groups: [group(2, 20, 'nema-5-20', 'na', { outlets: 2 })],
    also: 'battery',
  },
];

const europe: readonly SourceRow[] = [
  generator(
    '230',
    2,
    10,
    21,
    [300, 510],
    [group(1, 10, 'schuko-16', 'B', { ...rcd30, outlets: 2 })],
    'portable,inverter,petrol',
  ),
  generator(
    '230',
    6,
    32,
    90,
    [520, 700],
    [group(1, 32, 'iec-32-1', 'C', rcd30), group(2, 16, 'schuko-16', 'C', rcd30)],
    'portable,petrol',
  ),
  generator(
    '230/400',
    16,
    25,
    700,
    [950, 2100],
    [group(1, 25, 'iec-32-3', 'C'), group(2, 16, 'schuko-16', 'C', rcd30)],
    'towable,diesel,quiet',
  ),
  generator(
    '230/400',
    32,
    50,
    1200,
    [1100, 2600],
    [group(1, 50, 'iec-63-3', 'C'), group(1, 32, 'iec-32-3', 'C'), group(3, 16, 'iec-16-1', 'C', rcd30)],
    'towable,diesel,quiet',
  ),
  generator(
    '230/400',
    48,
    80,
    1700,
    [1300, 3200],
    [group(1, 80, 'iec-125-3', 'C'), group(1, 63, 'iec-63-3', 'C'), group(3, 16, 'iec-16-1', 'C', rcd30)],
    'towable,diesel,quiet',
  ),
  generator(
    '230/400',
    80,
    125,
    2400,
    [1500, 3800],
    [group(1, 125, 'iec-125-3', 'C'), group(2, 63, 'iec-63-3', 'C'), group(3, 16, 'iec-16-1', 'C', rcd30)],
    'towable,diesel,quiet',
  ),
  generator(
    '230/400',
    160,
    250,
    3900,
    [1900, 4800],
    [group(1, 250, 'single-pole-400-eu-3', 'C'), group(2, 125, 'iec-125-3', 'C')],
    'towable,diesel,quiet',
  ),
  {
    slug: 'house-panel-230',
    name: 'House panel, single-phase 230 V',
    what: 'house-panel',
    system: '230',
    massKg: 0,
    size: [350, 110],
    also: 'consumer unit',
  },
  {
    slug: 'house-panel-230-400',
    name: 'House panel, three-phase 230/400 V',
    what: 'house-panel',
    system: '230/400',
    massKg: 0,
    size: [500, 140],
    also: 'distribution board',
  },
  {
    slug: 'wall-circuit-16',
    name: 'Wall circuit 16 A, 230 V',
    what: 'wall-circuit',
    system: '230',
    massKg: 0,
    size: [120, 60],
    groups: [group(1, 16, 'schuko-16', 'B', { ...rcd30, outlets: 2 })],
  },
  {
    slug: 'wall-circuit-13-ring',
    name: 'Wall circuit, 13 A outlets on a 32 A ring, 230 V',
    what: 'wall-circuit',
    system: '230',
    massKg: 0,
    size: [150, 60],
    groups: [group(1, 32, 'bs-1363', 'B', { ...rcd30, outlets: 2 })],
    also: 'ring final',
  },
  {
    slug: 'wall-circuit-32',
    name: 'Wall circuit 32 A, 230 V',
    what: 'wall-circuit',
    system: '230',
    massKg: 0,
    size: [120, 80],
    groups: [group(1, 32, 'iec-32-1', 'C', rcd30)],
  },
  {
    slug: 'service-63',
    name: 'Service 63 A, three-phase 230/400 V',
    what: 'service',
    system: '230/400',
    massKg: 0,
    size: [500, 250],
    mainA: 63,
    groups: [group(1, 63, 'iec-63-3', 'C')],
  },
  {
    slug: 'service-125',
    name: 'Service 125 A, three-phase 230/400 V',
    what: 'service',
    system: '230/400',
    massKg: 0,
    size: [600, 300],
    mainA: 125,
    groups: [group(1, 125, 'iec-125-3', 'C')],
  },
  {
    slug: 'service-250',
    name: 'Service 250 A, three-phase 230/400 V',
    what: 'service',
    system: '230/400',
    massKg: 0,
    size: [800, 350],
    mainA: 250,
    groups: [group(2, 125, 'iec-125-3', 'C'), group(2, 63, 'iec-63-3', 'C')],
  },
  {
    slug: 'house-panel-230-it',
    name: 'House panel, 230 V between lines, no neutral',
    what: 'house-panel',
    system: '230-it',
    massKg: 0,
    size: [400, 120],
    also: 'consumer unit,it supply',
  },
  {
    slug: 'service-125-it',
    name: 'Service 125 A, 230 V between lines, no neutral',
    what: 'service',
    system: '230-it',
    massKg: 0,
    size: [600, 300],
    mainA: 125,
    groups: [group(1, 125, 'single-pole-400-eu-3', 'C')],
    also: 'it supply,for a transformer',
  },
  {
    slug: 'power-station-600w',
    name: 'Power station 600 W, 230 V',
    what: 'power-station',
    system: '230',
    massKg: 7,
    size: [200, 290],
    ratedKw: 0.6,
    storedWh: 550,
    chargeW: 200,
    inverterPct: 85,
    groups: [group(1, 6, 'schuko-16', 'B', { outlets: 2 })],
    also: 'battery',
  },
  {
    slug: 'power-station-2000w',
    name: 'Power station 2 kW, 230 V',
    what: 'power-station',
    system: '230',
    massKg: 23,
    size: [280, 420],
    ratedKw: 2,
    storedWh: 2000,
    chargeW: 1000,
    inverterPct: 88,
    groups: [group(1, 10, 'schuko-16', 'C', { outlets: 4 })],
    also: 'battery',
  },
  {
    slug: 'power-station-3600w',
    name: 'Power station 3.6 kW, 230 V',
    what: 'power-station',
    system: '230',
    massKg: 50,
    size: [320, 650],
    ratedKw: 3.6,
    storedWh: 3600,
    chargeW: 2000,
    inverterPct: 90,
    groups: [group(1, 16, 'schuko-16', 'C', { outlets: 4 })],
    also: 'battery',
  },
];

/** Litres in the tank of a set by its rated kilowatts: a few for one carried by hand, a day's worth for one on wheels (assumed). */
const tankLitres = (kw: number): number =>
  kw <= 3 ? 5 : kw <= PORTABLE_KW ? 25 : kw <= 20 ? 150 : kw <= 60 ? 300 : kw <= 110 ? 500 : 800;

/** Generators carry a kVA rating at 0.8 power factor, as they are sold. */
const GENERATOR_PF = 0.8;

/** For a moment, at switching on, a station gives so many times its rating. */
const SURGE = 2;
const STATION_BASIS = {
  surgeW: 'twice its rating, assumed: its maker’s figure comes first',
  inverterPct: 'within the published 80 to 90 %, better for larger ones; assumed',
  load: 'what stations of its size draw while they are charged, assumed',
};

const stationOf = (practice: Practice, r: SourceRow) => {
  const { load, inlets } = mains(practice, 'domestic', 'led', r.chargeW ?? 0, { standbyW: 2 });
  return {
    storedWh: r.storedWh,
    surgeW: SURGE * 1000 * (r.ratedKw ?? 0),
    inverterPct: r.inverterPct,
    ...(r.chargeW === undefined ? {} : { inlets, load }),
  };
};

export const sourceKinds: Family = (practice: Practice) =>
  (practice === 'north-america' ? northAmerica : europe).map(
    (r): Entry => ({
      family: 'source',
      slug: r.slug,
      name: r.name,
      also: [r.what.replace('-', ' '), ...(r.also?.split(',').filter(Boolean) ?? [])],
      what: r.what,
      system: r.system,
      massKg: r.massKg,
      sizeMm: { widthMm: r.size[0], lengthMm: r.size[1] },
      symbol: symbolOf(r),
      ...(r.ratedKw === undefined ? {} : { ratedKw: r.ratedKw }),
      ...(r.what === 'generator' && r.ratedKw !== undefined
        ? { ratedKva: r.ratedKw / GENERATOR_PF, tankL: tankLitres(r.ratedKw) }
        : {}),
      ...(r.storedWh === undefined ? {} : stationOf(practice, r)),
      ...(r.mainA === undefined ? {} : { mainBreakerA: r.mainA }),
      ...waysAndOutlets(r.groups ?? [], LEGS[r.system]),
      basis: {
        all: COMMON,
        ...(r.what === 'generator' ? { tankL: 'assumed' } : {}),
        ...(r.storedWh === undefined ? {} : STATION_BASIS),
      },
    }),
  );
