import type { Plan } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import {
  assumedTable,
  changeTable,
  findingTable,
  limitTable,
  testTable,
  workingTable,
} from './check-lists.ts';
import { lineTable, partTable, portTable, senderTable, stepTable, universeTable } from './control-lists.ts';
import { backUpTable, blockTable, energyTable, packTable, runtimeTable, swapTable } from './day-lists.ts';
import { noticeList } from './ink.ts';
import { LIST_DOCS } from './list-columns.ts';
import { cableList, circuitList, gearList, type ListTable, patchList } from './lists.ts';
import { placedTable } from './placed-list.ts';
import { boxList, coilList, legList, runList } from './power-lists.ts';
import { radioTable } from './radio-list.ts';
import { type PaperOptions, type SetInfo, setInfo } from './sheet-info.ts';
import { clearTable, crossingTable, jointTable, noteTable, photoTable, sailTable } from './site-lists.ts';
import { hungTable, levelTable, standTable, truckTable, unitTable } from './unit-lists.ts';

/** What the columns of all lists say. */
const columnTable = (): ListTable => ({
  name: 'columns',
  head: ['list', 'holds', 'column', 'meaning'],
  rows: LIST_DOCS.flatMap((d) => d.columns.map((c) => [d.name, d.about, c.head, c.meaning])),
});

/** How each list is made, by its name. */
const MAKERS: Readonly<Record<string, (info: SetInfo) => ListTable>> = {
  circuits: (i) => circuitList(i.plan, i.assessment, i.setupId),
  legs: legList,
  boxes: boxList,
  runs: runList,
  coils: coilList,
  cables: (i) => cableList(i.plan),
  joints: jointTable,
  crossings: crossingTable,
  tests: testTable,
  units: unitTable,
  placed: (i) => placedTable(i.plan),
  setups: levelTable,
  parts: partTable,
  patch: (i) => patchList(i.plan),
  universes: universeTable,
  lines: lineTable,
  ports: portTable,
  radio: radioTable,
  transmitters: senderTable,
  steps: stepTable,
  gear: (i) => gearList(i.plan),
  truck: truckTable,
  stands: standTable,
  rigging: hungTable,
  frames: sailTable,
  day: blockTable,
  energy: energyTable,
  packs: packTable,
  runtimes: runtimeTable,
  swaps: swapTable,
  backup: backUpTable,
  notes: noteTable,
  photos: photoTable,
  clear: clearTable,
  findings: findingTable,
  workings: workingTable,
  assumed: assumedTable,
  limits: limitTable,
  changes: changeTable,
  columns: columnTable,
};

/** Names of the lists, in the order they are written. */
export const LIST_NAMES: readonly string[] = Object.keys(MAKERS);

/** Lists of a set of papers one by one, each made when it is asked for. */
export function* listSteps(
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
  names: readonly string[] = LIST_NAMES,
): Generator<ListTable, readonly ListTable[], undefined> {
  const info = setInfo(plan, assessment, options, noticeList());
  const made: ListTable[] = [];
  for (const name of names) {
    const make = MAKERS[name];
    if (!make) throw new Error(`there is no list ${name}`);
    const list = make(info);
    made.push(list);
    yield list;
  }
  return made;
}

/** Every list of a set of papers as plain rows, in a fixed order; those with nothing in them have only their heads. */
export const allLists = (
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
  names: readonly string[] = LIST_NAMES,
): readonly ListTable[] => [...listSteps(plan, assessment, options, names)];
