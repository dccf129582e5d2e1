import { NEUTRAL } from '../../derive/supply-types.ts';
import { legName } from '../../derive/systems.ts';
import { formatAmps, formatVoltAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { neutralCurrents } from './harmonics.ts';
import type { SolvedSource } from './types.ts';
import { childrenOf, figure, loadLines, localOf, phasor, setupName } from './working-shared.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';
import { flowLine, voltsBasisLine } from './working-volts.ts';

/** Working of the current on one leg: a load's own by its volt-amperes, else the phasor sum of what hangs on it. */
export const legWorking = (s: Subject, leg: number, key: string): PowerWorking => {
  const { node, local, run, source } = s;
  const amps = run.sweep.amps;
  const name = legName(planRecord(s.plan).practice, node.system, leg);
  const title = `Current on leg ${name} of ${node.label}, ${setupName(s)}`;
  const output = childrenOf(s).find((c) => c.transformer);
  const kids = output ? [] : childrenOf(s).filter((c) => c.notComputed === undefined && c.legs.includes(leg));
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
  if (output?.transformer && output.notComputed === undefined) {
    const t = output.transformer;
    const at = localOf(s, output) * 8;
    for (const w of t.windings) {
      if (w.from !== leg && w.to !== leg) continue;
      const out = legName(planRecord(s.plan).practice, output.system, w.leg);
      inputs.push({
        name: `${output.label}, leg ${out}`,
        value: phasor(amps, at + w.leg * 2),
        from: 'what hangs on it',
        assumed: false,
      });
      steps.push(
        `leg ${out} × ratio: ${phasor(amps, at + w.leg * 2)} × ${formatVolts(t.shape.nominalV)} ÷ ${formatVolts(t.shape.nominalV / t.ratio)}${(w.from === leg) === (w.sign === 1) ? '' : ', reversed'}`,
      );
    }
  }
  if (kids.length > 0 || own.length !== 1 || output)
    steps.push(`sum of the currents as phasors = ${phasor(amps, local * 8 + leg * 2)}`);
  return {
    key,
    title,
    formula: output
      ? 'I = Σ I of the output × its volts ÷ the volts of the feed, and what the transformer draws itself (phasor sum)'
      : own.length > 0
        ? 'I = √(P² + Q²) ÷ V'
        : 'I = Σ I of what hangs on it (phasor sum)',
    inputs,
    steps,
    result: formatAmps(figure(s, (['leg0A', 'leg1A', 'leg2A'] as const)[leg] ?? 'leg0A')),
    rule: own.length > 0 ? 'power-load-current' : 'power-leg-sum',
    source: 'Kirchhoff’s current law; apparent power over volts',
  };
};

const firstBranch = (source: SolvedSource, index: number): number => source.model.branchLoad.indexOf(index);

/** Working of the neutral's current: phasor sum of the fundamentals, third harmonics of the loads added in step. */
export const neutralWorking = (s: Subject, key: string): PowerWorking => {
  const { node, local, run, source } = s;
  const harmonic = neutralCurrents(source.model, run.sweep, run.wattsW, run.varsVar);
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
    formula:
      harmonic && node.legs.length > 1
        ? 'I_N = √(|Σ I₁|² + (Σ I₃)²), I₁ = I ÷ √(1 + k²), I₃ = k × I₁, k = third harmonic ÷ fundamental'
        : 'I_N = |Σ I of the legs| (phasor sum)',
    inputs: [voltsBasisLine(s), flowLine(s), ...inputs, ...(harmonic ? thirdLines(s) : [])],
    steps: [
      `sum of the leg currents as phasors = ${phasor(run.sweep.amps, local * 8 + NEUTRAL * 2).replace(/ ∠.*/, '')}`,
      ...(harmonic && node.legs.length > 1
        ? [
            `fundamentals, phasor sum = ${formatAmps(harmonic.first[local] ?? 0)}`,
            `third harmonics, in step leg by leg = ${formatAmps(harmonic.third[local] ?? 0)}`,
            `√(${formatAmps(harmonic.first[local] ?? 0)}² + ${formatAmps(harmonic.third[local] ?? 0)}²) = ${formatAmps(harmonic.rms[local] ?? 0)}`,
          ]
        : []),
    ],
    result: formatAmps(figure(s, 'neutralA')),
    rule: harmonic ? 'power-neutral-rms' : 'power-neutral-sum',
    source: harmonic
      ? 'Kirchhoff’s current law; triplen harmonics of legs 120° apart add as plain numbers (Kuphaldt, Lessons in Electric Circuits II, ch. 10). The share of each kind is a planning value'
      : 'Kirchhoff’s current law; no load here has third-harmonic current by its kind',
  };
};

/** The kinds below a node that draw third-harmonic current, each once. */
const thirdLines = (s: Subject): WorkingLine[] => {
  const shares = new Map<string, number>();
  const below = new Set([s.node.index]);
  for (const n of s.result.tree.nodes) {
    if (!below.has(n.index) && !below.has(n.parent)) continue;
    below.add(n.index);
    if (!n.load || !(n.load.thirdHarmonicPct > 0) || n.branches.length === 0) continue;
    const r = s.plan.records.get(n.recordId);
    const kind = r && 'kindId' in r ? s.plan.records.get(String(r.kindId)) : undefined;
    shares.set(kind?.type === 'kind' ? kind.name : n.label, n.load.thirdHarmonicPct);
  }
  return [...shares].map(([name, pct]) => ({
    name: `third harmonic of ${name}`,
    value: `${pct} % of the fundamental`,
    from: 'the kind, a planning value',
    assumed: true,
  }));
};
