import { fail, ok, type Result } from '../kernel/result.ts';
import { blobOf } from '../plan/blobs.ts';
import type { BakedPicture, PictureUse } from '../ui/pictures.ts';

/** The longer side that is kept. */
export const KEPT_SIDE_PX: Readonly<Record<PictureUse, number>> = { underlay: 4096, photo: 1600 };
/** Above this a picture without loss is kept with a little. */
const MAX_PNG_BYTES = 4 * 1024 * 1024;
const QUALITY: Readonly<Record<PictureUse, number>> = { underlay: 0.9, photo: 0.82 };

type Drawable = ImageBitmap | HTMLImageElement | HTMLCanvasElement;

export interface BakeWhat {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Lines and letters are kept sharp as PNG where that is not too large. */
  readonly lossless: boolean;
  readonly name: string;
  readonly use: PictureUse;
}

/** Draws a picture anew on white, no larger than is kept, and gives it as PNG or JPEG. */
export const bake = async (picture: Drawable, what: BakeWhat): Promise<Result<BakedPicture>> => {
  const k = Math.min(1, KEPT_SIDE_PX[what.use] / Math.max(what.widthPx, what.heightPx));
  const widthPx = Math.max(1, Math.round(what.widthPx * k));
  const heightPx = Math.max(1, Math.round(what.heightPx * k));
  const canvas = document.createElement('canvas');
  canvas.width = widthPx;
  canvas.height = heightPx;
  const c = canvas.getContext('2d', { alpha: false });
  if (!c)
    return fail({
      what: 'This browser gives no memory for the picture.',
      todo: 'Close other pages and try again.',
    });
  c.fillStyle = '#ffffff';
  c.fillRect(0, 0, widthPx, heightPx);
  c.imageSmoothingQuality = 'high';
  let encoded: Blob | null;
  try {
    c.drawImage(picture, 0, 0, widthPx, heightPx);
    encoded = what.lossless ? await encode(canvas, 'image/png') : null;
    if (!encoded || encoded.size > MAX_PNG_BYTES)
      encoded = await encode(canvas, 'image/jpeg', QUALITY[what.use]);
  } catch {
    encoded = null;
  }
  if (!encoded)
    return fail({
      what: `${what.name} cannot be drawn: it refers to things outside itself, or is too large for this browser.`,
      todo: 'Save it as a PNG picture first.',
    });
  const mediaType = encoded.type === 'image/png' ? 'image/png' : 'image/jpeg';
  const blob = blobOf(new Uint8Array(await encoded.arrayBuffer()), mediaType);
  const notice =
    k < 1
      ? `${what.name} was made smaller: ${what.widthPx} × ${what.heightPx} to ${widthPx} × ${heightPx} pixels.`
      : '';
  return ok({ blob, widthPx, heightPx, notice });
};

const encode = (canvas: HTMLCanvasElement, type: string, quality?: number): Promise<Blob | null> =>
  new Promise((done) => canvas.toBlob(done, type, quality));
