import { recordOf } from '../../plan/plan.ts';
import type { Photo } from '../../plan/records/index.ts';
import { useSessionSlice } from '../hooks.ts';

/** A stored photo as a picture on the page. */
export const PhotoPicture = ({
  photo,
  large = false,
}: {
  readonly photo: Photo;
  readonly large?: boolean;
}) => {
  const blob = useSessionSlice((s) => recordOf(s.plan, 'blob', photo.blobId));
  if (!blob) return <p className="soft">Its picture is not in the plan.</p>;
  return (
    <img
      className={large ? 'photo-large' : 'photo-small'}
      src={`data:${blob.mediaType};base64,${blob.base64}`}
      alt={photo.caption || `Photo ${photo.label}`}
      width={photo.widthPx}
      height={photo.heightPx}
    />
  );
};
