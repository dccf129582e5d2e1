import { fitBox, viewBox } from '../../editor/fit.ts';
import type { Session } from '../../editor/session.ts';
import { boxOf, growBox, type Point, point } from '../../kernel/geometry.ts';
import { problemText, type Result } from '../../kernel/result.ts';
import {
  addUnderlay,
  replaceUnderlay,
  type UnderlaySource,
  underlayCorners,
} from '../../plan/edits/underlays.ts';
import type { BakedPicture } from '../pictures.ts';

/** What can be laid under a floor, for file choosers. */
export const UNDERLAY_FILES =
  '.png,.jpg,.jpeg,.webp,.svg,.pdf,.dxf,image/png,image/jpeg,image/webp,image/svg+xml,application/pdf';
export const PHOTO_FILES = '.png,.jpg,.jpeg,.webp,image/png,image/jpeg,image/webp';

/** A name for people from a file's. */
export const plainName = (file: string): string => file.replace(/\.[a-z0-9]{2,4}$/i, '').slice(0, 80);

export const pictureSource = (name: string, picture: BakedPicture): UnderlaySource => ({
  name,
  what: 'image',
  blob: picture.blob,
  widthUnits: picture.widthPx,
  heightUnits: picture.heightPx,
});

/** The middle of what is seen, and how wide it is. */
export const seen = (session: Session): { readonly centre: Point; readonly widthMm: number } => {
  const { camera, viewport } = session.getState();
  const box = viewBox(camera, viewport);
  return {
    centre: point(Math.round(camera.center.xMm), Math.round(camera.center.yMm)),
    widthMm: Math.max(1000, box.maxX - box.minX),
  };
};

/** Lays a source under the floor, or puts it in place of an underlay's. Says what to do next; gives why not in words. */
export const layUnder = (
  session: Session,
  source: UnderlaySource,
  notice: string,
  insteadOf?: string,
): Result<void, string> => {
  const { plan, floorId, floorView } = session.getState();
  if (floorId === undefined) return { ok: false, error: 'The plan has no floor.' };
  const shown = {
    ...floorView,
    ask: undefined,
    layers: { ...floorView.layers, underlay: { ...floorView.layers.underlay, shown: true } },
  };
  if (insteadOf !== undefined) {
    const changes = replaceUnderlay(plan, insteadOf, source);
    if (!changes.ok) return { ok: false, error: problemText(changes.error) };
    session.commit(`Replace underlay by ${source.name}`, changes.value);
    session.set({ floorView: shown, message: `Replaced by “${source.name}”. ${notice}`.trim() });
    return { ok: true, value: undefined };
  }
  const { centre, widthMm } = seen(session);
  const made = addUnderlay(plan, { source, floorId, centre, guessWidthMm: widthMm * 0.7 }, session.newId);
  if (!made.ok) return { ok: false, error: problemText(made.error) };
  const { underlay, changes } = made.value;
  session.commit(`Lay ${source.name} under the floor`, changes);
  session.set({ floorView: shown, selection: new Set([underlay.id]), placing: undefined });
  if (underlay.scaled && source.what === 'lines') {
    const fitted = fitBox(growBox(boxOf(underlayCorners(underlay)), 500), session.getState().viewport);
    if (fitted) session.set({ camera: fitted });
    session.set({ tool: 'select' });
    session.set({
      message: `“${source.name}” is there, to scale and locked. ${notice}`.trim(),
    });
  } else if (underlay.scaled) {
    session.set({ tool: 'select' });
    session.set({ message: `“${source.name}” is there, to scale. ${notice}`.trim() });
  } else {
    session.set({ tool: 'scale' });
    session.set({
      message:
        `${notice} Its scale is a guess: press on two spots whose distance you know, then type it.`.trim(),
    });
  }
  return { ok: true, value: undefined };
};
