import { cableLength } from '../../derive/lengths.ts';
import { limitOf } from '../../derive/limits.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';
import { formatAmps, formatCableLength, formatPct, formatVoltAmps, formatVolts } from '../../kernel/units.ts';
import { kindOf, planRecord, recordOf } from '../../plan/plan.ts';
import { between } from './extract.ts';
import { wireImpedance } from './impedance.ts';
import { voltPairs } from './model.ts';
import { TOLERANCE_V } from './solve.ts';
import { localOf } from './working-shared.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';

/** How the volts of the source are known, as an input. */
export const voltsBasisLine = (s: Subject): WorkingLine => {
  const { basis, volts, shape } = s.source.model;
  const name = 'volts at the source';
  if (basis === 'given')
    return { name, value: formatVolts(volts), from: 'given in the plan', assumed: false };
  if (basis === 'set-nominal')
    return { name, value: formatVolts(volts), from: 'nominal of the set, as if so set', assumed: true };
  return {
    name,
    value: 'not known: measure',
    from: `currents reckoned at nominal ${formatVolts(shape.nominalV)}`,
    assumed: false,
  };
};

/** How the load flow came to rest: its passes, and the largest change of any volt in the last one. */
export const flowLine = (s: Subject): WorkingLine => {
  const { passes, changeV } = s.run.sweep;
  const name = 'load flow';
  if (s.source.model.basis === 'unknown')
    return {
      name,
      value: 'one pass',
      from: 'at nominal volts, the source’s own not being known',
      assumed: false,
    };
  return {
    name,
    value: `at rest after ${passes} ${passes === 1 ? 'pass' : 'passes'}`,
    from: `no volt changed by more than ${changeV.toExponential(1)} V in the last; below ${TOLERANCE_V.toExponential(0)} V is rest`,
    assumed: false,
  };
};

/** Nodes from the source to a node, the source first. */
const pathTo = (s: Subject): readonly SupplyNode[] => {
  const path: SupplyNode[] = [];
  for (let n: SupplyNode | undefined = s.node; n; n = s.result.tree.nodes[n.parent]) path.unshift(n);
  return path;
};

/** Working of the volts at a node's end and of the drop to it: the volts of the source less the loss in each cable. */
export const dropWorking = (
  s: Subject,
  quantity: 'voltsV' | 'dropPct' | 'dropV',
  key: string,
): PowerWorking => {
  const { volts } = s.run.sweep;
  const units = planRecord(s.plan).lengthUnits;
  const pairs = voltPairs(s.node);
  const { zones, zoneOf } = s.source.model;
  const zone = zoneOf[s.local] ?? 0;
  const openV = zones[zone]?.openV ?? volts;
  const loss = (local: number, [a, b]: readonly [number, number]): number =>
    between(openV, a * 2, b * 2) - between(volts, local * 8 + a * 2, local * 8 + b * 2);
  const pair = pairs.reduce((x, y) => (loss(s.local, y) > loss(s.local, x) ? y : x), pairs[0] ?? [0, 3]);
  const inputs: WorkingLine[] = [voltsBasisLine(s), flowLine(s)];
  const steps: string[] = [];
  let before = 0;
  for (const n of pathTo(s)) {
    // What is lost ahead of a transformer and in it is told as its output sees it.
    if (n.transformer && zoneOf[localOf(s, n)] === zone) {
      const t = n.transformer;
      inputs.push({
        name: n.label,
        value: `${formatVolts(t.shape.nominalV / t.ratio)} to ${formatVolts(t.shape.nominalV)}, impedance ${t.impedancePct ?? limitOf(s.plan, 'transformer-impedance').value} % of ${formatVoltAmps(t.ratedVa)}`,
        from: t.impedancePct === undefined ? 'impedance not on its plate in this plan' : 'the kind',
        assumed: t.impedancePct === undefined,
      });
      before = loss(localOf(s, n), pair);
      steps.push(`ahead of and in ${n.label}, as seen on it: ${before.toFixed(2)} V lost`);
    }
    if (n.what !== 'cable' || zoneOf[localOf(s, n)] !== zone) continue;
    const cable = recordOf(s.plan, 'cable', n.recordId);
    const kind = cable && kindOf(s.plan, cable.kindId, 'cable');
    if (!cable || !kind) continue;
    const z = wireImpedance(s.plan, kind);
    const length = cableLength(s.plan, cable);
    const local = s.source.model.nodeOf.indexOf(n.index);
    const amps = s.run.sweep.amps;
    const a = Math.hypot(amps[local * 8 + pair[0] * 2] ?? 0, amps[local * 8 + pair[0] * 2 + 1] ?? 0);
    const neutralA = Math.hypot(amps[local * 8 + 6] ?? 0, amps[local * 8 + 7] ?? 0);
    inputs.push({
      name: n.label,
      value: `${formatCableLength(n.lengthMm, units)}, ${kind.conductor.replace(':', ' ')}${kind.parallel > 1 ? ` × ${kind.parallel}` : ''}, ${(z.legOhmPerM * 1000).toFixed(3)} Ω/km at ${z.atC} °C`,
      from: length?.piecesAssumed ? 'length made up of stock pieces' : 'pieces chosen by hand',
      assumed: length?.slackAssumed === true && length.piecesAssumed,
    });
    const after = loss(local, pair);
    steps.push(
      `${n.label}: ${formatAmps(a)} in the leg${pair[1] === 3 ? `, ${formatAmps(neutralA)} in the neutral` : ''}: ${(after - before).toFixed(2)} V lost`,
    );
    before = after;
  }
  const base = between(openV, pair[0] * 2, pair[1] * 2);
  const unknown = s.source.model.basis === 'unknown';
  steps.push(`lost in all: ${before.toFixed(2)} V`);
  if (!unknown)
    steps.push(
      `${formatVolts(base)} − ${before.toFixed(2)} V = ${formatVolts(base - before)}; ${before.toFixed(2)} ÷ ${formatVolts(base)} = ${formatPct((100 * before) / base)}`,
    );
  const figure = s.result.figures.get(s.node.key, quantity, s.setup);
  const words = { voltsV: 'Volts at', dropPct: 'Voltage drop to', dropV: 'Volts lost to' }[quantity];
  return {
    key,
    title: `${words} ${s.node.label}, ${s.result.setups[s.setup]?.name ?? ''}`,
    formula: 'V = |V source − Σ (Z leg × I leg − Z neutral × I neutral)| (phasors)',
    inputs,
    steps,
    result: Number.isNaN(figure)
      ? 'not computed: the volts of the source are not known, measure them'
      : quantity === 'dropPct'
        ? formatPct(figure)
        : `${quantity === 'dropV' ? figure.toFixed(2) : figure.toFixed(1)} V`,
    rule: 'power-volts',
    source: 'R from the conductor table at operating temperature; X an estimate; complex load flow',
  };
};
