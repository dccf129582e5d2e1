import { csvBytes } from '../output/csv.ts';
import { type PaperFonts, pagesToPdf } from '../output/pdf.ts';
import { issueOptions } from '../papers/issue-options.ts';
import { paperLists } from '../papers/lists.ts';
import { paperSet } from '../papers/paper-set.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';

export interface PapersCommandOptions {
  readonly fonts: PaperFonts;
  /** Date, `2026-03-09`, for papers that are not as issued; those that are carry their issue's. Never the clock's. */
  readonly date?: string | undefined;
  readonly setupId?: string | undefined;
  readonly programVersion: string;
  /** Ids of the sheets; all when left out. */
  readonly sheets?: readonly string[] | undefined;
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
 * The papers of a plan as files: one PDF set and the CSV lists. File names are fixed; nothing of the plan's text goes
 * into them. The revision is that of the plan's last issue; a plan never issued has none.
 */
export const papersCommand = (
  plan: Plan,
  assessment: Assessment,
  options: PapersCommandOptions,
): PapersResult => {
  const issued = issueOptions(plan, options);
  const { revision, date } = issued;
  const set = paperSet(plan, assessment, issued);
  const head = planRecord(plan);
  const pdf = pagesToPdf(set.pages, options.fonts, {
    title: [head.production, head.title].filter(Boolean).join(' – '),
    subject: revision ? `Lighting papers, revision ${revision}` : 'Lighting papers, not issued',
    author: head.people['drawn-by'] ?? '',
    ...(date ? { date } : {}),
  });
  const lists = paperLists(plan, assessment, options.setupId).map((l) => ({
    name: `${l.name}.csv`,
    bytes: csvBytes(l),
  }));
  return { files: [{ name: 'papers.pdf', bytes: pdf }, ...lists], notices: set.notices };
};
