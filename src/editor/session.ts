import type { Id, NewId } from '../kernel/ids.ts';
import { applyChanges, type ChangeSet, invert, isEmptyChange, type Transaction } from '../plan/change-set.ts';
import { floorsOf } from '../plan/floors.ts';
import { type Plan, setupsOf } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import type { Camera, Viewport } from './camera.ts';
import { type FloorView, START_VIEW } from './floor-view.ts';
import { NO_OVERLAY, type Overlay } from './overlay.ts';

export type Workspace = 'floor' | 'power' | 'day' | 'control' | 'gear' | 'papers';
export type ToolId =
  | 'select'
  | 'place'
  | 'cable'
  | 'line'
  | 'aim'
  | 'pan'
  | 'wall'
  | 'opening'
  | 'outlet'
  | 'measure'
  | 'scale'
  | 'feature'
  | 'crossing';

/** A unit being placed: its kind's slug in the gear book or a kind already in the plan. */
export interface Placing {
  readonly kindSlug: string;
  /** It hangs on the pointer, taken from the shelf with the button held: letting go over the floor places it. */
  readonly dragging?: boolean;
}

/** All an open editor knows. The plan is the document; the rest is this tab's own and is never saved in the plan. */
export interface SessionState {
  readonly plan: Plan;
  /** Counts every change of the plan; an assessment with an older number is stale. */
  readonly revision: number;
  readonly assessment: Assessment | undefined;
  readonly undoStack: readonly Transaction[];
  readonly redoStack: readonly Transaction[];
  readonly selection: ReadonlySet<Id>;
  readonly setupId: Id | undefined;
  readonly floorId: Id | undefined;
  readonly camera: Camera;
  readonly viewport: Viewport;
  readonly workspace: Workspace;
  readonly tool: ToolId;
  readonly placing: Placing | undefined;
  readonly floorView: FloorView;
  /** What was copied last, as text; empty when nothing was. */
  readonly clip: string;
  /** A drag in progress: shown, not yet an edit. */
  readonly preview: ChangeSet | undefined;
  /** Guides, marquee and rubber line of the tool at work. */
  readonly overlay: Overlay;
  /** What each load would see while a fault or a swap is tried; shown over the drawing, never part of the plan. */
  readonly tried: ReadonlyMap<Id, 'dark' | 'fewer legs' | 'wrong volts'> | undefined;
  readonly readOnly: boolean;
  /** One line for the person: what a tool waits for, or why something was refused. */
  readonly message: string;
}

export interface Session {
  getState(): SessionState;
  getInitialState(): SessionState;
  subscribe(listener: (state: SessionState, previous: SessionState) => void): () => void;
  /** Changes anything but the plan, its history and its revision. */
  set(patch: Partial<Omit<SessionState, 'plan' | 'revision' | 'undoStack' | 'redoStack'>>): void;
  /** Commits an edit as one undo step. Edits without effect are dropped. */
  commit(label: string, changes: ChangeSet): void;
  undo(): void;
  redo(): void;
  /** Applies changes written by another tab: in the plan, not in the history. */
  applyForeign(transaction: Transaction): void;
  /** Takes another plan in place of this one, with a clean history. */
  load(plan: Plan): void;
  /** Called with every transaction that reaches the plan, for storage and the engines' replica. */
  onTransaction(listener: (t: Transaction, after: Plan) => void): () => void;
  readonly newId: NewId;
}

/** Undo steps kept; the oldest fall off. */
export const HISTORY_DEPTH = 1000;

const initial = (plan: Plan): SessionState => ({
  plan,
  revision: 0,
  assessment: undefined,
  undoStack: [],
  redoStack: [],
  selection: new Set(),
  setupId: setupsOf(plan)[0]?.id,
  floorId: floorsOf(plan)[0]?.id,
  camera: { center: { xMm: 0, yMm: 0 }, pxPerMm: 0.08 },
  viewport: { widthPx: 0, heightPx: 0 },
  workspace: 'floor',
  tool: 'select',
  placing: undefined,
  floorView: START_VIEW,
  clip: '',
  preview: undefined,
  overlay: NO_OVERLAY,
  tried: undefined,
  readOnly: false,
  message: '',
});

/** An editor session over a plan. Framework-free; screens subscribe to it. */
export const createSession = (plan: Plan, newId: NewId): Session => {
  const first = initial(plan);
  let state = first;
  const listeners = new Set<(s: SessionState, p: SessionState) => void>();
  const transactionListeners = new Set<(t: Transaction, after: Plan) => void>();

  const replace = (next: SessionState): void => {
    const previous = state;
    state = next;
    for (const l of [...listeners]) l(state, previous);
  };

  /** Drops what a plan change took away from under the selection, setup and floor. */
  const settled = (s: SessionState): SessionState => {
    const gone = [...s.selection].some((id) => !s.plan.records.has(id));
    return {
      ...s,
      selection: gone ? new Set([...s.selection].filter((id) => s.plan.records.has(id))) : s.selection,
      setupId: s.setupId && s.plan.records.has(s.setupId) ? s.setupId : setupsOf(s.plan)[0]?.id,
      floorId: s.floorId && s.plan.records.has(s.floorId) ? s.floorId : floorsOf(s.plan)[0]?.id,
    };
  };

  const step = (
    t: Transaction,
    stacks: Pick<SessionState, 'undoStack' | 'redoStack'>,
    message: string,
  ): void => {
    const after = applyChanges(state.plan, t.changes);
    replace(
      settled({
        ...state,
        ...stacks,
        plan: after,
        revision: state.revision + 1,
        preview: undefined,
        message,
      }),
    );
    for (const l of [...transactionListeners]) l(t, after);
  };

  return {
    newId,
    getState: () => state,
    getInitialState: () => first,
    subscribe: (l) => {
      listeners.add(l);
      return () => listeners.delete(l);
    },
    set: (patch) => replace({ ...state, ...patch }),
    commit: (label, changes) => {
      if (state.readOnly || isEmptyChange(changes)) {
        if (state.preview) replace({ ...state, preview: undefined });
        return;
      }
      const t: Transaction = { label, origin: 'user', changes };
      step(t, { undoStack: [...state.undoStack, t].slice(-HISTORY_DEPTH), redoStack: [] }, '');
    },
    undo: () => {
      const t = state.undoStack.at(-1);
      if (!t || state.readOnly) return;
      step(
        { label: `Undo ${t.label}`, origin: 'user', changes: invert(t.changes) },
        { undoStack: state.undoStack.slice(0, -1), redoStack: [...state.redoStack, t] },
        `Undone: ${t.label}.`,
      );
    },
    redo: () => {
      const t = state.redoStack.at(-1);
      if (!t || state.readOnly) return;
      step(
        { label: `Redo ${t.label}`, origin: 'user', changes: t.changes },
        { undoStack: [...state.undoStack, t], redoStack: state.redoStack.slice(0, -1) },
        `Done again: ${t.label}.`,
      );
    },
    applyForeign: (t) => {
      // History could point at records the other tab changed, so it ends here.
      step({ ...t, origin: 'other-tab' }, { undoStack: [], redoStack: [] }, state.message);
    },
    load: (next) => {
      replace({
        ...initial(next),
        camera: state.camera,
        viewport: state.viewport,
        workspace: state.workspace,
        clip: state.clip,
        floorView: {
          ...state.floorView,
          circuit: undefined,
          ask: undefined,
          askAt: undefined,
          outletAt: undefined,
          askFor: undefined,
        },
        revision: state.revision + 1,
      });
    },
    onTransaction: (l) => {
      transactionListeners.add(l);
      return () => transactionListeners.delete(l);
    },
  };
};
