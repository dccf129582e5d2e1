import type { Id } from '../kernel/ids.ts';

/**
 * What an engine found, before it is numbered and put into words.
 * `figure` tells how bad it is, higher is worse: a later and higher one makes an acknowledgement lapse.
 */
export interface EngineFinding {
  readonly rule: string;
  readonly severity: 'stop' | 'warn' | 'note';
  /** What keeps its id from run to run besides the rule: a key of an entity or record. */
  readonly about: string;
  readonly recordIds: readonly Id[];
  /** Positions in the list of setups; empty when it does not depend on a setup. */
  readonly setups: readonly number[];
  readonly worstSetup: number;
  readonly params: Readonly<Record<string, string | number>>;
  readonly figureKey?: string;
  readonly figure?: number;
}

/** A finding that holds whatever the setup. */
export const always = (
  rule: string,
  severity: EngineFinding['severity'],
  about: string,
  recordIds: readonly Id[],
  params: EngineFinding['params'] = {},
): EngineFinding => ({ rule, severity, about, recordIds, setups: [], worstSetup: -1, params });
