import { type Plan, recordsOf } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { circuitPages } from './circuits.ts';
import { noticeList } from './ink.ts';
import { oneLinePages } from './one-line.ts';
import type { PaperSet } from './page.ts';
import { patchPages } from './patch-pages.ts';
import { plotPage } from './plot.ts';
import { type PageMaker, type PaperOptions, setInfo } from './sheet-info.ts';
import { listSheet } from './sheets.ts';
import { unitPages } from './unit-list.ts';

/** Floors that have something on them; the first floor where none has. */
const drawnFloors = (plan: Plan): readonly string[] => {
  const used = new Set<string>();
  for (const r of plan.records.values()) {
    const floorId = (r as { floorId?: unknown }).floorId;
    if (typeof floorId === 'string') used.add(floorId);
  }
  const floors = recordsOf(plan, 'floor').map((f) => f.id);
  const drawn = floors.filter((id) => used.has(id));
  return drawn.length > 0 ? drawn : floors.slice(0, 1);
};

/**
 * The papers of a plan for one setup: a plot per floor, the circuit schedule with findings, the unit list, and what the control crew gets. The
 * same plan, assessment and options always give the same pages.
 */
export const paperSet = (plan: Plan, assessment: Assessment, options: PaperOptions): PaperSet => {
  const notices = noticeList();
  const info = setInfo(plan, assessment, options, notices);
  const lists = { ...info, sheet: listSheet(info.sheet) };
  const makers: PageMaker[] = [
    ...drawnFloors(plan).map((floorId) => plotPage(info, floorId)),
    ...oneLinePages(lists),
    ...circuitPages(lists),
    ...unitPages(lists),
    ...patchPages(lists),
  ];
  const pages = makers.map((make, i) => make(i + 1, makers.length));
  return { pages, notices: notices.list() };
};
