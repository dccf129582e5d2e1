import type { Practice } from '../../plan/records/index.ts';
import { COMMON, type Entry, type Family, worded } from '../shape.ts';

type What = 'frame' | 'flag' | 'net' | 'diffusion' | 'bounce' | 'cloth' | 'bag' | 'box';
type Unit = 'in' | 'ft';

const MM: Readonly<Record<Unit, number>> = { in: 25.4, ft: 304.8 };

/** Force as a share of that on a solid board. Nets are given as 0.3 to 0.9 by those who use them; the upper part is taken. */
const SOLID = 1;
const SINGLE_NET = 0.7;
const DOUBLE_NET = 0.9;
/** Tube alone, without a cloth. */
const BARE = 0.1;

/** Width × height in words: `18×24 in` or `46×61 cm`, `12×12 ft` or `3.7×3.7 m`. */
const sizeWords = (w: number, h: number, unit: Unit, practice: Practice): string => {
  if (practice === 'north-america') return `${w}×${h} ${unit}`;
  const [div, digits, word] = unit === 'in' ? [10, 0, 'cm'] : [1000, 1, 'm'];
  const side = (n: number): string => ((n * MM[unit]) / div).toFixed(digits);
  return `${side(w)}×${side(h)} ${word}`;
};

/** Slug, word, what, [width, height, unit], kg, thickness mm, symbol, share of the wind, and what else it needs. */
type FaceRow = readonly [
  slug: string,
  word: string,
  what: What,
  size: readonly [w: number, h: number, unit: Unit],
  kg: number,
  thickMm: number,
  symbol: string,
  share: number,
  more?: {
    readonly stands?: number;
    readonly stand?: string;
    readonly guys?: number;
    readonly fits?: string;
    readonly also?: string;
  },
];

const ONE = { stands: 1, stand: 'c-stand-40' } as const;

