import { type Pen, paintItems } from '../../output/canvas.ts';
import { PAPER_COLORS } from '../../output/colors.ts';
import { SVG_FONT_FAMILY } from '../../output/svg.ts';
import type { PageItem } from '../../papers/page.ts';

const DPI = 200;
/** Widest picture: browsers refuse canvases much larger than this. */
const MAX_PX = 10_000;

type Picture = Extract<PageItem, { kind: 'image' }>;

const picturesIn = (items: readonly PageItem[]): readonly Picture[] =>
  items.flatMap((i) => (i.kind === 'clip' ? picturesIn(i.items) : i.kind === 'image' ? [i] : []));

const loaded = async (p: Picture): Promise<HTMLImageElement | undefined> => {
  const image = new Image();
  image.src = `data:${p.mediaType};base64,${p.base64}`;
  try {
    await image.decode();
    return image;
  } catch {
    // A damaged picture is left out, as it is on screen.
    return undefined;
  }
};

/** Paper as a PNG of 200 dots to the inch, fewer where it would be wider than a browser paints. */
export const pageToPng = async (page: {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly PageItem[];
}): Promise<Uint8Array> => {
  await Promise.all([400, 600].map((w) => document.fonts.load(`${w} 20px "${SVG_FONT_FAMILY}"`)));
  const images = new Map<string, HTMLImageElement>();
  for (const p of picturesIn(page.items)) {
    const image = images.has(p.blobId) ? undefined : await loaded(p);
    if (image) images.set(p.blobId, image);
  }
  const k = Math.min(DPI / 25.4, MAX_PX / Math.max(page.widthMm, page.heightMm));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(page.widthMm * k));
  canvas.height = Math.max(1, Math.round(page.heightMm * k));
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser gives no canvas to paint on');
  context.scale(k, k);
  context.fillStyle = PAPER_COLORS.paper;
  context.fillRect(0, 0, page.widthMm, page.heightMm);
  paintItems(context as unknown as Pen, page.items, SVG_FONT_FAMILY, (p) => {
    const image = images.get(p.blobId);
    if (image) context.drawImage(image, 0, 0, p.widthMm, p.heightMm);
  });
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!blob) throw new Error('the picture is too large for this browser');
  return new Uint8Array(await blob.arrayBuffer());
};
