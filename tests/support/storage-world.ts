import { serialisePlan } from '../../src/plan/file.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Medium } from '../../src/storage/medium.ts';
import type { ChannelPort, LockPort, Platform } from '../../src/storage/platform.ts';
import type { OpenPlan, PlanStore } from '../../src/storage/port.ts';
import { planStore } from '../../src/storage/store.ts';
import { edit, markRecord } from './small-plan.ts';

interface Request {
  readonly name: string;
  readonly whileHeld: (lock: unknown) => Promise<void> | undefined;
  readonly resolve: (v: unknown) => void;
  readonly reject: (e: unknown) => void;
  readonly tab: Tab;
}

/** The browser's locks, as far as they are used: one holder, a queue, stealing, and release when a tab dies. */
class Locks {
  readonly #held = new Map<string, Request>();
  #queue: Request[] = [];

  port(tab: Tab): LockPort {
    return {
      request: (name, options, whileHeld) =>
        new Promise((resolve, reject) => {
          const r: Request = { name, whileHeld, resolve, reject, tab };
          const holder = this.#held.get(name);
          if (options.steal && holder) {
            this.#held.delete(name);
            holder.tab.run(() => holder.reject(new DOMException('stolen', 'AbortError')));
            this.#grant(r);
          } else if (!holder) this.#grant(r);
          else if (options.ifAvailable) resolve(whileHeld(null));
          else {
            this.#queue.push(r);
            options.signal?.addEventListener('abort', () => {
              if (!this.#queue.includes(r)) return;
              this.#queue = this.#queue.filter((q) => q !== r);
              reject(new DOMException('called off', 'AbortError'));
            });
          }
        }),
    };
  }

  #grant(r: Request): void {
    this.#held.set(r.name, r);
    Promise.resolve(r.whileHeld({ name: r.name })).then((v) => {
      r.resolve(v);
      this.#let(r);
    });
  }

  #let(r: Request): void {
    if (this.#held.get(r.name) !== r) return;
    this.#held.delete(r.name);
    const next = this.#queue.find((q) => q.name === r.name);
    if (!next) return;
    this.#queue = this.#queue.filter((q) => q !== next);
    this.#grant(next);
  }

  dropTab(tab: Tab): void {
    this.#queue = this.#queue.filter((q) => q.tab !== tab);
    for (const r of [...this.#held.values()]) if (r.tab === tab) this.#let(r);
  }
}

interface Port extends ChannelPort {
  readonly name: string;
  readonly tab: Tab;
  hear: (message: unknown) => void;
}

/** A tab with its own store over a shared medium. A frozen tab neither hears nor runs timers; a dead one never comes back. */
export class Tab {
  readonly store: PlanStore;
  #frozen = false;
  #dead = false;
  readonly #late: (() => void)[] = [];
  readonly #world: World;

  constructor(world: World, medium: Medium) {
    this.#world = world;
    this.store = planStore(medium, world.platformOf(this));
  }

  freeze(): void {
    this.#frozen = true;
  }

  wake(): void {
    this.#frozen = false;
    for (const run of this.#late.splice(0)) run();
  }

  kill(): void {
    this.#dead = true;
    this.#world.locks.dropTab(this);
  }

  /** Runs now, when awake; later, when frozen; never, when dead. */
  run(what: () => void): void {
    if (this.#dead) return;
    if (this.#frozen) this.#late.push(what);
    else what();
  }
}

/** What tabs of one browser share, with time under the test's control. */
export class World {
  readonly locks = new Locks();
  readonly #ports = new Set<Port>();
  #timers: { at: number; tab: Tab; then: () => void }[] = [];
  #nowMs = 1_000_000;
  #ids = 0;
  readonly #medium: () => Medium;
  readonly #without: { readonly locks?: boolean; readonly channel?: boolean };

  constructor(medium: () => Medium, without: { readonly locks?: boolean; readonly channel?: boolean } = {}) {
    this.#medium = medium;
    this.#without = without;
  }

  tab(): Tab {
    return new Tab(this, this.#medium());
  }

  platformOf(tab: Tab): Platform {
    return {
      locks: this.#without.locks ? undefined : this.locks.port(tab),
      openChannel: (name) => (this.#without.channel ? undefined : this.#open(name, tab)),
      nowMs: () => this.#nowMs,
      newPlanId: () => `plan-${++this.#ids}`,
      after: (ms, then) => {
        const timer = { at: this.#nowMs + ms, tab, then };
        this.#timers.push(timer);
        return () => {
          this.#timers = this.#timers.filter((t) => t !== timer);
        };
      },
    };
  }

  #open(name: string, tab: Tab): ChannelPort {
    const port: Port = {
      name,
      tab,
      hear: () => {},
      post: (message) => {
        const copy = structuredClone(message);
        for (const p of this.#ports)
          if (p !== port && p.name === name) queueMicrotask(() => tab && p.tab.run(() => p.hear(copy)));
      },
      onMessage: (listener) => {
        port.hear = listener;
      },
      close: () => this.#ports.delete(port),
    };
    this.#ports.add(port);
    return port;
  }

  /** Lets time pass: timers that are due run. */
  advance(ms: number): void {
    this.#nowMs += ms;
    const due = this.#timers.filter((t) => t.at <= this.#nowMs);
    this.#timers = this.#timers.filter((t) => t.at > this.#nowMs);
    for (const t of due) t.tab.run(t.then);
  }
}

/** Lets everything that waits only for the medium or for other promises happen. */
export const settle = async (): Promise<void> => {
  for (let i = 0; i < 60; i++) await new Promise((resolve) => setImmediate(resolve));
};

/** The value of a result, or a failed test with its words. */
export const need = <T>(r: { ok: true; value: T } | { ok: false; error: unknown }): T => {
  if (!r.ok) throw new Error(JSON.stringify(r.error));
  return r.value;
};

/** Adds a mark, the way a session does. */
export const addMark = (open: OpenPlan, id: string, name = id): Plan => {
  const { transaction, after } = edit(open.plan, `Add ${name}`, (d) => d.put(markRecord(id, name)));
  open.append(transaction, after);
  return after;
};

/** The plan as a fresh tab finds it. */
export const reopened = async (world: World, planId: string): Promise<string> => {
  const open = need(await world.tab().store.open(planId));
  const text = serialisePlan(open.plan);
  await open.close();
  return text;
};

export const textOf = serialisePlan;
