import { chargeFrom } from './charge.ts';
import type {
  BaySpan,
  FirstDark,
  FirstShort,
  Rotation,
  RotationResult,
  RotationUnit,
  Swap,
  UnitSpan,
} from './rotation-types.ts';
import type { PoolId } from './types.ts';

const EPS = 1e-9;

interface UnitState {
  readonly unit: RotationUnit;
  readonly index: number;
  /** Position in the stretches; `since` is when its present state began. */
  k: number;
  inside: boolean;
  since: number;
  packs: readonly string[];
  soc: number;
  waiting: boolean;
  dueMin: number;
  dark: boolean;
}

interface PoolState {
  ready: string[];
  /** Packs that wait for a bay, with their state of charge. */
  flat: { readonly pack: string; readonly soc: number }[];
  waiting: UnitState[];
  made: number;
  readonly most: number;
}

/**
 * Plays a day through by one plain rule: a unit keeps its packs until they reach the change point, then takes charged ones,
 * those ready longest first; what comes off goes into the bay free first, in the order it came, and stays until it is full.
 * A unit whose day is over gives its packs back. `supply` says how many packs each pool has; more of them are made as needed
 * where it is infinite. As every pack put on is full, when a change falls due does not depend on how many packs there are,
 * as long as none is missing.
 */
export const rotate = (r: Rotation, supply: (pool: PoolId) => number): RotationResult =>
  new Day(r, supply, 0, false).run();

/**
 * The same, with changes ahead of time: whenever something happens, a bay is free, nothing waits for it and a charged pack is
 * ready, the unit whose packs are lowest, and below `earlyBelow`, takes it. With `shortFirst` the fullest of the packs that
 * wait for a bay goes in first, for it is ready soonest.
 */
export const rotateEarly = (
  r: Rotation,
  supply: (pool: PoolId) => number,
  earlyBelow: number,
  shortFirst = false,
): RotationResult => new Day(r, supply, earlyBelow, shortFirst).run();

class Day {
  readonly #r: Rotation;
  readonly #units: UnitState[];
  readonly #pools = new Map<PoolId, PoolState>();
  /** When each bay is free, and what it holds. */
  readonly #bays: ({ readonly endMin: number; readonly pack: string; readonly pool: PoolId } | undefined)[];
  readonly #own: { readonly endMin: number; readonly pack: string; readonly pool: PoolId }[] = [];
  readonly #spans: UnitSpan[] = [];
  readonly #swaps: Swap[] = [];
  readonly #bayLog: BaySpan[] = [];
  readonly #shorts = new Map<PoolId, FirstShort>();
  readonly #darks = new Map<PoolId, FirstDark>();
  readonly #earlyBelow: number;
  readonly #shortFirst: boolean;
  #now = 0;

  constructor(r: Rotation, supply: (pool: PoolId) => number, earlyBelow: number, shortFirst: boolean) {
    this.#r = r;
    this.#earlyBelow = earlyBelow;
    this.#shortFirst = shortFirst;
    this.#units = r.units
      .map((unit, index) => ({ unit, index }))
      .filter(({ unit }) => unit.stretches.length > 0)
      .map(({ unit, index }) => ({
        unit,
        index,
        k: 0,
        inside: false,
        since: 0,
        packs: [],
        soc: 0,
        waiting: false,
        dueMin: 0,
        dark: false,
      }));
    for (const p of r.pools)
      this.#pools.set(p.id, { ready: [], flat: [], waiting: [], made: 0, most: supply(p.id) });
    this.#bays = r.bays.map(() => undefined);
  }

