import type { System } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';

/** The shape of a supply: how many legs, their volts to neutral, and the angle of each. */
export interface SystemShape {
  readonly legs: number;
  readonly lineToNeutralV: number;
  /** Angle of each leg's voltage to neutral, in radians. Legs follow one another A, B, C. */
  readonly anglesRad: readonly number[];
  readonly name: string;
}

const THIRD = (2 * Math.PI) / 3;

const shapes: Readonly<Record<System, SystemShape>> = {
  '120': { legs: 1, lineToNeutralV: 120, anglesRad: [0], name: '120 V single phase' },
  '120/240': { legs: 2, lineToNeutralV: 120, anglesRad: [0, Math.PI], name: '120/240 V three-wire' },
  '120/208': { legs: 3, lineToNeutralV: 120, anglesRad: [0, -THIRD, THIRD], name: '120/208 V three-phase' },
  '230': { legs: 1, lineToNeutralV: 230, anglesRad: [0], name: '230 V single phase' },
  '230/400': { legs: 3, lineToNeutralV: 230, anglesRad: [0, -THIRD, THIRD], name: '230/400 V three-phase' },
};

/** The supply system by its name; undefined for a name this program does not know. */
export const systemShape = (system: string): SystemShape | undefined =>
  Object.hasOwn(shapes, system) ? shapes[system as System] : undefined;

/** Nominal volts between two legs of a system: the length of the difference of their phasors. */
export const lineToLineV = (shape: SystemShape, a: number, b: number): number => {
  const x = shape.anglesRad[a] ?? Number.NaN;
  const y = shape.anglesRad[b] ?? Number.NaN;
  return shape.lineToNeutralV * Math.hypot(Math.cos(x) - Math.cos(y), Math.sin(x) - Math.sin(y));
};

/** Name of a leg for people: A B C or L1 L2 L3 by practice; 1 and 2 on a North American three-wire supply. */
export const legName = (practice: Practice, system: System | undefined, index: number): string => {
  if (practice === 'europe') return `L${index + 1}`;
  return system === '120/240' ? String(index + 1) : (['A', 'B', 'C'][index] ?? String(index + 1));
};

/** Names of several legs: `A`, `A+C`, `L1+L2+L3`. */
export const legNames = (practice: Practice, system: System | undefined, legs: readonly number[]): string =>
  legs.map((l) => legName(practice, system, l)).join('+');
