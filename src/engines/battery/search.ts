import { chargeFrom, fastestCharge } from './charge.ts';
import type { Rotation, RotationPool, RotationUnit } from './rotation-types.ts';
import { type Outcome, recordSteps, type Step } from './search-record.ts';

const EPS = 1e-7;
/** States looked at before a search is given up. */
export const SEARCH_BUDGET = 15_000;

interface Loose {
  readonly id: number;
  readonly soc: number;
}

interface Busy {
  readonly id: number;
  readonly bay: number;
  readonly endMin: number;
}

interface State {
  readonly t: number;
  /** Packs in no bay, fullest first. Which unit they were on last does not matter: any change is allowed at an event. */
  readonly loose: readonly Loose[];
  readonly busy: readonly Busy[];
  readonly parent: State | undefined;
  readonly step: Step | undefined;
}

/** What searching every schedule came to. `none`: there is no schedule; `given-up`: the budget ran out first. */
export type SearchAnswer = Outcome | 'none' | 'given-up';

/**
 * Looks for a schedule of one pool in which no unit goes dark, among all that change packs at the start or end of a stretch,
 * when a unit's packs reach the change point, or when a charge ends: at each such moment any unit may take any pack that is in
 * no bay, and any pack may go into any free bay, where it stays until it is full. Every unit takes one pack at once. What is
 * dominated by its energy alone (more still to be drawn than packs and bays could give) is left out; nothing else is.
 */
export const searchSchedule = (r: Rotation, pool: RotationPool, packs: number): SearchAnswer =>
  new Search(r, pool).run(packs);

class Search {
  readonly #r: Rotation;
  readonly #pool: RotationPool;
  readonly #units: readonly { readonly unit: RotationUnit; readonly index: number }[];
  readonly #bays: readonly { readonly bay: number; readonly fullMin: number }[];
  readonly #edges: readonly number[];
  readonly #seen = new Set<string>();
  #left = SEARCH_BUDGET;

