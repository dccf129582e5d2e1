import { limitCitation, limitOf } from '../../derive/limits.ts';
import { loadPower, loadSpecOf } from '../../derive/loads.ts';
import { NEUTRAL, type SupplyNode } from '../../derive/supply-types.ts';
import { legName } from '../../derive/systems.ts';
import { QUANTITIES, type Quantity } from '../../derive/types.ts';
import { formatAmps, formatPct, formatVoltAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import { computePower } from './compute.ts';
import type { SolvedSource } from './types.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';
import { dropWorking, voltsBasisLine } from './working-volts.ts';

/** Why there is no working for a key. */
export type ExplainMiss = { readonly why: string };

/** Takes `<quantity>@<entityKey>@<setupId>` apart. Ids may hold `@`, so the entity is what is between the first and the last. */
export const parseFigureKey = (
  key: string,
): { quantity: Quantity; entityKey: string; setupId: string } | undefined => {
  const first = key.indexOf('@');
  const last = key.lastIndexOf('@');
  if (first <= 0 || last <= first) return undefined;
  const quantity = key.slice(0, first);
  if (!QUANTITIES.includes(quantity as Quantity)) return undefined;
  return {
    quantity: quantity as Quantity,
    entityKey: key.slice(first + 1, last),
    setupId: key.slice(last + 1),
  };
};

/** The arithmetic behind one figure of the power engine, recomputed from the plan; words where there is none. */
export const explainPower = (plan: Plan, key: string): PowerWorking | ExplainMiss => {
  const asked = parseFigureKey(key);
  if (!asked) return { why: `“${key}” is not a figure. A figure is written quantity@thing@setup.` };
  const result = computePower(plan);
  const node = result.tree.byKey.get(asked.entityKey);
  if (!node) return { why: `There is nothing ${asked.entityKey} in the supply of this plan.` };
  if (node.notComputed !== undefined) return { why: `${node.label} is not computed: ${node.notComputed}.` };
  const setup = result.setups.findIndex((s) => s.id === asked.setupId);
  if (setup < 0) return { why: `There is no setup ${asked.setupId} in this plan.` };
  const source = node.sourceId === undefined ? undefined : result.sources.get(node.sourceId);
  const run = source?.setups[setup];
  if (!source || !run) return { why: `${node.label} is not computed.` };
  if (!run.sweep.settled)
    return { why: `${node.label} is not computed: the load flow did not settle in this setup.` };
  const local = source.model.nodeOf.indexOf(node.index);
  return build({ plan, result, node, local, setup, source, run }, asked.quantity, key);
};

const build = (s: Subject, quantity: Quantity, key: string): PowerWorking | ExplainMiss => {
  switch (quantity) {
    case 'leg0A':
    case 'leg1A':
    case 'leg2A':
      return legWorking(s, Number(quantity[3]), key);
    case 'neutralA':
      return neutralWorking(s, key);
    case 'loadW':
    case 'loadVa':
      return powerWorking(s, quantity, key);
    case 'inW':
    case 'inVa':
      return inputWorking(s, quantity, key);
    case 'usePct':
      return usageWorking(s, key);
    case 'voltsV':
    case 'dropPct':
    case 'dropV':
      return dropWorking(s, quantity, key);
  }
};

const setupName = (s: Subject): string => s.result.setups[s.setup]?.name ?? '';
const figure = (s: Subject, q: Quantity, key = s.node.key): number => s.result.figures.get(key, q, s.setup);
const childrenOf = (s: Subject): readonly SupplyNode[] =>
  (s.result.tree.children[s.node.index] ?? []).flatMap((i) => s.result.tree.nodes[i] ?? []);

/** A current as a phasor: `12.3 A ∠ −31.8°`. */
const phasor = (amps: Float64Array, at: number): string => {
  const re = amps[at] ?? 0;
  const im = amps[at + 1] ?? 0;
  const deg = (Math.atan2(im, re) * 180) / Math.PI;
  return `${Math.hypot(re, im).toFixed(2)} A ∠ ${deg.toFixed(1).replace('-', '−')}°`;
};

const localOf = (s: Subject, n: SupplyNode): number => s.source.model.nodeOf.indexOf(n.index);

/** Inputs of a load's own power: rated, standby, level, power factor. */
const loadLines = (s: Subject): WorkingLine[] => {
  const r = s.plan.records.get(s.node.recordId);
  if (r?.type !== 'fixture' && r?.type !== 'ballast') return [];
  const spec = loadSpecOf(s.plan, r);
  const p = loadPower(s.plan, r, s.result.setups[s.setup]?.id ?? '');
  if (!spec || !p) return [];
  const kind = s.plan.records.get(r.kindId);
  const basis = kind?.type === 'kind' ? kind.basis : {};
  const from = (field: string): string => basis[field] ?? basis.all ?? 'the kind';
  const line = (name: string, value: string, source: string, assumed: boolean): WorkingLine => ({
    name,
    value,
    from: source,
    assumed,
  });
  return [
    line('rated watts', formatWatts(spec.wattsW), from('load'), from('load') === 'assumed'),
    line('standby watts', formatWatts(spec.standbyW), from('load'), from('load') === 'assumed'),
    line(
      'level',
      `${p.levelPct} %`,
      p.levelAssumed ? 'no level in this setup: full' : `level in ${setupName(s)}`,
      p.levelAssumed,
    ),
    line(
      'power factor',
      `${spec.powerFactor}${spec.leading ? ' leading' : ''}`,
      from('load'),
      from('load') === 'assumed',
    ),
    line('load model', spec.model.replace('-', ' '), from('load'), from('load') === 'assumed'),
  ];
};

const legWorking = (s: Subject, leg: number, key: string): PowerWorking => {
  const { node, local, run, source } = s;
  const amps = run.sweep.amps;
  const name = legName(planRecord(s.plan).practice, node.system, leg);
  const title = `Current on leg ${name} of ${node.label}, ${setupName(s)}`;
  const kids = childrenOf(s).filter((c) => c.notComputed === undefined && c.legs.includes(leg));
  const inputs: WorkingLine[] = [voltsBasisLine(s)];
  const steps: string[] = [];
  const own = node.branches.filter((b) => b.from === leg || b.to === leg);
  if (own.length > 0) {
    inputs.push(...loadLines(s));
    node.branches.forEach((b, i) => {
      if (b.from !== leg && b.to !== leg) return;
      const k = firstBranch(source, node.index) + i;
      const va = Math.hypot(run.wattsW[k] ?? 0, run.varsVar[k] ?? 0);
      const at = local * 8;
      const v = Math.hypot(
        (run.sweep.volts[at + b.from * 2] ?? 0) - (run.sweep.volts[at + b.to * 2] ?? 0),
        (run.sweep.volts[at + b.from * 2 + 1] ?? 0) - (run.sweep.volts[at + b.to * 2 + 1] ?? 0),
      );
      const seen = source.model.basis === 'unknown' ? b.nominalV : v;
      const u = seen / b.nominalV;
      const p = (run.wattsW[k] ?? 0) * u ** (source.model.branches.expP[k] ?? 0);
      const q = (run.varsVar[k] ?? 0) * u ** (source.model.branches.expQ[k] ?? 0);
      const across = b.to === NEUTRAL ? 'leg to neutral' : 'leg to leg';
      steps.push(
        `power at nominal ${formatVolts(b.nominalV)} (${across}): √(${formatWatts(run.wattsW[k] ?? 0)}² + ${Math.round(run.varsVar[k] ?? 0)} var²) = ${formatVoltAmps(va)}`,
      );
      if (Math.hypot(p, q) !== va && u !== 1)
        steps.push(
          `at ${formatVolts(seen)} it takes ${formatVoltAmps(Math.hypot(p, q))} (${node.load?.model.replace('-', ' ') ?? ''})`,
        );
      steps.push(
        `${formatVoltAmps(Math.hypot(p, q))} ÷ ${formatVolts(seen)} = ${formatAmps(Math.hypot(p, q) / seen)}`,
      );
    });
  }
  for (const c of kids) {
    const at = localOf(s, c) * 8 + leg * 2;
    if (Math.hypot(amps[at] ?? 0, amps[at + 1] ?? 0) > 0)
      inputs.push({ name: c.label, value: phasor(amps, at), from: 'what hangs on it', assumed: false });
  }
  if (kids.length > 0 || own.length !== 1)
    steps.push(`sum of the currents as phasors = ${phasor(amps, local * 8 + leg * 2)}`);
  return {
    key,
    title,
    formula: own.length > 0 ? 'I = √(P² + Q²) ÷ V' : 'I = Σ I of what hangs on it (phasor sum)',
    inputs,
    steps,
    result: formatAmps(figure(s, (['leg0A', 'leg1A', 'leg2A'] as const)[leg] ?? 'leg0A')),
    rule: own.length > 0 ? 'power-load-current' : 'power-leg-sum',
    source: 'Kirchhoff’s current law; apparent power over volts',
  };
};

const firstBranch = (source: SolvedSource, index: number): number => source.model.branchLoad.indexOf(index);

const neutralWorking = (s: Subject, key: string): PowerWorking => {
  const { node, local, run } = s;
  const practice = planRecord(s.plan).practice;
  const inputs = node.legs.map((l) => ({
    name: `leg ${legName(practice, node.system, l)}`,
    value: phasor(run.sweep.amps, local * 8 + l * 2),
    from: 'load flow',
    assumed: false,
  }));
  return {
    key,
    title: `Neutral current of ${node.label}, ${setupName(s)}`,
    formula: 'I_N = |Σ I of the legs| (phasor sum)',
    inputs: [voltsBasisLine(s), ...inputs],
    steps: [
      `sum of the leg currents as phasors = ${phasor(run.sweep.amps, local * 8 + NEUTRAL * 2).replace(/ ∠.*/, '')}`,
    ],
    result: formatAmps(figure(s, 'neutralA')),
    rule: 'power-neutral-sum',
    source: 'Kirchhoff’s current law. Third-harmonic current is not in this figure',
  };
};

const powerWorking = (s: Subject, q: 'loadW' | 'loadVa', key: string): PowerWorking => {
  const watts = q === 'loadW';
  const own = loadLines(s);
  const inputs: WorkingLine[] = [...own];
  const steps: string[] = [];
  const r = s.plan.records.get(s.node.recordId);
  const p =
    r?.type === 'fixture' || r?.type === 'ballast'
      ? loadPower(s.plan, r, s.result.setups[s.setup]?.id ?? '')
      : undefined;
  if (p && s.node.load) {
    const { wattsW, standbyW, powerFactor } = s.node.load;
    steps.push(
      `${formatWatts(standbyW)} + (${formatWatts(wattsW)} − ${formatWatts(standbyW)}) × ${p.levelPct} % = ${formatWatts(p.wattsW)}`,
    );
    if (!watts)
      steps.push(
        `${formatWatts(p.wattsW)} ÷ ${powerFactor} = ${formatVoltAmps(Math.hypot(p.wattsW, p.varsVar))}`,
      );
  }
  for (const c of childrenOf(s))
    if (c.notComputed === undefined)
      inputs.push({
        name: c.label,
        value: watts
          ? formatWatts(figure(s, 'loadW', c.key))
          : `${formatWatts(figure(s, 'loadW', c.key))}, ${formatVoltAmps(figure(s, 'loadVa', c.key))}`,
        from: 'what hangs on it',
        assumed: false,
      });
  const value = watts ? formatWatts(figure(s, 'loadW')) : formatVoltAmps(figure(s, 'loadVa'));
  steps.push(watts ? `sum of the watts = ${value}` : `√((sum of watts)² + (sum of vars)²) = ${value}`);
  return {
    key,
    title: `Connected ${watts ? 'watts' : 'volt-amperes'} of ${s.node.label}, ${setupName(s)}`,
    formula: watts
      ? 'P = Σ (standby + (rated − standby) × level)'
      : 'S = √((ΣP)² + (ΣQ)²), Q = P × √(1 − pf²) ÷ pf',
    inputs,
    steps,
    result: value,
    rule: 'power-load',
    source: 'the kinds; level to watts assumed linear. Cable loss is left out',
  };
};

const inputWorking = (s: Subject, q: 'inW' | 'inVa', key: string): PowerWorking => {
  const text = q === 'inW' ? formatWatts(figure(s, q)) : formatVoltAmps(figure(s, q));
  return {
    key,
    title: `${q === 'inW' ? 'Real' : 'Apparent'} power into ${s.node.label}, ${setupName(s)}`,
    formula: q === 'inW' ? 'P = Re Σ V × I*' : 'S = |Σ V × I*|',
    inputs: [
      voltsBasisLine(s),
      {
        name: 'connected power at nominal volts',
        value: `${formatWatts(figure(s, 'loadW'))}, ${formatVoltAmps(figure(s, 'loadVa'))}`,
        from: 'the loads',
        assumed: false,
      },
    ],
    steps: [`volts times currents over the legs and the neutral, cable loss included = ${text}`],
    result: Number.isNaN(figure(s, q)) ? 'not computed: the volts of the source are not known' : text,
    rule: 'power-input',
    source: 'complex power of the load flow',
  };
};

const usageWorking = (s: Subject, key: string): PowerWorking | ExplainMiss => {
  const { node } = s;
  const limits = s.result.limits[node.index];
  if (!limits?.leg && !limits?.neutral) return { why: `No limit is known for ${node.label}.` };
  const practice = planRecord(s.plan).practice;
  const inputs: WorkingLine[] = [];
  const steps: string[] = [];
  const sources: string[] = [];
  if (limits.leg) {
    const l = limitOf(s.plan, limits.leg.rule);
    inputs.push({
      name: `rating of the ${limits.leg.setBy.replace('-', ' ')}`,
      value: formatAmps(limits.leg.ratingA),
      from: 'the plan and its kinds',
      assumed: false,
    });
    inputs.push({
      name: l.id,
      value: `${l.value} ${l.unit}`,
      from: limitCitation(l),
      assumed: l.override !== undefined,
    });
    steps.push(`limit: ${formatAmps(limits.leg.ratingA)} × ${l.value} = ${formatAmps(limits.leg.limitA)}`);
    for (const leg of node.legs) {
      const a = figure(s, (['leg0A', 'leg1A', 'leg2A'] as const)[leg] ?? 'leg0A');
      steps.push(
        `leg ${legName(practice, node.system, leg)}: ${formatAmps(a)} ÷ ${formatAmps(limits.leg.limitA)} = ${formatPct((100 * a) / limits.leg.limitA)}`,
      );
    }
    sources.push(l.text);
  }
  if (limits.neutral) {
    const a = figure(s, 'neutralA');
    steps.push(
      `neutral: ${formatAmps(a)} ÷ ${formatAmps(limits.neutral.limitA)} = ${formatPct((100 * a) / limits.neutral.limitA)}`,
    );
  }
  return {
    key,
    title: `Use of ${node.label}, ${setupName(s)}`,
    formula: 'largest current ÷ its limit',
    inputs,
    steps,
    result: formatPct(figure(s, 'usePct')),
    rule: 'power-use',
    source: sources.join(' ') || limitOf(s.plan, 'neutral-load-factor').text,
  };
};
