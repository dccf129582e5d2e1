import type { DisplayItem } from '../drawing/display-list.ts';
import type { Id } from '../kernel/ids.ts';
import type { ChangeSet } from '../plan/change-set.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import type { CoverageAsk, Spots, SpotsAsk } from '../report/radio.ts';

export type ToRadio =
  | { readonly kind: 'load'; readonly records: readonly AnyRecord[] }
  | { readonly kind: 'changes'; readonly changes: ChangeSet }
  | {
      readonly kind: 'coverage';
      readonly id: number;
      readonly ask: CoverageAsk;
      /** Things stand where they are in this setup. */
      readonly setupId: Id | undefined;
      /** A drag at work: shown, not yet an edit. */
      readonly preview: ChangeSet | undefined;
    }
  | { readonly kind: 'spots'; readonly id: number; readonly ask: SpotsAsk };

export type FromRadio =
  | {
      readonly kind: 'coverage';
      readonly id: number;
      readonly picture:
        | {
            readonly floorId: Id;
            readonly items: readonly DisplayItem[];
            readonly senderIds: readonly Id[];
            readonly heightM: number;
            readonly sensitivityDbm: number;
          }
        | undefined;
    }
  | { readonly kind: 'spots'; readonly id: number; readonly spots: Spots }
  | { readonly kind: 'failed'; readonly id: number; readonly what: string };
