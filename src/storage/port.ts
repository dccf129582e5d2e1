import type { Result } from '../kernel/result.ts';
import type { Transaction } from '../plan/change-set.ts';
import type { Plan } from '../plan/plan.ts';

/** One line of the start page's list. */
export interface StoredPlanInfo {
  readonly planId: string;
  readonly title: string;
  readonly production: string;
  readonly savedAtMs: number;
  readonly fixtureCount: number;
}

/** What saving is doing, told to the user as it changes. */
export type SaveState =
  | { readonly state: 'saved'; readonly atMs: number }
  | { readonly state: 'saving' }
  | { readonly state: 'read-only'; readonly reason: 'other-tab' | 'newer-version' }
  | { readonly state: 'failed'; readonly what: string; readonly todo: string };

/** An open plan in the store. One tab writes; others follow read-only until they take over or the writer closes. */
export interface OpenPlan {
  readonly planId: string;
  /** The newest plan this tab knows. */
  readonly plan: Plan;
  /** Notes on what was repaired or set aside while loading, for the user. */
  readonly notices: readonly string[];
  saveState(): SaveState;
  onSaveState(listener: (s: SaveState) => void): () => void;
  /** Queues a transaction. It is on the medium when the state turns `saved`. Throws where the plan is open read-only. */
  append(transaction: Transaction, after: Plan): void;
  /** Changes that did not come from this tab, while it follows or when it finds that another tab took over. */
  onForeign(listener: (t: Transaction, after: Plan) => void): () => void;
  /** Notes for the user that come up after opening, such as edits kept in a copy. */
  onNotice(listener: (text: string) => void): () => void;
  /** Makes this tab the one that writes. Gives the newest plan when it is. */
  takeOver(): Promise<Result<Plan>>;
  /** Tries to write what is queued now; settles when it is written or has failed. Call it when the page is hidden. */
  flush(): Promise<void>;
  /** Writes what is queued and lets go of the plan. */
  close(): Promise<void>;
}

/** Where plans live between sessions. Adapters: memory, IndexedDB. */
export interface PlanStore {
  /** Plans not in the bin, newest first. */
  list(): Promise<readonly StoredPlanInfo[]>;
  /** Plans in the bin, newest first. */
  listRemoved(): Promise<readonly StoredPlanInfo[]>;
  create(plan: Plan): Promise<Result<OpenPlan>>;
  open(planId: string): Promise<Result<OpenPlan>>;
  /** Moves a plan to the bin, from which `restore` brings it back. */
  remove(planId: string): Promise<Result<void>>;
  restore(planId: string): Promise<Result<void>>;
  /** Everything kept of a plan as text, for one that cannot be opened. */
  salvage(planId: string): Promise<Result<string>>;
}
