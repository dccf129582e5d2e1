import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { ok, type Result } from '../../kernel/result.ts';
import { blobSize, roomForBlob } from '../blobs.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Blob, Mark, Photo } from '../records/index.ts';
import { nextLabel } from './place.ts';

/** Photos of a floor (of all floors where none is named) by what their pins say. */
export const photosOn = (plan: Plan, floorId?: Id): readonly Photo[] =>
  recordsOf(plan, 'photo')
    .filter((p) => floorId === undefined || p.floorId === floorId)
    .sort((a, b) => compareNatural(a.label, b.label));

/** Pins a photo to a spot; with a note, it hangs on that note. A problem where the plan has no room for it. */
export const addPhoto = (
  plan: Plan,
  what: {
    readonly floorId: Id;
    readonly at: Point;
    readonly blob: Blob;
    readonly widthPx: number;
    readonly heightPx: number;
    readonly caption: string;
    readonly noteId?: Id | undefined;
  },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly photo: Photo }> => {
  const draft = new Draft(plan);
  if (!recordOf(plan, 'blob', what.blob.id)) {
    const room = roomForBlob(plan, blobSize(what.blob));
    if (!room.ok) return room;
    draft.put(what.blob);
  }
  const photo: Photo = {
    id: newId('ph'),
    type: 'photo',
    floorId: what.floorId,
    at: what.at,
    blobId: what.blob.id,
    widthPx: what.widthPx,
    heightPx: what.heightPx,
    label: nextLabel(plan, 'PH'),
    caption: what.caption,
  };
  draft.put(photo);
  const note = what.noteId === undefined ? undefined : recordOf(plan, 'mark', what.noteId);
  if (note) draft.put({ ...note, photoIds: [...(note.photoIds ?? []), photo.id] });
  return ok({ changes: draft.changes(), photo });
};

/** The photos that hang on a note, those that are still there. */
export const photosOfNote = (plan: Plan, note: Mark): readonly Photo[] =>
  (note.photoIds ?? []).flatMap((id) => recordOf(plan, 'photo', id) ?? []);

/** Notes let go of photos that go. */
export const notesLetGo = (draft: Draft, plan: Plan, gone: ReadonlySet<Id>): void => {
  for (const m of recordsOf(plan, 'mark')) {
    if (gone.has(m.id) || !m.photoIds?.some((id) => gone.has(id))) continue;
    const { photoIds, ...bare } = m;
    const left = photoIds.filter((id) => !gone.has(id));
    draft.put(left.length > 0 ? { ...m, photoIds: left } : bare);
  }
};
