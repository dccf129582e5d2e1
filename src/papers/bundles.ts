import type { Id } from '../kernel/ids.ts';
import { recordName } from '../plan/names.ts';
import type { Run } from './runs.ts';
import type { SetInfo } from './sheet-info.ts';

/** Tape for one bundle of runs: a tag and a colour in words. */
export interface Bundle {
  readonly tag: string;
  readonly tape: string;
  readonly at: string;
  readonly runs: readonly Run[];
}

/**
 * Colours that are told apart on a floor at night. Green and yellow together mean earth, and light blue is a neutral in
 * some places: none of these is used alone or as a pair. A second round has two bands.
 */
const TAPES = ['red', 'white', 'yellow', 'orange', 'violet', 'brown', 'pink', 'grey'] as const;

const tapeOf = (index: number): string => {
  const first = TAPES[index % TAPES.length] ?? '';
  const round = Math.floor(index / TAPES.length);
  if (round === 0) return first;
  const second = TAPES[(index + round) % TAPES.length] ?? '';
  return `${first} + ${second}${round >= TAPES.length ? ` ${round}` : ''}`;
};

/** Runs that start at one place, in the order of pulling: each is one bundle with a tape of its own. */
export const bundlesOf = (info: SetInfo, runs: readonly Run[]): ReadonlyMap<Id, Bundle> => {
  const groups = new Map<Id, Run[]>();
  for (const run of runs) {
    const from = run.cable.from.recordId;
    const list = groups.get(from);
    if (list) list.push(run);
    else groups.set(from, [run]);
  }
  return new Map(
    [...groups].map(([id, own], i) => [
      id,
      {
        tag: `B${i + 1}`,
        tape: tapeOf(i),
        at: recordName(info.plan, id).replace(/^(box|source|wall outlet) /, ''),
        runs: own,
      },
    ]),
  );
};
