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

/** An open plan in the store. One tab writes; others follow read-only until they take over. */
export interface OpenPlan {
  readonly planId: string;
  readonly plan: Plan;
  /** Notes on what was repaired or set aside while loading, for the user. */
  readonly notices: readonly string[];
  saveState(): SaveState;
  onSaveState(listener: (s: SaveState) => void): () => void;
  /** Queues a transaction. It is on the medium when the state turns `saved`. */
  append(transaction: Transaction, after: Plan): void;
  /** Transactions written by the tab that holds the lock, while this one follows. */
  onForeign(listener: (t: Transaction, after: Plan) => void): () => void;
  /** Asks for the lock. Gives the newest plan when it has it. */
  takeOver(): Promise<Result<Plan>>;
  /** Waits until everything appended is written or has failed. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

/** Where plans live between sessions. Adapters: memory, IndexedDB. */
export interface PlanStore {
  list(): Promise<readonly StoredPlanInfo[]>;
  create(plan: Plan): Promise<Result<OpenPlan>>;
  open(planId: string): Promise<Result<OpenPlan>>;
  /** Moves a plan to the bin, from which `restore` brings it back. */
  remove(planId: string): Promise<Result<void>>;
  restore(planId: string): Promise<Result<void>>;
}
