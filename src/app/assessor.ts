import type { Session } from '../editor/session.ts';
import {
  changesForEngines,
  type FromWorker,
  recordsForEngines,
  rehydrate,
  type ToWorker,
} from './assess-messages.ts';

/** Keeps a session's assessment up to date from a worker that holds a replica of the plan. Gives a way to stop it. */
export const startAssessor = (session: Session): (() => void) => {
  const worker = new Worker(new URL('./assess.worker.ts', import.meta.url), { type: 'module' });
  const send = (m: ToWorker): void => worker.postMessage(m);

  worker.addEventListener('message', (e: MessageEvent<FromWorker>) => {
    if (e.data.kind === 'assessment') {
      const assessment = rehydrate(e.data.data);
      if (assessment.revision <= session.getState().revision) session.set({ assessment });
    } else {
      console.error(e.data.what);
      session.set({
        message: 'The figures could not be computed: a fault of the program. The drawing is not affected.',
      });
    }
  });
  worker.addEventListener('error', () => {
    session.set({
      message:
        'The calculation stopped: a fault of the program. The drawing is not affected; reload to try again.',
    });
  });

  const loadAll = (): void => {
    const { plan, revision } = session.getState();
    send({ kind: 'load', records: recordsForEngines(plan.records.values()), revision });
  };
  loadAll();
  const offTransaction = session.onTransaction((t) =>
    send({ kind: 'changes', changes: changesForEngines(t.changes), revision: session.getState().revision }),
  );
  const offLoad = session.subscribe((s, before) => {
    // A load has no transaction: the plan is another one, with a clean history.
    if (
      s.plan !== before.plan &&
      s.undoStack.length === 0 &&
      s.redoStack.length === 0 &&
      s.assessment === undefined
    )
      loadAll();
  });
  return () => {
    offTransaction();
    offLoad();
    worker.terminate();
  };
};
