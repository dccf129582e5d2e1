import { chargeFrom } from './charge.ts';
import { FitLog } from './fit-log.ts';
import type { Rotation, RotationPool, RotationResult, RotationUnit } from './rotation-types.ts';

const EPS = 1e-9;

/** How a fitted day is played. Shares are states of charge, times shares of the pool's charging time. */
export interface FitStyle {
  /** Packs below this go into a bay that would stand empty, at first and later. */
  readonly below: number;
  readonly belowLater: number;
  /** How long “at first” is. */
  readonly first: number;
  /** How long before the end packs are dealt out anew at every change of levels. */
  readonly anew: number;
  /** How often at least there is a look around for bays that stand empty; 0: only when something happens. */
  readonly look: number;
  /** Charged packs that are kept for units whose packs run out, as a share of the units. */
  readonly kept: number;
}

/** Styles that are tried, found by trying many on large days. */
export const FIT_STYLES: readonly FitStyle[] = [
  { below: 0.8, belowLater: 0.6, first: 1.2, anew: 1.5, look: 0.06, kept: 0.07 },
  { below: 0.9, belowLater: 0.9, first: 0, anew: 0, look: 0.06, kept: 0.1 },
  { below: 0.6, belowLater: 0.6, first: 0, anew: 6, look: 0, kept: 0.1 },
];

interface Place {
  readonly unit: RotationUnit;
  readonly index: number;
  k: number;
  pack: number;
  drain: number;
  /** Since when it burns on this pack at this level, and what the pack held then. */
  since: number;
  sinceSoc: number;
}

interface Bay {
  readonly bay: number;
  readonly fullMin: number;
  endMin: number;
  pack: number;
}

/**
 * Plays one pool's day with so many packs so that little is left in them: a unit that needs a pack takes the one with the least
 * charge that lasts until it goes off, else the fullest; one that goes off gives its pack back, whatever is in it; bays that would
 * stand empty take the emptiest pack there is, off a burning unit too where a charged one can take its place. Every unit takes one
 * pack at once. Undefined where a unit would have to wait.
 */
export const fitDay = (
  r: Rotation,
  pool: RotationPool,
  packs: number,
  style: FitStyle,
): RotationResult | undefined => new Fit(r, pool, packs, style).run();

class Fit {
  readonly #r: Rotation;
  readonly #style: FitStyle;
  readonly #units: readonly Place[];
  readonly #bays: readonly Bay[];
  readonly #edges: readonly number[];
  readonly #soc: Float64Array;
  readonly #log: FitLog;
  #loose: number[];
  #t: number;
  #end: number;
  readonly #chargeMin: number;

  constructor(r: Rotation, pool: RotationPool, packs: number, style: FitStyle) {
    this.#r = r;
    this.#style = style;
    this.#units = r.units
      .map((unit, index): Place => ({ unit, index, k: 0, pack: -1, drain: 0, since: 0, sinceSoc: 0 }))
      .filter(({ unit }) => unit.pool === pool.id && unit.stretches.length > 0);
    this.#bays = r.bays
      .flatMap((b, bay) =>
        b.pools.has(pool.id)
          ? [{ bay, fullMin: pool.chargeMin * (b.slower.get(pool.id) ?? 1), endMin: 0, pack: -1 }]
          : [],
      )
      .sort((a, b) => a.fullMin - b.fullMin);
    this.#edges = [
      ...new Set(this.#units.flatMap(({ unit }) => unit.stretches.flatMap((s) => [s.startMin, s.endMin]))),
    ].sort((a, b) => a - b);
    this.#soc = new Float64Array(packs).fill(1);
    this.#loose = Array.from({ length: packs }, (_, i) => i);
    this.#log = new FitLog(r, pool, packs);
    this.#t = this.#edges[0] ?? 0;
    this.#end = this.#edges.at(-1) ?? 0;
    this.#chargeMin = pool.chargeMin;
  }

