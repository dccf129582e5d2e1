import { paperMetadata } from '../papers/metadata.ts';
import { type PaperProgress, paperPages } from '../papers/paper-set.ts';
import type { PaperOptions } from '../papers/sheet-info.ts';
import { type PaperFonts, pdfFile } from './pdf.ts';

type Plan = Parameters<typeof paperPages>[0];
type Assessment = Parameters<typeof paperPages>[1];

/** The papers of a plan as one file. */
export interface PaperFile {
  /** The PDF; undefined where the sheets that were asked for have nothing to say about the plan. */
  readonly bytes: Uint8Array | undefined;
  readonly pages: number;
  readonly notices: readonly string[];
}

/**
 * The PDF set of a plan. Each page is written as soon as it is laid out and then let go, so that a large set needs little
 * more room than its file. Tells how far it is after each page.
 */
export function* paperFileSteps(
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
  fonts: PaperFonts,
): Generator<PaperProgress, PaperFile, undefined> {
  const file = pdfFile(fonts, paperMetadata(plan, options));
  const steps = paperPages(plan, assessment, options);
  let pages = 0;
  for (;;) {
    const step = steps.next();
    if (step.done) return { bytes: pages > 0 ? file.finish() : undefined, pages, notices: step.value };
    if (step.value.page) {
      file.add(step.value.page);
      pages += 1;
    }
    const { page: _, ...far } = step.value;
    yield far;
  }
}

/** As `paperFileSteps`, at once. */
export const paperFile = (
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
  fonts: PaperFonts,
): PaperFile => {
  const steps = paperFileSteps(plan, assessment, options, fonts);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};
