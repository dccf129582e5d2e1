import type { Id } from '../kernel/ids.ts';
import type { BoxKind, CableKind, SourceKind } from '../plan/kinds/kinds.ts';

/** What a source or box must carry, and the smallest kind that does. */
export interface Sized {
  readonly recordId: Id;
  readonly label: string;
  readonly what: 'generator' | 'box' | 'cable';
  readonly nowName: string;
  /** The smallest kind of the book that carries it; undefined where none does. */
  readonly kind: SourceKind | BoxKind | CableKind | undefined;
  /** Sets of a cable side by side. */
  readonly sets?: number;
  /** Whether the present kind is it, is larger than needed, or does not carry the load with the headroom. */
  readonly now: 'fits' | 'larger' | 'too small';
  readonly reasons: readonly string[];
}
