import type { SupplyEntity } from '../derive/types.ts';
import { planRecord } from '../plan/plan.ts';
import { cell, largestLegA, legsText, type Reader, readerOf } from './figures.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { emptyBox } from './run-sheet.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'point', head: 'Point', leastMm: 34, grow: 2 },
  { id: 'leg', head: 'Leg', leastMm: 14 },
  { id: 'cv', head: 'V', leastMm: 11, align: 'right', group: 'Computed, worst' },
  { id: 'ca', head: 'A', leastMm: 11, align: 'right', group: 'Computed, worst' },
  { id: 'volts', head: 'V, leg to N', leastMm: 30, grow: 1, group: 'Measured' },
  { id: 'amps', head: 'A, leg and N', leastMm: 30, grow: 1, group: 'Measured' },
  { id: 'hertz', head: 'Hz', leastMm: 12, group: 'Measured', dispensable: 2 },
  { id: 'polarity', head: 'Polarity', leastMm: 15, group: 'Measured' },
  { id: 'device', head: 'Device test', leastMm: 18, group: 'Measured' },
  { id: 'by', head: 'By whom', leastMm: 26, grow: 1 },
  { id: 'when', head: 'When', leastMm: 18 },
];

/** Points to measure at: sources, boxes at their inlets, wall outlets, and the ends of ways in use. */
export const pointsOf = (info: SetInfo, r: Reader, sourceId: string): readonly SupplyEntity[] =>
  info.assessment.entities.filter(
    (e) =>
      e.sourceId === sourceId &&
      (e.what === 'source' ||
        e.what === 'box' ||
        e.what === 'outlet' ||
        (e.what === 'way' && r.children(e.key).length > 0)),
  );

/** A blank sheet for measured values, with what was computed beside each point. */
export const testSheetPages = (info: SetInfo): readonly PageMaker[] => {
  const r = readerOf(info.assessment, info.setupId);
  const practice = planRecord(info.plan).practice;
  const columns = placeColumns(COLUMNS, flowArea(info).w);
  const sections = r.roots().map(
    (source): Section => ({
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? `${source.label} (continued)` : source.label,
            'measured by a qualified person, under load where it says amps',
          ),
          tableHead(columns),
        ),
      blocks: pointsOf(info, r, source.recordId).map((e) =>
        tableRow(columns, {
          point: { text: e.label, weight: e.what === 'way' ? 'regular' : 'semibold' },
          leg: legsText(practice, e),
          cv: cell(r.worst(e.key, 'voltsV'), 1),
          ca: cell(largestLegA(r, e, 'worst'), 1),
          volts: emptyBox(99),
          amps: emptyBox(99),
          hertz: emptyBox(99),
          polarity: emptyBox(99),
          device: emptyBox(99),
          by: emptyBox(99),
          when: emptyBox(99),
        }),
      ),
    }),
  );
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Test sheet',
      subtitle: 'To fill in: volts, amps, polarity, device test',
      documentType: 'Form',
      scale: 'none',
      units: 'V, A, Hz',
    },
    sections,
    [
      'Computed values are for comparison only; a dash means that the plan cannot give one. Where measured and computed differ, believe the meter and find out why.',
      'Device test: of each residual-current device by its own button, and by instrument where the local code asks for it.',
    ],
  );
};
