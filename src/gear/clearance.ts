/** Least distances in millimetres: to cloth and other things that burn, and to the surface it lights. */
export interface Clearance {
  readonly cloth: number;
  readonly surface: number;
}

type Step = readonly [upToW: number, clothMm: number, surfaceMm: number];

/** By watts, as plates of such units give them on average: the hotter the unit, the further. */
const STEPS: Readonly<Record<'tungsten' | 'discharge' | 'led', readonly Step[]>> = {
  tungsten: [
    [150, 300, 500],
    [300, 300, 600],
    [650, 500, 800],
    [1000, 500, 1000],
    [2000, 700, 1500],
    [6000, 1000, 2000],
    [12_000, 1500, 3000],
    [Number.POSITIVE_INFINITY, 2000, 4000],
  ],
  discharge: [
    [200, 300, 500],
    [800, 500, 1000],
    [1800, 500, 1200],
    [2500, 800, 1500],
    [6000, 1000, 2500],
    [Number.POSITIVE_INFINITY, 1500, 4000],
  ],
  // Only of units that throw a hard beam; soft sources carry no such distance by custom.
  led: [
    [400, 100, 300],
    [1200, 200, 600],
    [Number.POSITIVE_INFINITY, 300, 1000],
  ],
};

/** Styles that throw heat or a hard beam. Bulbs and practicals follow their own shade and label. */
const HOT: Readonly<Record<string, readonly string[]>> = {
  tungsten: [
    'fresnel',
    'open-face',
    'cyc-flood',
    'softlight',
    'par',
    'par-bank',
    'ellipsoidal',
    'space-light',
  ],
  discharge: ['fresnel', 'par'],
  led: ['fresnel', 'spot', 'ellipsoidal', 'moving-head'],
};

/** Where the distances are from. */
export const CLEARANCE_BASIS =
  'planning value of the class from memory, assumed: the plate on the unit comes first';

/**
 * The least distances of a unit of so many watts, where common practice has one: nothing for soft LED sources,
 * fluorescent units, balloons and bulbs.
 */
export const clearanceOf = (source: string, style: string, wattsW: number): Clearance | undefined => {
  if (!HOT[source]?.includes(style)) return undefined;
  const step = STEPS[source as keyof typeof STEPS]?.find(([upToW]) => wattsW <= upToW);
  return step && { cloth: step[1], surface: step[2] };
};
