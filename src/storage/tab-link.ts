import type { Part } from './medium.ts';
import { type ChannelPort, type HeldLock, holdLock, type Platform } from './platform.ts';

type Message =
  | { readonly kind: 'entry'; readonly entry: Part }
  | { readonly kind: 'yield' }
  | { readonly kind: 'yielded' };

/** How long a tab that wants to write waits for the one that does to finish its last write. */
export const YIELD_MS = 1500;

export interface TabEvents {
  /** The writer wrote an entry. */
  readonly entry: (entry: Part) => void;
  /** Another tab wants to write. */
  readonly yield: () => void;
}

/** What ties the tabs with one plan open: the lock of the writer and the channel they talk over. */
export class TabLink {
  readonly #platform: Platform;
  readonly #name: string;
  readonly #channel: ChannelPort | undefined;
  readonly #yielded = new Set<() => void>();
  #waiting: AbortController | undefined;

  constructor(platform: Platform, planId: string) {
    this.#platform = platform;
    this.#name = `lampwright:${planId}`;
    this.#channel = platform.openChannel(this.#name);
  }

  get hasLocks(): boolean {
    return this.#platform.locks !== undefined;
  }

  listen(events: TabEvents): void {
    this.#channel?.onMessage((m) => {
      const message = m as Message;
      if (message.kind === 'entry') events.entry(message.entry);
      else if (message.kind === 'yield') events.yield();
      else for (const go of this.#yielded) go();
    });
  }

  tellEntry(entry: Part): void {
    this.#post({ kind: 'entry', entry });
  }

  tellYielded(): void {
    this.#post({ kind: 'yielded' });
  }

  /** Settles when the writer says it has finished, or has not answered in time. */
  askToYield(): Promise<void> {
    return new Promise((resolve) => {
      const go = (): void => {
        this.#yielded.delete(go);
        callOff();
        resolve();
      };
      const callOff = this.#platform.after(YIELD_MS, go);
      this.#yielded.add(go);
      this.#post({ kind: 'yield' });
    });
  }

  /** The lock, if it is free. */
  async takeIfFree(): Promise<HeldLock | undefined> {
    return this.#platform.locks && holdLock(this.#platform.locks, this.#name, { ifAvailable: true });
  }

  /** The lock, whoever holds it. */
  async steal(): Promise<HeldLock | undefined> {
    this.stopWaiting();
    return this.#platform.locks && holdLock(this.#platform.locks, this.#name, { steal: true });
  }

  /** Waits for the lock to become free. `wants` is asked before it is handed over. */
  wait(wants: () => boolean, got: (lock: HeldLock) => void): void {
    const { locks } = this.#platform;
    if (!locks) return;
    this.stopWaiting();
    const waiting = new AbortController();
    this.#waiting = waiting;
    void holdLock(locks, this.#name, { signal: waiting.signal }).then((lock) => {
      if (!lock) return;
      if (wants() && !waiting.signal.aborted) got(lock);
      else lock.release();
    });
  }

  stopWaiting(): void {
    this.#waiting?.abort();
    this.#waiting = undefined;
  }

  close(): void {
    this.stopWaiting();
    this.#channel?.close();
  }

  #post(message: Message): void {
    this.#channel?.post(message);
  }
}
