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

/** What the engines' replica of the plan is about: pictures and other bytes stay out of it. */
const concerns = (r: AnyRecord): boolean => r.type !== 'blob';

export const recordsForEngines = (records: Iterable<AnyRecord>): readonly AnyRecord[] =>
  [...records].filter(concerns);

export const changesForEngines = (c: ChangeSet): ChangeSet => ({
  added: c.added.filter(concerns),
  updated: c.updated.filter((u) => concerns(u.to)),
  removed: c.removed.filter(concerns),
});

export const dehydrate = (a: Assessment): AssessmentData => ({
  ...a,
  figures: { entityKeys: a.figures.entityKeys, setupIds: a.figures.setupIds, values: a.figures.values },
});

export const rehydrate = (d: AssessmentData): Assessment => ({
  ...d,
  figures: figureTable(d.figures.entityKeys, d.figures.setupIds, d.figures.values),
});
