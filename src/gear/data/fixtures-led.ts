import { type FixtureRow, type FixtureTable, fixtureEntries, row } from '../fixture.ts';
import type { Family } from '../shape.ts';

const BI = { cct: { minK: 2700, maxK: 6500 } };
const DAY = { cct: { minK: 5600, maxK: 5600 } };
const COLOR = { cct: { minK: 2000, maxK: 10000, color: true } };

const mode = (id: string, name: string, slots: number, parts = 1) => ({ id, name, slots, parts });
const dim = { modes: [mode('dim', 'Level', 1), mode('dim-fine', 'Level, fine', 2)] };
const white = {
  modes: [
    mode('white', 'Level and colour temperature', 2),
    mode('white-fine', 'Level and colour temperature, fine', 4),
  ],
};
const full = {
  modes: [
    mode('white', 'Level and colour temperature', 2),
    mode('hue', 'Level, colour temperature, hue and saturation', 5),
    mode('rgbw', 'Level, red, green, blue, white', 5),
    mode('full', 'All functions, fine', 16),
  ],
};
/** Pixel modes: one colour for the whole, or so many groups of red, green, blue. */
const pixels = (...groups: readonly number[]) => ({
  modes: [
    mode('rgb', 'One colour: red, green, blue', 3),
    mode('hue', 'Level, colour temperature, hue and saturation', 5),
    ...groups.map((n) => mode(`pixels-${n}`, `${n} pixels of red, green, blue`, n * 3, n)),
  ],
});

/** Units of an older build have a bank of ten switches: nine for the address, one for how they work. */
const SWITCHED = [mode('rgb', 'Red, green, blue', 3), mode('rgb-level', 'Level, red, green, blue, flash', 5)];
const STROBE = [mode('level', 'Level', 1), mode('rate', 'Rate and level', 2)];

const led = { source: 'led', profile: 'led', feed: 'line' } as const;
const domestic = { feed: 'domestic' };
const cells = (ownCellsWh: number) => ({ ownCellsWh });
/** Plates for packs of bricks: how many at once, the volts it runs on and, where less than in full, the watts. */
const packs = (count: number, minV: number, maxV: number, more: Record<string, unknown> = {}) => ({
  packIn: {
    plates: ['v-plate', 'three-stud'],
    packs: count,
    joined: 'parallel',
    minV,
    maxV,
    maxA: PLATE_A,
    inrushMultiple: DC_INRUSH,
    hotSwap: false,
    ...more,
  },
});
/** Direct current by a lead from a block of 48 V. */
const block = (more: Record<string, unknown> = {}) =>
  packs(1, 36, 60, { plates: ['block-48'], maxA: BLOCK_A, ...more });
/** Assumed: what the contacts of a plate and a three-pin inlet carry for long, and what filling the input of a driver takes for a moment. */
const PLATE_A = 15;
const BLOCK_A = 16;
const DC_INRUSH = 1.5;

/** A receiver for control data is common in units that run on cells and packs. */
const RADIO = {
  radioIn: { sensitivityDbm: -92, antennaGainDbi: 0, fromMhz: 2400, toMhz: 2483.5 },
  basis: {
    radioIn:
      'planning value of the class, assumed; a built-in receiver is common practice, no published source: look for it on the real unit',
  },
};

const panel = (
  slug: string,
  name: string,
  w: number,
  kg: number,
  head: readonly [number, number],
  mount: string,
  cd: number,
  over: Record<string, unknown> = {},
): FixtureRow => row(slug, name, w, kg, head, mount, [110, cd], '', { ...COLOR, ...full, ...over });

