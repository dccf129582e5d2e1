import type { Book } from '../book.ts';
import type { Session, SessionState } from '../session.ts';

export interface CommandContext {
  readonly session: Session;
  readonly book: Book;
}

/** One thing a person can do, by key, by menu or by name. `keys` are written as `tinykeys` reads them. */
export interface Command {
  readonly id: string;
  readonly label: string;
  readonly keys: readonly string[];
  /** Keys that the platform leads here by an event of its own; shown, not bound. */
  readonly platformKeys?: readonly string[];
  enabled(state: SessionState): boolean;
  perform(ctx: CommandContext): void;
}

/** Whether edits are possible. */
export const canEdit = (s: SessionState): boolean => !s.readOnly;

/** Whether edits are possible and something is selected on the floor in sight: nothing is moved or deleted unseen. */
export const canEditSelection = (s: SessionState): boolean =>
  !s.readOnly && s.selection.size > 0 && s.workspace === 'floor';
