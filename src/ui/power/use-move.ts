import { outletOnWay, replug } from '../../plan/edits/replug.ts';
import { recordName } from '../../plan/names.ts';
import { inletsOf } from '../../plan/ports.ts';
import type { CircuitRow } from '../../report/summary.ts';
import { useServices } from '../services.ts';

/** What a dragged load row carries: the record that takes the mains. */
export const DRAGGED = 'application/x-lampwright-load';

/** Moves a load to a way, or says why it cannot go there. */
export const useMove = (): ((recordId: string, circuit: CircuitRow) => void) => {
  const { session, book } = useServices();
  return (recordId, circuit) => {
    const { plan } = session.getState();
    const inlet = inletsOf(plan, recordId)[0];
    if (!inlet || circuit.wayId === undefined) return;
    const at = { recordId, portId: inlet.id };
    const way = { ownerId: circuit.ownerId, wayId: circuit.wayId };
    const to = outletOnWay(plan, at, way, book.cables(), book.adapters());
    const name = recordName(plan, recordId);
    if (to) {
      session.commit(`Move ${name} to ${circuit.label}`, replug(plan, at, to, session.newId));
      session.set({ message: `${name} is on ${circuit.label} now. De-energize before re-plugging.` });
    } else session.set({ message: `${circuit.label} has no free outlet that takes ${name}.` });
  };
};
