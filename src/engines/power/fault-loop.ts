import { limitOf } from '../../derive/limits.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import { legVoltsV, type SystemShape, systemShape } from '../../derive/systems.ts';
import type { Transformer } from '../../derive/transformers.ts';
import type { Curve } from '../../plan/kinds/ports.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';
import { magneticBand } from './findings/inrush.ts';
import { transformerOhms, wireImpedance } from './impedance.ts';

/** Fault loop at the end of one run: a leg touching the neutral or the earth there. In ohms and amps. */
export interface FaultLoop {
  readonly key: string;
  readonly label: string;
  /** Leg and return of all runs from the source on, warm; an earth conductor as thick as the leg is assumed. */
  readonly runsOhm: number;
  /** With the source's own impedance; undefined where that is not known. */
  readonly loopOhm: number | undefined;
  /** Prospective fault current at nominal volts; undefined where the source's impedance is not known. */
  readonly faultA: number | undefined;
  /** The breaker that should open: the nearest way ahead. */
  readonly breakerLabel: string | undefined;
  readonly breakerA: number | undefined;
  readonly curve: Curve | undefined;
  /** Trip class of the residual-current device ahead that opens first; undefined without one. It sees faults to earth alone. */
  readonly rcdMa: number | undefined;
  /** The largest loop with which the breaker opens at once; undefined without a breaker. */
  readonly mostOhm: number | undefined;
  readonly opens: 'at once' | 'perhaps at once' | 'slowly' | 'not known';
  /** Nominal volts leg to neutral or earth, the source's own impedance as the run sees it, and the band of the breaker in times its rating. */
  readonly volts: number;
  readonly sourceOhm: number | undefined;
  readonly cMin: number;
  readonly band: { readonly low: number; readonly high: number } | undefined;
}

/** What one run or transformer adds to the loops behind it; a transformer first multiplies what lies ahead by `share`. */
export interface LoopPart {
  readonly label: string;
  readonly lengthMm: number;
  readonly resistanceOhm: number;
  readonly reactanceOhm: number;
  readonly share: number;
}

/** Largest loop impedance in ohms with which a breaker still opens at once: c_min × volts ÷ (upper end of its band × rating). */
export const largestLoopOhm = (volts: number, breakerA: number, timesHigh: number, cMin: number): number =>
  (cMin * volts) / (timesHigh * breakerA);

/** Fault loops at the end of every run that is computed, in tree order. */
export const faultLoops = (plan: Plan, tree: SupplyTree): readonly FaultLoop[] => {
  const ohms = new Float64Array(tree.nodes.length * 2);
  const out: FaultLoop[] = [];
  const cMin = limitOf(plan, 'fault-c-min').value;
  for (const n of tree.nodes) {
    const up = Math.max(0, n.parent) * 2;
    if (n.parent >= 0) {
      ohms[n.index * 2] = ohms[up] ?? 0;
      ohms[n.index * 2 + 1] = ohms[up + 1] ?? 0;
    }
    if (n.transformer) throughTransformer(plan, n.transformer, ohms, n.index * 2);
    const shape = shapeAt(tree, n);
    if (n.what !== 'cable' || n.notComputed !== undefined || !shape || n.sourceId === undefined) continue;
    const run = runOhms(plan, n);
    if (!run) continue;
    ohms[n.index * 2] = (ohms[n.index * 2] ?? 0) + run.resistanceOhm;
    ohms[n.index * 2 + 1] = (ohms[n.index * 2 + 1] ?? 0) + run.reactanceOhm;
    const runsOhm = Math.hypot(ohms[n.index * 2] ?? 0, ohms[n.index * 2 + 1] ?? 0);
    const measured = recordOf(plan, 'source', n.sourceId)?.loopOhm;
    const source = measured === undefined ? undefined : measured * feedShare(tree, n);
    const loopOhm =
      source === undefined || !(source >= 0)
        ? undefined
        : Math.hypot((ohms[n.index * 2] ?? 0) + source, ohms[n.index * 2 + 1] ?? 0);
    const volts = legVoltsV(shape, n.legs[0] ?? 0);
    const faultA = loopOhm === undefined || loopOhm === 0 ? undefined : volts / loopOhm;
    const way = wayAhead(tree, n);
    const band = way?.way && magneticBand(plan, way.way.curve);
    const ratingA = way?.way?.breakerA;
    const mostOhm = band && ratingA ? largestLoopOhm(volts, ratingA, band.high, cMin) : undefined;
    out.push({
      key: n.key,
      label: n.label,
      runsOhm,
      loopOhm,
      faultA,
      breakerLabel: way?.label,
      breakerA: ratingA,
      curve: way?.way?.curve,
      rcdMa: deviceAhead(tree, n),
      mostOhm,
      opens:
        faultA === undefined || !band || !ratingA
          ? 'not known'
          : faultA * cMin >= band.high * ratingA
            ? 'at once'
            : faultA >= band.low * ratingA
              ? 'perhaps at once'
              : 'slowly',
      volts,
      sourceOhm: source,
      cMin,
      band,
    });
  }
  return out;
};

