import { photosOn } from '../../plan/edits/photos.ts';
import { recordOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { closeAsk } from '../floor/ask.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { PhotoPicture } from './PhotoPicture.tsx';
import './scout.css';

/** A pinned photo, large; with its neighbours one step away. */
export const PhotoDialog = () => {
  const { session } = useServices();
  const { plan, id, floorId } = useSessionSlice((s) => ({
    plan: s.plan,
    id: s.floorView.askFor,
    floorId: s.floorId,
  }));
  const photo = id === undefined ? undefined : recordOf(plan, 'photo', id);
  if (!photo) return null;
  const all = photosOn(plan, floorId);
  const place = all.findIndex((p) => p.id === photo.id);
  const go = (by: number): void => {
    const next = all[(place + by + all.length) % all.length];
    if (next)
      session.set({
        selection: new Set([next.id]),
        floorView: { ...session.getState().floorView, askFor: next.id },
      });
  };
  return (
    <Modal
      title={`Photo ${photo.label}`}
      open
      wide
      onClose={() => closeAsk(session)}
      foot={
        all.length > 1 ? (
          <>
            <button type="button" className="button" onClick={() => go(-1)}>
              Previous photo
            </button>
            <button type="button" className="button" onClick={() => go(1)}>
              Next photo
            </button>
          </>
        ) : undefined
      }
    >
      <PhotoPicture photo={photo} large />
      <p>{photo.caption}</p>
    </Modal>
  );
};
