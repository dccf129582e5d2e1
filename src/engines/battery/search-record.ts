import type { BaySpan, Rotation, RotationPool, RotationResult, Swap, UnitSpan } from './rotation-types.ts';

/** What happens between two moments at which packs may be changed. */
export interface Step {
  readonly fromMin: number;
  readonly toMin: number;
  readonly on: readonly {
    readonly unit: number;
    readonly pack: number;
    readonly fromSoc: number;
    readonly toSoc: number;
  }[];
  readonly charging: readonly {
    readonly bay: number;
    readonly id: number;
    readonly endMin: number;
    readonly fromSoc: number;
  }[];
}

export type Outcome = RotationResult;

/** Writes the steps of a schedule as what units, packs and bays did. */
export const recordSteps = (
  r: Rotation,
  pool: RotationPool,
  steps: readonly Step[],
  packs: number,
): Outcome => {
  const spans: UnitSpan[] = [];
  const swaps: Swap[] = [];
  const bays: BaySpan[] = [];
  const last = new Map<number, number>();
  for (const step of steps) {
    for (const c of step.charging)
      bays.push({
        bay: c.bay,
        pool: pool.id,
        pack: String(c.id),
        startMin: step.fromMin,
        endMin: c.endMin,
        fromSoc: c.fromSoc,
      });
    for (const o of step.on) {
      const unit = r.units[o.unit];
      const s = unit?.stretches.find(
        (x) => x.startMin <= step.fromMin + 1e-6 && x.endMin > step.fromMin + 1e-6,
      );
      const at = last.get(o.unit);
      const before = at === undefined ? undefined : spans[at];
      const running = before?.endMin === step.fromMin;
      if (before?.packs[0] !== String(o.pack) || Math.abs(before.toSoc - o.fromSoc) > 1e-6) {
        swaps.push({
          unit: o.unit,
          atMin: step.fromMin,
          out: before?.packs ?? [],
          outSoc: before?.toSoc ?? 0,
          into: [String(o.pack)],
          darkMin: running && unit && !unit.hotSwap ? unit.swapMin : 0,
        });
      } else if (running && at !== undefined && s && before.startMin >= s.startMin - 1e-6) {
        spans[at] = { ...before, endMin: step.toMin, toSoc: o.toSoc };
        continue;
      }
      last.set(o.unit, spans.length);
      spans.push({
        unit: o.unit,
        startMin: step.fromMin,
        endMin: step.toMin,
        state: 'burning',
        packs: [String(o.pack)],
        fromSoc: o.fromSoc,
        toSoc: o.toSoc,
        levelPct: s?.levelPct ?? 100,
        setupId: s?.setupId ?? '',
      });
    }
  }
  return {
    spans,
    swaps,
    bays,
    used: new Map([[pool.id, packs]]),
    firstShort: undefined,
    firstDark: undefined,
    shortPools: new Map(),
  };
};