  #charge(pack: number): number {
    return this.#soc[pack] ?? 0;
  }

  run(): RotationResult | undefined {
    let edge = 0;
    for (;;) {
      const atEdge = Math.abs((this.#edges[edge] ?? Number.NaN) - this.#t) <= EPS;
      if (atEdge) edge++;
      this.#finish();
      const needy = this.#turn(atEdge);
      if (this.#t >= this.#end - EPS) return this.#log.result();
      if (!this.#deal(needy)) return undefined;
      this.#fill();
      this.#early();
      this.#advance(this.#next(this.#edges[edge] ?? this.#end));
    }
  }

  #finish(): void {
    for (const b of this.#bays) {
      if (b.pack < 0 || b.endMin > this.#t + EPS) continue;
      this.#soc[b.pack] = 1;
      this.#loose.push(b.pack);
      b.pack = -1;
    }
  }

  /** Stretches end and begin; gives those who need a pack. */
  #turn(atEdge: boolean): Place[] {
    const needy: Place[] = [];
    const anew = atEdge && this.#end - this.#t <= this.#style.anew * this.#chargeMin;
    for (const u of this.#units) {
      if ((u.unit.stretches[u.k]?.endMin ?? Number.POSITIVE_INFINITY) <= this.#t + EPS) {
        this.#close(u);
        u.k++;
      }
      const s = u.unit.stretches[u.k];
      const on = s !== undefined && s.startMin <= this.#t + EPS;
      u.drain = on ? s.drain : 0;
      const empty = u.pack >= 0 && this.#charge(u.pack) <= this.#r.swapAt + 1e-7;
      if (u.pack >= 0 && (!on || empty || anew)) {
        this.#close(u);
        this.#loose.push(u.pack);
        u.pack = -1;
      }
      if (on && u.pack < 0) needy.push(u);
    }
    return needy;
  }

  /** What a unit still draws until it goes off, as a share of one pack. */
  #needOf(u: Place): number {
    let need = 0;
    let at = this.#t;
    for (let k = u.k; ; k++) {
      const s = u.unit.stretches[k];
      if (!s || s.startMin > at + EPS) return need;
      need += s.drain * (s.endMin - at);
      at = s.endMin;
    }
  }

  /** Deals packs out, who needs most first. False where one finds none. */
  #deal(needy: readonly Place[]): boolean {
    if (needy.length === 0) return true;
    const floor = this.#r.swapAt;
    this.#loose.sort((a, b) => this.#charge(a) - this.#charge(b) || a - b);
    const sorted = needy.map((u) => ({ u, need: this.#needOf(u) })).sort((a, b) => b.need - a.need);
    for (const { u, need } of sorted) {
      const lasts = this.#loose.findIndex((p) => this.#charge(p) >= need + floor - EPS);
      const at = lasts < 0 ? this.#loose.length - 1 : lasts;
      const pack = this.#loose[at];
      if (pack === undefined || this.#charge(pack) <= floor + 1e-6) return false;
      this.#loose.splice(at, 1);
      this.#putOn(u, pack);
    }
    return true;
  }

  /** Writes down what a unit burnt since its pack or its level changed. */
  #close(u: Place): void {
    const s = u.unit.stretches[u.k];
    if (s && u.pack >= 0 && this.#t > u.since)
      this.#log.burn(u.index, u.pack, s, u.since, this.#t, u.sinceSoc, this.#charge(u.pack));
    u.since = this.#t;
    u.sinceSoc = u.pack >= 0 ? this.#charge(u.pack) : 0;
  }

  #putOn(u: Place, pack: number): void {
    if (u.pack >= 0) this.#close(u);
    u.pack = pack;
    u.since = this.#t;
    u.sinceSoc = this.#charge(pack);
    this.#log.putOn(u.index, pack, this.#charge(pack), this.#t);
  }

  #below(): number {
    const first = this.#t < (this.#edges[0] ?? 0) + this.#style.first * this.#chargeMin;
    return first ? this.#style.below : this.#style.belowLater;
  }

  #kept(): number {
    return Math.ceil(this.#style.kept * this.#units.length);
  }

  #intoBay(bay: Bay, pack: number): void {
    bay.pack = pack;
    bay.endMin = this.#t + chargeFrom(this.#r, this.#charge(pack), bay.fullMin);
    this.#log.charge(bay.bay, pack, this.#charge(pack), this.#t, bay.endMin);
  }

  /** The emptiest packs that lie about go into free bays, as long as the charge ends while it is of use. */
  #fill(): void {
    const floor = this.#r.swapAt;
    for (const bay of this.#bays) {
      if (bay.pack >= 0) continue;
      let at = -1;
      for (let i = 0; i < this.#loose.length; i++)
        if (at < 0 || this.#charge(this.#loose[i] ?? 0) < this.#charge(this.#loose[at] ?? 0)) at = i;
      const pack = this.#loose[at];
      if (pack === undefined) return;
      const soc = this.#charge(pack);
      if (soc >= 1 - EPS || this.#t + chargeFrom(this.#r, soc, bay.fullMin) > this.#end - 1) return;
      if (soc > floor + 0.02) {
        if (soc > this.#below()) return;
        let left = 0;
        for (const p of this.#loose) if (this.#charge(p) > floor + 0.3) left++;
        if (left - 1 < this.#kept()) return;
      }
      this.#loose.splice(at, 1);
      this.#intoBay(bay, pack);
    }
  }

  /** Changes ahead of time: the lowest pack on a burning unit goes into a free bay where a charged one takes its place. */
  #early(): void {
    const below = this.#below();
    for (const bay of this.#bays) {
      if (bay.pack >= 0) continue;
      let low: Place | undefined;
      for (const u of this.#units)
        if (u.pack >= 0 && this.#charge(u.pack) < Math.min(below, low ? this.#charge(low.pack) : 1)) low = u;
      if (!low || this.#t + chargeFrom(this.#r, this.#charge(low.pack), bay.fullMin) > this.#end - 30) return;
      let full = 0;
      let pack: number | undefined;
      for (const p of this.#loose)
        if (this.#charge(p) >= 1 - EPS) {
          full++;
          pack ??= p;
        }
      if (pack === undefined || full <= this.#kept()) return;
      const out = low.pack;
      this.#loose.splice(this.#loose.indexOf(pack), 1);
      this.#putOn(low, pack);
      this.#intoBay(bay, out);
    }
  }

  #next(edge: number): number {
    let next = Math.min(this.#end, edge);
    for (const b of this.#bays) if (b.pack >= 0) next = Math.min(next, b.endMin);
    for (const u of this.#units)
      if (u.pack >= 0 && u.drain > 0)
        next = Math.min(next, this.#t + (this.#charge(u.pack) - this.#r.swapAt) / u.drain);
    const look = this.#style.look * this.#chargeMin;
    if (look > 0) next = Math.min(next, (Math.floor(this.#t / look + EPS) + 1) * look);
    return Math.max(next, this.#t + 1e-6);
  }

  #advance(to: number): void {
    for (const u of this.#units)
      if (u.pack >= 0) this.#soc[u.pack] = Math.max(0, this.#charge(u.pack) - u.drain * (to - this.#t));
    this.#t = to;
  }
}
