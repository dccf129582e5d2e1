import table from '../../../shared/batteries.json' with { type: 'json' };
import type { PackKind } from '../../plan/kinds/kinds.ts';

/** A value with its spread: what is reckoned with, and how low and high it may be. */
export interface Range {
  readonly low: number;
  readonly plan: number;
  readonly high: number;
}

export type Chemistry = PackKind['chemistry'];

const rangeOf = (list: readonly number[]): Range => {
  const [low, plan, high] = list;
  if (low === undefined || plan === undefined || high === undefined)
    throw new Error('a range of less than three');
  return { low, plan, high };
};

export interface ChemistryFigures {
  /** Share of the label's energy that a unit gets before it or the pack cuts out. */
  readonly usable: Range;
  readonly peukert: Range;
  readonly ratedHours: number;
  readonly usableFrom: string;
  readonly peukertFrom: string;
}

export const chemistryOf = (c: Chemistry): ChemistryFigures => {
  const row = table.chemistries[c];
  return { ...row, usable: rangeOf(row.usable), peukert: rangeOf(row.peukert) };
};

/** Shares of energy by cell temperature, coldest first. */
export const temperatureRows = (
  c: Chemistry,
): readonly { readonly cellC: number; readonly factor: Range }[] =>
  table.temperature[c].map(([cellC = 0, ...rest]) => ({ cellC, factor: rangeOf(rest) }));

/** Where the temperature shares of a chemistry are from. */
export const temperatureSource = (c: Chemistry): string =>
  c === 'lead-acid' ? table.temperature.leadAcidSource : table.temperature.source;

/** Share of charge left by the volts of one cell, lowest first. */
export const cutOffRows = (c: Chemistry): readonly (readonly [cellV: number, left: number])[] =>
  table.cutOff[c].map(([cellV = 0, left = 0]) => [cellV, left] as const);

/** Where the volts of cells against their charge are from. */
export const cutOffSource: string = table.cutOff.source;

export const efficiencies = table.efficiency;
export const travel = table.travel;
