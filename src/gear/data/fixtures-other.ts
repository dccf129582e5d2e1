import { type FixtureTable, fixtureEntries, row } from '../fixture.ts';
import type { Family } from '../shape.ts';

const T2800 = { cct: { minK: 2800, maxK: 2800 } };

const tables: readonly FixtureTable[] = [
  {
    source: 'fluorescent',
    style: 'bank',
    symbol: 'fluorescent-bank',
    profile: 'fluorescent',
    feed: 'domestic',
    also: 'fluorescent,bank,tube,soft',
    common: { cct: { minK: 3200, maxK: 5600 } },
    rows: [
      row(
        'fluorescent-2x60',
        'Fluorescent bank {2 ft|60 cm}, 2 tubes, 110 W',
        110,
        4,
        [680, 200],
        '16',
        [120, 900],
      ),
      row(
        'fluorescent-4x120',
        'Fluorescent bank {4 ft|120 cm}, 4 tubes, 320 W',
        320,
        8,
        [1280, 340],
        '16',
        [120, 3500],
      ),
    ],
  },
  {
    source: 'tungsten',
    style: 'balloon',
    symbol: 'balloon',
    profile: 'tungsten',
    feed: 'high',
    also: 'balloon,globe,overhead,tungsten',
    common: { cct: { minK: 3200, maxK: 3200 } },
    rows: [
      row(
        'balloon-500-12kw',
        'Helium balloon {16 ft|5 m}, tungsten, 12 kW',
        12000,
        35,
        [5000, 5000],
        'hung',
        [340, 24000],
      ),
    ],
  },
  {
    source: 'tungsten',
    style: 'lantern',
    symbol: 'lantern',
    profile: 'tungsten',
    feed: 'domestic',
    also: 'lantern,paper,globe,tungsten',
    common: T2800,
    rows: [
      row(
        'paper-lantern-250w',
        'Paper lantern, tungsten, 250 W',
        250,
        1,
        [600, 600],
        'hung 16',
        [340, 330],
        'paper globe',
      ),
    ],
  },
  {
    source: 'tungsten',
    style: 'practical',
    symbol: 'practical-lamp',
    profile: 'tungsten',
    feed: 'domestic',
    also: 'practical,lamp,table lamp,floor lamp,tungsten',
    common: T2800,
    rows: [
      row('practical-table-60w', 'Practical: table lamp 60 W', 60, 2.5, [350, 350], 'floor', [340, 60]),
      row('practical-floor-100w', 'Practical: floor lamp 100 W', 100, 5, [400, 400], 'floor', [340, 115]),
    ],
  },
  {
    source: 'tungsten',
    style: 'practical',
    symbol: 'practical-bulb',
    profile: 'tungsten',
    feed: 'domestic',
    also: 'practical,bulb,tungsten',
    common: T2800,
    rows: [
      row('practical-candle-25w', 'Practical: candle bulb 25 W', 25, 0.1, [35, 35], 'socket', [340, 20]),
      row('practical-bulb-40w', 'Practical: bulb 40 W', 40, 0.1, [60, 60], 'socket', [340, 38]),
      row('photoflood-250w', 'Photoflood bulb 250 W', 250, 0.1, [70, 70], 'socket', [340, 560], '', {
        cct: { minK: 3400, maxK: 3400 },
      }),
    ],
  },
];

export const otherFixtures: Family = (practice) => fixtureEntries(tables, practice);
