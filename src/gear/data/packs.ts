import { COMMON, type Entry, type Family } from '../shape.ts';

type Chemistry = 'li-ion' | 'lifepo4' | 'nimh' | 'lead-acid';
type PackPlate = 'v-plate' | 'three-stud' | 'slide-7v' | 'block-28' | 'block-48' | 'belt-xlr4' | 'terminals';

/** Volts of one cell: nominal, full, empty. Empty is where a pack's own guard or common care ends the discharge. */
const CELL: Readonly<Record<Chemistry, readonly [nominal: number, full: number, empty: number]>> = {
  'li-ion': [3.6, 4.2, 3],
  lifepo4: [3.2, 3.65, 2.5],
  nimh: [1.2, 1.45, 1],
  'lead-acid': [2, 2.4, 1.75],
};

const CHEMISTRY_WORDS: Readonly<Record<Chemistry, string>> = {
  'li-ion': 'lithium-ion',
  lifepo4: 'lithium iron phosphate',
  nimh: 'nickel-metal hydride',
  'lead-acid': 'lead-acid',
};

const PLATE_WORDS: Readonly<Record<PackPlate, string>> = {
  'v-plate': 'V-type plate',
  'three-stud': 'three-stud plate',
  'slide-7v': 'slide-on',
  'block-28': 'block',
  'block-48': 'block',
  'belt-xlr4': 'belt',
  terminals: 'terminals',
};

/** Plate, chemistry, cells in a row, Wh, continuous A, peak A, kg, charge W, minutes to full, [width, length, height] mm. */
type PackRow = readonly [
  plate: PackPlate,
  chemistry: Chemistry,
  cells: number,
  wh: number,
  continuousA: number,
  peakA: number,
  kg: number,
  chargeW: number,
  chargeMin: number,
  size: readonly [number, number, number],
];

const rows: readonly PackRow[] = [
  ['slide-7v', 'li-ion', 2, 32, 4, 6, 0.2, 15, 180, [38, 40, 70]],
  ['slide-7v', 'li-ion', 2, 47, 5, 8, 0.3, 20, 200, [38, 60, 70]],
  ['v-plate', 'li-ion', 4, 50, 6, 10, 0.5, 30, 150, [75, 40, 100]],
  ['v-plate', 'li-ion', 4, 98, 10, 14, 0.75, 50, 170, [100, 50, 130]],
  ['v-plate', 'li-ion', 4, 150, 12, 16, 1, 65, 200, [100, 65, 150]],
  ['v-plate', 'li-ion', 4, 195, 15, 20, 1.2, 80, 210, [100, 80, 150]],
  ['v-plate', 'li-ion', 4, 260, 18, 25, 1.6, 90, 250, [105, 100, 150]],
  ['three-stud', 'li-ion', 4, 50, 6, 10, 0.5, 30, 150, [75, 40, 100]],
  ['three-stud', 'li-ion', 4, 98, 10, 14, 0.8, 50, 170, [95, 50, 130]],
  ['three-stud', 'li-ion', 4, 150, 12, 16, 1.05, 65, 200, [95, 65, 150]],
  ['three-stud', 'li-ion', 4, 195, 15, 20, 1.3, 80, 210, [95, 80, 150]],
  ['v-plate', 'li-ion', 7, 98, 8, 12, 0.75, 50, 170, [100, 50, 130]],
  ['v-plate', 'li-ion', 7, 195, 12, 15, 1.25, 100, 170, [100, 80, 150]],
  ['three-stud', 'li-ion', 7, 98, 8, 12, 0.8, 50, 170, [95, 50, 130]],
  ['three-stud', 'li-ion', 7, 300, 14, 20, 1.9, 120, 220, [100, 110, 155]],
  ['block-28', 'li-ion', 8, 400, 15, 25, 3.5, 180, 190, [160, 200, 140]],
  ['block-28', 'li-ion', 8, 620, 20, 30, 5, 250, 210, [180, 230, 150]],
  ['block-48', 'li-ion', 13, 500, 15, 25, 4, 250, 180, [190, 220, 140]],
  ['block-48', 'li-ion', 13, 750, 20, 30, 5.6, 300, 210, [210, 250, 150]],
  ['block-48', 'li-ion', 14, 1000, 25, 35, 7.5, 400, 210, [230, 280, 160]],
  ['block-48', 'lifepo4', 16, 1500, 30, 40, 15, 600, 200, [260, 380, 220]],
  ['belt-xlr4', 'nimh', 25, 270, 12, 15, 6, 90, 260, [120, 1000, 90]],
  ['terminals', 'lead-acid', 6, 430, 18, 60, 13, 80, 600, [170, 200, 170]],
];

