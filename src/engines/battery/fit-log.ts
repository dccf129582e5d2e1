import type {
  BaySpan,
  DrainStretch,
  Rotation,
  RotationPool,
  RotationResult,
  Swap,
  UnitSpan,
} from './rotation-types.ts';

interface On {
  readonly pack: number;
  /** Position of the unit's last span, -1 before its first. */
  span: number;
}

/** Writes down what a fitted day does, in the form all days have. */
export class FitLog {
  readonly #r: Rotation;
  readonly #pool: RotationPool;
  readonly #packs: number;
  readonly #spans: UnitSpan[] = [];
  readonly #swaps: Swap[] = [];
  readonly #bays: BaySpan[] = [];
  readonly #on = new Map<number, On>();

  constructor(r: Rotation, pool: RotationPool, packs: number) {
    this.#r = r;
    this.#pool = pool;
    this.#packs = packs;
  }

  /** A pack is put on a unit; where it is the one that was on until this minute, nothing is done. */
  putOn(unit: number, pack: number, soc: number, atMin: number): void {
    const old = this.#on.get(unit);
    const before = old && this.#spans[old.span];
    const running = before !== undefined && Math.abs(before.endMin - atMin) < 1e-6;
    if (old && running && old.pack === pack && Math.abs(before.toSoc - soc) < 1e-9) return;
    const u = this.#r.units[unit];
    this.#swaps.push({
      unit,
      atMin,
      out: running && old ? [name(old.pack)] : [],
      outSoc: running ? before.toSoc : 0,
      into: [name(pack)],
      darkMin: running && u && !u.hotSwap ? u.swapMin : 0,
    });
    this.#on.set(unit, { pack, span: -1 });
  }

  burn(
    unit: number,
    pack: number,
    s: DrainStretch,
    startMin: number,
    endMin: number,
    fromSoc: number,
    toSoc: number,
  ): void {
    const on = this.#on.get(unit);
    const last = on && this.#spans[on.span];
    if (on && last && last.endMin === startMin && last.startMin >= s.startMin - 1e-9) {
      this.#spans[on.span] = { ...last, endMin, toSoc };
      return;
    }
    if (on) on.span = this.#spans.length;
    this.#spans.push({
      unit,
      startMin,
      endMin,
      state: 'burning',
      packs: [name(pack)],
      fromSoc,
      toSoc,
      levelPct: s.levelPct,
      setupId: s.setupId,
    });
  }

  charge(bay: number, pack: number, fromSoc: number, startMin: number, endMin: number): void {
    this.#bays.push({ bay, pool: this.#pool.id, pack: name(pack), startMin, endMin, fromSoc });
  }

  result(): RotationResult {
    return {
      spans: this.#spans,
      swaps: this.#swaps,
      bays: this.#bays,
      used: new Map([[this.#pool.id, this.#packs]]),
      firstShort: undefined,
      firstDark: undefined,
      shortPools: new Map(),
    };
  }
}

const name = (pack: number): string => String(pack + 1);
