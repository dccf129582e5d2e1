import { idMaker } from '../kernel/ids.ts';
import { idbMedium } from './idb-medium.ts';
import { memoryMedium } from './memory-medium.ts';
import type { ChannelPort, Platform } from './platform.ts';
import type { PlanStore } from './port.ts';
import { planStore } from './store.ts';

const random = (): number => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32;

const openChannel = (name: string): ChannelPort | undefined => {
  if (typeof BroadcastChannel === 'undefined') return undefined;
  const channel = new BroadcastChannel(name);
  return {
    post: (message) => channel.postMessage(message),
    onMessage: (listener) => {
      channel.onmessage = (event) => listener(event.data);
    },
    close: () => channel.close(),
  };
};

/** This browser's locks, channels, clock and chance. */
export const browserPlatform = (): Platform => {
  const newId = idMaker(random);
  // Absent where the page does not come from a secure address.
  const locks: LockManager | undefined = globalThis.navigator?.locks;
  return {
    locks: locks && {
      request: (name, options, whileHeld) =>
        locks.request(name, options, (lock) => whileHeld(lock) ?? Promise.resolve()),
    },
    openChannel,
    nowMs: () => Date.now(),
    newPlanId: () => newId('plan'),
    after: (ms, then) => {
      const timer = setTimeout(then, ms);
      return () => clearTimeout(timer);
    },
  };
};

/**
 * Plans in this browser. With the first plan made here, the browser is asked not to clear plans away when space runs
 * short: some ask the person, who then knows why.
 */
export const browserStore = (): PlanStore => {
  const store = planStore(idbMedium(), browserPlatform());
  return {
    ...store,
    create: (plan) => {
      void globalThis.navigator?.storage?.persist?.().catch(() => false);
      return store.create(plan);
    },
  };
};

/** Plans kept only while the page is open, for a browser that gives no storage. */
export const memoryStore = (): PlanStore =>
  planStore(memoryMedium(), { ...browserPlatform(), locks: undefined, openChannel: () => undefined });
