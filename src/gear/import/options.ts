import type { Practice } from '../../plan/records/index.ts';

/** What a person may say beside the file. */
export interface ImportOptions {
  /** Whose plugs are assumed where the file names none; Europe when absent. */
  readonly practice?: Practice;
  /** A description in place of the one made up from the file's figures. */
  readonly name?: string;
  /** Watts at the inlet, in place of what the file says. */
  readonly wattsW?: number;
}
