import { cableLength } from '../derive/lengths.ts';
import type { SupplyEntity } from '../derive/types.ts';
import { BUBBLE_CAP_MM } from '../drawing/label-place.ts';
import { stockText } from '../drawing/one-line/words.ts';
import { formatCableLength } from '../kernel/units.ts';
import { kindOf, recordOf } from '../plan/plan.ts';
import type { Finding } from '../report/types.ts';
import { loadBar } from './bars.ts';
import type { Circuit, CircuitLoad } from './circuit-rows.ts';
import { cell, largestLegA, pctOf, type Reader, readerOf } from './figures.ts';
import { flowArea } from './flow.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import type { SetInfo } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import { type Cell, type Column, type PlacedColumn, placeColumns } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'way', head: 'Way', leastMm: 11 },
  { id: 'breaker', head: 'Breaker', leastMm: 15, dispensable: 3 },
  { id: 'leg', head: 'Leg', leastMm: 12 },
  { id: 'unit', head: 'Unit and use', leastMm: 52, grow: 4 },
  { id: 'cable', head: 'Cable', leastMm: 32, grow: 1, group: 'Cable', dispensable: 4 },
  { id: 'stock', head: 'Stock', leastMm: 21, group: 'Cable', dispensable: 6 },
  { id: 'route', head: 'Route', leastMm: 12, align: 'right', group: 'Cable', dispensable: 5 },
  { id: 'w', head: 'W', leastMm: 11, align: 'right', group: 'Load, this setup' },
  { id: 'pf', head: 'PF', leastMm: 8, align: 'right', group: 'Load, this setup', dispensable: 9 },
  { id: 'va', head: 'VA', leastMm: 11, align: 'right', group: 'Load, this setup', dispensable: 8 },
  { id: 'here', head: 'this setup', leastMm: 15, align: 'right', group: 'Amps' },
  { id: 'worst', head: 'worst', leastMm: 10, align: 'right', group: 'Amps' },
  { id: 'limit', head: 'limit', leastMm: 9, align: 'right', group: 'Amps' },
  { id: 'bar', head: '% of limit, worst', leastMm: 27, dispensable: 7 },
  { id: 'pct', head: '%', leastMm: 8, align: 'right' },
  { id: 'volts', head: 'Volts', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'drop', head: 'Drop', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'findings', head: 'Findings', leastMm: 30, grow: 2 },
];

export interface Schedule {
  readonly info: SetInfo;
  readonly r: Reader;
  readonly columns: readonly PlacedColumn[];
  readonly byRecord: ReadonlyMap<string, readonly Finding[]>;
}

export const scheduleOf = (info: SetInfo): Schedule => {
  const byRecord = new Map<string, Finding[]>();
  for (const f of info.assessment.findings) {
    for (const id of f.recordIds) {
      const list = byRecord.get(id);
      if (list) list.push(f);
      else byRecord.set(id, [f]);
    }
  }
  return {
    info,
    r: readerOf(info.assessment, info.setupId),
    columns: placeColumns(COLUMNS, flowArea(info).w),
    byRecord,
  };
};

export const findingsAbout = (s: Schedule, ids: readonly string[]): readonly Finding[] =>
  ids.flatMap((id) => s.byRecord.get(id) ?? []);

/** Findings, each once, as signs with numbers; how many more there are where the cell is full. */
export const findingCell = (findings: readonly Finding[]): Cell => {
  const own = [...new Set(findings)];
  return {
    draw: (ink, c) => {
      const base = c.y + c.h / 2 + CAP.note / 2;
      let x = c.x;
      own.forEach((f, i) => {
        const w = 5.5 + widthOf(`${f.severity.toUpperCase()} ${f.number}`, { weight: 'semibold' });
        const last = i === own.length - 1;
        if (x + w + (last ? 0 : 7) > c.x + c.w) {
          if (x < c.x + c.w - 6) ink.text(x, base, `+${own.length - i}`, { role: 'ink-soft' });
          x = Number.POSITIVE_INFINITY;
          return;
        }
        x = severityTag(ink, f.severity, f.number, x, base) + 2;
      });
    },
  };
};

