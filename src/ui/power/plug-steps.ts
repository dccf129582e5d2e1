import { formatAmps, formatCableLength } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import type { Balanced } from '../../report/balance.ts';
import type { PluggedAll, PlugStep } from '../../report/plug-all.ts';

export type Offer =
  | { readonly what: 'plug'; readonly revision: number; readonly made: PluggedAll }
  | { readonly what: 'balance'; readonly revision: number; readonly made: Balanced };

/** What is said where there is nothing to offer. */
export const emptyWords = (o: Offer): string => {
  if (o.what === 'balance') return 'No move makes it better, by what this plan knows.';
  return o.made.left.length > 0
    ? 'Nothing more can be plugged in.'
    : 'Every unit that takes the mains is plugged in.';
};

/** One step of an offer as a row. */
export interface Step {
  readonly key: string;
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly cable: string;
  readonly amps: string;
  readonly changes: ChangeSet;
  /** Of a unit that is plugged in: what its figures were reckoned from. */
  readonly plug?: PlugStep;
}

export const stepsOf = (o: Offer, units: 'imperial' | 'metric'): readonly Step[] =>
  o.what === 'plug'
    ? o.made.steps.map((s) => ({
        key: s.recordId,
        what: s.label,
        before: 'not plugged',
        after: s.toLabel,
        cable: `${s.kindName}, ${formatCableLength(s.lengthMm, units)}`,
        amps: formatAmps(s.amps),
        changes: s.changes,
        plug: s,
      }))
    : o.made.moves.map((m) => ({
        key: m.cableId,
        what: m.label,
        before: m.fromLabel,
        after: m.toLabel,
        cable: '',
        amps: '',
        changes: m.changes,
      }));
