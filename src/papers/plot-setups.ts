import { movingRecords, setupsWithMoves } from '../plan/moves.ts';
import { setupsOf } from '../plan/plan.ts';
import { plotPage } from './plot.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';

/** Whether something that moves between setups is on a floor. */
const movesOn = (info: SetInfo, floorId: string): boolean =>
  [...movingRecords(info.plan)].some(
    (id) => (info.plan.records.get(id) as { floorId?: unknown } | undefined)?.floorId === floorId,
  );

/**
 * The plots of some floors: each in the shown setup and, where units move between setups, once more for every other setup in
 * which something stands elsewhere.
 */
export const plotPages = (info: SetInfo, floorIds: readonly string[]): readonly PageMaker[] =>
  floorIds.flatMap((floorId) => {
    const first = plotPage(info, floorId);
    if (!movesOn(info, floorId)) return first;
    const moved = setupsWithMoves(info.plan);
    const shownMoves = info.setupId !== undefined && moved.has(info.setupId);
    const others = setupsOf(info.plan).filter(
      (s, i, all) =>
        s.id !== info.setupId &&
        // Where the shown setup has moves, the usual places are drawn once, for the first setup that has none.
        (moved.has(s.id) || (shownMoves && i === all.findIndex((x) => !moved.has(x.id)))),
    );
    return [
      ...first,
      ...others.flatMap((s) => plotPage({ ...info, setupId: s.id, setupName: s.name }, floorId, false)),
    ];
  });
