import type { Plan } from '../plan/plan.ts';
import type { Edit } from './journal.ts';
import type { Platform } from './platform.ts';

export interface Queued {
  readonly edit: Edit;
  readonly after: Plan;
}

/** Edits wait this long for others to go with them in one write. */
export const BATCH_MS = 250;
/** A failed write is tried again after this time. */
export const RETRY_MS = 5000;

/** Edits on their way to the medium: in order, one write at a time, tried again after a failure. */
export class WriteQueue {
  readonly #platform: Platform;
  readonly #write: (batch: readonly Queued[]) => Promise<'written' | 'refused'>;
  readonly #told: (event: { readonly failed: unknown } | 'written') => void;
  #waiting: Queued[] = [];
  #running: Promise<void> | undefined;
  #callOff: (() => void) | undefined;

  /** `write` throws when the medium failed and answers `refused` when this tab may no longer write. */
  constructor(
    platform: Platform,
    write: (batch: readonly Queued[]) => Promise<'written' | 'refused'>,
    told: (event: { readonly failed: unknown } | 'written') => void,
  ) {
    this.#platform = platform;
    this.#write = write;
    this.#told = told;
  }

  get isEmpty(): boolean {
    return this.#waiting.length === 0;
  }

  push(queued: Queued): void {
    this.#waiting.push(queued);
    if (!this.#running) this.#in(BATCH_MS);
  }

  /** Takes out all that is not written. */
  take(): readonly Queued[] {
    const all = this.#waiting;
    this.#waiting = [];
    this.#callOff?.();
    this.#callOff = undefined;
    return all;
  }

  /** Writes now. Settles when nothing waits or a write failed. */
  flush(): Promise<void> {
    this.#callOff?.();
    this.#callOff = undefined;
    this.#running ??= this.#drain().finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  #in(ms: number): void {
    this.#callOff ??= this.#platform.after(ms, () => {
      this.#callOff = undefined;
      void this.flush();
    });
  }

  async #drain(): Promise<void> {
    while (this.#waiting.length > 0) {
      const batch = [...this.#waiting];
      let outcome: 'written' | 'refused';
      try {
        outcome = await this.#write(batch);
      } catch (failed) {
        this.#told({ failed });
        this.#in(RETRY_MS);
        return;
      }
      if (outcome === 'refused') return;
      this.#waiting = this.#waiting.filter((q) => !batch.includes(q));
      if (this.#waiting.length === 0) this.#told('written');
    }
  }
}
