import { figureTable } from '../derive/figures.ts';
import type { ChangeSet } from '../plan/change-set.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import type { Assessment } from '../report/types.ts';

export type ToWorker =
  | { readonly kind: 'load'; readonly records: readonly AnyRecord[]; readonly revision: number }
  | { readonly kind: 'changes'; readonly changes: ChangeSet; readonly revision: number };

/** An assessment as it crosses between threads: the figure table without its methods. */
export type AssessmentData = Omit<Assessment, 'figures'> & {
  readonly figures: {
    readonly entityKeys: readonly string[];
    readonly setupIds: readonly string[];
    readonly values: Float64Array;
  };
};

export type FromWorker =
  | { readonly kind: 'assessment'; readonly data: AssessmentData }
  | { readonly kind: 'failed'; readonly revision: number; readonly what: string };

/** Bytes stay out of the engines' replica of the plan; that they are there is known. */
const light = (r: AnyRecord): AnyRecord => (r.type === 'blob' && r.base64 !== '' ? { ...r, base64: '' } : r);

export const recordsForEngines = (records: Iterable<AnyRecord>): readonly AnyRecord[] =>
  Array.from(records, light);

export const changesForEngines = (c: ChangeSet): ChangeSet => ({
  added: c.added.map(light),
  updated: c.updated.map((u) => (u.to.type === 'blob' ? { from: light(u.from), to: light(u.to) } : u)),
  removed: c.removed.map(light),
});

export const dehydrate = (a: Assessment): AssessmentData => ({
  ...a,
  figures: { entityKeys: a.figures.entityKeys, setupIds: a.figures.setupIds, values: a.figures.values },
});

export const rehydrate = (d: AssessmentData): Assessment => ({
  ...d,
  figures: figureTable(d.figures.entityKeys, d.figures.setupIds, d.figures.values),
});
