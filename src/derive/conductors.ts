import ampacity from '../../shared/ampacity.json' with { type: 'json' };
import table from '../../shared/conductors.json' with { type: 'json' };

/** One conductor size. `ohmPerKm` is the direct-current resistance at `refC`. */
export interface Conductor {
  readonly id: string;
  readonly name: string;
  readonly areaMm2: number;
  readonly ohmPerKm: number;
  readonly refC: number;
  readonly family: string;
  readonly source: string;
  readonly status: string;
}

const rows: ReadonlyMap<string, Conductor> = new Map(table.rows.map((r) => [r.id, r]));

/** A row of the conductor table, by ids like `awg:12` and `mm2:2.5`. */
export const conductor = (id: string): Conductor | undefined => rows.get(id);

/**
 * Resistance in ohms per kilometre of one conductor at a temperature in °C.
 * R(T) = R_ref × (1 + α × (T − T_ref)), α 0.00323 from 75 °C (NEC chapter 9 table 8) and 0.00393 from 20 °C (IEC 60287).
 */
export const resistanceOhmPerKm = (c: Conductor, atC: number): number =>
  c.ohmPerKm * (1 + (c.refC === 75 ? table.alphaAt75 : table.alphaAt20) * (atC - c.refC));

/**
 * Factor on ampacity for air warmer than 30 °C, from the 60 °C insulation column, the most cautious one.
 * Air at or below 30 °C gives 1: cold is not counted in favour. Above 55 °C the table ends and its last row holds.
 */
export const ambientFactor = (ambientC: number): number => {
  const row = ampacity.ambient.find((r) => ambientC <= r.toC) ?? ampacity.ambient.at(-1);
  return row?.c60 ?? 1;
};

interface Step {
  readonly to: number;
  readonly factor: number;
}

const stepFactor = (steps: readonly Step[], n: number): number =>
  (steps.find((s) => n <= s.to) ?? steps.at(-1))?.factor ?? 1;

/** Factor on ampacity for so many loaded conductors together (North American table). Up to three give 1. */
export const conductorsFactor = (loaded: number): number => stepFactor(ampacity.groupingByConductors, loaded);

/** Factor on ampacity for so many loaded cables in one bundle (European table). */
export const circuitsFactor = (circuits: number): number => stepFactor(ampacity.groupingByCircuits, circuits);

/** Factor on ampacity for cable that stays on a drum or in a coil in so many layers. None gives 1. */
export const drumFactor = (layers: number): number => (layers < 1 ? 1 : stepFactor(ampacity.drum, layers));

type AmpacityRow = Readonly<Record<string, unknown>>;

/**
 * What a cord of this conductor carries with three loaded conductors, where `twoA` is its value for two. Undefined where
 * no row of the table gives that value.
 */
export const threeLoadedA = (conductorId: string, twoA: number): number | undefined => {
  for (const row of ampacity.rows as readonly AmpacityRow[]) {
    if (row.conductor !== conductorId) continue;
    for (const [two, three] of [
      ['loaded2A', 'loaded3A'],
      ['c60Two', 'c60Three'],
      ['c75Two', 'c75Three'],
      ['c90Two', 'c90Three'],
    ] as const) {
      const value = row[three];
      if (row[two] === twoA && typeof value === 'number') return value;
    }
  }
  return undefined;
};

/** Ampacity of another conductor by the same column of the same table in which `conductorId` has `amps`. */
export const sameColumnA = (conductorId: string, amps: number, other: string): number | undefined => {
  const rows = ampacity.rows as readonly AmpacityRow[];
  for (const row of rows) {
    if (row.conductor !== conductorId) continue;
    for (const [column, value] of Object.entries(row)) {
      if (value !== amps) continue;
      const found = rows.find((r) => r.conductor === other && r.table === row.table)?.[column];
      if (typeof found === 'number') return found;
    }
  }
  return undefined;
};

/** Where the factors for grouping and drums are from, for people. */
export const groupingSources = {
  conductors: ampacity.groupingByConductorsSource,
  circuits: ampacity.groupingByCircuitsSource,
  drum: ampacity.drumSource,
} as const;

/** Warmest air the ambient table covers, in °C. */
export const ambientMaxC: number = Math.max(...ampacity.ambient.map((r) => r.toC));
