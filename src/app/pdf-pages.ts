import { fail, ok, type Result } from '../kernel/result.ts';
import type { PdfPages } from '../ui/pictures.ts';
import { bake } from './bake.ts';

const MAX_PDF_BYTES = 100 * 1024 * 1024;
/** Pages are drawn so large along their longer side, in pixels. */
const DRAWN_SIDE_PX = 4000;

/** What is wrong with a PDF, by the name of the reader's error. */
const refusal = (name: string, cause: unknown): Result<never> => {
  const sort = cause instanceof Error ? cause.name : '';
  if (sort === 'PasswordException')
    return fail({
      what: `${name} is protected by a password.`,
      todo: 'Open it in a PDF reader, print or save it without a password, and import that. Nothing in the plan was changed.',
    });
  return fail({
    what: `${name} is no PDF, or it is damaged.`,
    todo: 'Get it again from where it came from. Nothing in the plan was changed.',
  });
};

/**
 * Opens a PDF to take a page of it. The reader is loaded when it is first needed and works in a worker of its own;
 * scripts inside the PDF are never run.
 */
export const openPdf = async (file: File): Promise<Result<PdfPages>> => {
  if (file.size > MAX_PDF_BYTES)
    return fail({
      what: `${file.name} is too large (${Math.round(file.size / 1e6)} MB; the limit is ${MAX_PDF_BYTES / 1024 / 1024} MB).`,
      todo: 'Save the page that is needed as a PDF of its own.',
    });
  const data = new Uint8Array(await file.arrayBuffer());
  const pdfjs = await import('pdfjs-dist');
  const worker = new Worker(new URL('./pdf.worker.ts', import.meta.url), { type: 'module' });
  const port = pdfjs.PDFWorker.create({ port: worker });
  const task = pdfjs.getDocument({
    data,
    worker: port,
    isEvalSupported: false,
    useWasm: false,
    // The decoder of one sort of scan is fetched by name where a page needs it.
    wasmUrl: new URL('pdf/', document.baseURI).href,
    stopAtErrors: false,
  });
  const close = (): void => {
    void task.destroy();
    worker.terminate();
  };
  try {
    const doc = await task.promise;
    return ok({
      count: doc.numPages,
      close,
      bake: async (number) => {
        try {
          const page = await doc.getPage(number);
          const plain = page.getViewport({ scale: 1 });
          const scale = DRAWN_SIDE_PX / Math.max(plain.width, plain.height);
          const viewport = page.getViewport({ scale });
          const canvas = document.createElement('canvas');
          canvas.width = Math.ceil(viewport.width);
          canvas.height = Math.ceil(viewport.height);
          const canvasContext = canvas.getContext('2d', { alpha: false });
          if (!canvasContext)
            return fail({
              what: 'This browser gives no memory for the page.',
              todo: 'Close other pages and try again.',
            });
          await page.render({ canvas, canvasContext, viewport, background: '#ffffff' }).promise;
          const name = doc.numPages > 1 ? `${file.name}, page ${number}` : file.name;
          return bake(canvas, {
            widthPx: canvas.width,
            heightPx: canvas.height,
            lossless: true,
            name,
            use: 'underlay',
          });
        } catch (cause) {
          return refusal(`Page ${number} of ${file.name}`, cause);
        }
      },
    });
  } catch (cause) {
    close();
    return refusal(file.name, cause);
  }
};
