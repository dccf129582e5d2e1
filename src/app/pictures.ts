import { fail, type Result } from '../kernel/result.ts';
import { isTooLargeToDecode, MAX_DECODE_PIXELS, readImageHeader } from '../plan/image-header.ts';
import type { BakedPicture, PictureService, PictureUse } from '../ui/pictures.ts';
import { bake, KEPT_SIDE_PX } from './bake.ts';
import { openPdf } from './pdf-pages.ts';

/** Files above this are not read. */
export const MAX_PICTURE_BYTES = 200 * 1024 * 1024;
/** A picture without a size of its own, or made of paths, is drawn this wide. */
const DRAWN_SIDE_PX = 3000;
const CHOOSE = 'Choose a PNG, JPEG, WebP or SVG picture, or a page of a PDF.';

const megapixels = (w: number, h: number): string => `${Math.round((w * h) / 1e6)} megapixels`;

/** Makes pictures ready for the plan. The header is read before anything is decoded. */
export const pictureService: PictureService = {
  picture: async (file, use) => {
    if (file.size > MAX_PICTURE_BYTES)
      return fail({
        what: `${file.name} is too large (${Math.round(file.size / 1e6)} MB; the limit is ${Math.round(MAX_PICTURE_BYTES / 1e6)} MB).`,
        todo: 'Make it smaller first.',
      });
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (looksLikeSvg(bytes)) return svg(file, bytes, use);
    const header = readImageHeader(bytes);
    if (!header)
      return fail({
        what: `${file.name} is not a picture that can be read, or its beginning is damaged.`,
        todo: CHOOSE,
      });
    const size = `${header.widthPx} × ${header.heightPx} pixels, ${megapixels(header.widthPx, header.heightPx)}`;
    if (isTooLargeToDecode(header))
      return fail({
        what: `${file.name} is too large to open (${size}; the limit is ${Math.round(MAX_DECODE_PIXELS / 1e6)} megapixels).`,
        todo: 'Save it smaller, about 4,000 pixels along its longer side: more cannot be seen under a drawing.',
      });
    let bitmap: ImageBitmap;
    try {
      bitmap = await createImageBitmap(new Blob([bytes as BlobPart], { type: header.mediaType }));
    } catch {
      return fail({
        what: `${file.name} is damaged: it says it has ${size}, but it cannot be decoded.`,
        todo: 'Get it again from where it came from. Nothing in the plan was changed.',
      });
    }
    const baked = await bake(bitmap, {
      widthPx: bitmap.width,
      heightPx: bitmap.height,
      lossless: header.mediaType === 'image/png' && use === 'underlay',
      name: file.name,
      use,
    });
    bitmap.close();
    return baked;
  },
  pdf: openPdf,
};

const looksLikeSvg = (bytes: Uint8Array): boolean =>
  /^\uFEFF?\s*(<\?xml|<!--|<!DOCTYPE svg|<svg)/i.test(new TextDecoder().decode(bytes.subarray(0, 400))) &&
  new TextDecoder().decode(bytes.subarray(0, 20_000)).includes('<svg');

/** A number of pixels from a length of SVG; undefined for shares and the like. */
const svgLength = (text: string | null): number | undefined => {
  const m = /^\s*([\d.]+)\s*(px|pt|pc|mm|cm|in)?\s*$/.exec(text ?? '');
  const n = Number(m?.[1]);
  const perUnit = { px: 1, pt: 96 / 72, pc: 16, mm: 96 / 25.4, cm: 96 / 2.54, in: 96 };
  return n > 0 ? n * (perUnit[(m?.[2] ?? 'px') as keyof typeof perUnit] ?? 1) : undefined;
};

/** An SVG as a picture element draws it: nothing in it runs and nothing outside it is fetched. */
const svg = async (file: File, bytes: Uint8Array, use: PictureUse): Promise<Result<BakedPicture>> => {
  const damaged = fail({
    what: `${file.name} is not SVG that can be drawn.`,
    todo: 'Save it again, or as a PNG picture. Nothing in the plan was changed.',
  });
  const doc = new DOMParser().parseFromString(new TextDecoder().decode(bytes), 'image/svg+xml');
  const root = doc.documentElement;
  if (root.nodeName.toLowerCase() !== 'svg' || doc.querySelector('parsererror')) return damaged;
  const box = (root.getAttribute('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const w = svgLength(root.getAttribute('width')) ?? box[2];
  const h = svgLength(root.getAttribute('height')) ?? box[3];
  if (!w || !h || !(w > 0 && h > 0))
    return fail({
      what: `${file.name} does not say how large it is.`,
      todo: 'Give it a width and a height, or a viewBox.',
    });
  if (box.length !== 4) root.setAttribute('viewBox', `0 0 ${w} ${h}`);
  const k = Math.min(DRAWN_SIDE_PX, KEPT_SIDE_PX[use]) / Math.max(w, h);
  const widthPx = Math.max(1, Math.round(w * k));
  const heightPx = Math.max(1, Math.round(h * k));
  root.setAttribute('width', String(widthPx));
  root.setAttribute('height', String(heightPx));
  const url = URL.createObjectURL(
    new Blob([new XMLSerializer().serializeToString(doc)], { type: 'image/svg+xml' }),
  );
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return await bake(image, { widthPx, heightPx, lossless: use === 'underlay', name: file.name, use });
  } catch {
    return damaged;
  } finally {
    URL.revokeObjectURL(url);
  }
};
