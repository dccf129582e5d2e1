import type { Session, SessionState } from '../editor/session.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import type { ChangeSet } from '../plan/change-set.ts';
import { recordsOf } from '../plan/plan.ts';
import type { RecordType } from '../plan/records/index.ts';
import { type CoverageAsk, computeRadio, type Spots } from '../report/radio.ts';
import type { RadioService } from '../ui/radio-service.ts';
import type { FromRadio, ToRadio } from './radio-messages.ts';

/** Metres between the places of a picture on the screen. */
const STEP_M = 0.25;

/** Types a picture depends on while something is dragged. */
const SEEN: readonly RecordType[] = ['device', 'stand', 'wall', 'opening', 'setPiece', 'floor'];

const matters = (preview: ChangeSet | undefined): boolean =>
  preview !== undefined &&
  [...preview.added, ...preview.removed, ...preview.updated.map((u) => u.to)].some((r) =>
    SEEN.includes(r.type),
  );

/** What the picture is wanted of now; undefined where none is wanted or nothing sends. */
const askOf = (s: SessionState): CoverageAsk | undefined => {
  const { radio, layers } = s.floorView;
  if (!layers.coverage.shown || s.floorId === undefined || recordsOf(s.plan, 'device').length === 0)
    return undefined;
  const r = computeRadio(s.plan);
  const all = [...r.model.senders.keys()];
  const one =
    radio.senderId !== undefined && r.model.senders.has(radio.senderId) ? radio.senderId : undefined;
  const { universeId } = radio;
  const senderIds =
    one === undefined
      ? all.filter((id) => universeId === undefined || r.carried.get(id)?.includes(universeId))
      : [one];
  return senderIds.length === 0 ? undefined : { floorId: s.floorId, senderIds, stepM: STEP_M };
};

const same = (a: CoverageAsk | undefined, b: CoverageAsk | undefined): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

/**
 * Keeps a session's coverage picture up to date from a worker with a replica of the plan, and asks it for places. The
 * worker is started when it is first needed. Pictures asked for while one is being made are made together, for the last state.
 */
export const startRadio = (session: Session): RadioService & { readonly stop: () => void } => {
  let worker: Worker | undefined;
  let ids = 0;
  /** Id of the picture that is being made. */
  let busy: number | undefined;
  let dirty = false;
  const waiting = new Map<number, (r: Result<Spots>) => void>();
  let last: { ask: CoverageAsk | undefined; setupId: unknown; plan: unknown; preview: unknown } = {
    ask: undefined,
    setupId: undefined,
    plan: undefined,
    preview: undefined,
  };

  const setRadio = (picture: SessionState['floorView']['radio']['picture']): void => {
    const { floorView } = session.getState();
    if (floorView.radio.picture !== picture)
      session.set({ floorView: { ...floorView, radio: { ...floorView.radio, picture } } });
  };

  const failed = (what: string): void => {
    console.error(what);
    busy = undefined;
    for (const [id, settle] of waiting) {
      waiting.delete(id);
      settle(fail({ what: 'The search stopped: a fault of the program. The plan is not affected.' }));
    }
    session.set({ message: 'The coverage picture could not be made: a fault of the program.' });
  };

  const take = (m: FromRadio): void => {
    if (m.kind === 'failed') return failed(m.what);
    if (m.kind === 'spots') {
      const settle = waiting.get(m.id);
      waiting.delete(m.id);
      settle?.(ok(m.spots));
      return;
    }
    if (busy !== m.id) return;
    busy = undefined;
    setRadio(last.ask ? m.picture : undefined);
    if (dirty) look();
  };

  const send = (m: ToRadio): void => {
    if (!worker) {
      worker = new Worker(new URL('./radio.worker.ts', import.meta.url), { type: 'module' });
      worker.addEventListener('message', (e: MessageEvent<FromRadio>) => take(e.data));
      worker.addEventListener('error', (e) => failed(e.message));
      const records = [...session.getState().plan.records.values()];
      worker.postMessage({ kind: 'load', records } satisfies ToRadio);
    }
    worker.postMessage(m);
  };

  const look = (): void => {
    const s = session.getState();
    const preview = matters(s.preview) ? s.preview : undefined;
    const ask = askOf(s);
    const unchanged =
      s.plan === last.plan && s.setupId === last.setupId && preview === last.preview && same(ask, last.ask);
    if (unchanged && !dirty) return;
    last = { ask, setupId: s.setupId, plan: s.plan, preview };
    if (!ask) {
      dirty = false;
      setRadio(undefined);
      return;
    }
    dirty = busy !== undefined;
    if (dirty) return;
    busy = ++ids;
    send({ kind: 'coverage', id: busy, ask, setupId: s.setupId, preview });
  };

  const offTransaction = session.onTransaction((t) => {
    if (worker) send({ kind: 'changes', changes: t.changes });
  });
  let soon: ReturnType<typeof setTimeout> | undefined;
  const offLook = session.subscribe((s, before) => {
    // A load has no transaction: the plan is another one, with a clean history.
    if (
      worker &&
      s.plan !== before.plan &&
      s.undoStack.length === 0 &&
      s.redoStack.length === 0 &&
      s.assessment === undefined
    )
      send({ kind: 'load', records: [...s.plan.records.values()] });
    if (
      s.plan === before.plan &&
      s.preview === before.preview &&
      s.floorId === before.floorId &&
      s.setupId === before.setupId &&
      s.floorView === before.floorView
    )
      return;
    // After the transaction has reached the replica.
    soon ??= setTimeout(() => {
      soon = undefined;
      look();
    }, 0);
  });
  look();

  return {
    spots: (ask, signal) =>
      new Promise((resolve) => {
        const id = ++ids;
        waiting.set(id, resolve);
        signal.addEventListener('abort', () => {
          if (!waiting.delete(id)) return;
          // A search cannot be talked to: it ends with its thread, and the next question starts another.
          worker?.terminate();
          worker = undefined;
          busy = undefined;
          resolve(fail({ what: 'The search was stopped.' }));
          dirty = true;
          look();
        });
        send({ kind: 'spots', id, ask });
      }),
    stop: () => {
      offTransaction();
      offLook();
      if (soon !== undefined) clearTimeout(soon);
      worker?.terminate();
    },
  };
};
