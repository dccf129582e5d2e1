import { fail, ok, type Result } from '../../kernel/result.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { photosOfNote } from '../../plan/edits/photos.ts';
import type { Mark, Photo } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { anyText, parseDegrees, text } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { askAbout } from './ask-about.ts';
import { PhotoPicture } from './PhotoPicture.tsx';
import './scout.css';

const parseFacing = (t: string): Result<number | undefined> =>
  t.trim() === '' ? ok(undefined) : parseDegrees(t);

/** Caption and facing of a pinned photo, and the photo small. */
export const PhotoRows = ({ photo }: { readonly photo: Photo }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const edit = (label: string, next: Photo): void => {
    const r = changeRecord(plan, next, {});
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  return (
    <>
      <Field
        label="Caption"
        value={photo.caption}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(caption) => edit('Change caption', { ...photo, caption })}
      />
      <Field
        label="Looks to"
        value={photo.facingDeg}
        format={(v) => (v === undefined ? '' : `${Math.round(v)}°`)}
        parse={parseFacing}
        hint={photo.facingDeg === undefined ? 'empty: not said' : ''}
        disabled={readOnly}
        onCommit={(facingDeg) => {
          const { facingDeg: _old, ...bare } = photo;
          edit('Turn photo', facingDeg === undefined ? bare : { ...bare, facingDeg });
        }}
      />
      <button type="button" className="photo-open" onClick={() => askAbout(session, 'photo', photo.id)}>
        <PhotoPicture photo={photo} />
        Open it large
      </button>
    </>
  );
};

const MAX_TEXT = 2000;
const parseNote = (t: string): Result<string> =>
  t.length > MAX_TEXT ? fail({ what: `A note has at most ${MAX_TEXT} letters.` }) : ok(t.trim());

/** What a note says, and the photos that hang on it. */
export const NoteRows = ({ note }: { readonly note: Mark }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const photos = photosOfNote(plan, note);
  return (
    <>
      <Field
        label="Says"
        value={note.text ?? ''}
        format={text}
        parse={parseNote}
        disabled={readOnly}
        onCommit={(t) => {
          const r = changeRecord(plan, note, { text: t });
          if (r.ok) session.commit('Change note', r.value);
        }}
      />
      {photos.map((p) => (
        <button
          key={p.id}
          type="button"
          className="photo-open"
          onClick={() => askAbout(session, 'photo', p.id)}
        >
          <PhotoPicture photo={p} />
          {p.label} {p.caption}
        </button>
      ))}
      <p className="scout-buttons">
        <button
          type="button"
          className="button"
          disabled={readOnly}
          onClick={() => askAbout(session, 'photos', note.id)}
        >
          Add photos…
        </button>
      </p>
    </>
  );
};
