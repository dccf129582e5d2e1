import { useState } from 'react';
import { add, point } from '../../kernel/geometry.ts';
import { problemText } from '../../kernel/result.ts';
import { addPhoto } from '../../plan/edits/photos.ts';
import { recordOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { closeAsk } from '../floor/ask.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { PHOTO_FILES, plainName, seen } from './bring.ts';
import './scout.css';

/** Pins one or more photos where the view's middle is, or beside the note they belong to. */
export const PhotosDialog = () => {
  const { session, pictures } = useServices();
  const note = useSessionSlice((s) =>
    s.floorView.askFor === undefined ? undefined : recordOf(s.plan, 'mark', s.floorView.askFor),
  );
  const [busy, setBusy] = useState('');
  const [problems, setProblems] = useState<readonly string[]>([]);

  const take = async (files: readonly File[]): Promise<void> => {
    const wrong: string[] = [];
    const ids: string[] = [];
    const first = note ? add(note.at, point(500, 0)) : seen(session).centre;
    const step = seen(session).widthMm / 30;
    for (const file of files) {
      setBusy(`Reading ${file.name}…`);
      const baked = await pictures.picture(file, 'photo');
      const { plan, floorId } = session.getState();
      if (!baked.ok) wrong.push(problemText(baked.error));
      else if (floorId !== undefined) {
        const at = add(first, point(ids.length * step, 0));
        const what = { ...baked.value, floorId, at, caption: plainName(file.name), noteId: note?.id };
        const made = addPhoto(plan, what, session.newId);
        if (!made.ok) wrong.push(problemText(made.error));
        else {
          session.commit(`Pin photo ${made.value.photo.label}`, made.value.changes);
          ids.push(made.value.photo.id);
        }
      }
    }
    setBusy('');
    setProblems(wrong);
    if (ids.length > 0) session.set({ selection: new Set(ids), tool: 'select', placing: undefined });
    if (ids.length > 0)
      session.set({
        message:
          'Pinned. Drag it to its spot, and turn it to where it looks. Where it was taken is not kept.',
      });
    if (wrong.length === 0) closeAsk(session);
  };

  return (
    <Modal
      title={note ? `Photos for ${note.name}` : 'Pin photos to the floor'}
      open
      onClose={() => closeAsk(session)}
    >
      <div className="ask-form">
        <p className="soft">
          They are made smaller and kept in the plan without the place and time that cameras write into them.
        </p>
        <label>
          Photos
          <input
            className="input"
            type="file"
            multiple
            accept={PHOTO_FILES}
            disabled={busy !== ''}
            onChange={(e) => void take([...(e.target.files ?? [])])}
          />
        </label>
        {busy ? <p role="status">{busy}</p> : null}
        {problems.map((p) => (
          <p key={p} className="field-error" role="alert">
            {p}
          </p>
        ))}
      </div>
    </Modal>
  );
};
