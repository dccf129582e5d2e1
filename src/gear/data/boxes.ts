import type { Practice } from '../../plan/records/index.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';
import { group, inletPort, type WayGroup, waysAndOutlets } from '../ways.ts';

/** Slug, name, inlet, main breaker A (0: none), ways, through outlet, mass kg, [width, length] mm. */
type BoxRow = readonly [
  slug: string,
  name: string,
  inlet: string,
  mainA: number,
  groups: readonly WayGroup[],
  through: string | undefined,
  massKg: number,
  size: readonly [number, number],
];

const na = (
  count: number,
  amps: number,
  connector: string,
  more: { rcdMa?: number; outlets?: number } = {},
) => group(count, amps, connector, 'na', more);
const cam3 = 'single-pole-400-3';
const cam2 = 'single-pole-400-2';
const two = { outlets: 2 };
const gfci = { rcdMa: 5 };

const northAmerica: readonly BoxRow[] = [
  [
    'box-400-6x100',
    'Box 400 A, 6 × 100 A, through',
    cam3,
    0,
    [na(6, 100, 'stage-pin-100')],
    cam3,
    48,
    [700, 450],
  ],
  [
    'box-400-3x100-3x60',
    'Box 400 A, 3 × 100 A, 3 × 60 A, through',
    cam3,
    0,
    [na(3, 100, 'stage-pin-100'), na(3, 60, 'stage-pin-60')],
    cam3,
    44,
    [700, 450],
  ],
  [
    'box-400-two-leg',
    'Box 400 A, 3 × 100 A and 3 × 60 A two-leg, through',
    cam3,
    0,
    [na(3, 100, 'stage-pin-100-2'), na(3, 60, 'stage-pin-60-2')],
    cam3,
    46,
    [700, 450],
  ],
  [
    'box-100-12x20-multi',
    'Box 100 A, 12 × 20 A on two 19-pin multis',
    cam3,
    100,
    [na(12, 20, 'multi-19')],
    undefined,
    26,
    [480, 380],
  ],
  [
    'box-400-mixed',
    'Box 400 A, 3 × 100 A, 3 × 60 A two-leg, 6 × 20 A, through',
    cam3,
    0,
    [na(3, 100, 'stage-pin-100'), na(3, 60, 'stage-pin-60-2'), na(6, 20, 'nema-5-20', two)],
    cam3,
    55,
    [800, 500],
  ],
  [
    'box-400-1ph',
    'Box 400 A single-phase, 4 × 100 A, 2 × 60 A two-leg, through',
    cam2,
    0,
    [na(4, 100, 'stage-pin-100'), na(2, 60, 'stage-pin-60-2')],
    cam2,
    42,
    [700, 450],
  ],
  [
    'box-200-12x20',
    'Box 200 A, 12 × 20 A, 3 × 60 A, through',
    cam3,
    200,
    [na(12, 20, 'nema-5-20', two), na(3, 60, 'stage-pin-60')],
    cam3,
    52,
    [800, 500],
  ],
  [
    'box-100-6x20',
    'Box 100 A 120/208 V, 6 × 20 A',
    cam3,
    100,
    [na(6, 20, 'nema-5-20', two)],
    undefined,
    22,
    [500, 350],
  ],
  [
    'box-100-6x20-pin',
    'Box 100 A 120/208 V, 6 × 20 A stage pin',
    cam3,
    100,
    [na(6, 20, 'stage-pin-20')],
    undefined,
    22,
    [500, 350],
  ],
  [
    'box-100-6x20-gfci',
    'Box 100 A 120/208 V, 6 × 20 A, 5 mA protection',
    cam3,
    100,
    [na(6, 20, 'nema-5-20', { ...two, ...gfci })],
    undefined,
    24,
    [500, 350],
  ],
  [
    'box-100-pin-5x20',
    'Box 100 A stage pin, 5 × 20 A',
    'stage-pin-100',
    0,
    [na(5, 20, 'nema-5-20', two)],
    undefined,
    9,
    [350, 250],
  ],
  [
    'box-100-pin-5x20-gfci',
    'Box 100 A stage pin, 5 × 20 A, 5 mA protection',
    'stage-pin-100',
    0,
    [na(5, 20, 'nema-5-20', { ...two, ...gfci })],
    undefined,
    10,
    [350, 250],
  ],
  [
    'box-60-pin-3x20',
    'Box 60 A stage pin, 3 × 20 A',
    'stage-pin-60',
    0,
    [na(3, 20, 'nema-5-20', two)],
    undefined,
    6,
    [300, 220],
  ],
  [
    'box-60-pin-3x20-pin',
    'Box 60 A stage pin, 3 × 20 A stage pin',
    'stage-pin-60',
    0,
    [na(3, 20, 'stage-pin-20')],
    undefined,
    6,
    [300, 220],
  ],
  [
    'split-100-2x60',
    'Splitter 100 A stage pin, 2 × 60 A',
    'stage-pin-100',
    0,
    [na(2, 60, 'stage-pin-60')],
    undefined,
    5,
    [300, 220],
  ],
  [
    'split-60-2x-2x20',
    'Splitter 60 A two-leg, 2 × 20 A two-leg',
    'stage-pin-60-2',
    0,
    [na(2, 20, 'nema-l6-20')],
    undefined,
    5,
    [300, 220],
  ],
  [
    'box-50-6x20',
    'Box 50 A 120/240 V four-wire, 6 × 20 A',
    'ca-50',
    50,
    [na(6, 20, 'nema-5-20', two)],
    'ca-50',
    14,
    [400, 300],
  ],
  [
    'box-50-range-4x20',
    'Box 50 A 120/240 V household inlet, 4 × 20 A',
    'nema-14-50',
    50,
    [na(4, 20, 'nema-5-20', { ...two, ...gfci })],
    undefined,
    12,
    [400, 300],
  ],
  [
    'box-30-4x20',
    'Box 30 A 120/240 V locking, 4 × 20 A',
    'nema-l14-30',
    0,
    [na(4, 20, 'nema-5-20', gfci)],
    undefined,
    8,
    [350, 250],
  ],
  [
    'box-30-3ph-3x20',
    'Box 30 A 120/208 V locking, 3 × 20 A',
    'nema-l21-30',
    0,
    [na(3, 20, 'nema-5-20', { ...two, ...gfci })],
    undefined,
    8,
    [350, 250],
  ],
];

