import type { System } from '../../plan/kinds/kinds.ts';
import type { Practice } from '../../plan/records/index.ts';
import { CLASS_VALUES, feedVolts, mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';
import { inletPort } from '../ways.ts';
import { supplyFrom } from './chargers.ts';

const EFFICIENCY = 0.9;

/** Mains to direct current: slug, name, volts, watts, connector, kg, [width, length] mm, other words. */
type SupplyRow = readonly [
  string,
  string,
  number,
  number,
  'xlr-4' | 'xlr-3' | 'barrel',
  number,
  readonly [number, number],
  string,
];

const supplies: readonly SupplyRow[] = [
  ['supply-15v-60w', 'Mains supply 15 V, 60 W', 15, 60, 'barrel', 0.4, [60, 130], 'driver,adapter'],
  ['supply-15v-150w', 'Mains supply 15 V, 150 W, four-pin', 15, 150, 'xlr-4', 0.9, [85, 200], 'driver'],
  [
    'supply-24v-100w',
    'Mains supply 24 V, 100 W, for mats',
    24,
    100,
    'barrel',
    0.6,
    [70, 170],
    'driver,led mat',
  ],
  [
    'supply-24v-240w',
    'Mains supply 24 V, 240 W, for mats',
    24,
    240,
    'xlr-4',
    1.3,
    [90, 220],
    'driver,led mat',
  ],
  ['supply-28v-300w', 'Mains supply 28 V, 300 W, three-pin', 28, 300, 'xlr-3', 1.8, [110, 240], 'driver'],
  ['supply-48v-600w', 'Mains supply 48 V, 600 W, three-pin', 48, 600, 'xlr-3', 3.2, [130, 300], 'driver'],
  ['supply-48v-1200w', 'Mains supply 48 V, 1200 W, three-pin', 48, 1200, 'xlr-3', 5.5, [160, 360], 'driver'],
];

const mainsSupplies: Family = (practice) =>
  supplies.map(([slug, name, voltsV, outputW, connector, massKg, size, also]): Entry => {
    const { load, inlets } = supplyFrom(practice, outputW, EFFICIENCY);
    return {
      family: 'converter',
      what: 'ac-dc',
      slug,
      name,
      also: ['power supply', 'mains', ...also.split(',')],
      symbol: 'converter',
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1] },
      load,
      inlets,
      dcOut: [{ id: 'out', connector, voltsV, maxA: Number((outputW / voltsV).toFixed(2)) }],
      outputW,
      efficiencyPct: EFFICIENCY * 100,
      basis: {
        all: COMMON,
        efficiencyPct: 'assumed for the class',
        wattsW: 'watts out over efficiency',
        ...CLASS_VALUES,
      },
    };
  });

/** Pack to light: slug, name, what, plates, volts in, volts out, watts, efficiency %, kg, [width, length] mm. */
type PackRow = readonly [
  string,
  string,
  'plate-adapter' | 'dc-dc',
  readonly string[],
  number,
  number,
  number,
  number,
  number,
  readonly [number, number],
];

const packRows: readonly PackRow[] = [
  [
    'plate-v-single',
    'Plate for one pack, V-type, four-pin out',
    'plate-adapter',
    ['v-plate'],
    14.4,
    14.4,
    170,
    99,
    0.3,
    [100, 60],
  ],
  [
    'plate-v-double',
    'Plate for two packs in a row, V-type, 28 V',
    'plate-adapter',
    ['v-plate', 'v-plate'],
    28.8,
    28.8,
    300,
    99,
    0.8,
    [220, 70],
  ],
  [
    'plate-stud-double',
    'Plate for two packs in a row, three-stud, 28 V',
    'plate-adapter',
    ['three-stud', 'three-stud'],
    28.8,
    28.8,
    300,
    99,
    0.8,
    [220, 70],
  ],
  [
    'plate-v-change',
    'Plate for two packs, V-type, changed while it runs',
    'plate-adapter',
    ['v-plate', 'v-plate'],
    14.4,
    14.4,
    150,
    97,
    0.7,
    [220, 80],
  ],
  [
    'boost-14-28',
    'Step-up 14 to 28 V, 120 W, V-type plate',
    'dc-dc',
    ['v-plate'],
    14.4,
    28,
    120,
    92,
    0.6,
    [110, 90],
  ],
  ['boost-28-48', 'Step-up 26 to 48 V, 300 W', 'dc-dc', ['block-28'], 28.8, 48, 300, 93, 1.1, [130, 160]],
  ['buck-48-15', 'Step-down 48 to 15 V, 120 W', 'dc-dc', ['block-48'], 46.8, 15, 120, 92, 0.7, [100, 140]],
];

