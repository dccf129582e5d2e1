import { boxHolds } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { placeOf } from '../plan/ports.ts';
import { selectionBox } from './commands/fit.ts';
import { fitBox, viewBox } from './fit.ts';
import type { Session } from './session.ts';

/** The floor a record stands on; a cable's is that of the end it leads to. */
const floorOf = (session: Session, id: Id): Id | undefined => {
  const { plan } = session.getState();
  const r = plan.records.get(id);
  if (r && 'floorId' in r && typeof r.floorId === 'string') return r.floorId;
  return placeOf(plan, r?.type === 'cable' ? r.to.recordId : id)?.floorId;
};

const inDay: ReadonlySet<string> = new Set(['stock', 'block']);

/**
 * Selects records on the floor they stand on and moves the view where they are out of sight: whoever asks for a thing
 * from a list sees it. Records that are gone are left out.
 */
export const showRecords = (session: Session, ids: Iterable<Id>): void => {
  const { plan, floorId, floorView } = session.getState();
  const there = [...ids].filter((id) => plan.records.has(id));
  // What stands on no floor, the stock of packs and the blocks of the day, is in the day's lists.
  if (there.length > 0 && there.every((id) => inDay.has(plan.records.get(id)?.type ?? ''))) {
    const stock = there.some((id) => plan.records.get(id)?.type === 'stock');
    session.set({
      workspace: 'day',
      message: stock ? 'The packs at hand are under Packs.' : 'The blocks are under Shooting day.',
    });
    return;
  }
  const floor = there.map((id) => floorOf(session, id)).find((f) => f !== undefined) ?? floorId;
  session.set({
    selection: new Set(there),
    workspace: 'floor',
    tool: 'select',
    placing: undefined,
    ...(floor === undefined ? {} : { floorId: floor }),
    floorView: { ...floorView, shows: 'drawing' },
  });
  const s = session.getState();
  const box = selectionBox(s);
  if (!box || s.viewport.widthPx <= 0) return;
  const view = viewBox(s.camera, s.viewport);
  const corners = [
    { xMm: box.minX, yMm: box.minY },
    { xMm: box.maxX, yMm: box.maxY },
  ];
  if (corners.every((c) => boxHolds(view, c))) return;
  const camera = fitBox(box, s.viewport);
  if (camera) session.set({ camera: { ...camera, pxPerMm: Math.min(camera.pxPerMm, s.camera.pxPerMm) } });
};
