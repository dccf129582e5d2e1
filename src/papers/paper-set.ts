import { type Plan, planRecord } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { coverPages } from './cover.ts';
import { noticeList } from './ink.ts';
import type { Page, PaperSet } from './page.ts';
import { type PageMaker, type PaperOptions, setInfo } from './sheet-info.ts';
import { COVER, DEFAULT_SHEETS, SHEET_KINDS } from './sheet-kinds.ts';
import { listSheet } from './sheets.ts';

/** The sheets that are issued: those asked for, else those the plan names, else the usual ones; unknown ids left out. */
export const sheetsOf = (plan: Plan, asked: readonly string[] | undefined): readonly string[] => {
  const wanted = asked ?? planRecord(plan).paper.sheets ?? DEFAULT_SHEETS;
  const known = new Set([COVER.id, ...SHEET_KINDS.map((k) => k.id)]);
  return [...new Set(wanted)].filter((id) => known.has(id));
};

/** A page with the place that links to its sheet lead to. */
const anchored = (page: Page, id: string): Page => ({
  ...page,
  items: [...page.items, { kind: 'anchor', name: `sheet:${id}`, xMm: 0, yMm: 0 }],
});

/**
 * How far the making of a set is: pages made, of how many; with the page that was made last. Before there are any, the
 * kind of sheet that is planned, of how many.
 */
export interface PaperProgress {
  readonly done: number;
  readonly of: number;
  readonly page?: Page;
  readonly sheet?: number;
  readonly sheets?: number;
}

/** Share of the work that planning the sheets is, about. */
const PLANNING = 0.2;

/** How far it is in words, and from 0 to 1. */
export const progressOf = (p: PaperProgress): { readonly text: string; readonly share: number } =>
  p.sheet !== undefined && p.sheets !== undefined
    ? { text: `Laying out sheet ${p.sheet} of ${p.sheets}`, share: (PLANNING * (p.sheet - 1)) / p.sheets }
    : { text: `Page ${p.done} of ${p.of}`, share: PLANNING + ((1 - PLANNING) * p.done) / p.of };

/** Goes through the steps of something and tells the same after each. */
function* during<P, R>(steps: Generator<undefined, R, undefined>, tell: P): Generator<P, R, undefined> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield tell;
  }
}

/** The papers of a plan one page after another, and at the end what is to be said about them. Keeps no page. */
export function* paperPages(
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
): Generator<PaperProgress, readonly string[], undefined> {
  const notices = noticeList();
  const sheets = sheetsOf(plan, options.sheets);
  const info = setInfo(plan, assessment, options, notices, sheets);
  const lists = { ...info, sheet: listSheet(info.sheet) };
  const groups: { id: string; name: string; makers: readonly PageMaker[] }[] = [];
  for (const [i, id] of sheets.entries()) {
    const planning = { done: 0, of: 1, sheet: i + 1, sheets: sheets.length };
    yield planning;
    const kind = SHEET_KINDS.find((k) => k.id === id);
    const making = kind?.make(info, lists) ?? [];
    const makers = 'next' in making ? yield* during(making, planning) : making;
    if (kind && makers.length > 0) groups.push({ id, name: kind.name, makers });
  }
  if (sheets.includes(COVER.id)) {
    const at = sheets
      .slice(0, sheets.indexOf(COVER.id))
      .filter((id) => groups.some((g) => g.id === id)).length;
    const cover = coverPages(
      lists,
      groups.map((g) => ({ id: g.id, name: g.name, count: g.makers.length })),
      at,
    );
    groups.splice(at, 0, { id: COVER.id, name: COVER.name, makers: cover });
  }
  const makers = groups.flatMap((g) => g.makers.map((make, i) => ({ make, id: i === 0 ? g.id : undefined })));
  for (const [i, { make, id }] of makers.entries()) {
    if (make.prepare) for (const _ of make.prepare(i + 1)) yield { done: i, of: makers.length };
    const page = make(i + 1, makers.length);
    yield { done: i + 1, of: makers.length, page: id === undefined ? page : anchored(page, id) };
  }
  return notices.list();
}

/** As `paperSet`, page by page: it tells how far it is after each, and gives the set at the end. */
export function* paperSteps(
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
): Generator<PaperProgress, PaperSet, undefined> {
  const steps = paperPages(plan, assessment, options);
  const pages: Page[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done) return { pages, notices: step.value };
    if (step.value.page) pages.push(step.value.page);
    yield step.value;
  }
}

/**
 * The papers of a plan for one setup: the sheets that are asked for, in the order asked for. The same plan, assessment and
 * options always give the same pages.
 */
export const paperSet = (plan: Plan, assessment: Assessment, options: PaperOptions): PaperSet => {
  const steps = paperSteps(plan, assessment, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};
