import { limitCitation, limitsOf } from '../../derive/limits.ts';
import { formatAmps, formatPct, formatVolts } from '../../kernel/units.ts';
import { type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import type { Finding, FindingText } from '../types.ts';

/** What a text is written from. Readers give a value of the finding, already in the form people read. */
export interface WriterContext {
  readonly plan: Plan;
  readonly f: Finding;
  readonly text: (name: string) => string;
  readonly num: (name: string) => number;
  readonly amps: (name: string) => string;
  readonly volts: (name: string) => string;
  readonly pct: (name: string) => string;
  /** The setups it holds in: `in “Night”`, `worst in “Night”, also in 3 others`, or nothing. */
  readonly setups: string;
  readonly northAmerica: boolean;
  /** Citation of a row of the limits table, by the name of the parameter that holds its id, or the id itself. */
  readonly cite: (row: string) => string;
}

export type Writer = (c: WriterContext) => FindingText;

/** Ends every text about current and volts: what the figure is worth, and who decides. */
export const DEFER =
  'Computed from this plan; other loads are not known. A qualified person and the local code decide.';

/** Said with every text that asks for a re-plug. */
export const DEAD_FIRST = 'De-energize before re-plugging.';

/** A name in a sentence is said whole up to here; of a longer one its beginning and its end, so that the rest has room. */
const LONGEST = 160;
const BEGINNING = 90;
const END = 30;

const inSentence = (text: string): string => {
  if (text.length <= LONGEST) return text;
  const letters = [...text];
  return `${letters.slice(0, BEGINNING).join('').trimEnd()} … ${letters.slice(-END).join('').trimStart()}`;
};

export const writerContext = (plan: Plan, f: Finding): WriterContext => {
  const text = (name: string): string => inSentence(String(f.params[name] ?? '–'));
  const num = (name: string): number => {
    const v = f.params[name];
    return typeof v === 'number' ? v : Number.NaN;
  };
  const name = f.worstSetupId === undefined ? undefined : recordOf(plan, 'setup', f.worstSetupId)?.name;
  const others = f.setupIds.length - 1;
  const also = others > 0 ? `, also in ${others} other ${others === 1 ? 'setup' : 'setups'}` : '';
  return {
    plan,
    f,
    text,
    num,
    amps: (n) => formatAmps(num(n)),
    volts: (n) => formatVolts(num(n)),
    pct: (n) => formatPct(num(n)),
    setups:
      f.worstSetupId === undefined
        ? ''
        : name === undefined
          ? ' with everything at full'
          : ` in “${inSentence(name)}”${also}`,
    northAmerica: planRecord(plan).practice === 'north-america',
    cite: (row) => {
      const l = limitsOf(plan).get(String(f.params[row] ?? row));
      return l ? `${l.text} ${limitCitation(l)}` : '';
    },
  };
};
