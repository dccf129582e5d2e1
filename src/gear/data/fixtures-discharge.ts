import type { Practice } from '../../plan/records/index.ts';
import { type FixtureTable, fixtureEntries, row } from '../fixture.ts';
import { CLASS_VALUES, type Feed, mains, type ProfileName } from '../mains.ts';
import { COMMON, type Entry, type Family, stockMm, wattsTyped, wattsWord } from '../shape.ts';

const DAY = { cct: { minK: 5600, maxK: 5600 }, warmUpMin: 3 };
const modern = { ...DAY, hotRestrikeMin: 0 };

const tables: readonly FixtureTable[] = [
  {
    source: 'discharge',
    style: 'fresnel',
    symbol: 'discharge-fresnel',
    profile: 'ballast-corrected',
    feed: 'ballast',
    also: 'discharge,daylight,metal halide,arc,fresnel',
    common: modern,
    rows: [
      row('discharge-spot-150w', 'Discharge spot 150 W', 150, 2.5, [150, 230], '16', [45, 7000, 6, 100000]),
      row(
        'discharge-fresnel-200w',
        'Discharge fresnel 200 W',
        200,
        3.5,
        [190, 260],
        '16',
        [50, 5000, 7, 60000],
      ),
      row(
        'discharge-fresnel-575w',
        'Discharge fresnel 575 W',
        575,
        7.5,
        [280, 340],
        '16 28',
        [55, 15000, 6, 180000],
      ),
      row(
        'discharge-fresnel-1200w',
        'Discharge fresnel 1200 W',
        1200,
        11,
        [330, 400],
        '28',
        [55, 40000, 5, 500000],
      ),
      row(
        'discharge-fresnel-2500w',
        'Discharge fresnel 2.5 kW',
        2500,
        19,
        [420, 500],
        '28',
        [58, 85000, 5, 900000],
      ),
      row(
        'discharge-fresnel-4kw',
        'Discharge fresnel 4 kW',
        4000,
        25,
        [480, 560],
        '28',
        [58, 140000, 5, 1600000],
      ),
      row(
        'discharge-fresnel-6kw',
        'Discharge fresnel 6 kW',
        6000,
        30,
        [540, 600],
        '28',
        [60, 220000, 5, 2400000],
      ),
      row(
        'discharge-fresnel-12kw',
        'Discharge fresnel 12 kW',
        12000,
        52,
        [750, 750],
        '28',
        [60, 450000, 6, 5000000],
      ),
      row(
        'discharge-fresnel-18kw',
        'Discharge fresnel 18 kW',
        18000,
        63,
        [780, 780],
        '28',
        [60, 700000, 8, 7000000],
      ),
    ],
  },
  {
    source: 'discharge',
    style: 'par',
    symbol: 'discharge-par',
    profile: 'ballast-corrected',
    feed: 'ballast',
    also: 'discharge,daylight,metal halide,arc,par,lenses,reflector',
    common: modern,
    rows: [
      row('discharge-par-200w', 'Discharge PAR 200 W', 200, 3, [180, 250], '16', [50, 12000, 6, 200000]),
      row('discharge-par-400w', 'Discharge PAR 400 W', 400, 4.5, [200, 280], '16', [55, 25000, 6, 400000]),
      row(
        'discharge-par-800w',
        'Discharge PAR 800 W',
        800,
        5.5,
        [260, 320],
        '16 28',
        [60, 50000, 18, 300000],
      ),
      row('discharge-par-1200w', 'Discharge PAR 1200 W', 1200, 9, [330, 380], '28', [60, 80000, 6, 2300000]),
      row(
        'discharge-reflector-1800w',
        'Discharge reflector 1800 W',
        1800,
        9,
        [360, 380],
        '28',
        [60, 150000, 20, 1100000],
      ),
      row(
        'discharge-par-2500w',
        'Discharge PAR 2.5 kW',
        2500,
        15,
        [420, 450],
        '28',
        [60, 180000, 6, 4000000],
      ),
      row(
        'discharge-reflector-4kw',
        'Discharge reflector 4 kW',
        4000,
        17,
        [480, 460],
        '28',
        [55, 330000, 15, 2300000],
      ),
      row('discharge-par-6kw', 'Discharge PAR 6 kW', 6000, 22, [540, 520], '28', [60, 500000, 7, 9500000]),
      row(
        'discharge-reflector-9kw',
        'Discharge reflector 9 kW',
        9000,
        26,
        [560, 550],
        '28',
        [55, 700000, 15, 4500000],
      ),
      row(
        'discharge-reflector-18kw',
        'Discharge reflector 18 kW',
        18000,
        35,
        [700, 650],
        '28',
        [50, 1200000, 15, 9000000],
      ),
    ],
  },
];