const packConverters: Family = () =>
  packRows.map(([slug, name, what, plates, inV, outV, outputW, efficiencyPct, massKg, size]): Entry => {
    const inA = Number((outputW / (inV * (efficiencyPct / 100))).toFixed(1));
    return {
      family: 'converter',
      what,
      slug,
      name,
      also: ['battery plate', 'pack holder', 'dc'],
      symbol: what === 'dc-dc' ? 'converter' : 'pack-plate',
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1] },
      plates: plates as never,
      dcIn: [
        { id: 'in', connector: plates[0]?.startsWith('block') ? 'xlr-3' : 'plate', voltsV: inV, maxA: inA },
      ],
      dcOut: [
        {
          id: 'out',
          connector: outV > 20 ? 'xlr-3' : 'xlr-4',
          voltsV: outV,
          maxA: Number((outputW / outV).toFixed(1)),
        },
      ],
      outputW,
      efficiencyPct,
      basis: { all: COMMON, efficiencyPct: 'assumed for the class' },
      notes: 'Direct-current plugs with several pins have no one pin-out: check pins and polarity.',
    };
  });

/** Slug, name, inlet, outlets, kVA, volts in, volts out, efficiency %, kg, [width, length] mm, system out where it has one. */
type TransformerRow = readonly [
  slug: string,
  name: string,
  inlet: string,
  outlets: readonly string[],
  kva: number,
  inputV: number,
  outputV: number,
  efficiencyPct: number,
  kg: number,
  size: readonly [number, number],
  system?: System,
];

const transformers: Readonly<Record<Practice, readonly TransformerRow[]>> = {
  'north-america': [
    [
      'transformer-240-120-2kva',
      'Transformer 240 to 120 V, 2.4 kVA',
      'nema-l6-20',
      ['nema-5-20', 'nema-5-20'],
      2.4,
      240,
      120,
      95,
      22,
      [250, 320],
    ],
    [
      'transformer-240-120-7kva',
      'Transformer 240 to 120 V, 7.2 kVA',
      'stage-pin-60-2',
      ['stage-pin-60'],
      7.2,
      240,
      120,
      96,
      55,
      [350, 450],
    ],
    [
      'transformer-240-120-12kva',
      'Transformer 240 to 120 V, 12 kVA',
      'stage-pin-60-2',
      ['stage-pin-100'],
      12,
      240,
      120,
      97,
      80,
      [400, 500],
    ],
    [
      'transformer-isolating',
      'Isolating transformer 120 V, 1.8 kVA',
      'nema-5-20',
      ['nema-5-20'],
      1.8,
      120,
      120,
      95,
      20,
      [230, 300],
    ],
    [
      'transformer-480-240-25kva',
      'Transformer 480 to 120/240 V, 25 kVA',
      'single-pole-400-2',
      ['single-pole-400-2'],
      25,
      480,
      120,
      97,
      150,
      [600, 700],
      '120/240',
    ],
    [
      'transformer-480-208-30kva',
      'Transformer 480 to 120/208 V, 30 kVA, three-phase',
      'single-pole-400-3',
      ['single-pole-400-3'],
      30,
      480,
      120,
      97,
      180,
      [650, 750],
      '120/208',
    ],
    [
      'transformer-480-208-75kva',
      'Transformer 480 to 120/208 V, 75 kVA, three-phase',
      'single-pole-400-3',
      ['single-pole-400-3'],
      75,
      480,
      120,
      98,
      340,
      [800, 900],
      '120/208',
    ],
    [
      'transformer-480-208-112kva',
      'Transformer 480 to 120/208 V, 112.5 kVA, three-phase',
      'single-pole-400-3',
      ['single-pole-400-3'],
      112.5,
      480,
      120,
      98,
      450,
      [850, 1000],
      '120/208',
    ],
    [
      'transformer-600-208-75kva',
      'Transformer 600 to 120/208 V, 75 kVA, three-phase',
      'single-pole-400-3',
      ['single-pole-400-3'],
      75,
      600,
      120,
      98,
      340,
      [800, 900],
      '120/208',
    ],
  ],
  europe: [
    [
      'transformer-230-115-1kva',
      'Transformer 230 to 115 V, 1.5 kVA',
      'schuko-16',
      ['nema-5-15'],
      1.5,
      230,
      115,
      95,
      15,
      [200, 260],
    ],
    [
      'transformer-230-115-3kva',
      'Transformer 230 to 115 V, 3 kVA',
      'iec-16-1',
      ['nema-5-20', 'nema-5-20'],
      3,
      230,
      115,
      95,
      27,
      [260, 340],
    ],
    [
      'transformer-isolating',
      'Isolating transformer 230 V, 3.6 kVA',
      'iec-16-1',
      ['iec-16-1'],
      3.6,
      230,
      230,
      96,
      34,
      [280, 360],
    ],
    [
      'transformer-230it-400-30kva',
      'Transformer 230 V between lines to 230/400 V, 30 kVA, three-phase',
      'single-pole-400-eu-3',
      ['single-pole-400-eu-3'],
      30,
      230,
      230,
      97,
      180,
      [650, 750],
      '230/400',
    ],
  ],
};

