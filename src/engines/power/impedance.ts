import { conductor, resistanceOhmPerKm } from '../../derive/conductors.ts';
import { limitOf } from '../../derive/limits.ts';
import { NEUTRAL, type SupplyNode } from '../../derive/supply-types.ts';
import { legVoltsV, type SystemShape } from '../../derive/systems.ts';
import type { Transformer } from '../../derive/transformers.ts';
import type { Id } from '../../kernel/ids.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';
import { sourceRating } from './rating.ts';

/** Resistance and reactance in ohms per metre of one wire of a cable, parallel conductors counted. */
export interface WireImpedance {
  readonly legOhmPerM: number;
  readonly neutralOhmPerM: number;
  readonly reactanceOhmPerM: number;
  readonly neutralReactanceOhmPerM: number;
  readonly atC: number;
}

/** Impedance of a cable kind's wires. Its conductor must be in the table: the supply walk has checked that. */
export const wireImpedance = (plan: Plan, kind: CableKind): WireImpedance => {
  const leg = conductor(kind.conductor);
  if (!leg) throw new Error(`no conductor ${kind.conductor}`);
  const neutral = (kind.neutralConductor && conductor(kind.neutralConductor)) || leg;
  const atC = limitOf(plan, leg.family === 'awg' ? 'conductor-temp-awg' : 'conductor-temp-mm2').value;
  const x = limitOf(
    plan,
    kind.construction === 'multicore' ? 'reactance-multicore' : 'reactance-singles',
  ).value;
  const n = Math.max(1, kind.parallel);
  const neutrals = Math.max(1, kind.neutralParallel ?? kind.parallel);
  return {
    legOhmPerM: resistanceOhmPerKm(leg, atC) / 1000 / n,
    neutralOhmPerM: resistanceOhmPerKm(neutral, atC) / 1000 / neutrals,
    neutralReactanceOhmPerM: x / 1000 / neutrals,
    reactanceOhmPerM: x / 1000 / n,
    atC,
  };
};

/**
 * Resistance and reactance in ohms of one leg of a transformer's output: its impedance in per cent of the volts of a leg over
 * the amps of its rating. The resistance is what makes half of its losses at full load, the rest is reactance.
 */
export const transformerOhms = (plan: Plan, t: Transformer): readonly [r: number, x: number] => {
  const pct = t.impedancePct ?? limitOf(plan, 'transformer-impedance').value;
  const base = t.shape.nominalV ** 2 / (t.ratedVa / t.shape.legs);
  const r = Math.max(0, (100 - t.efficiencyPct) / 2);
  return [(base * Math.min(r, pct)) / 100, (base * Math.sqrt(Math.max(0, pct * pct - r * r))) / 100];
};

/**
 * Ohms of a source's four wires between what it makes and its terminals, (re, im) by wire; undefined for none. As measured
 * at a service or panel, half of it in the leg and half in the neutral; a set holds its volts by its regulator, but for the
 * regulation of the limits table. A power station holds its own.
 */
export const ownImpedance = (
  plan: Plan,
  sourceId: Id,
  shape: SystemShape,
  volts: number,
): Float64Array | undefined => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = record && kindOf(plan, record.kindId, 'source');
  if (!record || !kind || kind.what === 'power-station') return undefined;
  const ohms = new Float64Array(8);
  if (kind.what === 'generator') {
    const pct = limitOf(plan, 'generator-regulation').value;
    const { legA } = sourceRating(plan, sourceId);
    if (!(pct > 0) || legA === undefined || !(volts > 0)) return undefined;
    for (let l = 0; l < shape.legs; l++) ohms[l * 2] = (pct / 100) * (legVoltsV(shape, l) / legA);
    return ohms;
  }
  const { loopOhm } = record;
  if (loopOhm === undefined || !(loopOhm > 0) || !Number.isFinite(loopOhm)) return undefined;
  for (let l = 0; l < shape.legs; l++) ohms[l * 2] = loopOhm / 2;
  ohms[NEUTRAL * 2] = loopOhm / 2;
  return ohms;
};

/** Ohms of each node's own segment, 8 numbers a node: cables, and the windings of transformers. */
export const impedances = (plan: Plan, nodes: readonly SupplyNode[]): Float64Array => {
  const ohms = new Float64Array(nodes.length * 8);
  const known = new Map<Id, WireImpedance>();
  nodes.forEach((n, k) => {
    if (n.transformer) {
      const [r, x] = transformerOhms(plan, n.transformer);
      for (const l of n.legs) ohms.set([r, x], k * 8 + l * 2);
      return;
    }
    if (n.what !== 'cable') return;
    const cable = recordOf(plan, 'cable', n.recordId);
    const kind = cable && kindOf(plan, cable.kindId, 'cable');
    if (!kind) return;
    let z = known.get(kind.id);
    if (!z) {
      z = wireImpedance(plan, kind);
      known.set(kind.id, z);
    }
    const m = n.lengthMm / 1000;
    for (const l of n.legs) {
      ohms[k * 8 + l * 2] = z.legOhmPerM * m;
      ohms[k * 8 + l * 2 + 1] = z.reactanceOhmPerM * m;
    }
    ohms[k * 8 + NEUTRAL * 2] = z.neutralOhmPerM * m;
    ohms[k * 8 + NEUTRAL * 2 + 1] = z.neutralReactanceOhmPerM * m;
  });
  return ohms;
};
