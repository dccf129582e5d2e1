import { formatCableLength } from '../kernel/units.ts';
import { planRecord } from '../plan/plan.ts';
import { DEPARTMENTS, type GearLine, gearLines, massOf } from '../report/gear-lines.ts';
import { SPARE_GROUPS, spareBasis, sparePct } from '../report/spares.ts';
import { cell } from './figures.ts';
import { columnWidth, flowPages, type Section } from './flow.ts';
import { emptyBox } from './run-sheet.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const GEAR: readonly Column[] = [
  { id: 'name', head: 'Kind', leastMm: 58, grow: 3 },
  { id: 'type', head: 'Type', leastMm: 21, grow: 0.5, dispensable: 2 },
  { id: 'count', head: 'On the plan', leastMm: 17, align: 'right' },
  { id: 'spare', head: 'Spare', leastMm: 11, align: 'right' },
  { id: 'order', head: 'Order', leastMm: 11, align: 'right' },
  { id: 'each', head: 'Each kg', leastMm: 13, align: 'right' },
  { id: 'all', head: 'All kg', leastMm: 14, align: 'right' },
  { id: 'changed', head: 'Changed to', leastMm: 20 },
];

const TRUCK: readonly Column[] = [
  { id: 'name', head: 'What', leastMm: 58, grow: 3 },
  { id: 'order', head: 'Pieces', leastMm: 12, align: 'right' },
  { id: 'each', head: 'Each kg', leastMm: 13, align: 'right' },
  { id: 'all', head: 'All kg', leastMm: 14, align: 'right' },
  { id: 'where', head: 'Where on the truck', leastMm: 36, grow: 1 },
  { id: 'out', head: 'Loaded', leastMm: 12 },
  { id: 'back', head: 'Back', leastMm: 9 },
];

/** Two columns of text on a wide sheet. */
const columnsOn = (info: SetInfo): number => (columnWidth(info, 2) >= 175 ? 2 : 1);

const kgText = (kg: number): string => (Number.isFinite(kg) ? kg.toFixed(1) : '–');

const linesOf = (info: SetInfo): readonly GearLine[] =>
  gearLines(info.plan, (mm) => formatCableLength(mm, planRecord(info.plan).lengthUnits));

const TYPE_WORDS: Readonly<Record<string, string>> = {
  box: 'distribution',
  dataSplitter: 'data splitter',
};

const massRemark = (lines: readonly GearLine[]): string => {
  const { kg, unknown } = massOf(lines);
  return `${kg.toFixed(0)} kg${unknown > 0 ? `, ${unknown} without a mass` : ''}`;
};

/** Sections of one list, one for each department that has something. */
const byDepartment = (
  lines: readonly GearLine[],
  make: (department: string, lines: readonly GearLine[]) => Section,
): readonly Section[] =>
  DEPARTMENTS.flatMap((d) => {
    const own = lines.filter((l) => l.department === d);
    return own.length === 0 ? [] : [make(d, own)];
  });

/** Gear to order by department and type, with spares and masses. */
export const gearPages = (info: SetInfo): readonly PageMaker[] => {
  const lines = linesOf(info);
  if (lines.length === 0) return [];
  const across = columnsOn(info);
  const columns = placeColumns(GEAR, columnWidth(info, across));
  const sections = byDepartment(lines, (department, own) => ({
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? `${department} (continued)` : department,
          `${own.reduce((n, l) => n + l.order, 0)} pieces with spares, ${massRemark(own)}`,
        ),
        tableHead(columns),
      ),
    blocks: own.map((l) =>
      tableRow(columns, {
        name: l.name,
        type: { text: TYPE_WORDS[l.type] ?? l.type, role: 'ink-soft' },
        count: cell(l.count),
        spare: l.spare === 0 ? '' : cell(l.spare),
        order: { text: cell(l.order), weight: 'semibold' },
        each: kgText(l.eachKg),
        all: kgText(l.allKg),
        changed: emptyBox(20),
      }),
    ),
  }));
  return flowPages(
    info,
    {
      title: 'Gear list',
      subtitle: 'Gear by department and type, spares and mass',
      documentType: 'List',
      scale: 'none',
      units: 'kg',
    },
    sections,
    [
      `Spares: ${SPARE_GROUPS.map((g) => `${g} ${sparePct(info.plan, g)} %`).join(', ')} (${spareBasis(info.plan, SPARE_GROUPS)}); lights to the nearest whole, all else rounded up. Write what is ordered instead into the box.`,
      'Masses are planning values of the gear book; the label on the real one comes first. Gel, expendables and cases are not counted.',
    ],
    across,
  );
};

/** What goes on the truck, with the mass of each line and of all. */
export const truckPages = (info: SetInfo): readonly PageMaker[] => {
  const lines = linesOf(info);
  if (lines.length === 0) return [];
  const across = columnsOn(info);
  const columns = placeColumns(TRUCK, columnWidth(info, across));
  const total = massOf(lines);
  const sections: Section[] = [
    ...byDepartment(lines, (department, own) => ({
      head: (continued: boolean) =>
        stacked(
          headingBlock(continued ? `${department} (continued)` : department, massRemark(own)),
          tableHead(columns),
        ),
      blocks: own.map((l) =>
        tableRow(columns, {
          name: l.name,
          order: cell(l.order),
          each: kgText(l.eachKg),
          all: kgText(l.allKg),
          where: emptyBox(36),
          out: emptyBox(3.2),
          back: emptyBox(3.2),
        }),
      ),
    })),
    {
      head: () => headingBlock('All together', 'spares counted; cases, gel and expendables not'),
      blocks: [
        ...DEPARTMENTS.flatMap((d) => {
          const own = lines.filter((l) => l.department === d);
          return own.length === 0
            ? []
            : [
                tableRow(columns, {
                  name: d,
                  order: cell(own.reduce((n, l) => n + l.order, 0)),
                  all: kgText(massOf(own).kg),
                }),
              ];
        }),
        tableRow(
          columns,
          {
            name: { text: 'Total mass', weight: 'semibold' },
            order: { text: cell(lines.reduce((n, l) => n + l.order, 0)), weight: 'semibold' },
            all: { text: kgText(total.kg), weight: 'semibold' },
            where: total.unknown > 0 ? `${total.unknown} lines without a mass are not in it` : '',
          },
          { rule: 'thin' },
        ),
      ],
    },
  ];
  return flowPages(
    info,
    {
      title: 'Truck list',
      subtitle: 'What is loaded, with masses',
      documentType: 'List',
      scale: 'none',
      units: 'kg',
    },
    sections,
    [
      'Masses are planning values of the gear book; weigh what the payload or an axle depends on. Cases and carts add to them.',
      'Load and lash as the driver directs.',
    ],
    across,
  );
};
