import { type RefObject, useEffect, useRef, useState } from 'react';
import { moveSetup } from '../../plan/edits/day.ts';
import type { Setup } from '../../plan/records/index.ts';
import { useServices } from '../services.ts';

/** A press that goes no further than this is no drag. */
const LEAST_PX = 6;

interface Drag {
  readonly from: number;
  readonly fromX: number;
  /** The gap between columns it would go into, 0 before the first; undefined while it is only pressed. */
  readonly gap: number | undefined;
}

/** Where a column goes that is dropped into a gap: the index it has then. */
export const indexInGap = (from: number, gap: number): number => (gap > from ? gap - 1 : gap);

/** The gap nearest to so many pixels right of the first column’s left edge. */
export const gapAt = (xPx: number, colPx: number, count: number): number =>
  Math.max(0, Math.min(count, Math.round(xPx / colPx)));

/** Setups put into another order by dragging the heads of their columns; Escape takes it back. */
export const useSetupDrag = (
  grid: RefObject<HTMLElement | null>,
  setups: readonly Setup[],
  headPx: number,
  colPx: number,
  readOnly: boolean,
  /** The setup is at its new place: what is chosen goes along. */
  onMoved: (to: number) => void,
) => {
  const { session } = useServices();
  const [drag, setDrag] = useState<Drag | undefined>(undefined);
  const last = useRef<Drag | undefined>(undefined);
  const show = (d: Drag | undefined): void => {
    last.current = d;
    setDrag(d);
  };
  const move = (index: number, to: number): void => {
    const s = setups[index];
    if (!s || readOnly || to === index || to < 0 || to >= setups.length) return;
    session.commit('Move setup', moveSetup(session.getState().plan, s.id, to));
    onMoved(to);
    const name = [s.scene, s.name].filter(Boolean).join(' ');
    session.set({ setupId: s.id, message: `${name} is setup ${to + 1} of ${setups.length} now.` });
  };
  const on = useRef({
    move: (_e: PointerEvent): void => {},
    up: (): void => {},
    key: (_e: KeyboardEvent): void => {},
  });
  on.current = {
    move: (e) => {
      const d = last.current;
      const el = grid.current;
      if (!d || !el) return;
      if (d.gap === undefined && Math.abs(e.clientX - d.fromX) < LEAST_PX) return;
      const x = e.clientX - el.getBoundingClientRect().left - headPx + el.scrollLeft;
      const gap = gapAt(x, colPx, setups.length);
      if (gap !== d.gap) show({ ...d, gap });
    },
    up: () => {
      const d = last.current;
      show(undefined);
      if (d?.gap !== undefined) move(d.from, indexInGap(d.from, d.gap));
    },
    key: (e) => {
      if (e.key === 'Escape') show(undefined);
    },
  };
  const dragging = drag !== undefined;
  useEffect(() => {
    if (!dragging) return;
    const moved = (e: PointerEvent): void => on.current.move(e);
    const up = (): void => on.current.up();
    const key = (e: KeyboardEvent): void => on.current.key(e);
    window.addEventListener('pointermove', moved);
    window.addEventListener('pointerup', up);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('pointermove', moved);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('keydown', key, true);
    };
  }, [dragging]);
  return {
    press: (e: React.PointerEvent, index: number): void => {
      if (!readOnly && e.button === 0 && !e.shiftKey) show({ from: index, fromX: e.clientX, gap: undefined });
    },
    /** Moves a setup by so many places. */
    step: (index: number, by: number): void => move(index, index + by),
    /** How the head of a column is marked while one is dragged. */
    mark: (index: number): 'before' | 'after' | 'held' | undefined => {
      if (drag?.gap === undefined) return undefined;
      const to = indexInGap(drag.from, drag.gap);
      if (to !== drag.from && index === drag.gap) return 'before';
      if (to !== drag.from && index === setups.length - 1 && drag.gap === setups.length) return 'after';
      return index === drag.from ? 'held' : undefined;
    },
  };
};