/** Unit bubble, name and use of a load, cut to the cell. */
export const unitCell = (s: Schedule, l: CircuitLoad): Cell => ({
  draw: (ink, c) => {
    const base = c.y + c.h / 2 + CAP.note / 2;
    let x = c.x + l.depth * 3;
    const f = l.fixture;
    if (f) {
      const r = Math.max(2, widthOf(f.unit, { capMm: CAP.note }) / 2 + 0.6);
      ink.add([
        { kind: 'circle', xMm: x + r, yMm: c.y + c.h / 2, rMm: r, stroke: { role: 'ink', weightMm: 0.18 } },
      ]);
      ink.text(x + r, base, f.unit, { align: 'center', maxMm: BUBBLE_CAP_MM * 4 });
      x += 2 * r + 1.6;
    }
    const name = f ? (kindOf(s.info.plan, f.kindId)?.name ?? l.load.label) : l.load.label;
    const full = [name, f?.use ?? '', l.outlet ? `at ${l.outlet.label}` : ''].filter(Boolean).join(', ');
    ink.text(x, base, full, { maxMm: c.x + c.w - x });
  },
});

export const cableCells = (s: Schedule, cable: SupplyEntity | undefined): Record<string, Cell> => {
  const record = cable && recordOf(s.info.plan, 'cable', cable.recordId);
  if (!record) return {};
  const length = cableLength(s.info.plan, record);
  return {
    cable: kindOf(s.info.plan, record.kindId)?.name ?? '–',
    stock: length ? stockText(length.piecesMm, s.info.units) : '–',
    route: length ? formatCableLength(length.drawnMm + length.risesMm, s.info.units) : '–',
  };
};

/** A box to write a measured value in. */
const measureCell: Cell = {
  draw: (ink, c) => {
    ink.rect(c.x + Math.max(0, c.w - 10), c.y + 0.7, Math.min(10, c.w), c.h - 1.4, { weightMm: 0.25 });
  },
};

export const voltsCells = (s: Schedule, key: string): Record<string, Cell> => {
  const v = s.r.worst(key, 'voltsV');
  const drop = s.r.worst(key, 'dropPct');
  const dropV = s.r.worst(key, 'dropV');
  if (!Number.isFinite(v))
    return { volts: measureCell, drop: Number.isFinite(dropV) ? `${dropV.toFixed(1)} V` : '–' };
  return { volts: cell(v, 1), drop: `${cell(drop, 1)} %` };
};

export const ampCells = (s: Schedule, e: SupplyEntity, limit: number | undefined): Record<string, Cell> => {
  const here = largestLegA(s.r, e, 'here');
  const worst = largestLegA(s.r, e, 'worst');
  return {
    here: cell(here, 1),
    worst: { text: cell(worst, 1), weight: 'semibold' },
    ...limitCells(here, worst, limit),
  };
};

export const limitCells = (here: number, worst: number, limit: number | undefined): Record<string, Cell> => {
  const pct = pctOf(worst, limit);
  const over = pct > 100;
  return {
    limit: limit === undefined ? '–' : cell(limit),
    bar: { draw: (ink: Ink, c) => loadBar(ink, c.x, c.y + 1.4, c.w, c.h - 2.8, { here, worst, limit }) },
    pct: { text: cell(pct), weight: over ? 'semibold' : 'regular', role: over ? 'stop' : 'ink' },
  };
};

export const powerCells = (s: Schedule, key: string): Record<string, Cell> => {
  const w = s.r.here(key, 'loadW');
  const va = s.r.here(key, 'loadVa');
  return { w: cell(w), pf: va > 0 ? cell(w / va, 2) : '–', va: cell(va) };
};

/** Findings whose figure is the way's own: those that name its box and were counted on this way. */
export const wayFindings = (s: Schedule, c: Circuit): readonly Finding[] =>
  c.way.what !== 'way'
    ? []
    : findingsAbout(s, [c.way.recordId]).filter((f) => f.figureKey?.includes(`@${c.way.key}@`));