const tap = { id: 'tap', connector: 'two-pin-tap', maxA: 5, label: 'tap' } as const;

/** Current one outlet of a block carries for long, and how many outlets blocks of a size have. Assumed. */
const OUTLET_A = 16;
const blockOutlets = (continuousA: number): number => (continuousA < 20 ? 2 : continuousA < 30 ? 3 : 4);

const outlets = (plate: PackPlate, voltsV: number, continuousA: number) => {
  const main = { id: 'plate', voltsV, maxA: continuousA };
  if (plate === 'belt-xlr4')
    return [
      { ...main, id: 'lead', connector: 'xlr-4' as const, label: 'lead' },
      { ...main, id: 'lead-2', connector: 'xlr-4' as const, label: 'lead 2' },
    ];
  if (plate === 'terminals') return [{ ...main, connector: 'terminals' as const }];
  if (plate === 'block-28' || plate === 'block-48')
    return Array.from({ length: blockOutlets(continuousA) }, (_, i) => ({
      ...main,
      maxA: Math.min(continuousA, OUTLET_A),
      id: i === 0 ? 'dc' : `dc-${i + 1}`,
      connector: 'xlr-3' as const,
      label: `three-pin ${i + 1}`,
    }));
  const taps = plate !== 'slide-7v' && continuousA >= 10 && voltsV < 20 ? [{ ...tap, voltsV }] : [];
  return [{ ...main, connector: 'plate' as const }, ...taps];
};

const symbolOf = (plate: PackPlate): string => {
  if (plate === 'belt-xlr4') return 'pack-belt';
  return plate === 'block-28' || plate === 'block-48' || plate === 'terminals' ? 'pack-block' : 'pack';
};

const round = (n: number, digits: number): number => Number(n.toFixed(digits));

export const packKinds: Family = () =>
  rows.map(([plate, chemistry, cells, wh, continuousA, peakA, massKg, chargeW, chargeMin, size]): Entry => {
    const [nominal, full, empty] = CELL[chemistry];
    const voltsV = round(cells * nominal, 1);
    const lithium = chemistry === 'li-ion' || chemistry === 'lifepo4';
    return {
      family: 'pack',
      slug: `pack-${plate}-${String(voltsV).replace('.', '-')}v-${wh}wh`,
      name: `Pack, ${PLATE_WORDS[plate]}, ${wh} Wh, ${voltsV} V`,
      also: [
        'battery',
        'accumulator',
        CHEMISTRY_WORDS[chemistry],
        `${wh}wh`,
        ...(plate.startsWith('block')
          ? ['block battery', '28v', '48v'].slice(0, plate === 'block-28' ? 2 : 3)
          : ['brick']),
      ].filter((w) => plate !== 'block-48' || w !== '28v'),
      symbol: symbolOf(plate),
      massKg,
      sizeMm: { widthMm: size[0], lengthMm: size[1], heightMm: size[2] },
      chemistry,
      plate,
      cells,
      voltsV,
      fullV: round(cells * full, 1),
      emptyV: round(cells * empty, 1),
      capacityAh: round(wh / voltsV, 2),
      energyWh: wh,
      continuousA,
      peakA,
      chargeW,
      chargeMin,
      dcOut: outlets(plate, voltsV, continuousA),
      basis: {
        all: COMMON,
        voltsV: 'cells in a row times the nominal volts of one cell',
        fullV: 'cells in a row times the volts of a full cell',
        emptyV: 'cells in a row times the volts of an empty cell, assumed',
        capacityAh: 'watt-hours over nominal volts',
        continuousA: 'planning value of the class, assumed: the pack’s own label comes first',
        peakA: 'planning value of the class, assumed: the pack’s own label comes first',
        ...(plate.startsWith('block') || plate === 'belt-xlr4'
          ? { dcOut: 'how many outlets it has and what each carries is assumed: look at the pack' }
          : {}),
      },
      notes: lithium
        ? 'Packs of other volts share this plate. Compare the volts of pack, unit and charger, never the plate alone. Watt-hours decide how it may fly: ask the operator.'
        : 'Compare the volts of pack, unit and charger.',
    };
  });
