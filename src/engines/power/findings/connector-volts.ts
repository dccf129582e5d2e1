import { always, type EngineFinding } from '../../../derive/findings.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { legVoltsV, lineToLineV, type SystemShape, systemShape } from '../../../derive/systems.ts';
import { connector } from '../../../plan/connectors.ts';
import type { Judged } from '../types.ts';
import { onHighLeg } from './volts.ts';

/** Answers of `mostVolts` by shape, legs as bits and neutral: a few for each shape, asked for every node. */
const known = new WeakMap<SystemShape, Float64Array>();

/** The most nominal volts between any two wires of a node: between its legs, or leg to neutral where it has one leg. */
const mostVolts = (shape: SystemShape, n: SupplyNode): number => {
  let table = known.get(shape);
  if (!table) {
    table = new Float64Array(16).fill(Number.NaN);
    known.set(shape, table);
  }
  let at = n.neutral ? 8 : 0;
  for (const l of n.legs) at |= 1 << l;
  const before = table[at] as number;
  if (!Number.isNaN(before)) return before;
  const pairs = n.legs.flatMap((a, i) => n.legs.slice(i + 1).map((b) => lineToLineV(shape, a, b)));
  const most = Math.max(...n.legs.map((l) => (n.neutral ? legVoltsV(shape, l) : 0)), ...pairs);
  table[at] = most;
  return most;
};

/** Share above which nominal volts are more than a connector is made for; a 208 V one takes 208 V however it is rounded. */
const SLACK = 1.005;

/**
 * Outlets, cables and inlets whose connectors are not made for the volts of the legs they carry, like a 125 V connector on a
 * leg of 277 V: one finding where the volts are first too many, on the nearest thing to the source.
 */
export const connectorVolts = (c: Judged): readonly EngineFinding[] => {
  const shapes: (SystemShape | undefined)[] = new Array(c.part.length);
  const told = new Uint8Array(c.part.length);
  const out: EngineFinding[] = [];
  for (const [i, n] of c.part.entries()) {
    const up = n.parent - c.from;
    const shape = n.transformer?.shape ?? (n.parent < 0 ? n.system && systemShape(n.system) : shapes[up]);
    shapes[i] = shape;
    if (n.parent >= 0 && told[up] && !n.transformer) {
      told[i] = 1;
      continue;
    }
    if (n.connectors.length === 0 || !shape || n.notComputed !== undefined || n.legs.length === 0) continue;
    const volts = mostVolts(shape, n);
    if (!n.connectors.some((id) => tooWeak(id, volts)) || onHighLeg(n)) continue;
    const weak = n.connectors.flatMap((id) => (tooWeak(id, volts) ? (connector(id) ?? []) : []));
    told[i] = 1;
    out.push(
      always('power-connector-volts', 'stop', n.key, [n.recordId], {
        label: n.label,
        nominalV: volts,
        ratedV: Math.min(...weak.map((x) => x.voltsV)),
        connector: weak[0]?.name ?? '',
      }),
    );
  }
  return out;
};

const tooWeak = (id: string, volts: number): boolean => {
  const rated = connector(id)?.voltsV ?? 0;
  return rated > 0 && volts > rated * SLACK;
};