const tables: readonly FixtureTable[] = [
  {
    ...led,
    style: 'fresnel',
    symbol: 'led-fresnel',
    also: 'led,fresnel',
    common: { ...BI, ...white },
    rows: [
      row(
        'led-fresnel-75w',
        'LED fresnel 75 W',
        75,
        3,
        [170, 230],
        '16',
        [60, 2500, 15, 20000],
        '',
        domestic,
      ),
      row(
        'led-fresnel-150w',
        'LED fresnel 150 W',
        150,
        5,
        [210, 280],
        '16',
        [60, 6000, 13, 45000],
        '',
        domestic,
      ),
      row('led-fresnel-220w', 'LED fresnel 220 W', 220, 8, [280, 350], '28 16', [55, 9000, 12, 75000], '', {
        ...COLOR,
        ...full,
        ...domestic,
      }),
      row('led-fresnel-450w', 'LED fresnel 450 W', 450, 12, [340, 420], '28', [60, 20000, 13, 150000], '', {
        ...COLOR,
        ...full,
      }),
    ],
  },
  {
    ...led,
    style: 'spot',
    symbol: 'led-spot',
    also: 'led,point source,cob,reflector,spot',
    common: { ...BI, ...white },
    rows: [
      row('led-spot-60w', 'LED spot 60 W', 60, 1.2, [120, 200], '16', [55, 5000, 15, 25000], '', {
        ...domestic,
        ...packs(1, 11.5, 17),
        profile: 'led-small',
      }),
      row('led-spot-120w', 'LED spot 120 W', 120, 2.2, [120, 250], '16', [55, 10000, 15, 40000], '', {
        ...domestic,
        ...packs(1, 11.5, 30),
      }),
      row('led-spot-220w', 'LED spot 220 W', 220, 3.5, [140, 300], '16 28', [55, 20000, 15, 80000], '', {
        ...domestic,
        ...packs(2, 11.5, 30),
      }),
      row('led-spot-350w', 'LED spot 350 W', 350, 4.5, [150, 330], '28 16', [55, 35000, 15, 140000], '', {
        ...domestic,
        ...block(),
      }),
      row('led-spot-600w', 'LED spot 600 W', 600, 7, [180, 400], '28', [55, 75000, 15, 300000], '', block()),
      row('led-spot-1200w', 'LED spot 1200 W', 1200, 11, [230, 450], '28', [50, 150000, 15, 750000]),
      row('led-spot-2500w', 'LED spot 2.5 kW', 2500, 25, [350, 550], '28', [50, 300000, 15, 1500000], '', {
        feed: 'high',
        profile: 'led-high',
      }),
    ],
  },
  {
    ...led,
    style: 'panel',
    symbol: 'led-panel',
    also: 'led,panel,soft',
    rows: [
      row(
        'led-light-10w',
        'LED on-camera light 10 W',
        10,
        0.3,
        [120, 80],
        'clip 16',
        [75, 250],
        'camera light',
        { ...BI, ...domestic, profile: 'led-small', ...cells(40) },
      ),
      panel('led-panel-30x30', 'LED panel 30×30, 60 W', 60, 2.5, [320, 110], '16', 2000, {
        ...BI,
        ...white,
        ...domestic,
        ...packs(1, 11.5, 17),
        ...RADIO,
        profile: 'led-small',
      }),
      panel('led-panel-30x60', 'LED panel 30×60, 130 W', 130, 4.5, [620, 120], '16', 4500, {
        ...domestic,
        ...packs(1, 11.5, 30),
        ...RADIO,
      }),
      panel('led-panel-60x60', 'LED panel 60×60, 300 W', 300, 10, [640, 150], '28', 10000, {
        ...domestic,
        ...packs(2, 20, 36, { maxW: 200, hotSwap: true }),
        ...RADIO,
      }),
      panel('led-panel-65x30-420w', 'LED soft panel 65×30, 420 W', 420, 13, [650, 300], '28', 14000),
    ],
  },
  {
    ...led,
    style: 'panel',
    symbol: 'led-panel-long',
    also: 'led,panel,soft,long',
    rows: [
      panel('led-panel-30x120', 'LED panel 30×120, 200 W', 200, 8, [1250, 130], '28 16', 7000, {
        ...domestic,
        ...block(),
      }),
      panel('led-panel-130x30-420w', 'LED soft panel 130×30, 420 W', 420, 14, [1290, 300], '28', 14000),
      panel('led-panel-125x90-1500w', 'LED soft panel 125×90, 1500 W', 1500, 40, [1290, 350], '28', 48000, {
        beamDeg: 105,
        fieldDeg: 155.2,
        feed: 'high',
        profile: 'led-high',
      }),
    ],
  },
  {
    ...led,
    style: 'tube',
    symbol: 'led-tube',
    also: 'led,tube,batten',
    common: { ...COLOR, ...full, ...RADIO },
    rows: [
      row('led-tube-60', 'LED tube {2 ft|60 cm}, 22 W', 22, 0.9, [600, 40], 'clip 16', [120, 350], '', {
        ...domestic,
        profile: 'led-small',
        ...cells(55),
      }),
      row('led-tube-240', 'LED tube {8 ft|240 cm}, 90 W', 90, 3.1, [2400, 45], 'clip 16', [120, 1600], '', {
        ...domestic,
      }),
      row('led-tube-120', 'LED tube {4 ft|120 cm}, 45 W', 45, 1.6, [1200, 45], 'clip 16', [120, 800], '', {
        ...domestic,
        profile: 'led-small',
        ...cells(100),
      }),
    ],
  },
  {
    ...led,
    style: 'pixel-tube',
    symbol: 'pixel-tube',
    also: 'led,tube,pixel,batten',
    common: { ...COLOR, ...RADIO, feed: 'chain' },
    rows: [
      row('pixel-tube-60', 'Pixel tube {2 ft|60 cm}, 22 W', 22, 0.9, [600, 45], 'clip 16', [120, 350], '', {
        ...pixels(8, 16),
        profile: 'led-small',
        ...cells(55),
      }),
      row(
        'pixel-tube-240',
        'Pixel tube {8 ft|240 cm}, 90 W',
        90,
        3.1,
        [2400, 45],
        'clip 16',
        [120, 1600],
        '',
        pixels(32, 64),
      ),
      row(
        'pixel-tube-120',
        'Pixel tube {4 ft|120 cm}, 45 W',
        45,
        1.6,
        [1200, 45],
        'clip 16',
        [120, 800],
        '',
        { ...pixels(16, 32), profile: 'led-small', ...cells(100) },
      ),
    ],
  },
  {
    ...led,
    style: 'pixel-bar',
    symbol: 'pixel-bar',
    also: 'led,pixel,batten,bar',
    common: { ...COLOR, feed: 'chain' },
    rows: [
      row(
        'pixel-bar-100',
        'Pixel bar {40 in|100 cm}, 240 W',
        240,
        9,
        [1000, 160],
        'C floor',
        [45, 9000],
        '',
        pixels(6, 12),
      ),
      row(
        'led-strobe-800w',
        'LED strobe bar 800 W',
        800,
        10,
        [450, 250],
        'C floor',
        [120, 20000],
        'strobe',
        pixels(12),
      ),
      row(
        'led-strobe-200w',
        'LED strobe 200 W, older build',
        200,
        4,
        [420, 160],
        'C floor',
        [120, 6000],
        'strobe,flash,dip switches',
        { modes: STROBE, addressBy: 'switches', cct: { minK: 6500, maxK: 6500 } },
      ),
    ],
  },
  {
    ...led,
    style: 'mat',
    symbol: 'led-mat',
    also: 'led,mat,flexible,sheet',
    common: { ...BI, ...white, feed: 'domestic' },
    rows: [
      row('led-mat-30x60', 'LED mat 30×60, 35 W', 35, 0.6, [600, 30], '16 clip', [120, 1200], '', {
        profile: 'led-small',
      }),
      row(
        'led-mat-round-60',
        'LED mat, round, 60 cm, 50 W',
        50,
        0.8,
        [600, 30],
        '16 clip',
        [120, 1700],
        'disc',
        {
          profile: 'led-small',
        },
      ),
      row('led-mat-60x60', 'LED mat 60×60, 60 W', 60, 1, [600, 30], '16 clip', [120, 2100], '', {
        profile: 'led-small',
      }),
      row(
        'led-mat-60x120',
        'LED mat 60×120, 110 W',
        110,
        1.8,
        [1200, 30],
        '16 clip',
        [120, 4000],
        '',
        packs(1, 22, 34, { plates: ['block-28'] }),
      ),
      row(
        'led-mat-120x120',
        'LED mat 120×120, 210 W',
        210,
        3.2,
        [1200, 30],
        '16 clip',
        [120, 7500],
        '',
        packs(1, 22, 34, { plates: ['block-28'] }),
      ),
      row(
        'led-blanket-8x8',
        'LED blanket {8×8 ft|2.4×2.4 m}, 1000 W',
        1000,
        14,
        [2440, 60],
        '28 hung',
        [120, 36000],
        'frame',
        {
          feed: 'line',
          // Common practice: often sixteen parts, each on its own.
          modes: [...white.modes, mode('parts-16', '16 parts of level and colour temperature', 32, 16)],
        },
      ),
    ],
  },
  {
    ...led,
    style: 'par',
    symbol: 'led-par',
    also: 'led,par,wash',
    common: { ...COLOR, ...full, feed: 'chain' },
    rows: [
      row('led-par-150w', 'LED PAR 150 W', 150, 5, [280, 260], 'C 16 floor', [45, 15000, 25, 40000]),
      row(
        'led-par-50w',
        'LED PAR 50 W, older build',
        50,
        2.5,
        [220, 230],
        'C floor',
        [25, 9000],
        'par can,uplight,dip switches',
        { cct: { minK: 3000, maxK: 9000, color: true }, modes: SWITCHED, addressBy: 'switches' },
      ),
    ],
  },
  {
    ...led,
    style: 'ellipsoidal',
    symbol: 'ellipsoidal',
    also: 'led,profile,ellipsoidal,hard edge',
    common: { ...COLOR, ...full, feed: 'chain' },
    rows: [
      row(
        'led-ellipsoidal-26-220w',
        'LED ellipsoidal 26°, 220 W',
        220,
        9,
        [340, 700],
        'C 28',
        [18.2, 110000],
        '26 degree',
        { fieldDeg: 26 },
      ),
      row(
        'led-ellipsoidal-36-220w',
        'LED ellipsoidal 36°, 220 W',
        220,
        9,
        [340, 680],
        'C 28',
        [25.2, 60000],
        '36 degree',
        { fieldDeg: 36 },
      ),
    ],
  },
  {
    ...led,
    style: 'moving-head',
    symbol: 'moving-head',
    also: 'led,moving head,moving light,automated',
    common: { ...COLOR, feed: 'chain' },
    rows: [
      row(
        'moving-spot-700w',
        'Moving-head spot 700 W',
        700,
        30,
        [420, 420],
        'C floor',
        [50, 30000, 7, 400000],
        '',
        { modes: [mode('basic', 'Basic', 24), mode('full', 'All functions, fine', 40)] },
      ),
      row(
        'moving-bar-400w',
        'Moving bar {40 in|100 cm}, 400 W',
        400,
        20,
        [1000, 280],
        'C floor',
        [45, 12000, 6, 120000],
        'batten',
        {
          modes: [
            mode('basic', 'Basic', 18),
            mode('pixels-10', '10 pixels of red, green, blue, white', 52, 10),
          ],
        },
      ),
      row(
        'moving-wash-600w',
        'Moving-head wash 600 W',
        600,
        16,
        [380, 350],
        'C floor',
        [60, 15000, 5, 250000],
        '',
        {
          modes: [
            mode('basic', 'Basic', 20),
            mode('full', 'All functions, fine', 32),
            mode('pixels-19', '19 pixels of red, green, blue, white', 93, 19),
          ],
        },
      ),
    ],
  },
  {
    ...led,
    style: 'space-light',
    symbol: 'space-light',
    also: 'led,overhead,toplight,soft',
    common: { ...COLOR, ...full },
    rows: [row('led-space-light-600w', 'LED space light 600 W', 600, 12, [750, 750], 'hung', [160, 14000])],
  },
  {
    ...led,
    style: 'lantern',
    symbol: 'lantern',
    also: 'led,lantern,globe,ball,soft',
    common: { ...BI, ...white },
    rows: [
      row(
        'led-lantern-65',
        'LED lantern globe 65 cm, 300 W',
        300,
        5.5,
        [650, 650],
        '28 16 hung',
        [300, 3500],
        '',
        { ...domestic, ...block() },
      ),
      row('led-lantern-90', 'LED lantern globe 90 cm, 600 W', 600, 9, [900, 900], '28 hung', [300, 7000]),
    ],
  },
  {
    ...led,
    style: 'practical',
    symbol: 'practical-bulb',
    also: 'led,practical,bulb',
    common: { feed: 'domestic', profile: 'led-small' },
    rows: [
      row('practical-led-9w', 'Practical: LED bulb 9 W', 9, 0.1, [60, 60], 'socket', [250, 64], '', {
        cct: { minK: 2700, maxK: 2700 },
      }),
      row(
        'practical-rgb-8w',
        'Practical: colour bulb 8 W, own cell',
        8,
        0.2,
        [65, 65],
        'socket',
        [200, 45],
        'battery',
        { ...COLOR, ...full, ...cells(12), ...RADIO },
      ),
      row(
        'practical-candle-4w',
        'Practical: LED candle bulb 4 W',
        4,
        0.1,
        [35, 35],
        'socket',
        [300, 20],
        '',
        { cct: { minK: 2200, maxK: 2200 } },
      ),
      row(
        'led-strip-5m',
        'LED strip {16 ft|5 m}, 75 W',
        75,
        0.6,
        [5000, 15],
        'clip',
        [120, 1750],
        'ribbon,tape',
        { ...BI, ...dim },
      ),
    ],
  },
  {
    ...led,
    style: 'balloon',
    symbol: 'balloon',
    also: 'led,balloon,globe,overhead',
    common: { ...BI, ...dim },
    rows: [
      row(
        'balloon-160-600w',
        'Balloon {5 ft|1.6 m} on a pole, 600 W',
        600,
        8,
        [1600, 1600],
        '28 hung',
        [340, 4800],
      ),
      row(
        'balloon-tube-2kw',
        'Balloon tube {13×3 ft|4×1 m}, 2 kW',
        2000,
        14,
        [4000, 1000],
        'hung',
        [340, 13000],
        'sausage',
      ),
      row(
        'balloon-box-4kw',
        'Helium box {16×8 ft|5×2.4 m}, 4 kW',
        4000,
        26,
        [5000, 2400],
        'hung',
        [175, 40000],
        'pad',
        { feed: 'high', profile: 'led-high' },
      ),
      row(
        'balloon-350-4kw',
        'Helium balloon {12 ft|3.5 m}, 4 kW',
        4000,
        18,
        [3500, 3500],
        'hung',
        [340, 24000],
        '4k',
        { ...DAY, feed: 'high', profile: 'led-high' },
      ),
    ],
  },
];

export const ledFixtures: Family = (practice) => fixtureEntries(tables, practice);