const faces: readonly FaceRow[] = [
  ['flag-10x12', 'Flag', 'flag', [10, 12, 'in'], 0.4, 15, 'flag', SOLID, ONE],
  ['flag-12x18', 'Flag', 'flag', [12, 18, 'in'], 0.5, 15, 'flag', SOLID, ONE],
  ['flag-18x24', 'Flag', 'flag', [18, 24, 'in'], 0.7, 15, 'flag', SOLID, ONE],
  ['flag-24x36', 'Flag', 'flag', [24, 36, 'in'], 1.1, 15, 'flag', SOLID, ONE],
  ['flag-4x4', 'Floppy flag', 'flag', [4, 4, 'ft'], 2, 20, 'flag', SOLID, { ...ONE, also: 'floppy,solid' }],
  ['cutter-10x42', 'Cutter', 'flag', [10, 42, 'in'], 0.9, 15, 'flag', SOLID, { ...ONE, also: 'flag' }],
  [
    'cutter-18x48',
    'Cutter',
    'flag',
    [18, 48, 'in'],
    1.4,
    15,
    'flag',
    SOLID,
    { ...ONE, also: 'flag,meat axe' },
  ],
  ['cutter-24x72', 'Cutter', 'flag', [24, 72, 'in'], 2, 15, 'flag', SOLID, { ...ONE, also: 'flag' }],
  [
    'net-single-18x24',
    'Single net',
    'net',
    [18, 24, 'in'],
    0.5,
    15,
    'net',
    SINGLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'net-single-24x36',
    'Single net',
    'net',
    [24, 36, 'in'],
    0.8,
    15,
    'net',
    SINGLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'net-double-18x24',
    'Double net',
    'net',
    [18, 24, 'in'],
    0.5,
    15,
    'net',
    DOUBLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'net-double-24x36',
    'Double net',
    'net',
    [24, 36, 'in'],
    0.8,
    15,
    'net',
    DOUBLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'net-single-4x4',
    'Single net',
    'net',
    [4, 4, 'ft'],
    1.6,
    20,
    'net',
    SINGLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'net-double-4x4',
    'Double net',
    'net',
    [4, 4, 'ft'],
    1.7,
    20,
    'net',
    DOUBLE_NET,
    { ...ONE, also: 'scrim' },
  ],
  [
    'silk-18x24',
    'Silk on a frame',
    'diffusion',
    [18, 24, 'in'],
    0.5,
    15,
    'diffusion',
    SOLID,
    { ...ONE, also: 'diffusion' },
  ],
  [
    'silk-24x36',
    'Silk on a frame',
    'diffusion',
    [24, 36, 'in'],
    0.8,
    15,
    'diffusion',
    SOLID,
    { ...ONE, also: 'diffusion' },
  ],
  [
    'diffusion-4x4-light',
    'Diffusion frame, light',
    'diffusion',
    [4, 4, 'ft'],
    3,
    25,
    'diffusion',
    SOLID,
    { ...ONE, also: 'opal,trace' },
  ],
  [
    'diffusion-4x4-heavy',
    'Diffusion frame, heavy',
    'diffusion',
    [4, 4, 'ft'],
    3.2,
    25,
    'diffusion',
    SOLID,
    { ...ONE, also: 'frost,grid' },
  ],
  [
    'gel-frame-4x4',
    'Gel frame',
    'diffusion',
    [4, 4, 'ft'],
    3,
    25,
    'diffusion',
    SOLID,
    { ...ONE, also: 'colour,color,correction' },
  ],
  ['frame-4x4', 'Frame', 'frame', [4, 4, 'ft'], 2.75, 25, 'frame', BARE, { ...ONE, also: 'open frame' }],
  [
    'frame-6x6',
    'Frame',
    'frame',
    [6, 6, 'ft'],
    7,
    32,
    'frame',
    BARE,
    {
      stands: 2,
      stand: 'stand-combo-2',
      guys: 2,
      fits: 'pin-16 spigot-28 grip-head',
      also: 'butterfly,overhead',
    },
  ],
  [
    'frame-8x8',
    'Frame',
    'frame',
    [8, 8, 'ft'],
    11,
    32,
    'frame',
    BARE,
    {
      stands: 2,
      stand: 'stand-roller-high',
      guys: 4,
      fits: 'spigot-28 grip-head',
      also: 'butterfly,overhead',
    },
  ],
  [
    'frame-12x12',
    'Frame',
    'frame',
    [12, 12, 'ft'],
    25,
    38,
    'frame',
    BARE,
    {
      stands: 2,
      stand: 'stand-roller-high',
      guys: 4,
      fits: 'spigot-28 grip-head',
      also: 'butterfly,overhead',
    },
  ],
  [
    'frame-12x20',
    'Frame',
    'frame',
    [20, 12, 'ft'],
    42,
    45,
    'frame',
    BARE,
    {
      stands: 2,
      stand: 'stand-crank-heavy',
      guys: 4,
      fits: 'spigot-28 grip-head',
      also: 'butterfly,overhead',
    },
  ],
  [
    'frame-20x20',
    'Frame',
    'frame',
    [20, 20, 'ft'],
    60,
    50,
    'frame',
    BARE,
    {
      stands: 2,
      stand: 'stand-crank-heavy',
      guys: 6,
      fits: 'spigot-28 grip-head',
      also: 'butterfly,overhead',
    },
  ],
  [
    'board-2x2',
    'Bounce board, foam',
    'bounce',
    [2, 2, 'ft'],
    0.3,
    25,
    'bounce',
    SOLID,
    { ...ONE, also: 'polystyrene,bead board' },
  ],
  [
    'board-2x4',
    'Bounce board, foam',
    'bounce',
    [2, 4, 'ft'],
    0.6,
    25,
    'bounce',
    SOLID,
    { ...ONE, also: 'polystyrene,bead board' },
  ],
  [
    'board-4x4',
    'Bounce board, foam',
    'bounce',
    [4, 4, 'ft'],
    1.2,
    25,
    'bounce',
    SOLID,
    { ...ONE, also: 'polystyrene,bead board' },
  ],
  [
    'board-4x8',
    'Poly board, black and white',
    'bounce',
    [4, 8, 'ft'],
    3.2,
    50,
    'bounce',
    SOLID,
    { stands: 2, stand: 'c-stand-40', fits: 'grip-head floor', also: 'polystyrene,poly,bead board' },
  ],
  [
    'v-flat',
    'V-flat, black and white',
    'bounce',
    [8, 8, 'ft'],
    6.4,
    50,
    'bounce',
    SOLID,
    { fits: 'floor', also: 'book,poly' },
  ],
  [
    'reflector-42',
    'Reflector board, silver, in a yoke',
    'bounce',
    [42, 42, 'in'],
    9,
    60,
    'bounce',
    SOLID,
    { stands: 1, stand: 'stand-combo-2', fits: 'spigot-28 pin-16', also: 'shiny board' },
  ],
  [
    'bounce-frame-4x4',
    'Bounce frame, white cloth',
    'bounce',
    [4, 4, 'ft'],
    3.2,
    25,
    'bounce',
    SOLID,
    { ...ONE, also: 'muslin' },
  ],
  [
    'mirror-2x2',
    'Mirror in a yoke',
    'bounce',
    [2, 2, 'ft'],
    7,
    40,
    'bounce',
    SOLID,
    { stands: 1, stand: 'stand-combo-2', fits: 'spigot-28 pin-16', also: 'mirror' },
  ],
  [
    'backdrop-12x20',
    'Backdrop cloth on a bar',
    'bounce',
    [20, 12, 'ft'],
    14,
    60,
    'frame',
    SOLID,
    {
      stands: 2,
      stand: 'stand-roller-high',
      guys: 4,
      fits: 'spigot-28 grip-head',
      also: 'chroma,green,blue,screen',
    },
  ],
];

