import { useEffect, useMemo, useRef, useState } from 'react';
import { type ChangeSet, noChanges } from '../../plan/change-set.ts';
import { moveBlock, setBlockTimes } from '../../plan/edits/day.ts';
import type { Plan } from '../../plan/plan.ts';
import type { BlockRow } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import type { Scale } from './scale.ts';

const STEP_MIN = 5;

export type Grip = 'start' | 'end' | 'whole';

interface Drag {
  readonly row: BlockRow;
  readonly grip: Grip;
  readonly fromX: number;
  readonly byMin: number;
}

const LABELS = { whole: 'Move block', start: 'Change start', end: 'Change end' } as const;

const changesOf = (plan: Plan, row: BlockRow, grip: Grip, byMin: number, shiftRest: boolean): ChangeSet => {
  const { startMin, endMin } = row.block;
  if (byMin === 0) return noChanges;
  if (grip === 'whole') return moveBlock(plan, row.id, byMin, shiftRest);
  if (grip === 'start') return setBlockTimes(plan, row.id, { startMin: startMin + byMin }, false);
  return setBlockTimes(plan, row.id, { endMin: endMin + byMin }, shiftRest);
};

/** Dragging of blocks and their edges, by pointer and keys. What moves along is shown while it is dragged; Escape takes it back. */
export const useBlockDrag = (scale: Scale, shiftRest: boolean) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [drag, setDrag] = useState<Drag | undefined>(undefined);
  const last = useRef<Drag | undefined>(undefined);
  const show = (d: Drag | undefined): void => {
    last.current = d;
    setDrag(d);
  };
  const dragging = drag !== undefined;
  useEffect(() => {
    if (!dragging) return;
    const onKey = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape') return;
      last.current = undefined;
      setDrag(undefined);
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [dragging]);

  const shown = useMemo(() => {
    const out = new Map<string, { readonly startMin: number; readonly endMin: number }>();
    if (drag)
      for (const { to } of changesOf(plan, drag.row, drag.grip, drag.byMin, shiftRest).updated)
        if (to.type === 'block') out.set(to.id, to);
    return out;
  }, [plan, drag, shiftRest]);
  const commit = (row: BlockRow, grip: Grip, byMin: number): void => {
    if (!readOnly && byMin !== 0) session.commit(LABELS[grip], changesOf(plan, row, grip, byMin, shiftRest));
  };

  return {
    /** Times of a block while something is dragged. */
    timesOf: (id: string) => shown.get(id),
    /** The edge of a block that is dragged. */
    edgeOf: (id: string, startMin: number, endMin: number): number | undefined =>
      drag?.row.id !== id ? undefined : drag.grip === 'end' ? endMin : startMin,
    on: (row: BlockRow, grip: Grip) => ({
      onKeyDown: (e: React.KeyboardEvent): void => {
        const way =
          e.key === 'ArrowLeft' || e.key === 'ArrowDown'
            ? -1
            : e.key === 'ArrowRight' || e.key === 'ArrowUp'
              ? 1
              : 0;
        if (way === 0) return;
        e.preventDefault();
        // With Alt the whole block goes.
        commit(row, e.altKey ? 'whole' : grip, way * STEP_MIN * (e.shiftKey ? 3 : 1));
      },
      onPointerDown: (e: React.PointerEvent): void => {
        if (readOnly || e.button !== 0) return;
        e.currentTarget.setPointerCapture(e.pointerId);
        show({ row, grip, fromX: e.clientX, byMin: 0 });
      },
      onPointerMove: (e: React.PointerEvent): void => {
        const d = last.current;
        const byMin = d ? Math.round((e.clientX - d.fromX) / scale.pxPerMin / STEP_MIN) * STEP_MIN : 0;
        if (d && byMin !== d.byMin) show({ ...d, byMin });
      },
      onPointerUp: (): void => {
        const d = last.current;
        show(undefined);
        if (!d) return;
        commit(d.row, d.grip, d.byMin);
        if (d.byMin === 0 && row.block.setupId) session.set({ setupId: row.block.setupId });
      },
      onPointerCancel: () => show(undefined),
    }),
  };
};