const rcd = { rcdMa: 30 };
const b = (count: number, amps: number, connector: string) => group(count, amps, connector, 'B', rcd);
const c = (count: number, amps: number, connector: string, more: { rcdMa?: number } = rcd) =>
  group(count, amps, connector, 'C', more);
const set400 = 'single-pole-400-eu-3';

const europe: readonly BoxRow[] = [
  [
    'box-400-eu-3x125',
    'Box 400 A, 3 × 125 A three-phase, through',
    set400,
    0,
    [c(3, 125, 'iec-125-3', {})],
    set400,
    60,
    [800, 500],
  ],
  [
    'box-63-12x16-multi',
    'Box 63 A three-phase, 12 × 16 A on two 19-pin multis',
    'iec-63-3',
    63,
    [c(12, 16, 'multi-19')],
    undefined,
    22,
    [450, 360],
  ],
  [
    'box-125-2x63-6x16',
    'Box 125 A, 2 × 63 A three-phase, 6 × 16 A',
    'iec-125-3',
    125,
    [c(2, 63, 'iec-63-3', {}), c(6, 16, 'iec-16-1')],
    undefined,
    40,
    [650, 450],
  ],
  [
    'box-125-2x63-2x32',
    'Box 125 A, 2 × 63 A and 2 × 32 A three-phase',
    'iec-125-3',
    125,
    [c(2, 63, 'iec-63-3', {}), c(2, 32, 'iec-32-3', {})],
    undefined,
    36,
    [650, 450],
  ],
  [
    'box-125-4x32',
    'Box 125 A, 4 × 32 A three-phase, through',
    'iec-125-3',
    0,
    [c(4, 32, 'iec-32-3', {})],
    'iec-125-3',
    38,
    [650, 450],
  ],
  [
    'box-125-3x125-1ph',
    'Box 125 A, 3 × 125 A single-phase',
    'iec-125-3',
    0,
    [c(3, 125, 'iec-125-1', {})],
    undefined,
    30,
    [600, 400],
  ],
  [
    'box-63-6x16-2x32',
    'Box 63 A, 6 × 16 A, 2 × 32 A three-phase',
    'iec-63-3',
    63,
    [c(6, 16, 'iec-16-1'), c(2, 32, 'iec-32-3', rcd)],
    undefined,
    26,
    [550, 400],
  ],
  ['box-63-12x16', 'Box 63 A, 12 × 16 A', 'iec-63-3', 63, [c(12, 16, 'iec-16-1')], undefined, 28, [600, 400]],
  [
    'box-63-12x16-schuko',
    'Box 63 A, 12 × 16 A household',
    'iec-63-3',
    63,
    [b(12, 16, 'schuko-16')],
    undefined,
    28,
    [600, 400],
  ],
  [
    'box-63-6x16-through',
    'Box 63 A, 6 × 16 A, through',
    'iec-63-3',
    0,
    [c(6, 16, 'iec-16-1')],
    'iec-63-3',
    24,
    [550, 400],
  ],
  [
    'box-63-3x32-1ph-3x16',
    'Box 63 A, 3 × 32 A single-phase, 3 × 16 A',
    'iec-63-3',
    63,
    [c(3, 32, 'iec-32-1'), c(3, 16, 'iec-16-1')],
    undefined,
    25,
    [550, 400],
  ],
  [
    'box-63-3x63-1ph',
    'Box 63 A, 3 × 63 A single-phase',
    'iec-63-3',
    0,
    [c(3, 63, 'iec-63-1', {})],
    undefined,
    22,
    [500, 400],
  ],
  [
    'box-32-6x16',
    'Box 32 A, 6 × 16 A, curve B',
    'iec-32-3',
    32,
    [b(6, 16, 'iec-16-1')],
    undefined,
    14,
    [450, 300],
  ],
  [
    'box-32-6x16-c',
    'Box 32 A, 6 × 16 A, curve C',
    'iec-32-3',
    32,
    [c(6, 16, 'iec-16-1')],
    undefined,
    14,
    [450, 300],
  ],
  [
    'box-32-6x16-schuko',
    'Box 32 A, 6 × 16 A household, curve B',
    'iec-32-3',
    32,
    [b(6, 16, 'schuko-16')],
    undefined,
    14,
    [450, 300],
  ],
  [
    'box-32-3x16-through',
    'Box 32 A, 3 × 16 A, through',
    'iec-32-3',
    0,
    [c(3, 16, 'iec-16-1')],
    'iec-32-3',
    10,
    [400, 280],
  ],
  [
    'box-32-1ph-2x16',
    'Box 32 A single-phase, 2 × 16 A',
    'iec-32-1',
    0,
    [c(2, 16, 'iec-16-1')],
    undefined,
    6,
    [300, 220],
  ],
  [
    'box-16-3x16-schuko',
    'Box 16 A three-phase, 3 × 16 A household',
    'iec-16-3',
    0,
    [b(3, 16, 'schuko-16')],
    undefined,
    6,
    [300, 220],
  ],
];

