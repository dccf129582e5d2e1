import type { Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { isOnUnderlay, underlaysOn } from '../plan/edits/underlays.ts';
import { recordOf } from '../plan/plan.ts';
import type { Underlay } from '../plan/records/index.ts';
import type { SessionState } from './session.ts';

/**
 * The selected underlay under a spot, when the hand may move it. An underlay is never picked by pressing on it, or
 * nothing above it could be worked on: it is chosen in its list.
 */
export const heldUnderlay = (
  s: Pick<SessionState, 'plan' | 'selection' | 'floorView'>,
  at: Point,
): Id | undefined => {
  const [id] = s.selection;
  const u = s.selection.size === 1 && id !== undefined ? recordOf(s.plan, 'underlay', id) : undefined;
  const { shown, locked } = s.floorView.layers.underlay;
  return u && !u.locked && !u.hidden && shown && !locked && isOnUnderlay(u, at) ? u.id : undefined;
};

/** The underlay that is scaled: the selected one, else the topmost that no one has scaled, else the topmost. */
export const underlayToScale = (
  s: Pick<SessionState, 'plan' | 'selection' | 'floorId'>,
): Underlay | undefined => {
  const all = underlaysOn(s.plan, s.floorId).filter((u) => !u.hidden);
  return all.find((u) => s.selection.has(u.id)) ?? all.filter((u) => !u.scaled).at(-1) ?? all.at(-1);
};
