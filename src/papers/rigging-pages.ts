import { formatLength } from '../kernel/units.ts';
import { planRecord } from '../plan/plan.ts';
import { type HungRow, riggingRows, type SailRow, type StandRow } from '../report/rigging-rows.ts';
import { formatFactor, formatKg, formatNewtons, formatWind } from '../report/rigging-words.ts';
import { cell } from './figures.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import { emptyBox } from './run-sheet.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const STANDS: readonly Column[] = [
  { id: 'label', head: 'Stand', leastMm: 38, grow: 1 },
  { id: 'kind', head: 'Kind', leastMm: 44, grow: 1 },
  { id: 'carries', head: 'Carries', leastMm: 40, grow: 2 },
  { id: 'height', head: 'Height', leastMm: 16, align: 'right' },
  { id: 'load', head: 'Load', leastMm: 26, align: 'right', group: 'Load on the stand' },
  { id: 'rated', head: 'Rated', leastMm: 26, align: 'right', group: 'Load on the stand' },
  { id: 'pct', head: '%', leastMm: 9, align: 'right', group: 'Load on the stand' },
  { id: 'factor', head: 'Factor', leastMm: 24, align: 'right', group: 'Tipping' },
  { id: 'wind', head: 'Tips at wind', leastMm: 30, align: 'right', group: 'Tipping', dispensable: 1 },
  { id: 'bags', head: 'Bags', leastMm: 10, align: 'right', group: 'Sand bags' },
  { id: 'wanted', head: 'Reckoned', leastMm: 16, align: 'right', group: 'Sand bags' },
  { id: 'done', head: 'Rigger', leastMm: 16 },
];

const HUNG: readonly Column[] = [
  { id: 'label', head: 'What', leastMm: 46, grow: 1 },
  { id: 'carries', head: 'Carries', leastMm: 50, grow: 2 },
  { id: 'height', head: 'Height', leastMm: 16, align: 'right' },
  { id: 'load', head: 'Gear', leastMm: 28, align: 'right' },
  { id: 'people', head: 'People', leastMm: 28, align: 'right', dispensable: 2 },
  { id: 'rated', head: 'Rated', leastMm: 44, align: 'right' },
  { id: 'operator', head: 'Worked by', leastMm: 40, grow: 1, dispensable: 1 },
  { id: 'second', head: 'Second bond', leastMm: 20 },
  { id: 'done', head: 'Rigger', leastMm: 16 },
];