/** Lamp watts, kg, case [width, length] mm, feed, profile, input watts over lamp watts. */
type BallastRow = readonly [
  lampW: number,
  kg: number,
  size: readonly [number, number],
  feed: Feed,
  profile: ProfileName,
  loss: number,
];

// Electronic ballasts add 5 to 10 % to the lamp, magnetic ones about 25 %.
const ELECTRONIC = 1.08;
const ballasts: readonly BallastRow[] = [
  [150, 2, [120, 220], 'domestic', 'ballast-uncorrected', ELECTRONIC],
  [200, 3, [140, 260], 'domestic', 'ballast-uncorrected', ELECTRONIC],
  [400, 5, [180, 300], 'domestic', 'ballast-uncorrected', ELECTRONIC],
  [575, 8, [200, 380], 'line', 'ballast-corrected', ELECTRONIC],
  [800, 8, [200, 380], 'line', 'ballast-corrected', ELECTRONIC],
  [1200, 10, [220, 420], 'line', 'ballast-corrected', ELECTRONIC],
  [1800, 12, [240, 440], 'line', 'ballast-corrected', ELECTRONIC],
  [2500, 18, [260, 480], 'line', 'ballast-corrected', ELECTRONIC],
  [4000, 28, [280, 520], 'high', 'ballast-corrected', ELECTRONIC],
  [6000, 32, [300, 560], 'high', 'ballast-corrected', ELECTRONIC],
  [9000, 38, [320, 600], 'high', 'ballast-corrected', ELECTRONIC],
  [12000, 55, [360, 650], 'high', 'ballast-corrected', ELECTRONIC],
  [18000, 70, [400, 700], 'high', 'ballast-corrected', ELECTRONIC],
  [800, 7, [200, 360], 'line', 'ballast-uncorrected', ELECTRONIC],
  [2500, 48, [380, 520], 'high', 'ballast-magnetic', 1.25],
  [4000, 65, [400, 560], 'high', 'ballast-magnetic', 1.25],
];

const WORDS: Partial<Record<ProfileName, string>> = {
  'ballast-uncorrected': ', no power-factor correction',
  'ballast-magnetic': ', magnetic',
};

/** 90 to 265 V up to 1200 W; above, one band of volts as the practice has it. */
const rangeV = (practice: Practice, feed: Feed, lampW: number): readonly [number, number] =>
  lampW <= 1200 ? [90, 265] : practice === 'europe' ? [205, 253] : feed === 'high' ? [187, 252] : [110, 132];

const ballastSymbol = (lampW: number, profile: ProfileName): string => {
  if (profile === 'ballast-magnetic') return 'ballast-magnetic';
  return lampW <= 800 ? 'ballast-small' : lampW <= 4000 ? 'ballast' : 'ballast-large';
};

const ballastEntry = (practice: Practice, [lampW, kg, size, feed, profile, loss]: BallastRow): Entry => {
  // Only the small and the 800 W sizes exist without correction; the small ones have no other kind beside them.
  const plain = profile === 'ballast-corrected' || lampW < 500;
  const kindOfIt = plain ? '' : `-${profile.replace('ballast-', '')}`;
  const published = !plain && profile === 'ballast-uncorrected';
  const power = mains(
    practice,
    feed,
    profile,
    Math.round(lampW * loss),
    published ? { powerFactor: 0.58 } : {},
  );
  const [voltsMinV, voltsMaxV] = rangeV(practice, feed, lampW);
  return {
    family: 'ballast',
    slug: `ballast-${lampW}w${kindOfIt}`,
    name: `Ballast for ${wattsWord(lampW)} discharge${WORDS[profile] ?? ', electronic'}`,
    also: ['ballast', 'electronic power supply', ...wattsTyped(lampW)],
    massKg: kg,
    sizeMm: { widthMm: size[0], lengthMm: size[1] },
    symbol: ballastSymbol(lampW, profile),
    ...power,
    load: { ...power.load, voltsMinV, voltsMaxV },
    heads: tables.flatMap((t) => t.rows.filter((r) => r.wattsW === lampW).map((r) => r.slug)),
    flicker: profile === 'ballast-magnetic' ? 'twice-mains' : 'even',
    headCablesMm: stockMm(practice, [25, 50], [7, 15]),
    basis: {
      all: COMMON,
      ...CLASS_VALUES,
      flicker:
        'common practice: square-wave supplies light evenly unless set to run quietly, chokes pulse at twice the mains frequency',
      wattsW:
        'lamp watts with ballast losses as in the lighting chapter of an electrical installation guide, electrical-installation.org',
      ...(published ? { powerFactor: 'generator sizing and power factor, imaginenews.com' } : {}),
    },
  };
};

export const dischargeFixtures: Family = (practice) => fixtureEntries(tables, practice);
export const ballastKinds: Family = (practice) => ballasts.map((b) => ballastEntry(practice, b));
