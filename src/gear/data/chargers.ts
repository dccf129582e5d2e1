import type { Practice } from '../../plan/records/index.ts';
import { CLASS_VALUES, mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';

type Chemistry = 'li-ion' | 'lifepo4' | 'nimh' | 'lead-acid';

/** Slug, name, plates, chemistry, pack volts [least, most], bays, at once, W in each bay, W shared, kg, [width, length] mm. */
type ChargerRow = readonly [
  slug: string,
  name: string,
  plates: string,
  chemistry: Chemistry,
  volts: readonly [number, number],
  bays: number,
  together: number,
  bayW: number,
  sharedW: number | undefined,
  kg: number,
  size: readonly [number, number],
];

const LOW = [14.4, 14.8] as const;
const HIGH = [25.2, 28.8] as const;
const BOTH = [14.4, 28.8] as const;
const BLOCK48 = [46.8, 51.2] as const;

const rows: readonly ChargerRow[] = [
  [
    'charger-slide-2',
    'Charger, slide-on, 2 bays',
    'slide-7v',
    'li-ion',
    [7.2, 7.4],
    2,
    2,
    20,
    undefined,
    0.4,
    [130, 100],
  ],
  [
    'charger-v-1',
    'Charger, V-type plate, one bay, travel',
    'v-plate',
    'li-ion',
    LOW,
    1,
    1,
    35,
    undefined,
    0.4,
    [90, 110],
  ],
  [
    'charger-v-2',
    'Charger, V-type plate, 2 bays',
    'v-plate',
    'li-ion',
    LOW,
    2,
    2,
    50,
    undefined,
    1.4,
    [180, 160],
  ],
  [
    'charger-v-2-turn',
    'Charger, V-type plate, 2 bays in turn',
    'v-plate',
    'li-ion',
    LOW,
    2,
    1,
    65,
    undefined,
    1.2,
    [180, 160],
  ],
  [
    'charger-v-4',
    'Charger, V-type plate, 4 bays',
    'v-plate',
    'li-ion',
    LOW,
    4,
    4,
    65,
    undefined,
    3.5,
    [280, 200],
  ],
  [
    'charger-v-4-both',
    'Charger, V-type plate, 4 bays, 14 and 26 V',
    'v-plate',
    'li-ion',
    BOTH,
    4,
    4,
    100,
    300,
    4,
    [300, 220],
  ],
  [
    'charger-stud-2',
    'Charger, three-stud plate, 2 bays',
    'three-stud',
    'li-ion',
    LOW,
    2,
    2,
    50,
    undefined,
    1.4,
    [180, 160],
  ],
  [
    'charger-stud-4',
    'Charger, three-stud plate, 4 bays',
    'three-stud',
    'li-ion',
    LOW,
    4,
    4,
    65,
    undefined,
    3.5,
    [280, 200],
  ],
  [
    'charger-stud-2-high',
    'Charger, three-stud plate, 2 bays, 26 V',
    'three-stud',
    'li-ion',
    HIGH,
    2,
    2,
    120,
    undefined,
    1.8,
    [200, 170],
  ],
  [
    'charger-block-28',
    'Charger, 28 V block, one bay',
    'block-28',
    'li-ion',
    [28.8, 28.8],
    1,
    1,
    250,
    undefined,
    2.2,
    [180, 230],
  ],
  [
    'charger-block-48',
    'Charger, 48 V block, one bay',
    'block-48',
    'li-ion',
    BLOCK48,
    1,
    1,
    300,
    undefined,
    2.5,
    [200, 260],
  ],
  [
    'charger-block-48-2',
    'Charger, 48 V block, 2 bays',
    'block-48',
    'li-ion',
    BLOCK48,
    2,
    2,
    400,
    undefined,
    5,
    [300, 300],
  ],
  [
    'charger-block-48-4',
    'Charger, 48 V block, 4 bays, shared 1200 W',
    'block-48',
    'li-ion',
    BLOCK48,
    4,
    4,
    400,
    1200,
    9,
    [480, 350],
  ],
  [
    'charger-iron-48',
    'Charger, 51 V iron phosphate, one bay',
    'block-48',
    'lifepo4',
    [51.2, 51.2],
    1,
    1,
    600,
    undefined,
    4,
    [220, 320],
  ],
  ['charger-belt', 'Charger, 30 V belt', 'belt-xlr4', 'nimh', [30, 30], 1, 1, 90, undefined, 1.5, [140, 200]],
  [
    'charger-lead',
    'Charger, 12 V lead-acid',
    'terminals',
    'lead-acid',
    [12, 12],
    1,
    1,
    80,
    undefined,
    1.5,
    [140, 200],
  ],
];

const EFFICIENCY = 0.88;
/** Input up to which supplies are made without correction of the power factor: the scope of the harmonic limits. */
const UNCORRECTED_W = 75;

/** The load and inlet of a supply that gives so many watts to direct current. */
export const supplyFrom = (practice: Practice, outW: number, efficiency: number) => {
  const wattsW = Math.ceil(outW / efficiency);
  const profile = wattsW <= UNCORRECTED_W ? 'led-small' : 'led';
  return mains(practice, 'domestic', profile, wattsW, { standbyW: 2 });
};

export const chargerKinds: Family = (practice) =>
  rows.map(
    ([slug, name, plates, chemistry, [minV, maxV], bays, together, bayW, sharedW, massKg, size]): Entry => {
      const outW = Math.min(together * bayW, sharedW ?? Number.POSITIVE_INFINITY);
      const { load, inlets } = supplyFrom(practice, outW, EFFICIENCY);
      return {
        family: 'charger',
        slug,
        name,
        also: ['charger', 'battery charger', `${bays} bay`],
        symbol: bays > 2 || sharedW !== undefined ? 'charger-rack' : 'charger',
        massKg,
        sizeMm: { widthMm: size[0], lengthMm: size[1] },
        load,
        inlets,
        plates: plates.split(' '),
        chemistries: [chemistry],
        packVolts: { minV, maxV },
        bays,
        together,
        bayW,
        ...(sharedW === undefined ? {} : { sharedW }),
        basis: {
          all: COMMON,
          wattsW: `watts into the packs over an efficiency of ${EFFICIENCY}, assumed`,
          ...CLASS_VALUES,
        },
      } as Entry;
    },
  );