/** Slug, word, kg for a square metre, share of the wind. */
const cloths: readonly (readonly [
  slug: string,
  word: string,
  kgPerM2: number,
  share: number,
  also: string,
])[] = [
  ['silk', 'Silk', 0.12, SOLID, 'diffusion,china silk'],
  ['half-silk', 'Half silk', 0.1, SOLID, 'diffusion'],
  ['grid-light', 'Light grid cloth', 0.14, SOLID, 'diffusion'],
  ['grid-full', 'Full grid cloth', 0.2, SOLID, 'diffusion'],
  ['solid', 'Solid, black', 0.3, SOLID, 'black,duvetyne'],
  ['muslin', 'Muslin, bleached', 0.18, SOLID, 'bounce,calico'],
  ['net-single', 'Single net cloth', 0.08, SINGLE_NET, 'scrim'],
  ['net-double', 'Double net cloth', 0.12, DOUBLE_NET, 'scrim'],
];
const clothFeet = [6, 8, 12, 20] as const;

/** Slug, NA | EU name, what, mass kg, [width, length, height] mm, other words. */
const weights: readonly (readonly [
  string,
  string,
  What,
  number,
  readonly [number, number, number],
  string,
])[] = [
  ['bag-7', 'Sand bag, {15 lb|7 kg}', 'bag', 6.8, [200, 400, 120], 'shot bag,ballast'],
  ['bag-11', 'Sand bag, {25 lb|11 kg}', 'bag', 11.3, [250, 450, 140], 'shot bag,ballast'],
  ['bag-16', 'Sand bag, {35 lb|16 kg}', 'bag', 15.9, [280, 500, 150], 'shot bag,ballast'],
  ['bag-23', 'Sand bag, {50 lb|23 kg}', 'bag', 22.7, [300, 550, 170], 'shot bag,ballast'],
  ['weight-brick', 'Counterweight, {25 lb|11 kg}', 'bag', 11.3, [150, 300, 40], 'brick,ballast'],
  ['bag-water', 'Water ballast, {5 gal|20 L}', 'bag', 20, [300, 450, 200], 'water bag,ballast'],
  ['apple-full', 'Apple box, full', 'box', 6, [310, 510, 200], 'apple'],
  ['apple-half', 'Apple box, half', 'box', 4, [310, 510, 100], 'apple'],
  ['apple-quarter', 'Apple box, quarter', 'box', 3, [310, 510, 50], 'apple'],
  ['apple-pancake', 'Apple box, pancake', 'box', 1.5, [310, 510, 25], 'apple'],
];

const BASIS = {
  all: `${COMMON}; use the label on the real one`,
  sizeMm: 'the size in its name; thickness is common practice',
  areaM2: 'width × height of the size in its name',
} as const;
const SHARE = 'from memory: silk and grid as solid, nets 0.3 to 0.9';

const faceEntry = (row: FaceRow, practice: Practice): Entry => {
  const [slug, word, what, [w, h, unit], massKg, lengthMm, symbol, windShare, more = {}] = row;
  const widthMm = Math.round(w * MM[unit]);
  const heightMm = Math.round(h * MM[unit]);
  return {
    family: 'grip',
    slug,
    name: `${word}, ${sizeWords(w, h, unit, practice)}`,
    also: [what, `${w}x${h}`, ...(more.also?.split(',') ?? [])],
    sizeMm: { lengthMm, widthMm, heightMm },
    massKg,
    symbol,
    what,
    fits: (more.fits ?? 'grip-head').split(' '),
    areaM2: Number(((w * h * MM[unit] ** 2) / 1e6).toFixed(3)),
    windShare,
    stands: more.stands ?? 0,
    ...(more.stand ? { stand: more.stand } : {}),
    guys: more.guys ?? 0,
    basis: { ...BASIS, windShare: SHARE },
  };
};

export const gripKinds: Family = (practice) => [
  ...faces.map((row) => faceEntry(row, practice)),
  ...clothFeet.flatMap((ft) =>
    cloths.map(([slug, word, kgPerM2, share, also]) => {
      const kg = Number((kgPerM2 * (ft * 0.3048) ** 2).toFixed(1));
      const more = { fits: 'frame', also: `cloth,rag,${also}` };
      return faceEntry(
        [`${slug}-${ft}x${ft}`, word, 'cloth', [ft, ft, 'ft'], kg, 20, 'cloth', share, more],
        practice,
      );
    }),
  ),
  ...weights.map(
    ([slug, name, what, massKg, [widthMm, lengthMm, heightMm], also]): Entry => ({
      family: 'grip',
      slug,
      name: worded(name, practice),
      also: also.split(','),
      sizeMm: { widthMm, lengthMm, heightMm },
      massKg,
      symbol: what === 'box' ? 'apple-box' : 'sand-bag',
      what,
      fits: ['floor'],
      basis: { all: BASIS.all, massKg: what === 'bag' ? 'the mass in its name' : COMMON },
    }),
  ),
];
