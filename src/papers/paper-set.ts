import type { Plan } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { coverPages } from './cover.ts';
import { noticeList } from './ink.ts';
import type { PaperSet } from './page.ts';
import { type PaperOptions, setInfo } from './sheet-info.ts';
import { COVER, SHEET_KINDS } from './sheet-kinds.ts';
import { listSheet } from './sheets.ts';

/**
 * The papers of a plan for one setup: the sheets that are asked for, in their own order, else all of them. The same plan,
 * assessment and options always give the same pages.
 */
export const paperSet = (plan: Plan, assessment: Assessment, options: PaperOptions): PaperSet => {
  const notices = noticeList();
  const info = setInfo(plan, assessment, options, notices);
  const lists = { ...info, sheet: listSheet(info.sheet) };
  const wanted = (id: string): boolean => options.sheets === undefined || options.sheets.includes(id);
  const groups = SHEET_KINDS.filter((k) => wanted(k.id))
    .map((k) => ({ name: k.name, makers: k.make(info, lists) }))
    .filter((g) => g.makers.length > 0);
  const cover = wanted(COVER.id)
    ? coverPages(
        lists,
        groups.map((g) => ({ name: g.name, count: g.makers.length })),
      )
    : [];
  const makers = [...cover, ...groups.flatMap((g) => g.makers)];
  const pages = makers.map((make, i) => make(i + 1, makers.length));
  return { pages, notices: notices.list() };
};
