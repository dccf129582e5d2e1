import { always, type EngineFinding } from '../../../derive/findings.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { legVoltsV, lineToLineV, type SystemShape, systemShape } from '../../../derive/systems.ts';
import { connector } from '../../../plan/connectors.ts';
import type { Computed } from '../types.ts';
import { onHighLeg } from './volts.ts';

/** The most nominal volts between any two wires of a node: between its legs, or leg to neutral where it has one leg. */
const mostVolts = (shape: SystemShape, n: SupplyNode): number => {
  const pairs = n.legs.flatMap((a, i) => n.legs.slice(i + 1).map((b) => lineToLineV(shape, a, b)));
  return Math.max(...n.legs.map((l) => (n.neutral ? legVoltsV(shape, l) : 0)), ...pairs);
};

/** Share above which nominal volts are more than a connector is made for; a 208 V one takes 208 V however it is rounded. */
const SLACK = 1.005;

/**
 * Outlets, cables and inlets whose connectors are not made for the volts of the legs they carry, like a 125 V connector on a
 * leg of 277 V: one finding where the volts are first too many, on the nearest thing to the source.
 */
export const connectorVolts = (c: Computed): readonly EngineFinding[] => {
  const shapes = new Map<number, SystemShape | undefined>();
  const told = new Set<number>();
  return c.tree.nodes.flatMap((n) => {
    const shape = n.transformer?.shape ?? shapes.get(n.parent) ?? (n.system && systemShape(n.system));
    shapes.set(n.index, shape);
    if (told.has(n.parent) && !n.transformer) {
      told.add(n.index);
      return [];
    }
    if (!shape || n.notComputed !== undefined || n.legs.length === 0 || onHighLeg(n)) return [];
    const volts = mostVolts(shape, n);
    const weak = n.connectors
      .flatMap((id) => connector(id) ?? [])
      .filter((x) => x.voltsV > 0 && volts > x.voltsV * SLACK);
    const [first] = weak;
    if (!first) return [];
    told.add(n.index);
    return [
      always('power-connector-volts', 'stop', n.key, [n.recordId], {
        label: n.label,
        nominalV: volts,
        ratedV: Math.min(...weak.map((x) => x.voltsV)),
        connector: first.name,
      }),
    ];
  });
};
