import { stockText } from '../drawing/one-line/words.ts';
import { formatCableLength } from '../kernel/units.ts';
import { recordName } from '../plan/names.ts';
import { planRecord } from '../plan/plan.ts';
import { bundlesOf } from './bundles.ts';
import { cell, legsText } from './figures.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { CAP } from './ink.ts';
import { markFor } from './revision-marks.ts';
import { type Run, runsOf } from './runs.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'run', head: 'Run', leastMm: 11 },
  { id: 'from', head: 'From', leastMm: 28, grow: 1 },
  { id: 'to', head: 'To', leastMm: 28, grow: 1 },
  { id: 'leg', head: 'Leg', leastMm: 14 },
  { id: 'cable', head: 'Cable', leastMm: 40, grow: 3 },
  { id: 'pieces', head: 'Pieces', leastMm: 26, grow: 1 },
  { id: 'joints', head: 'Joints', leastMm: 11, align: 'right' },
  { id: 'route', head: 'Route', leastMm: 13, align: 'right', dispensable: 3 },
  { id: 'plug', head: 'Plug at the source end', leastMm: 46, grow: 2, dispensable: 2, note: true },
  { id: 'socket', head: 'Socket at the load end', leastMm: 44, grow: 2, dispensable: 2, note: true },
  { id: 'bundle', head: 'Bundle', leastMm: 11, dispensable: 5 },
  { id: 'tape', head: 'Tape', leastMm: 24, dispensable: 4 },
  { id: 'pulled', head: 'Pull', leastMm: 11, note: true },
  { id: 'struck', head: 'Strike', leastMm: 11, note: true },
];

const BUNDLE_COLUMNS: readonly Column[] = [
  { id: 'tag', head: 'Bundle', leastMm: 14 },
  { id: 'tape', head: 'Tape', leastMm: 24 },
  { id: 'at', head: 'Starts at', leastMm: 36, grow: 1 },
  { id: 'runs', head: 'Runs', leastMm: 60, grow: 4 },
  { id: 'count', head: 'Count', leastMm: 12, align: 'right' },
];

const COIL_COLUMNS: readonly Column[] = [
  { id: 'at', head: 'Position', leastMm: 30, grow: 1 },
  { id: 'cable', head: 'Cable', leastMm: 40, grow: 1 },
  { id: 'coils', head: 'Coils', leastMm: 40, grow: 1 },
  { id: 'count', head: 'Count', leastMm: 12, align: 'right' },
  { id: 'runs', head: 'For runs', leastMm: 50, grow: 3 },
];

/** An empty box: to tick, or to write a tape colour in. */
export const emptyBox = (widthMm: number): Cell => ({
  draw: (ink, c) => ink.rect(c.x, c.y + 0.8, Math.min(widthMm, c.w), c.h - 1.6, { weightMm: 0.18 }),
});

interface Coil {
  readonly at: string;
  readonly cable: string;
  readonly piecesMm: readonly number[];
  readonly runs: readonly string[];
}

/** A number in the order of work, and a box to tick beside it. */
const numberedBox = (n: number): Cell => ({
  draw: (ink, c) => {
    ink.rect(c.x, c.y + c.h / 2 - 1.6, 3.2, 3.2, { weightMm: 0.18 });
    ink.text(c.x + 4.2, c.y + c.h / 2 + CAP.note / 2, String(n), { role: 'ink-soft', maxMm: c.w - 4.2 });
  },
});

/** Coils dropped at each position: where a run starts. */
const coilsOf = (info: SetInfo, runs: readonly Run[]): readonly Coil[] => {
  const groups = new Map<string, { at: string; cable: string; piecesMm: number[]; runs: string[] }>();
  for (const run of runs) {
    const at = recordName(info.plan, run.cable.from.recordId);
    const key = `${run.cable.from.recordId}|${run.kindId}`;
    const group = groups.get(key) ?? { at, cable: run.kindName, piecesMm: [], runs: [] };
    group.piecesMm.push(...run.piecesMm);
    group.runs.push(run.number);
    groups.set(key, group);
  }
  return [...groups.values()].map((g) => ({ ...g, piecesMm: [...g.piecesMm].sort((a, b) => b - a) }));
};

/** Every run with its ends and pieces in the order of pulling, and the coils to drop at each position. */
export const runSheetPages = (info: SetInfo): readonly PageMaker[] => {
  const runs = runsOf(info);
  if (runs.length === 0) return [];
  const { practice, lengthUnits } = planRecord(info.plan);
  const w = flowArea(info).w;
  const columns = placeColumns(COLUMNS, w);
  const coilColumns = placeColumns(COIL_COLUMNS, w);
  const bundles = bundlesOf(info, runs);
  const bundleColumns = placeColumns(BUNDLE_COLUMNS, w);
  const row = (r: Run, i: number): Readonly<Record<string, Cell>> => ({
    run: { text: r.number, weight: 'semibold' },
    from: r.from,
    to: r.to,
    leg: r.entity?.sourceId === undefined ? '–' : legsText(practice, r.entity),
    cable: r.kindName,
    pieces: r.pieces,
    joints: r.couplings === 0 ? '' : cell(r.couplings),
    route: Number.isFinite(r.routeMm) ? formatCableLength(r.routeMm, lengthUnits) : '–',
    plug: r.plug,
    socket: r.socket === r.plug && r.plug.length > 34 ? 'the same' : r.socket,
    bundle: bundles.get(r.cable.from.recordId)?.tag ?? '',
    tape: bundles.get(r.cable.from.recordId)?.tape ?? '',
    pulled: numberedBox(i + 1),
    struck: numberedBox(runs.length - i),
  });
  const sections: Section[] = [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? 'Runs (continued)' : 'Runs',
            'in the order of pulling, from the sources outwards; struck in the reverse order',
          ),
          tableHead(columns),
        ),
      blocks: runs.map((r, i) =>
        tableRow(columns, row(r, i), { mark: markFor(info, r.cable.id, r.cable.to.recordId) }),
      ),
    },
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? 'Bundles (continued)' : 'Bundles',
            'what starts at one place lies together: its tag and tape at both ends of every run',
          ),
          tableHead(bundleColumns),
        ),
      blocks: [...new Set(bundles.values())].map((b) =>
        tableRow(bundleColumns, {
          tag: { text: b.tag, weight: 'semibold' },
          tape: b.tape,
          at: b.at,
          runs: b.runs.map((r) => r.number).join(', '),
          count: cell(b.runs.length),
        }),
      ),
    },
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? 'Coils by position (continued)' : 'Coils by position',
            'pieces to drop where the runs start',
          ),
          tableHead(coilColumns),
        ),
      blocks: coilsOf(info, runs).map((c) =>
        tableRow(coilColumns, {
          at: { text: c.at, weight: 'semibold' },
          cable: c.cable,
          coils: stockText(c.piecesMm, lengthUnits),
          count: cell(c.piecesMm.length),
          runs: c.runs.join(', '),
        }),
      ),
    },
  ];
  return flowPages(
    info,
    {
      title: 'Run sheet',
      subtitle: 'Runs with ends, pieces and connectors',
      documentType: 'List',
      scale: 'none',
      units: lengthUnits === 'imperial' ? 'ft' : 'm',
    },
    sections,
    [
      'Runs are dead while they are laid and coupled. Order of connection and disconnection of single conductors: as the qualified person directs.',
      'Look over every piece before it goes out. Tape colours tell bundles apart and mean no leg; where the house has its own code, that one holds.',
    ],
  );
};
