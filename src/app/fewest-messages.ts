import type { AnyRecord } from '../plan/records/index.ts';
import type { Fewest, FewestStep } from '../report/fewest.ts';

export interface ToFewest {
  readonly records: readonly AnyRecord[];
  readonly day: number;
}

export type FromFewest =
  | { readonly kind: 'step'; readonly step: FewestStep }
  | { readonly kind: 'found'; readonly fewest: Fewest }
  | { readonly kind: 'failed'; readonly what: string };