  constructor(r: Rotation, pool: RotationPool) {
    this.#r = r;
    this.#pool = pool;
    this.#units = r.units
      .map((unit, index) => ({ unit, index }))
      .filter(({ unit }) => unit.pool === pool.id && unit.stretches.length > 0);
    this.#bays = r.bays.flatMap((b, bay) =>
      b.pools.has(pool.id) ? [{ bay, fullMin: pool.chargeMin * (b.slower.get(pool.id) ?? 1) }] : [],
    );
    this.#edges = [
      ...new Set(this.#units.flatMap(({ unit }) => unit.stretches.flatMap((s) => [s.startMin, s.endMin]))),
    ].sort((a, b) => a - b);
  }

  run(packs: number): SearchAnswer {
    const t = this.#edges[0];
    const loose = Array.from({ length: packs }, (_, i) => ({ id: i + 1, soc: 1 }));
    if (t === undefined) return recordSteps(this.#r, this.#pool, [], packs);
    // A stack in place of recursion; what is pushed last is tried first.
    const stack: State[] = [{ t, loose, busy: [], parent: undefined, step: undefined }];
    while (stack.length > 0) {
      if (this.#left-- <= 0) return 'given-up';
      const s = stack.pop();
      if (!s) break;
      if (s.t >= (this.#edges.at(-1) ?? 0) - EPS) return this.#found(s, packs);
      if (!this.#enough(s)) continue;
      const key = this.#key(s);
      if (this.#seen.has(key)) continue;
      this.#seen.add(key);
      stack.push(...this.#moves(s).reverse());
    }
    return 'none';
  }

  #found(s: State, packs: number): Outcome {
    const steps: Step[] = [];
    for (let x: State | undefined = s; x; x = x.parent) if (x.step) steps.unshift(x.step);
    return recordSteps(this.#r, this.#pool, steps, packs);
  }

  #key(s: State): string {
    const n = (x: number): string => x.toFixed(6);
    return `${n(s.t)}|${s.loose.map((p) => n(p.soc)).join()}|${s.busy
      .map((b) => n(b.endMin))
      .sort()
      .join()}`;
  }

  /** What a unit drains now; 0 where it does not burn. */
  #drain(u: RotationUnit, t: number): number {
    return u.stretches.find((s) => s.startMin <= t + EPS && s.endMin > t + EPS)?.drain ?? 0;
  }

  /** Whether energy alone could still do: at every later edge, what is drawn by then against what packs hold and bays give back. */
  #enough(s: State): boolean {
    const floor = this.#r.swapAt;
    const loose = s.loose.reduce((sum, p) => sum + Math.max(0, p.soc - floor), 0);
    const perMin = this.#bays.reduce((sum, b) => sum + fastestCharge(this.#r, b.fullMin), 0);
    return this.#edges.every((edge) => {
      if (edge <= s.t) return true;
      let need = 0;
      for (const { unit } of this.#units)
        for (const x of unit.stretches)
          need += x.drain * Math.max(0, Math.min(edge, x.endMin) - Math.max(s.t, x.startMin));
      const charged = s.busy.filter((b) => b.endMin < edge).length * (1 - floor);
      return need <= loose + charged + perMin * (edge - s.t) + EPS;
    });
  }

  #moves(s: State): State[] {
    const burning = this.#units.filter(({ unit }) => this.#drain(unit, s.t) > 0);
    const out: State[] = [];
    const chosen: number[] = [];
    const place = (i: number): void => {
      if (i === burning.length) {
        this.#charges(s, burning, chosen, out);
        return;
      }
      let last = Number.NaN;
      s.loose.forEach((p, k) => {
        // Packs of the same charge are one choice.
        if (chosen.includes(k) || p.soc <= this.#r.swapAt + EPS || Math.abs(p.soc - last) < EPS) return;
        last = p.soc;
        chosen.push(k);
        place(i + 1);
        chosen.pop();
      });
    };
    place(0);
    return out;
  }

  /** All ways to put packs that are on no unit into free bays; as many as go in first. */
  #charges(
    s: State,
    burning: readonly { readonly unit: RotationUnit; readonly index: number }[],
    chosen: readonly number[],
    out: State[],
  ): void {
    const rest = s.loose
      .map((p, k) => ({ p, k }))
      .filter(({ p, k }) => !chosen.includes(k) && p.soc < 1 - EPS);
    const free = this.#bays.filter((b) => !s.busy.some((x) => x.bay === b.bay));
    const subsets: (typeof rest)[] = [];
    const pick = (from: number, taken: typeof rest): void => {
      if (taken.length === free.length || from < 0) {
        subsets.push(taken);
        return;
      }
      const next = rest[from];
      if (next) pick(from - 1, [...taken, next]);
      pick(from - 1, taken);
    };
    pick(rest.length - 1, []);
    const unique = new Map(subsets.map((x) => [x.map(({ p }) => p.soc.toFixed(6)).join(), x]));
    for (const into of unique.values()) out.push(this.#advance(s, burning, chosen, into, free));
  }

  #advance(
    s: State,
    burning: readonly { readonly unit: RotationUnit; readonly index: number }[],
    chosen: readonly number[],
    into: readonly { readonly p: Loose; readonly k: number }[],
    free: readonly { readonly bay: number; readonly fullMin: number }[],
  ): State {
    const floor = this.#r.swapAt;
    const charging = into.map(({ p }, i): Busy & { readonly fromSoc: number } => {
      const bay = free[i] ?? { bay: -1, fullMin: this.#pool.chargeMin };
      return {
        id: p.id,
        bay: bay.bay,
        endMin: s.t + chargeFrom(this.#r, p.soc, bay.fullMin),
        fromSoc: p.soc,
      };
    });
    const busy = [...s.busy, ...charging];
    let next = this.#edges.find((e) => e > s.t + EPS) ?? s.t;
    for (const b of busy) next = Math.min(next, b.endMin);
    const on = burning.map(({ unit, index }, i) => {
      const p = s.loose[chosen[i] ?? 0] as Loose;
      const drain = this.#drain(unit, s.t);
      next = Math.min(next, s.t + (p.soc - floor) / drain);
      return { index, p, drain };
    });
    const drained = new Map(on.map((x) => [x.p.id, Math.max(0, x.p.soc - x.drain * (next - s.t))]));
    const inBay = new Set(charging.map((c) => c.id));
    const done = busy.filter((b) => b.endMin <= next + EPS);
    const loose = [
      ...s.loose.filter((p) => !inBay.has(p.id)).map((p) => ({ id: p.id, soc: drained.get(p.id) ?? p.soc })),
      ...done.map((b) => ({ id: b.id, soc: 1 })),
    ].sort((a, b) => b.soc - a.soc || a.id - b.id);
    const step: Step = {
      fromMin: s.t,
      toMin: next,
      on: on.map((x) => ({ unit: x.index, pack: x.p.id, fromSoc: x.p.soc, toSoc: drained.get(x.p.id) ?? 0 })),
      charging,
    };
    return { t: next, loose, busy: busy.filter((b) => b.endMin > next + EPS), parent: s, step };
  }
}
