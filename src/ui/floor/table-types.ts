import type { Id, NewId } from '../../kernel/ids.ts';
import type { Result } from '../../kernel/result.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import type { AdapterKind } from '../../plan/kinds/adapter.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import type { Plan } from '../../plan/plan.ts';
import type { AnyRecord, Cable, RecordType } from '../../plan/records/index.ts';

export interface TableRow {
  readonly id: Id;
  readonly type: RecordType;
  /** One text for each column. */
  readonly cells: readonly string[];
}

/** What the texts of a table are made from. */
export interface Sight {
  readonly plan: Plan;
  readonly setupId: Id | undefined;
  readonly feed: ReadonlyMap<Id, Cable>;
  readonly ballast: ReadonlyMap<Id, Id>;
}

/** What an edit may need to make something new. */
export interface Making {
  readonly cables: readonly CableKind[];
  readonly adapters: readonly AdapterKind[];
  readonly newId: NewId;
}

export interface Column {
  readonly name: string;
  readonly for: readonly RecordType[];
  readonly text: (r: AnyRecord, s: Sight) => string;
  /** What writing this text into the cell does. Absent where the cell is only to be read. */
  readonly edit?: (
    plan: Plan,
    r: AnyRecord,
    text: string,
    setupId: Id | undefined,
    made: Making,
  ) => Result<ChangeSet>;
}
