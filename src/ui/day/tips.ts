import { createContext, useContext } from 'react';
import type { LaneStop } from './stops.ts';

/** What the time line tells at a moment: the stop that is pointed at or stepped to, and where on the screen. */
export interface Tip {
  readonly stop: LaneStop | undefined;
  /** Minute of the day under the pointer or at the stop. */
  readonly minute: number;
  readonly xPx: number;
  readonly yPx: number;
  /** Stepped to by keys: told to who does not see it. */
  readonly byKeys: boolean;
}

export interface TipStore {
  get(): Tip | undefined;
  /** Minute that was last told of: who steps to another lane stays at the same time. */
  lastMinute(): number | undefined;
  show(tip: Tip | undefined): void;
  subscribe(heard: () => void): () => void;
}

/** Holds the tip outside the lanes, so that a moving pointer draws none of them anew. */
export const makeTips = (): TipStore => {
  let now: Tip | undefined;
  let last: number | undefined;
  const all = new Set<() => void>();
  return {
    get: () => now,
    lastMinute: () => last,
    show(tip) {
      if (tip === now) return;
      now = tip;
      last = tip?.minute ?? last;
      for (const heard of all) heard();
    },
    subscribe(heard) {
      all.add(heard);
      return () => all.delete(heard);
    },
  };
};

export const TipsContext = createContext<TipStore>(makeTips());
export const useTips = (): TipStore => useContext(TipsContext);

/** How near to a moment the pointer has to be, in pixels. */
const NEAR_PX = 5;

/** The stop at a minute: the shortest that is there, so that a change or a gap comes before the stretch it is in. */
export const stopAt = (
  stops: readonly LaneStop[],
  minute: number,
  pxPerMin: number,
  row?: number,
): LaneStop | undefined => {
  const near = NEAR_PX / pxPerMin;
  let best: LaneStop | undefined;
  for (const s of stops) {
    if (row !== undefined && s.row !== undefined && s.row !== row) continue;
    const slack = s.endMin - s.startMin < 2 * near ? near : 0;
    if (minute < s.startMin - slack || minute > s.endMin + slack) continue;
    if (!best || s.endMin - s.startMin < best.endMin - best.startMin) best = s;
  }
  return best;
};
