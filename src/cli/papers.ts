import { utf8Bytes } from '../kernel/canonical.ts';
import { csvBytes } from '../output/csv.ts';
import { displayListToDxf, dxfUnit } from '../output/dxf.ts';
import { paperFile } from '../output/paper-file.ts';
import type { PaperFonts } from '../output/pdf.ts';
import { displayListToSvg, listPage } from '../output/svg.ts';
import { listsToXlsx } from '../output/xlsx.ts';
import { allLists } from '../papers/all-lists.ts';
import { floorPictures } from '../papers/floor-drawings.ts';
import { issueOptions } from '../papers/issue-options.ts';
import { planFileBytes } from '../plan/container.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { svgToPng } from './png.ts';

/** What papers can be written as. */
export const PAPER_FORMATS = ['pdf', 'csv', 'xlsx', 'svg', 'png', 'dxf', 'plan'] as const;
export type PaperFormat = (typeof PAPER_FORMATS)[number];

export interface PapersCommandOptions {
  readonly fonts: PaperFonts;
  /** Date, `2026-03-09`, for papers that are not as issued; those that are carry their issue's. Never the clock's. */
  readonly date?: string | undefined;
  readonly setupId?: string | undefined;
  readonly programVersion: string;
  /** Ids of the sheets; those of the plan, else all, when left out. */
  readonly sheets?: readonly string[] | undefined;
  /** PDF and CSV when left out. */
  readonly formats?: readonly PaperFormat[] | undefined;
}

export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PapersResult {
  readonly files: readonly PaperFile[];
  /** What a person should know about the papers: texts cut, characters the font lacks, a scale that did not fit. */
  readonly notices: readonly string[];
}

/**
 * The papers of a plan as files: the PDF set, the lists as CSV and as one workbook, each floor as SVG, PNG and DXF, the plan
 * itself. File names are fixed; nothing of the plan's text goes into them. Papers of a plan that is as it was issued carry
 * that issue's revision and date, others are a draft of the next one; a plan never issued has no revision.
 */
export const papersCommand = async (
  plan: Plan,
  assessment: Assessment,
  options: PapersCommandOptions,
): Promise<PapersResult> => {
  const issued = issueOptions(plan, options);
  const wants = new Set<PaperFormat>(options.formats ?? ['pdf', 'csv']);
  const files: PaperFile[] = [];
  let notices: readonly string[] = [];
  if (wants.has('pdf')) {
    const made = paperFile(plan, assessment, issued, options.fonts);
    notices = made.notices;
    if (made.bytes) files.push({ name: 'papers.pdf', bytes: made.bytes });
    else notices = [...notices, 'The chosen sheets have nothing to say about this plan: there is no PDF.'];
  }
  const lists = wants.has('csv') || wants.has('xlsx') ? allLists(plan, assessment, issued) : [];
  if (wants.has('csv')) for (const l of lists) files.push({ name: `${l.name}.csv`, bytes: csvBytes(l) });
  if (wants.has('xlsx')) files.push({ name: 'lists.xlsx', bytes: listsToXlsx(lists) });
  if (wants.has('svg') || wants.has('png') || wants.has('dxf')) {
    for (const [i, { list }] of floorPictures(plan, assessment, issued).entries()) {
      const name = `floor-${i + 1}`;
      const svg = displayListToSvg(list);
      if (wants.has('svg')) files.push({ name: `${name}.svg`, bytes: utf8Bytes(svg) });
      if (wants.has('png'))
        files.push({ name: `${name}.png`, bytes: await svgToPng(svg, listPage(list), options.fonts) });
      if (wants.has('dxf'))
        files.push({
          name: `${name}.dxf`,
          bytes: utf8Bytes(displayListToDxf(list, dxfUnit(planRecord(plan).lengthUnits))),
        });
    }
  }
  if (wants.has('plan')) {
    const { bytes, sort } = planFileBytes(plan);
    files.push({ name: sort === 'zip' ? 'plan.plan.zip' : 'plan.plan.json', bytes });
  }
  return { files, notices };
};
