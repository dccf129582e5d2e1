/** The part of the Web Locks interface that is used. */
export interface LockPort {
  request(
    name: string,
    options: {
      readonly ifAvailable?: boolean;
      readonly steal?: boolean;
      readonly signal?: AbortSignal;
    },
    whileHeld: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

export interface ChannelPort {
  post(message: unknown): void;
  onMessage(listener: (message: unknown) => void): void;
  close(): void;
}

/** What the store takes from the browser, so that tests can stand in for it. */
export interface Platform {
  /** Absent where the browser has none: then the last tab to open a plan writes. */
  readonly locks: LockPort | undefined;
  /** A channel to the other tabs. */
  openChannel(name: string): ChannelPort | undefined;
  nowMs(): number;
  newPlanId(): string;
  /** Calls `then` once, after `ms`. Gives a way to call it off. */
  after(ms: number, then: () => void): () => void;
}

/** A lock while it is held. */
export interface HeldLock {
  release(): void;
  /** Settles when another tab took it. */
  readonly lost: Promise<void>;
}

/** Asks for a lock. Gives undefined where it is not free (`ifAvailable`) or the wait was called off. */
export const holdLock = (
  locks: LockPort,
  name: string,
  options: Parameters<LockPort['request']>[1],
): Promise<HeldLock | undefined> =>
  new Promise((resolve) => {
    let release = (): void => {};
    const released = new Promise<void>((r) => {
      release = r;
    });
    let lose = (): void => {};
    const lost = new Promise<void>((r) => {
      lose = r;
    });
    const whileHeld = (lock: unknown): Promise<void> | undefined => {
      if (!lock) {
        resolve(undefined);
        return undefined;
      }
      resolve({ release, lost });
      return released;
    };
    locks.request(name, options, whileHeld).catch(() => {
      // Taken by another tab, or the wait was called off.
      lose();
      resolve(undefined);
    });
  });
