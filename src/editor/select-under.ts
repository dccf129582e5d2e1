import { withGroups } from '../plan/edits/groups.ts';
import { toFloor } from './camera.ts';
import { OPTIONS } from './options.ts';
import type { Picker } from './picking.ts';
import type { Session } from './session.ts';

/**
 * Selects what lies under a spot of the view, for a menu about it: what is part of the selection leaves it as it is,
 * something else takes its place, and an empty spot selects nothing.
 */
export const selectUnder = (
  session: Session,
  picker: Picker,
  spot: { readonly x: number; readonly y: number },
  type: 'mouse' | 'touch' | 'pen',
): void => {
  const { camera, viewport, plan, selection } = session.getState();
  const reach = (type === 'touch' ? OPTIONS.touchHitPx : OPTIONS.hitPx) / camera.pxPerMm;
  const id = picker.pick(toFloor(camera, viewport, spot.x, spot.y), reach);
  if (id !== undefined && selection.has(id)) return;
  session.set({ selection: id === undefined ? new Set() : withGroups(plan, new Set([id])) });
};
