import { limitCitation, limitOf } from '../../derive/limits.ts';
import type { LengthUnits } from '../../kernel/units.ts';
import type { Plan } from '../../plan/plan.ts';
import type { RiggingResult } from './figures.ts';

/** One input of a working. */
export interface RiggingLine {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  readonly assumed: boolean;
}

/** The arithmetic behind one figure, as data. Same shape as the report's working. */
export interface RiggingWorking {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly RiggingLine[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

export type Body = Omit<RiggingWorking, 'key'>;

export interface Subject {
  readonly plan: Plan;
  readonly r: RiggingResult;
  readonly units: LengthUnits;
  readonly label: string;
}

export const line = (name: string, value: string, from: string, assumed = false): RiggingLine => ({
  name,
  value,
  from,
  assumed,
});

export const limitLine = (s: Subject, id: string): RiggingLine => {
  const l = limitOf(s.plan, id);
  return line(
    id.replace('rigging-', '').replaceAll('-', ' '),
    `${l.value} ${l.unit}`,
    limitCitation(l),
    l.status === 'common practice' && !l.override,
  );
};

export const BOOK = 'gear book; the label on the real one comes first';