/** What makes up the loop at the end of a run, from the source on. Empty where the run is not in the tree. */
export const loopParts = (plan: Plan, tree: SupplyTree, key: string): readonly LoopPart[] => {
  const out: LoopPart[] = [];
  for (let at = tree.byKey.get(key); at; at = tree.nodes[at.parent]) {
    if (at.transformer) {
      const [resistanceOhm, reactanceOhm] = transformerOhms(plan, at.transformer);
      out.push({ label: at.label, lengthMm: 0, resistanceOhm, reactanceOhm, share: shareOf(at.transformer) });
    }
    const run = runOhms(plan, at);
    if (run) out.push({ label: at.label, lengthMm: at.lengthMm, ...run, share: 1 });
  }
  return out.reverse();
};

/** Leg and return of one run; undefined for what is none. */
const runOhms = (
  plan: Plan,
  n: SupplyNode,
): { readonly resistanceOhm: number; readonly reactanceOhm: number } | undefined => {
  const cable = n.what === 'cable' ? recordOf(plan, 'cable', n.recordId) : undefined;
  const kind = cable && kindOf(plan, cable.kindId, 'cable');
  if (!kind) return undefined;
  const z = wireImpedance(plan, kind);
  const m = n.lengthMm / 1000;
  const back = n.neutral ? z.neutralOhmPerM : z.legOhmPerM;
  return { resistanceOhm: (z.legOhmPerM + back) * m, reactanceOhm: 2 * z.reactanceOhmPerM * m };
};

/** What an impedance ahead of a transformer counts behind it: the square of its ratio, a third of that from a delta. */
const shareOf = (t: Transformer): number => t.ratio ** 2 / (t.shape.legs === 3 ? 3 : 1);

/** Loop ahead of a transformer as its output sees it, with its own windings. `at` is the place of its output's ohms. */
const throughTransformer = (plan: Plan, t: Transformer, ohms: Float64Array, at: number): void => {
  const [r, x] = transformerOhms(plan, t);
  ohms[at] = (ohms[at] ?? 0) * shareOf(t) + r;
  ohms[at + 1] = (ohms[at + 1] ?? 0) * shareOf(t) + x;
};

/** Product of the shares of all transformers ahead of a node. */
const feedShare = (tree: SupplyTree, n: SupplyNode): number => {
  let share = 1;
  for (let at: SupplyNode | undefined = n; at; at = tree.nodes[at.parent])
    if (at.transformer) share *= shareOf(at.transformer);
  return share;
};

/** Legs and volts of the supply a node lies in. */
const shapeAt = (tree: SupplyTree, n: SupplyNode): SystemShape | undefined => {
  for (let at: SupplyNode | undefined = n; at; at = tree.nodes[at.parent])
    if (at.transformer) return at.transformer.shape;
  return n.system && systemShape(n.system);
};

/** The lowest trip class of the residual-current devices ahead, up to a transformer, behind which a supply begins anew. */
const deviceAhead = (tree: SupplyTree, n: SupplyNode): number | undefined => {
  let least: number | undefined;
  for (let at: SupplyNode | undefined = n; at && !at.transformer; at = tree.nodes[at.parent]) {
    const ma = at.way?.rcdMa;
    if (ma !== undefined && ma > 0 && (least === undefined || ma < least)) least = ma;
  }
  return least;
};

const wayAhead = (tree: SupplyTree, n: SupplyNode): SupplyNode | undefined => {
  for (let at: SupplyNode | undefined = n; at && !at.transformer; at = tree.nodes[at.parent])
    if (at.way) return at;
  return undefined;
};
