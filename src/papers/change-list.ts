import { planRecord, recordOf } from '../plan/plan.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { frameOf, zoneOf } from './frame.ts';
import { type PlotPart, type PlotView, partName, plotLayout, plotViews } from './plot-layout.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

/** Zone of the plot's sheet in which a change is marked, with the part it is on where the plot comes in parts; empty where it has no place. */
const zones = (plot: SetInfo): ((floorId: string | undefined, xMm: number, yMm: number) => string) => {
  const views = new Map<string, readonly PlotView[]>();
  return (floorId, xMm, yMm) => {
    if (floorId === undefined) return '';
    const all = views.get(floorId) ?? plotViews(plot, floorId, plotLayout(frameOf(plot.sheet)), () => {});
    views.set(floorId, all);
    const v = all.find((x) => x.part === undefined || onPart(x, x.part, xMm, yMm));
    if (!v) return '';
    const zone = zoneOf(plot.sheet, (xMm - v.originXMm) / v.ratio, (yMm - v.originYMm) / v.ratio);
    return v.part ? `part ${partName(v.part.column, v.part.row)}, ${zone}` : zone;
  };
};

/** Whether a place of the floor is on this part, up to its match lines; outer parts have what lies beyond. */
const onPart = (v: PlotView, p: PlotPart, xMm: number, yMm: number): boolean => {
  const within = (at: number, index: number, lines: readonly number[], from: number, to: number): boolean =>
    at >= (lines[index - 1] ?? from) && at < (lines[index] ?? to);
  const { bounds: b } = v;
  return within(xMm, p.column, p.matchX, b.minX, b.maxX) && within(yMm, p.row, p.matchY, b.minY, b.maxY);
};

const WHAT = { added: 'Added', changed: 'Changed', removed: 'Removed' } as const;

/** What is different from the issue before, in words and with where the plot marks it; nothing without an issue before. */
export const changePages = (plot: SetInfo, lists: SetInfo): readonly PageMaker[] => {
  const { since, revision } = lists.options;
  if (!since || lists.changes.length === 0) return [];
  const columns = placeColumns(
    [
      { id: 'n', head: 'No.', leastMm: 9, align: 'right' },
      { id: 'what', head: 'What', leastMm: 18 },
      { id: 'words', head: 'In words', leastMm: 90, grow: 1 },
      { id: 'floor', head: 'Floor', leastMm: 30, dispensable: 1 },
      { id: 'zone', head: 'Zone of the plot', leastMm: 26 },
    ],
    flowArea(lists).w,
  );
  const zone = zones(plot);
  const sections: Section[] = [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            `Changes from ${since.revision} to ${revision}${continued ? ' (continued)' : ''}`,
            `${lists.changes.length} in all; on the plot a cloud with a triangle ${revision}`,
          ),
          tableHead(columns),
        ),
      blocks: lists.changes.map((c, i) =>
        tableRow(columns, {
          n: String(i + 1),
          what: WHAT[c.what],
          words: c.words,
          floor: (c.floorId !== undefined && recordOf(lists.plan, 'floor', c.floorId)?.name) || '',
          zone: c.box ? zone(c.floorId, (c.box.minX + c.box.maxX) / 2, (c.box.minY + c.box.maxY) / 2) : '',
        }),
      ),
    },
  ];
  return flowPages(
    lists,
    {
      title: 'List of changes',
      subtitle: `What changed since revision ${since.revision}`,
      documentType: 'List',
      scale: 'none',
      units: planRecord(lists.plan).lengthUnits === 'imperial' ? 'ft-in' : 'm',
    },
    sections,
    ['A unit’s stand, ballast and cable are told in the unit’s own line. Levels are gathered by setup.'],
  );
};
