/** What the first bytes of a picture say of it, read without decoding it. */
export interface ImageHeader {
  readonly mediaType: 'image/png' | 'image/jpeg' | 'image/webp';
  readonly widthPx: number;
  readonly heightPx: number;
}

/** More pixels than this are not decoded: it would take hundreds of megabytes. */
export const MAX_DECODE_PIXELS = 120_000_000;
/** Nor is a picture with a longer side than this, which browsers refuse or garble. */
export const MAX_DECODE_SIDE_PX = 32_000;
/** A plan's own pictures are kept within these. */
export const MAX_KEPT_PIXELS = 50_000_000;

const ascii = (bytes: Uint8Array, at: number, text: string): boolean => {
  for (let i = 0; i < text.length; i++) if (bytes[at + i] !== text.charCodeAt(i)) return false;
  return true;
};

/**
 * Sort and size of a PNG, JPEG or WebP picture from its header (PNG: ISO/IEC 15948, 11.2.2; JPEG: ITU-T T.81, B.2.2;
 * WebP: RFC 9649, 2.5 to 2.7). Undefined for anything else or where the header is cut off or says nothing sensible.
 */
export const readImageHeader = (bytes: Uint8Array): ImageHeader | undefined => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let header: ImageHeader | undefined;
  if (ascii(bytes, 0, '\u0089PNG\r\n\u001a\n')) header = png(view, bytes);
  else if (bytes[0] === 0xff && bytes[1] === 0xd8) header = jpeg(view);
  else if (ascii(bytes, 0, 'RIFF') && ascii(bytes, 8, 'WEBP')) header = webp(view, bytes);
  return header && header.widthPx > 0 && header.heightPx > 0 ? header : undefined;
};

const png = (view: DataView, bytes: Uint8Array): ImageHeader | undefined =>
  view.byteLength >= 33 && ascii(bytes, 12, 'IHDR')
    ? { mediaType: 'image/png', widthPx: view.getUint32(16), heightPx: view.getUint32(20) }
    : undefined;

/** Start-of-frame markers are C0 to CF but for C4, C8 and CC. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const jpeg = (view: DataView): ImageHeader | undefined => {
  let at = 2;
  while (at + 4 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (isFrame(marker))
      return at + 9 <= view.byteLength
        ? { mediaType: 'image/jpeg', heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) }
        : undefined;
    // A scan or the end before any frame: no picture.
    if (marker === 0xda || marker === 0xd9) return undefined;
    const alone = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    at += alone ? 2 : 2 + view.getUint16(at + 2);
  }
  return undefined;
};

const webp = (view: DataView, bytes: Uint8Array): ImageHeader | undefined => {
  if (view.byteLength < 30) return undefined;
  const size = (widthPx: number, heightPx: number): ImageHeader => ({
    mediaType: 'image/webp',
    widthPx,
    heightPx,
  });
  const uint24 = (at: number): number => view.getUint16(at, true) | (view.getUint8(at + 2) << 16);
  if (ascii(bytes, 12, 'VP8X')) return size(uint24(24) + 1, uint24(27) + 1);
  if (ascii(bytes, 12, 'VP8 '))
    return size(view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff);
  if (ascii(bytes, 12, 'VP8L') && view.getUint8(20) === 0x2f) {
    const bits = view.getUint32(21, true);
    return size((bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1);
  }
  return undefined;
};

/** Whether a picture is too large to be decoded at all. */
export const isTooLargeToDecode = (h: Pick<ImageHeader, 'widthPx' | 'heightPx'>): boolean =>
  h.widthPx * h.heightPx > MAX_DECODE_PIXELS || Math.max(h.widthPx, h.heightPx) > MAX_DECODE_SIDE_PX;
