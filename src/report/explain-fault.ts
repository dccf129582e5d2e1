import { legName } from '../derive/systems.ts';
import { figureKey, type Quantity } from '../derive/types.ts';
import { explainLostLegWire } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { formatVolts, formatWatts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { explain } from './explain.ts';
import { explainFaultKind } from './explain-fault-kind.ts';
import type { Working, WorkingInput } from './types.ts';
import { type Fault, tryFault } from './whatif.ts';
import type { FaultPart, TriedFault } from './whatif-types.ts';

/** A figure of a fault that is tried: what a load sees, or a wire of the source by its name before or after. */
export type FaultFigure =
  | { readonly load: string; readonly of: 'volts' | 'watts' | 'takes' | 'restrike' }
  | { readonly wire: string; readonly when: 'before' | 'after' };

/** The arithmetic behind a figure of a tried fault, from the same call that shows it. Undefined where there is no such figure. */
export const explainFault = (
  plan: Plan,
  fault: Fault,
  setupId: Id | undefined,
  figure: FaultFigure,
): Working | undefined => {
  const tried = tryFault(plan, fault, setupId);
  if (!tried.ok) return undefined;
  if ('wire' in figure) return wireWorking(plan, fault, tried.value, figure.wire, figure.when);
  const { load, of } = figure;
  return of === 'takes' || of === 'restrike'
    ? explainFaultKind(plan, tried.value, load, of)
    : loadWorking(plan, tried.value, load, of);
};

const wireWorking = (
  plan: Plan,
  fault: Fault,
  t: TriedFault,
  name: string,
  when: 'before' | 'after',
): Working | undefined => {
  const { meter, title, setupId } = t.result;
  const source = meter && t.power.tree.byKey.get(meter.sourceId);
  if (!meter || !source || !meter.wires.some((w) => w.name === name)) return undefined;
  const practice = planRecord(plan).practice;
  const wire = source.legs.find((l) => legName(practice, source.system, l) === name);
  if (wire === undefined && name !== 'N') return undefined;
  const quantity: Quantity =
    wire === undefined ? 'neutralA' : ((['leg0A', 'leg1A', 'leg2A'] as const)[wire] ?? 'leg0A');
  const key = figureKey(quantity, meter.sourceId, setupId);
  if (when === 'before') return explain(plan, key);
  if (t.left) {
    const dark = t.result.loads.filter((l) => l.state === 'dark');
    const w = explain(t.left, key);
    return (
      w && {
        ...w,
        key: `${title}: ${key}`,
        title: `${w.title}, when ${lower(title)}`,
        steps: [`taken off, because dark: ${dark.map((l) => l.label).join(', ') || 'nothing'}`, ...w.steps],
        rule: 'power-what-if',
      }
    );
  }
  if (!t.lostLeg || !('loseLeg' in fault)) return undefined;
  return explainLostLegWire(plan, t.power, t.lostLeg, {
    sourceId: meter.sourceId,
    setup: t.setup,
    leg: fault.loseLeg.leg,
    ...(wire === undefined ? {} : { wire }),
  });
};

const loadWorking = (plan: Plan, t: TriedFault, key: string, of: 'volts' | 'watts'): Working | undefined => {
  const row = t.result.loads.find((l) => l.key === key);
  const parts = t.parts.get(key);
  const node = t.power.tree.byKey.get(key);
  if (!row || row.state === 'dark' || !parts || !node) return undefined;
  const many = parts.length > 1;
  const setup = t.result.setup;
  const common = {
    key: `${t.result.title}: ${of} of ${key}`,
    title: `${of === 'volts' ? 'Volts at' : 'Watts of'} ${row.label} when ${lower(t.result.title)}${setup ? `, ${setup}` : ''}`,
    rule: 'power-what-if',
  };
  const inputs = [
    ...parts.flatMap((p): readonly WorkingInput[] => [
      input(
        many ? `${p.between}: watts` : 'watts',
        `${formatWatts(p.atW)} at ${formatVolts(p.atV)}`,
        t.floating
          ? 'its own, at its level in this setup and its rated volts'
          : 'the load flow before the fault',
      ),
    ]),
    input(
      'what it takes',
      Number.isFinite(row.voltsMinV) ? `${row.voltsMinV} to ${row.voltsMaxV} V` : 'not known',
      'its kind',
    ),
  ];
  if (of === 'watts')
    return {
      ...common,
      formula: 'P = P₀ × (V ÷ V₀)², the load taken as an impedance',
      inputs,
      steps: parts.map(
        (p) =>
          `${many ? `${p.between}: ` : ''}${formatWatts(p.atW)} × (${formatVolts(p.voltsV)} ÷ ${formatVolts(p.atV)})² = ${formatWatts(p.wattsW)}`,
      ),
      result: formatWatts(row.wattsW),
      source: 'Power of a constant impedance',
    };
  return t.floating
    ? floatingWorking(plan, t, common, inputs, row.voltsV, parts)
    : lostLegVolts(t, common, inputs, row.voltsV, parts);
};

type Common = Pick<Working, 'key' | 'title' | 'rule'>;

const lostLegVolts = (
  t: TriedFault,
  common: Common,
  inputs: readonly WorkingInput[],
  voltsV: number,
  parts: readonly FaultPart[],
): Working => ({
  ...common,
  formula: 'V across the load = |V of one wire − V of the other|, with the lost line open at the source',
  inputs,
  steps: [
    `each load is the impedance V₀² ÷ P it has as it runs${parts[0] ? `: here ${formatVolts(parts[0].atV)}² ÷ ${formatWatts(parts[0].atW)}` : ''}`,
    'two load flows, with half and with all of the lost leg’s volts, give the volts at which that leg carries nothing; all else follows by the same share',
    `both load flows settled, ${t.lostLeg?.solved.sweep.passes ?? 0} passes together`,
    ...parts.map((p) => `${p.between}: ${formatVolts(p.voltsV)}`),
    ...(parts.length > 1 ? ['shown is the one furthest from its volts'] : []),
  ],
  result: formatVolts(voltsV),
  source: 'Kirchhoff’s laws; superposition in a linear network',
});

const floatingWorking = (
  plan: Plan,
  t: TriedFault,
  common: Common,
  inputs: readonly WorkingInput[],
  voltsV: number,
  parts: readonly FaultPart[],
): Working => {
  const f = t.floating;
  if (!f) throw new Error('not a lost neutral');
  const at = f.node;
  const legs = [...new Set(f.loads.map((l) => l.load.leg))].sort();
  const name = (leg: number): string => legName(planRecord(plan).practice, at.system, leg);
  const legInputs = legs.map((leg) => {
    const on = f.loads.filter((l) => l.load.leg === leg);
    const siemens = on.reduce(
      (y, l) => y + Math.hypot(l.load.wattsW, l.load.varsVar) / (l.load.ratedV * l.load.ratedV),
      0,
    );
    return input(
      `leg ${name(leg)}: volts, loads`,
      `${phasor(f.legV, leg)}, ${siemens.toFixed(4)} S`,
      `${on.length} ${on.length === 1 ? 'load' : 'loads'}: ${labels(
        t,
        on.map((l) => l.index),
      )}`,
    );
  });
  return {
    ...common,
    formula: 'V_N = Σ Y·V_leg ÷ Σ Y, Y = (P − jQ) ÷ V²; V across a load = |V_leg − V_N|',
    inputs: [...legInputs, ...inputs],
    steps: [
      'each load is the impedance it has at its rated volts and its level',
      `with cables left out the star point floats to ${formatVolts(f.answer.neutralV)} from where the neutral was`,
      ...(f.passes === undefined
        ? []
        : [
            `with cables: two load flows, with none and with one volt in series with the open neutral, ${f.passes} passes together, give the volts at which it carries nothing`,
          ]),
      ...parts.map((p) => `${p.between}: ${formatVolts(p.voltsV)} in place of ${formatVolts(p.atV)}`),
    ],
    result: formatVolts(voltsV),
    source:
      'Star point of unequal loads without a neutral (Millman’s theorem); superposition in a linear network',
  };
};

const input = (name: string, value: string, from: string): WorkingInput => ({
  name,
  value,
  from,
  assumed: false,
});

const phasor = (v: Float64Array | readonly number[], leg: number): string => {
  const [re, im] = [v[leg * 2] ?? 0, v[leg * 2 + 1] ?? 0];
  return `${formatVolts(Math.hypot(re, im))} ∠ ${((Math.atan2(im, re) * 180) / Math.PI).toFixed(0).replace('-', '−')}°`;
};

const NAMED = 4;

const labels = (t: TriedFault, indexes: readonly number[]): string => {
  const nodes = indexes.flatMap((i) => t.power.tree.nodes[i] ?? []);
  const more = nodes.length - NAMED;
  return [...nodes.slice(0, NAMED).map((n) => n.label), ...(more > 0 ? [`${more} more`] : [])].join(', ');
};

/** A title goes on in a sentence: “The neutral comes off” loses its capital, a name keeps it. */
const lower = (title: string): string => title.replace(/^The /, 'the ');
