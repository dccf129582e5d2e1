import type { Session, SessionState } from '../editor/session.ts';
import { lookOf, withLook } from '../editor/views.ts';

/** What this browser remembers of how a plan was looked at. Never part of the plan. */
type View = Pick<SessionState, 'camera' | 'setupId' | 'floorId' | 'workspace'> & { readonly look?: unknown };

const keyFor = (planId: string): string => `lampwright.view.${planId}`;

/** Brings back where the person was in this plan; false when nothing is remembered. */
export const recallView = (session: Session, planId: string): boolean => {
  try {
    const v = JSON.parse(localStorage.getItem(keyFor(planId)) ?? 'null') as Partial<View> | null;
    if (!v?.camera || !Number.isFinite(v.camera.pxPerMm)) return false;
    const { plan, floorView } = session.getState();
    session.set({
      camera: v.camera,
      workspace: v.workspace ?? 'floor',
      floorView: withLook(floorView, v.look),
      ...(v.setupId && plan.records.has(v.setupId) ? { setupId: v.setupId } : {}),
      ...(v.floorId && plan.records.has(v.floorId) ? { floorId: v.floorId } : {}),
    });
    return true;
  } catch {
    // A view that cannot be read is only a view: the plan opens fitted to the window instead.
    return false;
  }
};

/** Remembers the view while it changes, at most twice a second. Gives a way to stop. */
export const rememberView = (session: Session, planId: string): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = (): void => {
    timer = undefined;
    const { camera, setupId, floorId, workspace, floorView } = session.getState();
    const look = lookOf(floorView);
    try {
      localStorage.setItem(keyFor(planId), JSON.stringify({ camera, setupId, floorId, workspace, look }));
    } catch {
      // Out of space: the view is not worth a message, the plan's own saving tells about space.
    }
  };
  const off = session.subscribe((s, b) => {
    if (
      s.camera === b.camera &&
      s.setupId === b.setupId &&
      s.floorId === b.floorId &&
      s.workspace === b.workspace &&
      s.floorView === b.floorView
    )
      return;
    timer ??= setTimeout(write, 500);
  });
  timer = setTimeout(write, 500);
  return () => {
    off();
    if (timer) clearTimeout(timer);
    write();
  };
};
