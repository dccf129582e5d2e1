import type { Curve, InletPort, OutletPort, Way } from '../plan/kinds/ports.ts';

/** Connectors as an outlet or inlet carries them: live legs and neutral. */
const SHAPES: Readonly<Record<string, readonly [legs: number, neutral: boolean]>> = {
  'nema-l6-20': [2, false],
  'nema-l14-30': [2, true],
  'nema-l21-30': [3, true],
  'nema-14-50': [2, true],
  'stage-pin-60-2': [2, false],
  'stage-pin-100-2': [2, false],
  'ca-50': [2, true],
  'single-pole-400-2': [2, true],
  'single-pole-400-3': [3, true],
  'iec-16-3': [3, true],
  'iec-32-3': [3, true],
  'iec-63-3': [3, true],
  'iec-125-3': [3, true],
  'single-pole-400-eu-3': [3, true],
  'bare-tails': [3, true],
};

const shapeOf = (connector: string): { legs: number; neutral: boolean } => {
  const [legs, neutral] = SHAPES[connector] ?? [1, true];
  return { legs, neutral };
};

export const inletPort = (connector: string): InletPort => ({ id: 'in', connector, ...shapeOf(connector) });

/** A group of like ways: how many, breaker amps, connector of its outlets, and the rest. */
export interface WayGroup {
  readonly count: number;
  readonly amps: number;
  readonly connector: string;
  readonly curve: Curve;
  readonly rcdMa?: number;
  /** Outlets on each way; 1 when absent. */
  readonly outlets?: number;
}

export const group = (
  count: number,
  amps: number,
  connector: string,
  curve: Curve,
  more: { rcdMa?: number; outlets?: number } = {},
): WayGroup => ({ count, amps, connector, curve, ...more });

/** Legs of the n-th way of so many poles on a thing with `of` legs: one pole A B C A…, two poles AB BC CA…. */
const legsFor = (n: number, poles: number, of: number): number[] => {
  if (poles >= of) return Array.from({ length: of }, (_, i) => i);
  return Array.from({ length: poles }, (_, i) => (n + i) % of).sort((a, b) => a - b);
};

/** Connector that carries several circuits, and how many. */
const MULTI = { connector: 'multi-19', circuits: 6 };

/**
 * Ways and outlets from groups, numbered 1, 2, 3… through all groups. Each group starts again on the first leg.
 * Ways in a multi-circuit connector share outlets of six circuits each. `through` adds an outlet without a breaker that
 * passes all legs on.
 */
export const waysAndOutlets = (
  groups: readonly WayGroup[],
  legCount: number,
  through?: string,
): { ways: Way[]; outlets: OutletPort[] } => {
  const ways: Way[] = [];
  const outlets: OutletPort[] = [];
  for (const g of groups) {
    const shape = shapeOf(g.connector);
    for (let i = 0; i < g.count; i++) {
      const id = String(ways.length + 1);
      const legs = legsFor(i, shape.legs, legCount);
      const rcd = g.rcdMa === undefined ? {} : { rcdMa: g.rcdMa };
      ways.push({ id, label: id, breakerA: g.amps, poles: legs.length, curve: g.curve, legs, ...rcd });
      if (g.connector === MULTI.connector) continue;
      for (let n = 0; n < (g.outlets ?? 1); n++) {
        const portId = (g.outlets ?? 1) > 1 ? `${id}${'abcd'[n] ?? n}` : id;
        outlets.push({ id: portId, connector: g.connector, ...shape, wayId: id, label: portId });
      }
    }
  }
  const inMulti = groups.flatMap((g, n) => {
    const before = groups.slice(0, n).reduce((sum, x) => sum + x.count, 0);
    return g.connector === MULTI.connector ? ways.slice(before, before + g.count) : [];
  });
  for (let n = 0; n * MULTI.circuits < inMulti.length; n++) {
    const carried = inMulti.slice(n * MULTI.circuits, (n + 1) * MULTI.circuits);
    outlets.push({
      id: `m${n + 1}`,
      connector: MULTI.connector,
      ...shapeOf(MULTI.connector),
      circuitWayIds: carried.map((w) => w.id),
      label: `multi ${n + 1}, ways ${carried[0]?.id ?? ''} to ${carried.at(-1)?.id ?? ''}`,
    });
  }
  if (through)
    outlets.push({ id: 'through', connector: through, ...shapeOf(through), label: 'through, no breaker' });
  return { ways, outlets };
};