/** Outlet strips and quad boxes: several outlets behind one plug, no breaker of their own. */
const strips: Readonly<Record<Practice, readonly (readonly [string, string, string, number, number])[]>> = {
  'north-america': [
    ['duplex-box-20', 'Duplex box 20 A, 2 outlets, no breaker', 'nema-5-20', 2, 0.9],
    ['quad-box-20', 'Quad box 20 A, 4 outlets, no breaker', 'nema-5-20', 4, 1.5],
    ['strip-15', 'Outlet strip 15 A, 4 outlets, no breaker', 'nema-5-15', 4, 0.8],
  ],
  europe: [
    ['strip-schuko-4', 'Outlet strip 16 A household, 4 outlets, no breaker', 'schuko-16', 4, 1],
    ['strip-blue-3', 'Splitter 16 A blue, 3 outlets, no breaker', 'iec-16-1', 3, 1.5],
    ['strip-13-4', 'Outlet strip 13 A fused, 4 outlets, no breaker', 'bs-1363', 4, 1],
  ],
};

const stripKinds: Family = (practice) =>
  strips[practice].map(([slug, name, connector, count, massKg]): Entry => {
    const port = inletPort(connector);
    return {
      family: 'box',
      slug,
      name,
      also: ['quad', 'strip', 'splitter', 'multi-outlet'],
      massKg,
      sizeMm: { widthMm: 60 * count, lengthMm: 120 },
      symbol: slug.startsWith('quad')
        ? 'outlet-quad'
        : slug.startsWith('duplex')
          ? 'outlet-duplex'
          : 'outlet-strip',
      inlets: [port],
      ways: [],
      outlets: Array.from({ length: count }, (_, i) => ({
        ...port,
        id: String(i + 1),
        label: String(i + 1),
      })),
      basis: { all: COMMON },
    };
  });

/** By what it does and how many ways it has: splitters, feeder boxes, and boxes of 2, 5, 11 and more ways. */
const symbolOf = (slug: string, inlet: string, groups: readonly WayGroup[]): string => {
  const count = groups.reduce((n, g) => n + g.count, 0);
  if (slug.startsWith('split-')) return 'power-splitter';
  if (inlet.startsWith('single-pole') && groups.some((g) => g.amps >= 100)) return 'box-large';
  if (count <= 2) return 'box-2';
  return count <= 5 ? 'box-small' : count <= 11 ? 'box-6' : 'box-12';
};

const breakerBoxes: Family = (practice) =>
  (practice === 'north-america' ? northAmerica : europe).map(
    ([slug, name, inlet, mainA, groups, through, massKg, size]): Entry => {
      const port = inletPort(inlet);
      return {
        family: 'box',
        slug,
        name,
        also: ['box', 'distribution', 'distro'],
        massKg,
        sizeMm: { widthMm: size[0], lengthMm: size[1] },
        symbol: symbolOf(slug, inlet, groups),
        inlets: [port],
        ...(mainA > 0 ? { mainBreakerA: mainA, mainPoles: port.legs } : {}),
        ...waysAndOutlets(groups, port.legs, through),
        basis: { all: COMMON },
      };
    },
  );

export const boxKinds: Family = (practice) => [...breakerBoxes(practice), ...stripKinds(practice)];
