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

/**
 * Bundles by the place their runs start at, in the order of pulling, each with a tape of its own; a link from one unit to
 * the next belongs to the bundle its unit is fed by. By id of the record a run starts at.
 */
export const bundlesOf = (info: SetInfo, runs: readonly Run[]): ReadonlyMap<Id, Bundle> => {
  const feeding = new Map(runs.map((r) => [r.cable.to.recordId, r.cable.from.recordId]));
  const rootOf = (id: Id): Id => {
    let at = id;
    for (let hops = 0; hops < runs.length; hops++) {
      const type = info.plan.records.get(at)?.type;
      const up = type === 'fixture' || type === 'ballast' || type === 'device' ? feeding.get(at) : undefined;
      if (up === undefined) return at;
      at = up;
    }
    return at;
  };
  const groups = new Map<Id, Run[]>();
  for (const run of runs) {
    const root = rootOf(run.cable.from.recordId);
    const list = groups.get(root);
    if (list) list.push(run);
    else groups.set(root, [run]);
  }
  const byRoot = new Map(
    [...groups].map(([id, own], i): readonly [Id, Bundle] => [
      id,
      {
        tag: `B${i + 1}`,
        tape: tapeOf(i),
        at: recordName(info.plan, id).replace(/^(box|source|wall outlet) /, ''),
        runs: own,
      },
    ]),
  );
  const out = new Map<Id, Bundle>();
  for (const run of runs) {
    const bundle = byRoot.get(rootOf(run.cable.from.recordId));
    if (bundle) out.set(run.cable.from.recordId, bundle);
  }
  return out;
};
