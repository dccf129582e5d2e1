import { useEffect, useRef, useState } from 'react';
import { type PatchRow, placeProblem } from '../../engines/control/index.ts';
import { problemText } from '../../kernel/result.ts';
import { moveStretch } from '../../plan/edits/patch.ts';
import { recordName } from '../../plan/names.ts';
import { recordOf } from '../../plan/plan.ts';
import { useServices } from '../services.ts';
import { type Grid, slotAt } from './blocks.ts';

/** A block on its way: where it would go, and why it cannot where it cannot. */
export interface BlockDrag {
  readonly row: PatchRow;
  readonly universeId: string;
  readonly address: number;
  readonly problem: string;
}

/** Moves that are smaller stay a click. */
const START_PX = 4;
const EDGE_PX = 28;

/**
 * Dragging of blocks over the map. A drop on a free place is one undo step; one that is not says why and changes nothing;
 * Escape lets go.
 */
export const useBlockDrag = (grid: Grid, scroller: React.RefObject<HTMLElement | null>) => {
  const { session } = useServices();
  const [drag, setDrag] = useState<BlockDrag | undefined>(undefined);
  const [held, setHeld] = useState<{ row: PatchRow; offset: number; x: number; y: number } | undefined>(
    undefined,
  );
  const now = useRef<BlockDrag | undefined>(undefined);

  useEffect(() => {
    if (!held) return;
    const end = (): void => {
      now.current = undefined;
      setDrag(undefined);
      setHeld(undefined);
    };
    const move = (e: PointerEvent): void => {
      if (!now.current && Math.hypot(e.clientX - held.x, e.clientY - held.y) < START_PX) return;
      const view = scroller.current?.getBoundingClientRect();
      if (view && e.clientY > view.bottom - EDGE_PX) scroller.current?.scrollBy(0, 12);
      if (view && e.clientY < view.top + EDGE_PX) scroller.current?.scrollBy(0, -12);
      const target = document
        .elementsFromPoint(e.clientX, e.clientY)
        .map((x) => x.closest('svg[data-universe]'))
        .find((x) => x instanceof SVGElement);
      const universeId = target instanceof SVGElement ? target.dataset.universe : undefined;
      if (!target || universeId === undefined) return;
      const box = target.getBoundingClientRect();
      const address = slotAt(grid, e.clientX - box.left, e.clientY - box.top) - held.offset;
      const problem = placeProblem(session.getState().plan, held.row, universeId, address);
      now.current = { row: held.row, universeId, address, problem: problem ? problemText(problem) : '' };
      setDrag(now.current);
    };
    const up = (): void => {
      const d = now.current;
      end();
      if (!d || (d.universeId === d.row.universeId && d.address === d.row.address)) return;
      if (d.problem !== '') session.set({ message: `Not moved: ${d.problem}` });
      else commitMove(session, d.row, d.universeId, d.address);
    };
    const key = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape') return;
      e.stopPropagation();
      end();
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', end);
    window.addEventListener('keydown', key, true);
    return () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', end);
      window.removeEventListener('keydown', key, true);
    };
  }, [held, grid, scroller, session]);

  return {
    drag,
    /** Takes hold of a block at one of its slots. */
    grab: (row: PatchRow, slot: number, x: number, y: number): void => {
      if (session.getState().readOnly) return;
      setHeld({ row, offset: slot - row.address, x, y });
    },
  };
};

/** Moves a stretch to a place that was looked at before, as one undo step. */
export const commitMove = (
  session: ReturnType<typeof useServices>['session'],
  row: PatchRow,
  universeId: string,
  address: number,
): void => {
  const { plan } = session.getState();
  const number = recordOf(plan, 'universe', universeId)?.number;
  const unit = recordName(plan, row.fixtureId);
  if (number === undefined) return;
  const r = moveStretch(plan, row.fixtureId, row.fromSlot, number, address);
  if (!r.ok) session.set({ message: problemText(r.error) });
  else {
    session.commit(`Move ${unit} to U${number} ${address}`, r.value);
    session.set({ message: `${unit.charAt(0).toUpperCase()}${unit.slice(1)} is at U${number} ${address}.` });
  }
};
