import { levelFixtureId, loadPower } from '../../derive/loads.ts';
import { formatPct, formatVoltAmps, formatWatts } from '../../kernel/units.ts';
import { partsOf } from '../../plan/part-levels.ts';
import { childrenOf, figure, loadLines, setupName } from './working-shared.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';
import { voltsBasisLine } from './working-volts.ts';

/** Working of connected watts or volt-amperes, at nominal volts and without cable loss. */
export const powerWorking = (s: Subject, q: 'loadW' | 'loadVa', key: string): PowerWorking => {
  const watts = q === 'loadW';
  const own = loadLines(s);
  const inputs: WorkingLine[] = [...own];
  const steps: string[] = [];
  const r = s.plan.records.get(s.node.recordId);
  const p =
    r?.type === 'fixture' || r?.type === 'ballast'
      ? loadPower(s.plan, r, s.result.setups[s.setup]?.id ?? '')
      : undefined;
  const parts =
    r?.type === 'fixture' || r?.type === 'ballast'
      ? partsOf(s.plan, s.result.setups[s.setup]?.id ?? '', levelFixtureId(r))
      : undefined;
  if (p && parts)
    inputs.push({
      name: `level of its ${parts.length} parts`,
      value: `${formatPct(p.levelPct)} in the mean`,
      from: `their levels from ${formatPct(Math.min(...parts.map((x) => x.levelPct)))} to ${formatPct(Math.max(...parts.map((x) => x.levelPct)))}; colour is not counted`,
      assumed: false,
    });
  if (p && s.node.load) {
    const { wattsW, standbyW, powerFactor } = s.node.load;
    steps.push(
      `${formatWatts(standbyW)} + (${formatWatts(wattsW)} − ${formatWatts(standbyW)}) × ${Number(p.levelPct.toFixed(1))} % = ${formatWatts(p.wattsW)}`,
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

/** Working of the power that goes into a thing, cable loss behind it included. */
export const inputWorking = (s: Subject, q: 'inW' | 'inVa', key: string): PowerWorking => {
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