const transformerKinds: Family = (practice) =>
  transformers[practice].map(
    ([
      slug,
      name,
      inlet,
      outlets,
      ratedKva,
      inputV,
      outputV,
      efficiencyPct,
      massKg,
      size,
      system,
    ]): Entry => ({
      family: 'converter',
      what: 'transformer',
      slug,
      name,
      also: ['transformer', 'step-down'],
      symbol: 'transformer',
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1] },
      inlets: [inletPort(inlet)],
      outlets: outlets.map((c, i) => ({ ...inletPort(c), id: String(i + 1), label: String(i + 1) })),
      outputW: ratedKva * 1000,
      ratedKva,
      inputV,
      outputV,
      ...(system === undefined ? {} : { outputSystem: system }),
      efficiencyPct,
      basis: { all: COMMON, efficiencyPct: 'assumed for the class' },
      notes: 'Its output has no breaker of its own here. Bonding of its neutral is for a qualified person.',
    }),
  );

const inverterRows = [
  ['inverter-12v-1kw', 'Inverter 12 V, 1000 W', 12, 1000, 88, 3.5, [200, 330]],
  ['inverter-48v-1500w', 'Inverter 48 V, 1500 W', 48, 1500, 90, 5.5, [220, 380]],
] as const;

const inverters: Family = (practice) =>
  inverterRows.map(
    ([slug, name, voltsV, outputW, efficiencyPct, massKg, size]): Entry => ({
      family: 'converter',
      what: 'inverter',
      slug,
      name,
      also: ['inverter', 'battery to mains'],
      symbol: 'inverter',
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1] },
      dcIn: [
        {
          id: 'in',
          connector: 'terminals',
          voltsV,
          maxA: Math.ceil(outputW / (voltsV * (efficiencyPct / 100))),
        },
      ],
      outlets: [{ ...inletPort(practice === 'europe' ? 'schuko-16' : 'nema-5-15'), id: '1', label: '1' }],
      outputW,
      outputV: feedVolts(practice, 'line'),
      efficiencyPct,
      basis: { all: COMMON, efficiencyPct: 'assumed for the class' },
    }),
  );

/** Fed with mains, which it passes on; its battery goes on when they fail. Slug, name, W, kVA, Wh, kg, [width, length] mm. */
const backupRows = [
  ['backup-supply-700w', 'Back-up supply 1000 VA, 700 W', 700, 1, 90, 11, [170, 400]],
  ['backup-supply-1200w', 'Back-up supply 1500 VA, 1200 W', 1200, 1.5, 240, 20, [200, 480]],
] as const;
const BACKUP_PCT = 92;

const backups: Family = (practice) =>
  backupRows.map(([slug, name, outputW, ratedKva, storedWh, massKg, size]): Entry => {
    const { load, inlets } = mains(practice, 'domestic', 'led', Math.round(outputW / (BACKUP_PCT / 100)), {
      standbyW: 15,
    });
    const connector = inlets[0]?.connector ?? 'nema-5-15';
    return {
      family: 'converter',
      what: 'inverter',
      slug,
      name,
      also: ['ups', 'uninterruptible supply', 'battery back-up'],
      symbol: 'inverter',
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1] },
      load,
      inlets,
      outlets: [1, 2, 3, 4].map((n) => ({ ...inletPort(connector), id: String(n), label: String(n) })),
      outputW,
      ratedKva,
      outputV: feedVolts(practice, 'line'),
      efficiencyPct: BACKUP_PCT,
      storedWh,
      basis: {
        all: COMMON,
        efficiencyPct: 'assumed for the class',
        storedWh: 'assumed for the class',
        ...CLASS_VALUES,
      },
    };
  });

export const converterKinds: Family = (practice) => [
  ...mainsSupplies(practice),
  ...packConverters(practice),
  ...transformerKinds(practice),
  ...inverters(practice),
  ...backups(practice),
];
