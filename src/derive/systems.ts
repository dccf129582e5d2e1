import type { System } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';

/** The shape of a supply: how many legs, their volts, and the angle of each. */
export interface SystemShape {
  readonly legs: number;
  /** What people call its volts, and what a plan gives: leg to neutral, or leg to leg where there is no neutral. */
  readonly nominalV: number;
  /** Nominal volts of the first leg to the neutral, or to the middle where there is no neutral. */
  readonly lineToNeutralV: number;
  /** Volts of each leg to the neutral over `nominalV`. */
  readonly ratios: readonly number[];
  /** Angle of each leg's voltage to neutral, in radians. Legs follow one another A, B, C. */
  readonly anglesRad: readonly number[];
  readonly neutral: boolean;
  /** The leg of a tapped delta that stands far above the others to neutral. */
  readonly highLeg: number | undefined;
  readonly name: string;
}

const THIRD = (2 * Math.PI) / 3;

const shape = (
  nominalV: number,
  anglesRad: readonly number[],
  name: string,
  more: { ratios?: readonly number[]; neutral?: boolean; highLeg?: number } = {},
): SystemShape => {
  const ratios = more.ratios ?? anglesRad.map(() => 1);
  return {
    legs: anglesRad.length,
    nominalV,
    lineToNeutralV: nominalV * (ratios[0] ?? 1),
    ratios,
    anglesRad,
    neutral: more.neutral ?? true,
    highLeg: more.highLeg,
    name,
  };
};

const WYE = [0, -THIRD, THIRD];
const MIDDLE = 1 / Math.sqrt(3);

// A delta of 240 V whose winding between legs A and C is tapped in the middle: B stands √3 × 120 V off that tap, at right
// angles, behind A and before C.
const shapes: Readonly<Record<System, SystemShape>> = {
  '120': shape(120, [0], '120 V single phase'),
  '120/240': shape(120, [0, Math.PI], '120/240 V three-wire'),
  '120/208': shape(120, WYE, '120/208 V three-phase'),
  '120/240-delta': shape(120, [0, -Math.PI / 2, Math.PI], '120/240 V delta with a high leg', {
    ratios: [1, Math.sqrt(3), 1],
    highLeg: 1,
  }),
  '277/480': shape(277, WYE, '277/480 V three-phase'),
  '347/600': shape(347, WYE, '347/600 V three-phase'),
  '230': shape(230, [0], '230 V single phase'),
  '230/400': shape(230, WYE, '230/400 V three-phase'),
  '230-it': shape(230, WYE, '230 V between lines, no neutral', {
    ratios: [MIDDLE, MIDDLE, MIDDLE],
    neutral: false,
  }),
};

/** The supply system by its name; undefined for a name this program does not know. */
export const systemShape = (system: string): SystemShape | undefined =>
  Object.hasOwn(shapes, system) ? shapes[system as System] : undefined;

/** Nominal volts of a leg to the neutral. */
export const legVoltsV = (shape: SystemShape, leg: number): number =>
  shape.nominalV * (shape.ratios[leg] ?? Number.NaN);

/** Nominal volts between two legs of a system: the length of the difference of their phasors. */
export const lineToLineV = (shape: SystemShape, a: number, b: number): number => {
  const x = shape.anglesRad[a] ?? Number.NaN;
  const y = shape.anglesRad[b] ?? Number.NaN;
  const [u, v] = [legVoltsV(shape, a), legVoltsV(shape, b)];
  return Math.hypot(u * Math.cos(x) - v * Math.cos(y), u * Math.sin(x) - v * Math.sin(y));
};

/**
 * Volts that, times the amps of a balanced load on every leg, give its volt-amperes: the sum over the legs of a wye, √3 times
 * the volts between lines of a delta.
 */
export const balancedV = (shape: SystemShape): number =>
  shape.highLeg === undefined
    ? shape.ratios.reduce((sum, r) => sum + r * shape.nominalV, 0)
    : Math.sqrt(3) * 2 * shape.nominalV;

/** Name of a leg for people: A B C or L1 L2 L3 by practice; 1 and 2 on a North American three-wire supply. */
export const legName = (practice: Practice, system: System | undefined, index: number): string => {
  if (practice === 'europe') return `L${index + 1}`;
  return system === '120/240' ? String(index + 1) : (['A', 'B', 'C'][index] ?? String(index + 1));
};

/** Names of several legs: `A`, `A+C`, `L1+L2+L3`. */
export const legNames = (practice: Practice, system: System | undefined, legs: readonly number[]): string =>
  legs.map((l) => legName(practice, system, l)).join('+');
