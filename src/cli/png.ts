import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { PaperFonts } from '../output/pdf.ts';

let ready: Promise<void> | undefined;

const start = (): Promise<void> => {
  ready ??= readFile(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')).then(
    (bytes) => initWasm(new Uint8Array(bytes)),
  );
  return ready;
};

/** Widest picture, so that a large floor does not ask for gigabytes. */
const MAX_PX = 10_000;

/** An SVG document in millimetres as PNG at so many dots to the inch, fewer where it would be wider than 10,000 pixels. */
export const svgToPng = async (
  svg: string,
  size: { readonly widthMm: number; readonly heightMm: number },
  fonts: PaperFonts,
  dpi = 200,
): Promise<Uint8Array> => {
  await start();
  const wanted = (size.widthMm / 25.4) * dpi;
  const longest = (Math.max(size.widthMm, size.heightMm) / 25.4) * dpi;
  const drawing = new Resvg(svg, {
    fitTo: { mode: 'width', value: Math.max(1, Math.round(wanted * Math.min(1, MAX_PX / longest))) },
    font: {
      fontBuffers: [new Uint8Array(fonts.regular), new Uint8Array(fonts.semibold)],
      defaultFontFamily: 'Source Sans 3',
      sansSerifFamily: 'Source Sans 3',
    },
  });
  const picture = drawing.render();
  const png = picture.asPng();
  picture.free();
  drawing.free();
  return png;
};
