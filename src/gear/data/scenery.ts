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
  ['camera-tripod', 'Camera on tripod', 'camera', 'camera-tripod', [700, 650, 1600], 18],
  ['camera-dolly', 'Camera on dolly', 'camera', 'camera-dolly', [700, 1500, 1600], 120, 'dolly,track'],
  ['camera-handheld', 'Camera, handheld', 'camera', 'camera-handheld', [450, 700, 1700], 12, 'shoulder'],
  ['camera-crane', 'Camera on a crane', 'camera', 'camera-crane', [900, 4200, 3000], 350, 'jib,arm'],
  ['camera-body', 'Camera', 'camera', 'camera', [260, 620, 300], 6, 'body'],
  ['monitor-stand', 'Monitor on a stand', 'furniture', 'monitor', [600, 320, 1500], 12, 'video,screen'],
  ['chair-dining', 'Chair', 'furniture', 'chair', [450, 450, 850], 5],
  ['chair-armchair', 'Armchair', 'furniture', 'armchair', [850, 850, 900], 25, 'easy chair'],
  ['stool', 'Stool', 'furniture', 'stool', [380, 380, 700], 4, 'bar stool'],
  ['bench', 'Bench', 'furniture', 'bench', [1500, 520, 850], 30, 'park'],
  ['table-dining', 'Dining table, six seats', 'furniture', 'table', [1800, 900, 750], 40],
  ['table-round', 'Round table', 'furniture', 'table-round', [1100, 1100, 750], 25],
  ['table-desk', 'Desk', 'furniture', 'desk-writing', [1400, 830, 750], 30, 'writing,office'],
  ['table-coffee', 'Coffee table', 'furniture', 'table', [1100, 600, 420], 15, 'low table'],
  ['table-counter', 'Counter', 'furniture', 'counter', [2400, 600, 900], 80, 'kitchen,bar'],
  ['sofa-two', 'Sofa, two seats', 'furniture', 'sofa-two', [1500, 850, 850], 40, 'couch'],
  ['sofa-three', 'Sofa, three seats', 'furniture', 'sofa', [2100, 900, 850], 55, 'couch'],
  ['bed-double', 'Double bed', 'furniture', 'bed', [1600, 2000, 500], 60],
  ['bed-single', 'Single bed', 'furniture', 'bed-single', [900, 2000, 500], 40],
  ['cabinet', 'Cabinet', 'furniture', 'cabinet', [1200, 600, 2000], 60, 'wardrobe,cupboard'],
  ['shelf', 'Bookcase', 'furniture', 'shelf', [900, 300, 2000], 40, 'shelf,books'],
  ['piano', 'Grand piano', 'furniture', 'piano', [1500, 1700, 1000], 320],
  ['bath', 'Bath', 'furniture', 'bath', [750, 1700, 550], 60, 'tub'],
  ['rug', 'Rug', 'furniture', 'rug', [1400, 2180, 10], 10, 'carpet'],
  ['plant', 'Plant in a pot', 'furniture', 'plant', [600, 600, 1200], 15],
  ['tree', 'Tree', 'furniture', 'tree', [2500, 2500, 5000], 0, 'greens'],
  ['vehicle-car', 'Car', 'vehicle', 'vehicle', [1800, 4500, 1500], 1400, 'saloon,sedan'],
  ['vehicle-van', 'Van', 'vehicle', 'van', [2000, 5300, 2300], 2000],
  ['vehicle-truck', 'Truck', 'vehicle', 'truck', [2500, 7500, 3300], 7500, 'lorry'],
  ['vehicle-bus', 'Bus', 'vehicle', 'bus', [2500, 11000, 3100], 11000, 'coach'],
  ['vehicle-motorcycle', 'Motorcycle', 'vehicle', 'motorcycle', [760, 2160, 1100], 190, 'bike'],
  ['vehicle-trailer', 'Trailer', 'vehicle', 'trailer', [2300, 5360, 2600], 1500, 'caravan'],
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
