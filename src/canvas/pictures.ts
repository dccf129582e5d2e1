/** Pictures decoded by the browser, by blob. One that is not decoded yet is not there; whoever listens is told when it is. */
const known = new Map<string, HTMLImageElement>();
const ready = new Set<string>();
const listeners = new Set<() => void>();

/** Calls back whenever a picture has become ready to paint. Returns what ends that. */
export const onPicture = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
};

/** The decoded picture, or nothing while it is being decoded. */
export const pictureOf = (
  blobId: string,
  mediaType: string,
  base64: string,
): HTMLImageElement | undefined => {
  let image = known.get(blobId);
  if (!image) {
    image = new Image();
    known.set(blobId, image);
    image.onload = () => {
      ready.add(blobId);
      for (const l of listeners) l();
    };
    image.src = `data:${mediaType};base64,${base64}`;
  }
  return ready.has(blobId) ? image : undefined;
};
