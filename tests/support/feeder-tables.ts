import type { Complex, FeederLoad, FeederSegment } from '../../src/engines/power/index.ts';

/** A line configuration per mile: upper triangle of the impedance in ohms and of the charging in microsiemens. */
export interface Configuration {
  readonly z: readonly Complex[];
  readonly b?: readonly number[];
}

const TRIANGLE = [
  [0, 1, 2],
  [1, 3, 4],
  [2, 4, 5],
] as const;

/** A stretch of line of so many feet. */
export const lineOf =
  (configurations: Readonly<Record<string, Configuration>>) =>
  (from: string, to: string, feet: number, name: string): FeederSegment => {
    const c = configurations[name];
    if (!c) throw new Error(`no configuration ${name}`);
    const miles = feet / 5280;
    const { b } = c;
    return {
      from,
      to,
      ohm: TRIANGLE.map((row) =>
        row.map((n): Complex => [(c.z[n]?.[0] ?? 0) * miles, (c.z[n]?.[1] ?? 0) * miles]),
      ),
      ...(b ? { shuntS: TRIANGLE.map((row) => row.map((n) => (b[n] ?? 0) * 1e-6 * miles)) } : {}),
    };
  };

const EXPONENT = { PQ: 0, I: 1, Z: 2 } as const;

/**
 * Loads of one row of a published table: kW and kvar by phase, in wye to the neutral or in delta (AB, BC, CA), with what
 * stays constant: power, current or impedance.
 */
export const loadRow = (
  model: 'Y-PQ' | 'Y-I' | 'Y-Z' | 'D-PQ' | 'D-I' | 'D-Z',
  lineV: number,
  values: readonly number[],
): Omit<FeederLoad, 'node'>[] => {
  const delta = model.startsWith('D');
  const exponent = EXPONENT[model.slice(2) as keyof typeof EXPONENT];
  return [0, 1, 2].flatMap((p) => {
    const [kw, kvar] = [values[2 * p] ?? 0, values[2 * p + 1] ?? 0];
    return kw === 0 && kvar === 0
      ? []
      : [
          {
            from: p,
            to: delta ? (p + 1) % 3 : 3,
            wattsW: kw * 1000,
            varsVar: kvar * 1000,
            nominalV: delta ? lineV : lineV / Math.sqrt(3),
            expP: exponent,
            expQ: exponent,
          },
        ];
  });
};
