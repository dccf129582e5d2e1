import { COMMON, type Entry, type Family } from '../shape.ts';

/** Slug, name, family, symbol, [width, length, height] mm, mass kg, other words. */
type SceneryRow = readonly [
  slug: string,
  name: string,
  family: 'camera' | 'furniture' | 'vehicle',
  symbol: string,
  size: readonly [number, number, number],
  massKg: number,
  also?: string,
];

const rows: readonly SceneryRow[] = [
  ['camera-tripod', 'Camera on tripod', 'camera', 'camera', [400, 600, 1600], 18],
  ['camera-dolly', 'Camera on dolly', 'camera', 'camera', [700, 1400, 1600], 120, 'dolly,track'],
  ['chair-dining', 'Chair', 'furniture', 'chair', [450, 450, 850], 5],
  ['chair-armchair', 'Armchair', 'furniture', 'chair', [850, 850, 900], 25, 'easy chair'],
  ['table-dining', 'Dining table, six seats', 'furniture', 'table', [1800, 900, 750], 40],
  ['table-round', 'Round table', 'furniture', 'table', [1100, 1100, 750], 25],
  ['table-desk', 'Desk', 'furniture', 'table', [1400, 700, 750], 30],
  ['table-coffee', 'Coffee table', 'furniture', 'table', [1100, 600, 420], 15, 'low table'],
  ['table-counter', 'Counter', 'furniture', 'table', [2400, 600, 900], 80, 'kitchen,bar'],
  ['sofa-two', 'Sofa, two seats', 'furniture', 'sofa', [1500, 850, 850], 40, 'couch'],
  ['sofa-three', 'Sofa, three seats', 'furniture', 'sofa', [2100, 900, 850], 55, 'couch'],
  ['vehicle-car', 'Car', 'vehicle', 'vehicle', [1800, 4500, 1500], 1400, 'saloon,sedan'],
  ['vehicle-van', 'Van', 'vehicle', 'vehicle', [2000, 5300, 2300], 2000],
  ['vehicle-truck', 'Truck', 'vehicle', 'vehicle', [2400, 7500, 3300], 7500, 'lorry'],
];

export const sceneryKinds: Family = () =>
  rows.map(
    ([slug, name, family, symbol, [widthMm, lengthMm, heightMm], massKg, also]): Entry => ({
      family,
      slug,
      name,
      also: also?.split(',') ?? [],
      symbol,
      sizeMm: { widthMm, lengthMm, heightMm },
      massKg,
      basis: { all: COMMON },
    }),
  );
