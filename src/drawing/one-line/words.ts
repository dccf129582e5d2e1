import { cableLength } from '../../derive/lengths.ts';
import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { MM_PER_FOOT } from '../../kernel/units.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import { cell, LEG_QUANTITIES, type Reader } from '../../report/reader.ts';

/** Pieces as they are counted out: `3 × 50 + 25 ft`. */
export const stockText = (piecesMm: readonly number[], units: 'imperial' | 'metric'): string => {
  if (piecesMm.length === 0) return '–';
  const size = (mm: number): string =>
    units === 'imperial' ? String(Math.round(mm / MM_PER_FOOT)) : String(Number((mm / 1000).toFixed(1)));
  const counts = new Map<string, number>();
  for (const mm of piecesMm) counts.set(size(mm), (counts.get(size(mm)) ?? 0) + 1);
  const parts = [...counts].map(([length, n]) => (n === 1 ? length : `${n} × ${length}`));
  return `${parts.join(' + ')} ${units === 'imperial' ? 'ft' : 'm'}`;
};

/** A run as the diagram tells it: what it is, how long, and how many conductors it has with the protective one. */
export interface RunWords {
  readonly name: string;
  readonly pieces: string;
  readonly wires: number;
  readonly feeder: boolean;
}

export const runWords = (plan: Plan, cable: SupplyEntity): RunWords | undefined => {
  const record = recordOf(plan, 'cable', cable.recordId);
  if (!record) return undefined;
  const kind = kindOf(plan, record.kindId, 'cable');
  const pieces = cableLength(plan, record)?.piecesMm ?? [];
  return {
    name: kind?.name ?? 'kind not in the plan',
    pieces: stockText(pieces, planRecord(plan).lengthUnits),
    wires: kind ? (kind.legs + (kind.neutral ? 1 : 0) + 1) * kind.parallel : 0,
    feeder: kind?.construction === 'single-conductors' || (kind?.legs ?? 1) > 1,
  };
};

export const legsWords = (plan: Plan, e: SupplyEntity): string =>
  e.legs.map((l) => legName(planRecord(plan).practice, e.system, l)).join(' ');

/** Worst amps of each leg and the neutral in one line: `A 28.2  B 26.0  C 10.5  N 16.7 A`. */
export const worstLegs = (plan: Plan, r: Reader, e: SupplyEntity): string => {
  const practice = planRecord(plan).practice;
  const parts = e.legs.map(
    (l) => `${legName(practice, e.system, l)} ${cell(r.worst(e.key, LEG_QUANTITIES[l] ?? 'leg0A'), 1)}`,
  );
  if (e.neutral) parts.push(`N ${cell(r.worst(e.key, 'neutralA'), 1)}`);
  return `${parts.join('  ')} A`;
};
