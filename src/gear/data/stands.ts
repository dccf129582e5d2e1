import type { Entry, Family } from '../shape.ts';

/**
 * Slug, name, rated load kg, least and most height m, leg circle m, mass kg, top: 16 mm pin, 28 mm socket,
 * a grip head (G), tube for clamps (T). */
type StandRow = readonly [
  slug: string,
  name: string,
  loadKg: number,
  minM: number,
  maxM: number,
  legsM: number,
  kg: number,
  top: string,
  also?: string,
];

const rows: readonly StandRow[] = [
  ['stand-kit', 'Light kit stand, aluminium', 5, 0.9, 2.6, 0.95, 1.5, '16', 'light stand'],
  ['stand-baby-low', 'Low baby stand', 18, 0.8, 1.7, 0.95, 4.5, '16'],
  ['stand-baby-2', 'Baby stand, 2 risers', 18, 1.2, 3.2, 1.1, 6, '16'],
  ['stand-baby-3', 'Baby stand, 3 risers', 15, 1.4, 3.9, 1.15, 7.5, '16'],
  ['c-stand-20', 'C-stand {20 in|50 cm}', 10, 0.75, 1.6, 0.9, 4.5, '16 G', 'grip stand,century'],
  ['c-stand-40', 'C-stand {40 in|100 cm}', 10, 1.35, 3.2, 0.95, 6.2, '16 G', 'grip stand,century'],
  [
    'c-stand-40-sliding',
    'C-stand {40 in|100 cm}, sliding leg',
    10,
    1.35,
    3.2,
    0.95,
    6.5,
    '16 G',
    'grip stand,century',
  ],
  ['stand-combo-low', 'Low combo stand', 40, 0.85, 1.9, 1.1, 8, '28 16', 'junior'],
  ['stand-combo-2', 'Combo stand, 2 risers', 36, 1.2, 3.4, 1.25, 11, '28 16', 'junior'],
  ['stand-combo-3', 'Combo stand, 3 risers', 30, 1.5, 4.2, 1.3, 13, '28 16', 'junior'],
  ['stand-junior-rolling-2', 'Rolling junior stand, 2 risers', 40, 1.2, 3.6, 1.25, 14, '28'],
  ['stand-junior-rolling-3', 'Rolling junior stand, 3 risers', 35, 1.6, 4.4, 1.3, 17, '28'],
  ['stand-combo-tall', 'Tall combo stand, 4 risers', 20, 2.1, 7.3, 2, 24, '28 16', 'junior'],
  ['stand-roller-low', 'Low roller', 30, 1.3, 2.4, 1.2, 14, '28 16 G', 'grip'],
  ['stand-roller-medium', 'Medium roller', 30, 1.7, 3.4, 1.3, 17, '28 16 G', 'grip'],
  ['stand-roller-high', 'High roller', 25, 1.8, 4.9, 1.35, 20, '28 16 G', 'grip'],
  ['stand-windup-2', 'Wind-up stand, 2 sections', 40, 1.5, 2.6, 1.3, 15, '28'],
  ['stand-windup-3', 'Wind-up stand, 3 sections', 30, 1.7, 3.7, 1.4, 18, '28'],
  ['stand-windup-heavy', 'Heavy wind-up stand', 80, 1.7, 3.8, 1.6, 35, '28'],
  ['stand-crank-heavy', 'Heavy crank stand', 100, 1.75, 3.9, 1.6, 45, '28'],
  ['stand-motor', 'Motor stand', 120, 1.9, 5.5, 2, 120, '28', 'hydraulic'],
  ['stand-turtle', 'Turtle base', 40, 0.1, 0.15, 0.8, 4, '28', 'floor stand'],
  ['stand-baby-rolling', 'Rolling baby stand', 15, 1.1, 2.9, 1.1, 7, '16', 'wheels'],
  ['stand-table', 'Table stand', 5, 0.15, 0.35, 0.35, 1.2, '16', 'desk'],
  ['stand-backlight', 'Backlight stand', 8, 0.3, 1.2, 0.7, 2, '16', 'floor,low'],
  ['stand-boom', 'Stand with built-in boom', 8, 1.5, 3.9, 1.3, 10, '16', 'boom'],
  ['stand-tbar', 'T-bar push-up stand', 30, 1.5, 3.2, 1.3, 8, 'T', 'bar,truss'],
  ['stand-backdrop', 'Backdrop stand', 10, 1.2, 3.6, 1.2, 5, '16 T', 'background'],
  ['stand-plate', 'Floor plate', 60, 0.1, 0.1, 0.6, 6, '28', 'skid,beach'],
];

const TOPS: Readonly<Record<string, 'pin-16' | 'spigot-28' | 'grip-head' | 'clamp'>> = {
  '16': 'pin-16',
  '28': 'spigot-28',
  G: 'grip-head',
  T: 'clamp',
};

const HEAVY_KG = 30;

/** Stands drawn other than by their load. */
const SYMBOLS: readonly (readonly [RegExp, string])[] = [
  [/^c-stand/, 'c-stand'],
  [/windup|crank|motor/, 'stand-windup'],
  [/rolling|roller/, 'stand-wheels'],
  [/turtle|plate/, 'stand-base'],
  [/boom/, 'stand-boom'],
  [/tbar|backdrop/, 'stand-tbar'],
  [/table|backlight/, 'stand-mini'],
];

export const standKinds: Family = (practice) =>
  rows.map(([slug, name, ratedLoadKg, minM, maxM, legsM, massKg, top, also]): Entry => {
    const mm = (m: number): number => Math.round(m * 1000);
    return {
      family: 'stand',
      slug,
      name: name.replace(/\{([^|}]*)\|([^}]*)\}/, practice === 'north-america' ? '$1' : '$2'),
      also: ['stand', ...(also?.split(',') ?? [])],
      sizeMm: { lengthMm: mm(legsM), widthMm: mm(legsM), heightMm: mm(minM) },
      massKg,
      symbol:
        SYMBOLS.find(([pattern]) => pattern.test(slug))?.[1] ??
        (ratedLoadKg >= HEAVY_KG ? 'stand-heavy' : 'stand'),
      receives: top.split(' ').map((t) => TOPS[t] ?? 'spigot-28'),
      ratedLoadKg,
      heightMinMm: mm(minM),
      heightMaxMm: mm(maxM),
      legCircleMm: mm(legsM),
      basis: { all: 'common practice, no published source; use the label on the real stand' },
    };
  });
