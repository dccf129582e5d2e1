import { supplyTree } from '../derive/supply.ts';
import { type FaultLoop, faultLoops, loopParts } from '../engines/power/index.ts';
import { formatAmps, formatCableLength, formatVolts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { disconnectionHint, disconnectionWanted } from './faults.ts';
import type { Working, WorkingInput } from './types.ts';

/** A figure of a fault loop. */
export type LoopFigure = 'runsOhm' | 'loopOhm' | 'faultA' | 'opens';

const SOURCE =
  'Ohm’s law; IEC 60364-4-41 clause 411.4.4 for loop and breaker (from memory: verify); resistances of the conductors’ table';

/** The arithmetic behind a figure of the fault loop at the end of a run; undefined where it is not computed. */
export const explainLoop = (plan: Plan, key: string, figure: LoopFigure): Working | undefined => {
  const tree = supplyTree(plan);
  const l = faultLoops(plan, tree).find((x) => x.key === key);
  if (!l) return undefined;
  const common = { key: `${figure} of ${key}`, rule: 'power-fault-loop', source: SOURCE };
  if (figure === 'runsOhm') return { ...common, ...runsOf(plan, l) };
  if (figure === 'opens') return { ...common, ...opensOf(plan, l) };
  if (l.loopOhm === undefined || l.sourceOhm === undefined) return undefined;
  const source = line(
    'the source’s own impedance',
    ohm(l.sourceOhm),
    'measured or given at the source, as this run sees it',
  );
  if (figure === 'loopOhm')
    return {
      ...common,
      title: `Fault loop at the end of ${l.label}`,
      formula: 'Z = √((R of the source + R of the runs)² + (X of the runs)²)',
      inputs: [source, ...runsOf(plan, l).inputs],
      steps: [...runsOf(plan, l).steps, `with ${ohm(l.sourceOhm)} of the source: ${ohm(l.loopOhm)}`],
      result: ohm(l.loopOhm),
    };
  return l.faultA === undefined
    ? undefined
    : {
        ...common,
        title: `Prospective fault current at the end of ${l.label}`,
        formula: 'I = V ÷ Z',
        inputs: [
          line('volts', formatVolts(l.volts), 'nominal, leg to neutral or earth'),
          line('loop', ohm(l.loopOhm), 'runs and source'),
        ],
        steps: [`${formatVolts(l.volts)} ÷ ${ohm(l.loopOhm)} = ${formatAmps(l.faultA)}`],
        result: formatAmps(l.faultA),
      };
};

const line = (name: string, value: string, from: string, assumed = false): WorkingInput => ({
  name,
  value,
  from,
  assumed,
});

const ohm = (n: number): string => `${n.toFixed(3)} Ω`;

const runsOf = (
  plan: Plan,
  l: FaultLoop,
): Pick<Working, 'title' | 'formula' | 'inputs' | 'steps' | 'result'> => {
  const units = planRecord(plan).lengthUnits;
  const parts = loopParts(plan, supplyTree(plan), l.key);
  const scaled = parts.some((p) => p.share !== 1);
  let [r, x] = [0, 0];
  for (const p of parts) {
    r = r * p.share + p.resistanceOhm;
    x = x * p.share + p.reactanceOhm;
  }
  return {
    title: `Leg and return of the runs up to the end of ${l.label}`,
    formula: scaled
      ? 'Z = √((Σ R)² + (Σ X)²); a transformer multiplies what lies ahead of it by the square of its ratio'
      : 'Z = √((Σ R)² + (Σ X)²), R and X of leg and return',
    inputs: [
      ...parts.map((p) =>
        line(
          p.label,
          `R ${ohm(p.resistanceOhm)}, X ${ohm(p.reactanceOhm)}`,
          p.share === 1
            ? `${formatCableLength(p.lengthMm, units)} out and back, warm`
            : `its windings; what is ahead × ${p.share.toFixed(3)}`,
        ),
      ),
      line('earth conductor', 'as thick as the leg', 'not in the plan', true),
    ],
    steps: [
      `Σ R = ${ohm(r)}, Σ X = ${ohm(x)}`,
      `√(${r.toFixed(3)}² + ${x.toFixed(3)}²) = ${ohm(Math.hypot(r, x))}`,
    ],
    result: ohm(l.runsOhm),
  };
};

const opensOf = (
  plan: Plan,
  l: FaultLoop,
): Pick<Working, 'title' | 'formula' | 'inputs' | 'steps' | 'result'> => {
  const { band, breakerA } = l;
  return {
    title: `What opens on a short at the end of ${l.label}`,
    formula:
      'at once where c × I ≥ the upper end of the magnetic band; largest loop = c × V ÷ (upper end × rating)',
    inputs: [
      line(
        'breaker ahead',
        breakerA === undefined ? 'none known' : `${breakerA} A${l.curve ? `, ${l.curve}` : ''}`,
        l.breakerLabel ?? 'the plan',
      ),
      ...(band
        ? [line('magnetic band', `${band.low} to ${band.high} times its rating`, 'its curve or its class')]
        : []),
      line('fault-c-min', `${l.cMin}`, 'rule of the plan'),
      line('volts', formatVolts(l.volts), 'nominal, leg to neutral or earth'),
      line(
        'fault current',
        l.faultA === undefined ? 'not known' : formatAmps(l.faultA),
        l.faultA === undefined ? 'the source’s own impedance is not given' : 'volts over the loop',
      ),
    ],
    steps:
      band && breakerA
        ? [
            ...(l.faultA === undefined
              ? []
              : [
                  `${l.cMin} × ${formatAmps(l.faultA)} = ${formatAmps(l.cMin * l.faultA)}, against ${band.high} × ${breakerA} A = ${formatAmps(band.high * breakerA)}`,
                ]),
            ...(l.mostOhm === undefined
              ? []
              : [
                  `largest loop: ${l.cMin} × ${formatVolts(l.volts)} ÷ (${band.high} × ${breakerA} A) = ${ohm(l.mostOhm)}`,
                ]),
            disconnectionWanted(plan),
          ]
        : [disconnectionWanted(plan)],
    result: disconnectionHint(plan, l),
  };
};
