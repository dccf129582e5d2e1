import { floorsOf } from '../plan/floors.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import { batteryPlanPages } from './battery-plan.ts';
import { boxLayoutPages } from './box-layout.ts';
import { cableOrderPages } from './cable-order.ts';
import { changePages } from './change-list.ts';
import { circuitPages } from './circuits.ts';
import { dayPages } from './day-pages.ts';
import { gearPages, truckPages } from './gear-pages.ts';
import { cableLabelPages, unitLabelPages } from './labels.ts';
import { legSummaryPages } from './leg-summary.ts';
import { lineSheets } from './line-sheet.ts';
import { oneLinePages } from './one-line.ts';
import { partSheets } from './part-sheet.ts';
import { patchSheets } from './patch-sheet.ts';
import { plotPages } from './plot-setups.ts';
import { radioPages } from './radio-sheet.ts';
import { riggingPages } from './rigging-pages.ts';
import { runSheetPages } from './run-sheet.ts';
import { setupCards } from './setup-cards.ts';
import { setupGridPages } from './setup-grid.ts';
import { setupList } from './setup-list.ts';
import type { Making, PageMaker, SetInfo } from './sheet-info.ts';
import { sitePages } from './site-sheet.ts';
import { testSheetPages } from './test-sheet.ts';
import { unitPages } from './unit-list.ts';
import { universeMaps } from './universe-maps.ts';
import { workingPages } from './workings.ts';

/** One kind of sheet of the drawing set. A new sheet is one line in the list below. */
export interface SheetKind {
  readonly id: string;
  readonly name: string;
  /** Printed on stock of its own, so only when it is asked for. */
  readonly apart?: boolean;
  /** `plot` is on the sheet of the plot, the others on the handy size of its family. */
  readonly make: (plot: SetInfo, lists: SetInfo) => readonly PageMaker[] | Making;
}

/** Floors that have something on them; the first floor where none has. */
export const drawnFloors = (plan: Plan): readonly string[] => {
  const used = new Set<string>();
  for (const r of plan.records.values()) {
    const floorId = (r as { floorId?: unknown }).floorId;
    if (typeof floorId === 'string') used.add(floorId);
  }
  const floors = floorsOf(plan).map((f) => f.id);
  const drawn = floors.filter((id) => used.has(id));
  return drawn.length > 0 ? drawn : floors.slice(0, 1);
};

/** Sheets of the control crew, where any unit has an address. */
const patched =
  (make: (info: SetInfo) => readonly PageMaker[]) =>
  (_: SetInfo, lists: SetInfo): readonly PageMaker[] =>
    recordsOf(lists.plan, 'fixture').some((f) => f.patch) ? make(lists) : [];

/** The sheets of a set but its cover, in the order they are issued. */
export const SHEET_KINDS: readonly SheetKind[] = [
  { id: 'plot', name: 'Lighting plot', make: (plot) => plotPages(plot, drawnFloors(plot.plan)) },
  { id: 'changes', name: 'List of changes', make: changePages },
  { id: 'one-line', name: 'One-line diagram', make: (_, lists) => oneLinePages(lists) },
  { id: 'legs', name: 'Leg summary', make: (_, lists) => legSummaryPages(lists) },
  { id: 'circuits', name: 'Circuit schedule', make: (_, lists) => circuitPages(lists) },
  { id: 'boxes', name: 'Box layout', make: (_, lists) => boxLayoutPages(lists) },
  { id: 'runs', name: 'Run sheet', make: (_, lists) => runSheetPages(lists) },
  { id: 'cables', name: 'Cable list', make: (_, lists) => cableOrderPages(lists) },
  { id: 'tests', name: 'Test sheet', make: (_, lists) => testSheetPages(lists) },
  { id: 'units', name: 'Unit list', make: (_, lists) => unitPages(lists) },
  { id: 'setups', name: 'Setups', make: (_, lists) => setupGridPages(lists) },
  { id: 'day', name: 'Shooting day', make: (_, lists) => dayPages(lists) },
  { id: 'packs', name: 'Battery plan', make: (_, lists) => batteryPlanPages(lists) },
  { id: 'patch', name: 'Patch sheet', make: patched(patchSheets) },
  { id: 'universes', name: 'Universe maps', make: patched(universeMaps) },
  { id: 'parts', name: 'Part levels', make: (_, lists) => partSheets(lists) },
  { id: 'lines', name: 'Data lines', make: (_, lists) => lineSheets(lists) },
  { id: 'radio', name: 'Radio', make: (_, lists) => radioPages(lists) },
  { id: 'setup-list', name: 'Set-up list', make: patched(setupList) },
  { id: 'cards', name: 'Setup cards', make: patched(setupCards) },
  { id: 'gear', name: 'Gear list', make: (_, lists) => gearPages(lists) },
  { id: 'rigging', name: 'Stand and rigging list', make: (_, lists) => riggingPages(lists) },
  { id: 'truck', name: 'Truck list', make: (_, lists) => truckPages(lists) },
  { id: 'site', name: 'Site notes', make: (_, lists) => sitePages(lists) },
  { id: 'workings', name: 'Workings', make: (_, lists) => workingPages(lists) },
  { id: 'unit-labels', name: 'Unit labels', apart: true, make: (_, lists) => unitLabelPages(lists) },
  { id: 'cable-labels', name: 'Cable labels', apart: true, make: (_, lists) => cableLabelPages(lists) },
];

export const COVER = { id: 'cover', name: 'Cover' } as const;

/** Ids and names of all sheets, the cover first. */
export const SHEET_CHOICES: readonly {
  readonly id: string;
  readonly name: string;
  readonly apart?: boolean;
}[] = [COVER, ...SHEET_KINDS];

/** What is issued where nothing is chosen: all but what is printed on stock of its own. */
export const DEFAULT_SHEETS: readonly string[] = [
  COVER.id,
  ...SHEET_KINDS.filter((k) => !k.apart).map((k) => k.id),
];
