import { csvBytes } from '../../output/csv.ts';
import { displayListToDxf, dxfUnit } from '../../output/dxf.ts';
import { displayListToSvg, listPage } from '../../output/svg.ts';
import { listsToXlsx } from '../../output/xlsx.ts';
import { allLists, LIST_NAMES, listSteps } from '../../papers/all-lists.ts';
import { floorPictures } from '../../papers/floor-drawings.ts';
import { listDoc } from '../../papers/list-columns.ts';
import { progressOf } from '../../papers/paper-set.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import type { Assessment } from '../../report/types.ts';
import type { Watched } from './export-state.ts';
import { pageToPng } from './png.ts';
import { runSteps } from './work.ts';

export interface OutFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mime: string;
}

export interface ExportJob extends Watched {
  readonly plan: Plan;
  readonly assessment: Assessment;
  readonly options: PaperOptions;
  readonly fonts: () => Promise<{ readonly regular: Uint8Array; readonly semibold: Uint8Array }>;
}

export const fileStem = (s: string): string =>
  s
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80) || 'papers';

const stemOf = (job: ExportJob): string => {
  const head = planRecord(job.plan);
  const { revision, draft } = job.options;
  return `${fileStem(head.drawingNumber || head.title)}${revision ? `-${revision}${draft ? '-draft' : ''}` : ''}`;
};

const text = (s: string): Uint8Array => new TextEncoder().encode(s);

/** The PDF set, page by page, so that it can be watched and stopped. */
export const makePdf = async (job: ExportJob): Promise<OutFile> => {
  // Loaded when first needed: the PDF writer is the largest part of the program.
  const { paperFileSteps } = await import('../../output/paper-file.ts');
  const { bytes } = await runSteps(
    paperFileSteps(job.plan, job.assessment, job.options, await job.fonts()),
    (step) => {
      const { text: words, share } = progressOf(step);
      job.tell(words, share);
    },
    job.signal,
  );
  if (!bytes) throw new Error('the chosen sheets have nothing to say about this plan');
  return { name: `${stemOf(job)}.pdf`, bytes, mime: 'application/pdf' };
};

export const makeCsv = async (job: ExportJob, name: string): Promise<OutFile> => {
  const [list] = allLists(job.plan, job.assessment, job.options, [name]);
  if (!list) throw new Error(`there is no list ${name}`);
  return { name: `${stemOf(job)}-${name}.csv`, bytes: csvBytes(list), mime: 'text/csv' };
};

export const makeWorkbook = async (job: ExportJob): Promise<OutFile> => {
  let n = 0;
  const lists = await runSteps(
    listSteps(job.plan, job.assessment, job.options),
    (l) => {
      n += 1;
      job.tell(
        `List ${n} of ${LIST_NAMES.length}: ${listDoc(l.name)?.title ?? l.name}`,
        n / LIST_NAMES.length,
      );
    },
    job.signal,
  );
  return {
    name: `${stemOf(job)}-lists.xlsx`,
    bytes: listsToXlsx(lists),
    mime: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  };
};

/** A floor as a drawing of its own. */
export const makeFloor = async (
  job: ExportJob,
  floorId: string,
  format: 'svg' | 'png' | 'dxf',
): Promise<OutFile> => {
  job.tell('Drawing the floor', 0.2);
  const picture = floorPictures(job.plan, job.assessment, job.options).find((f) => f.floorId === floorId);
  if (!picture) throw new Error('nothing is drawn on this floor');
  const name = `${stemOf(job)}-${fileStem(picture.name)}.${format}`;
  if (format === 'svg') return { name, bytes: text(displayListToSvg(picture.list)), mime: 'image/svg+xml' };
  if (format === 'dxf')
    return {
      name,
      bytes: text(displayListToDxf(picture.list, dxfUnit(planRecord(job.plan).lengthUnits))),
      mime: 'application/dxf',
    };
  job.tell('Painting the picture', 0.6);
  return { name, bytes: await pageToPng(listPage(picture.list)), mime: 'image/png' };
};