  run(): RotationResult {
    for (;;) {
      const t = this.#next();
      if (t === Number.POSITIVE_INFINITY) break;
      this.#now = t;
      this.#finishCharges();
      for (const u of this.#units) if (this.#dueAt(u) <= t + EPS) this.#stepEnd(u);
      for (const u of this.#units) if (this.#dueAt(u) <= t + EPS) this.#step(u);
      for (const id of this.#pools.keys()) this.#serve(id);
      if (this.#earlyBelow > 0) for (const id of this.#pools.keys()) this.#early(id);
      this.#noteShort();
      for (const u of this.#units)
        if (u.waiting && !u.dark && (u.packs.length === 0 || u.soc <= EPS)) this.#goDark(u);
    }
    return {
      spans: this.#spans,
      swaps: this.#swaps,
      bays: this.#bayLog,
      used: new Map([...this.#pools].map(([id, p]) => [id, p.made])),
      // Maps keep the order in which things went wrong.
      firstShort: [...this.#shorts.values()][0],
      firstDark: [...this.#darks.values()][0],
      shortPools: new Map([...this.#shorts].map(([id, short]) => [id, { short, dark: this.#darks.get(id) }])),
    };
  }

  #stretch(u: UnitState) {
    return u.unit.stretches[u.k];
  }

  /** When something happens next to a unit by itself. */
  #dueAt(u: UnitState): number {
    const s = this.#stretch(u);
    if (!s) return Number.POSITIVE_INFINITY;
    if (!u.inside) return s.startMin;
    if (u.dark) return s.endMin;
    const floor = u.waiting ? 0 : this.#r.swapAt;
    const runs = s.drain > 0 ? Math.max(0, u.soc - floor) / s.drain : Number.POSITIVE_INFINITY;
    return Math.min(s.endMin, u.since + runs);
  }

  #next(): number {
    let t = Number.POSITIVE_INFINITY;
    for (const u of this.#units) t = Math.min(t, this.#dueAt(u));
    // Once nothing burns any more, what still charges changes nothing.
    if (t === Number.POSITIVE_INFINITY) return t;
    for (const b of this.#bays) if (b) t = Math.min(t, b.endMin);
    for (const b of this.#own) t = Math.min(t, b.endMin);
    return t;
  }

  /** Ends of stretches come before anything else of the same minute, so that packs freed then can be used then. */
  #stepEnd(u: UnitState): void {
    const s = this.#stretch(u);
    if (!u.inside || !s || s.endMin > this.#now + EPS) return;
    this.#log(u, s.endMin);
    const pool = this.#pools.get(u.unit.pool);
    if (u.waiting && pool) pool.waiting = pool.waiting.filter((x) => x !== u);
    u.inside = false;
    u.waiting = false;
    u.dark = false;
    u.k++;
    const next = this.#stretch(u);
    if (!next) this.#giveBack(u);
    else if (next.startMin <= this.#now + EPS) this.#enter(u, next.startMin);
  }

  #step(u: UnitState): void {
    const s = this.#stretch(u);
    if (!s) return;
    if (!u.inside) this.#enter(u, s.startMin);
    else if (u.waiting) this.#goDark(u);
    else this.#ask(u);
  }

  #enter(u: UnitState, at: number): void {
    u.inside = true;
    u.since = at;
    if (u.packs.length === 0 || u.soc <= this.#r.swapAt + EPS) this.#ask(u);
  }

  #ask(u: UnitState): void {
    this.#log(u, this.#now);
    u.waiting = true;
    u.dueMin = this.#now;
    this.#pools.get(u.unit.pool)?.waiting.push(u);
    this.#serve(u.unit.pool);
  }

  /** Changes ahead of time, as long as a bay would stand empty. */
  #early(poolId: PoolId): void {
    const pool = this.#pools.get(poolId);
    const freeBay = (): boolean => this.#bays.some((b, i) => !b && this.#r.bays[i]?.pools.has(poolId));
    while (pool && pool.waiting.length === 0 && pool.flat.length === 0 && freeBay()) {
      let lowest: UnitState | undefined;
      for (const u of this.#units) {
        if (u.unit.pool !== poolId || !u.inside || u.packs.length === 0) continue;
        this.#log(u, this.#now);
        if (u.soc < this.#earlyBelow && u.soc < (lowest?.soc ?? 1)) lowest = u;
      }
      const ready = pool.ready.length + (pool.most - pool.made);
      if (!lowest || ready < lowest.unit.count) return;
      this.#ask(lowest);
    }
  }

  /** Who still waits when all that happens at this minute has happened. */
  #noteShort(): void {
    for (const u of this.#units)
      if (u.waiting && !this.#shorts.has(u.unit.pool))
        this.#shorts.set(u.unit.pool, { unit: u.index, dueMin: u.dueMin });
  }

  #goDark(u: UnitState): void {
    this.#log(u, this.#now);
    if (!this.#darks.has(u.unit.pool))
      this.#darks.set(u.unit.pool, { unit: u.index, dueMin: u.dueMin, darkMin: this.#now });
    u.dark = true;
    this.#giveBack(u);
    this.#serve(u.unit.pool);
  }

  #giveBack(u: UnitState): void {
    for (const pack of u.packs) this.#take(u.unit.pool, pack, u.soc);
    u.packs = [];
    u.soc = 0;
  }

  /** A pack comes off: into a bay, or to wait for one. */
  #take(poolId: PoolId, pack: string, soc: number): void {
    const pool = this.#pools.get(poolId);
    if (!pool) return;
    if (soc >= 1 - EPS) pool.ready.push(pack);
    else {
      pool.flat.push({ pack, soc });
      this.#fillBays();
    }
  }

  #fillBays(): void {
    for (const p of this.#r.pools) {
      const pool = this.#pools.get(p.id);
      if (!pool) continue;
      if (this.#shortFirst) pool.flat.sort((a, b) => b.soc - a.soc);
      while (pool.flat.length > 0) {
        const first = pool.flat[0];
        const bay = p.exchange ? -1 : this.#bays.findIndex((b, i) => !b && this.#r.bays[i]?.pools.has(p.id));
        if (!first || (!p.exchange && bay < 0)) break;
        pool.flat.shift();
        const slower = this.#r.bays[bay]?.slower.get(p.id) ?? 1;
        const endMin = this.#now + chargeFrom(this.#r, first.soc, p.chargeMin * slower);
        const held = { endMin, pack: first.pack, pool: p.id };
        if (bay < 0) this.#own.push(held);
        else this.#bays[bay] = held;
        this.#bayLog.push({
          bay,
          pool: p.id,
          pack: first.pack,
          startMin: this.#now,
          endMin,
          fromSoc: first.soc,
        });
      }
    }
  }

  #finishCharges(): void {
    for (let i = 0; i < this.#bays.length; i++) {
      const b = this.#bays[i];
      if (!b || b.endMin > this.#now + EPS) continue;
      this.#bays[i] = undefined;
      this.#pools.get(b.pool)?.ready.push(b.pack);
    }
    for (let i = this.#own.length - 1; i >= 0; i--) {
      const b = this.#own[i];
      if (!b || b.endMin > this.#now + EPS) continue;
      this.#own.splice(i, 1);
      this.#pools.get(b.pool)?.ready.push(b.pack);
    }
    this.#fillBays();
  }

  /** Gives charged packs to units in the order they asked; one that takes several waits until all are there. */
  #serve(poolId: PoolId): void {
    const pool = this.#pools.get(poolId);
    while (pool && pool.waiting.length > 0) {
      const u = pool.waiting[0];
      if (!u) return;
      while (pool.ready.length < u.unit.count && pool.made < pool.most) {
        pool.made++;
        pool.ready.push(String(pool.made));
      }
      if (pool.ready.length < u.unit.count) return;
      pool.waiting.shift();
      this.#log(u, this.#now);
      const into = pool.ready.splice(0, u.unit.count);
      const [out, outSoc] = [u.packs, u.soc];
      const running = out.length > 0;
      u.packs = into;
      u.soc = 1;
      u.waiting = false;
      u.dark = false;
      u.since = this.#now;
      this.#swaps.push({
        unit: u.index,
        atMin: this.#now,
        out,
        outSoc,
        into,
        darkMin: running && !u.unit.hotSwap ? u.unit.swapMin : 0,
      });
      for (const pack of out) this.#take(poolId, pack, outSoc);
    }
  }

  /** Writes what a unit did since its last change and drains its packs for it. */
  #log(u: UnitState, untilMin: number): void {
    const s = this.#stretch(u);
    if (!s || !u.inside || untilMin <= u.since + EPS) return;
    const toSoc = u.dark ? 0 : Math.max(0, u.soc - s.drain * (untilMin - u.since));
    this.#spans.push({
      unit: u.index,
      startMin: u.since,
      endMin: untilMin,
      state: u.dark ? 'dark' : 'burning',
      packs: u.packs,
      fromSoc: u.dark ? 0 : u.soc,
      toSoc,
      levelPct: s.levelPct,
      setupId: s.setupId,
    });
    u.soc = toSoc;
    u.since = untilMin;
  }
}