/** Stands, tube, points, lifts and frames with their loads and figures of tipping and wind. */
export const riggingPages = (info: SetInfo): readonly PageMaker[] => {
  const rows = riggingRows(info.plan);
  const { lengthUnits } = planRecord(info.plan);
  const w = flowArea(info).w;
  const sections: Section[] = [];
  if (rows.stands.length > 0) {
    const columns = placeColumns(STANDS, w);
    const row = (s: StandRow) =>
      tableRow(
        columns,
        {
          label: { text: s.label, weight: 'semibold' },
          kind: s.kindName,
          carries: s.carries,
          height: formatLength(s.heightMm, lengthUnits),
          load: formatKg(s.loadKg, lengthUnits),
          rated: formatKg(s.ratedKg, lengthUnits),
          pct: { text: cell(s.loadPct), weight: 'semibold', role: s.loadPct > 100 ? 'stop' : 'ink' },
          factor: formatFactor(s.tipFactor),
          wind: formatWind(s.tipWindMps, lengthUnits),
          bags: s.bags === 0 ? '–' : cell(s.bags),
          wanted: s.bagsWanted === Number.POSITIVE_INFINITY ? 'none help' : cell(s.bagsWanted),
          done: emptyBox(14),
        },
        { mark: markFor(info, s.standId) },
      );
    sections.push({
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? 'Stands (continued)' : 'Stands',
            `bags reckoned for a factor of ${rows.planningFactor} (${rows.factorSource}); wind in the plan: ${
              rows.windMps === undefined ? 'not given' : formatWind(rows.windMps, lengthUnits)
            }`,
          ),
          tableHead(columns),
        ),
      blocks: rows.stands.map(row),
    });
  }
  if (rows.hung.length > 0) {
    const columns = placeColumns(HUNG, w);
    const row = (h: HungRow) =>
      tableRow(
        columns,
        {
          label: { text: h.label, weight: 'semibold' },
          carries: h.carries,
          height: formatLength(h.heightMm, lengthUnits),
          load: formatKg(h.loadKg, lengthUnits),
          people: h.peopleKg > 0 ? formatKg(h.peopleKg, lengthUnits) : '–',
          rated:
            h.ratedKg === undefined
              ? 'by maker or engineer'
              : `${formatKg(h.ratedKg, lengthUnits)}${h.ratedAssumed ? '*' : ''}`,
          operator: h.operator,
          second: emptyBox(14),
          done: emptyBox(14),
        },
        { mark: markFor(info, h.recordId) },
      );
    sections.push({
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? 'Hung and lifted (continued)' : 'Hung and lifted',
            'loads of the plan against ratings; the rigger decides',
          ),
          tableHead(columns),
        ),
      blocks: rows.hung.map(row),
    });
  }
  if (rows.sails.length > 0) sections.push(sailSection(info, rows.sails, w));
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Stand and rigging list',
      subtitle: 'Loads, tipping and wind figures with their basis',
      documentType: 'List',
      scale: 'none',
      units: lengthUnits === 'imperial' ? 'ft-in, kg, lb' : 'm, kg',
    },
    sections,
    [
      'Figures are from this plan and its gear book: load over the rating of the kind; holding-down over tipping moment about the edge of the legs, with the wind of the plan. Cable, gel and people nearby are not counted. The label on the real one and the rigger decide.',
      'Overhead work is for qualified riggers; every part above people has a second bond. * Rating of the kind, not read off this one.',
    ],
  );
};

const sailSection = (info: SetInfo, sails: readonly SailRow[], w: number): Section => {
  const { lengthUnits } = planRecord(info.plan);
  const speeds = sails[0]?.speeds.map((s) => s.speedMps) ?? [];
  const columns = placeColumns(
    [
      { id: 'label', head: 'Frame', leastMm: 60, grow: 2 },
      { id: 'area', head: 'Face m²', leastMm: 14, align: 'right' },
      { id: 'guys', head: 'Lines', leastMm: 10, align: 'right' },
      { id: 'what', head: '', leastMm: 22 },
      ...speeds.map(
        (v, i): Column => ({
          id: `s${i}`,
          head: formatWind(v, lengthUnits),
          leastMm: 27,
          grow: 1,
          align: 'right',
          dispensable: i > 2 ? i : 0,
          group: 'Wind, gusts included',
        }),
      ),
    ],
    w,
  );
  return {
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? 'Frames in wind (continued)' : 'Frames in wind',
          'force on the face, pull in one windward line, and factor against tipping without help',
        ),
        tableHead(columns),
      ),
    blocks: sails.flatMap((s) => {
      const at = (f: (v: SailRow['speeds'][number]) => string) =>
        Object.fromEntries(s.speeds.map((v, i) => [`s${i}`, f(v)]));
      return [
        tableRow(
          columns,
          {
            label: { text: s.label, weight: 'semibold' },
            area: cell(s.areaM2, 1),
            guys: s.guys === 0 ? '–' : cell(s.guys),
            what: 'force',
            ...at((v) => formatNewtons(v.forceN, lengthUnits)),
          },
          { keep: true, ruleFrom: 'what', mark: markFor(info, s.gripId) },
        ),
        ...(s.guys > 0
          ? [
              tableRow(
                columns,
                { what: 'in one line', ...at((v) => formatNewtons(v.guyN, lengthUnits)) },
                { keep: true, ruleFrom: 'what' },
              ),
            ]
          : []),
        tableRow(columns, {
          label: s.shareAssumed ? { text: 'no cloth in the plan: counted as solid', role: 'ink-soft' } : '',
          what: 'factor',
          ...at((v) => formatFactor(v.tipFactor)),
        }),
      ];
    }),
  };
};
