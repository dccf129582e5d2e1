import type { Quantity } from '../derive/types.ts';
import type { PowerResult } from '../engines/power/index.ts';
import { formatAmps, formatCableLength, formatPct, formatVolts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import type { RunAsked, RunChoice } from './size-types.ts';
import type { Working, WorkingInput } from './types.ts';

/** One input of the working of a size. */
export const sizeInput = (name: string, value: string, from: string, assumed = false): WorkingInput => ({
  name,
  value,
  from,
  assumed,
});

/** A figure in its worst setup, with that setup's name, as an input. */
export const worstInput = (
  power: PowerResult,
  key: string,
  quantity: Quantity,
  name: string,
  format: (n: number) => string,
): WorkingInput => {
  const { value, setupIndex } = power.figures.worst(key, quantity);
  const setup = power.setups[setupIndex]?.name;
  return sizeInput(
    name,
    Number.isFinite(value) ? format(value) : 'none',
    setup ? `most in any setup: ${setup}` : 'most in any setup',
  );
};

/** The input that says how much is kept free. */
export const headroomInput = (grow: number): WorkingInput =>
  sizeInput(
    'headroom',
    `${Math.round((grow - 1) * 100)} %`,
    'chosen; 20 % is common practice, no published source',
  );

/** What is the same of every working of a size. */
export const sizeWorking = (
  label: string,
  parts: Pick<Working, 'formula' | 'inputs' | 'steps' | 'result' | 'source'>,
): Working => ({ key: `size of ${label}`, title: `Size of ${label}`, rule: 'power-size', ...parts });

/** The arithmetic behind the cable chosen for a run: amps, ampacity, breaker and volts lost. */
export const runWorking = (
  plan: Plan,
  label: string,
  asked: RunAsked,
  choice: RunChoice | undefined,
  first: readonly WorkingInput[],
): Working => {
  const units = planRecord(plan).lengthUnits;
  const sets = choice && choice.sets > 1 ? `${choice.sets} × ` : '';
  const back = asked.neutral
    ? 'Z_leg × I + Z_neutral × I_N'
    : asked.legs === 3
      ? '√3 × Z_leg × I'
      : '2 × Z_leg × I';
  return sizeWorking(label, {
    formula: `least copper with ampacity ≥ I, not weaker than the breaker ahead, and ${back} ≤ what may be lost`,
    inputs: [
      ...first,
      sizeInput('I, amps on a leg', formatAmps(asked.amps), 'with the headroom'),
      sizeInput('I_N, amps in the neutral', formatAmps(asked.neutralA), 'with the headroom'),
      sizeInput('length', formatCableLength(asked.lengthMm, units), 'the run'),
      sizeInput('volts', formatVolts(asked.volts), 'nominal'),
      sizeInput('power factor', asked.powerFactor.toFixed(2), 'of what hangs on it'),
      sizeInput(
        'breaker ahead',
        asked.breakerA === undefined ? 'none known' : formatAmps(asked.breakerA),
        'the supply',
      ),
      sizeInput(
        'may be lost',
        formatPct(asked.dropPct),
        'advice less what the rest of the way loses, or as asked',
      ),
    ],
    steps: choice
      ? [
          `${sets}${choice.kind.name} carries ${formatAmps(choice.ampacityA)} ≥ ${formatAmps(asked.amps)}`,
          `it loses ${choice.dropV.toFixed(2)} V: ${choice.dropV.toFixed(2)} V ÷ ${formatVolts(asked.volts)} = ${formatPct(choice.dropPct)} ≤ ${formatPct(asked.dropPct)}`,
          'every cable with less copper fails on one of these or has other ends',
        ]
      : ['no cable of the book with these ends passes all three'],
    result: choice ? `${sets}${choice.kind.name}` : 'nothing in the book',
    source:
      'Ampacity and advice on drop by the practice’s rules; Ohm’s law with R and X of the conductors’ table',
  });
};
