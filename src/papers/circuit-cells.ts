import { cableLength } from '../derive/lengths.ts';
import type { SupplyEntity } from '../derive/types.ts';
import { stockText } from '../drawing/one-line/words.ts';
import { fitText, wrapText } from '../drawing/text.ts';
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
import { type Cell, type Column, type PlacedColumn, pitchOf, placeColumns } from './table.ts';

/** Lines a name, and the use under it, may take. */
const UNIT_LINES = 6;

const COLUMNS: readonly Column[] = [
  { id: 'way', head: 'Way', leastMm: 9 },
  { id: 'breaker', head: 'Breaker', leastMm: 17, dispensable: 3 },
  { id: 'leg', head: 'Leg', leastMm: 12 },
  { id: 'unit', head: 'Unit and use', leastMm: 52, grow: 4 },
  { id: 'cable', head: 'Cable', leastMm: 32, grow: 1, group: 'Cable', dispensable: 4, note: true },
  { id: 'stock', head: 'Stock', leastMm: 21, group: 'Cable', dispensable: 6, note: true },
  { id: 'route', head: 'Route', leastMm: 12, align: 'right', group: 'Cable', dispensable: 5 },
  { id: 'w', head: 'W', leastMm: 11, align: 'right', group: 'Load, this setup' },
  { id: 'pf', head: 'PF', leastMm: 8, align: 'right', group: 'Load, this setup', dispensable: 9 },
  { id: 'va', head: 'VA', leastMm: 11, align: 'right', group: 'Load, this setup', dispensable: 8 },
  { id: 'here', head: 'this setup', leastMm: 12, align: 'right', group: 'Amps' },
  { id: 'worst', head: 'worst', leastMm: 10, align: 'right', group: 'Amps' },
  { id: 'limit', head: 'limit', leastMm: 9, align: 'right', group: 'Amps' },
  { id: 'bar', head: '% of limit, worst', leastMm: 25, dispensable: 7, note: true },
  { id: 'pct', head: '%', leastMm: 8, align: 'right' },
  { id: 'volts', head: 'Volts', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'drop', head: 'Drop', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'findings', head: 'Findings', leastMm: 20, grow: 1, note: true },
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

const tagMm = (f: Finding): number =>
  7.5 + widthOf(`${f.severity.toUpperCase()} ${f.number}`, { weight: 'semibold' });

/** Lines of findings in one cell at most. */
const FINDING_LINES = 6;
/** Room for how many more there are. */
const MORE_MM = 9;

/** Findings by the lines they take in a width, as many as a cell holds. */
const findingLines = (own: readonly Finding[], w: number): readonly (readonly Finding[])[] => {
  const lines: Finding[][] = [];
  let x = Number.POSITIVE_INFINITY;
  for (const f of own) {
    const room = lines.length === FINDING_LINES ? w - MORE_MM : w;
    if (x + tagMm(f) - 2 > room) {
      lines.push([]);
      x = 0;
    }
    lines.at(-1)?.push(f);
    x += tagMm(f);
  }
  return lines.slice(0, FINDING_LINES);
};

/** Findings, each once, as signs with numbers, on as many lines as they need; how many more there are where that is many. */
export const findingCell = (findings: readonly Finding[]): Cell => {
  const own = [...new Set(findings)];
  return {
    lines: (c) => Math.max(1, findingLines(own, c.w).length),
    draw: (ink, c) => {
      let base = c.y + c.h / 2 + CAP.note / 2;
      let shown = 0;
      const lines = findingLines(own, c.w);
      for (const [i, line] of lines.entries()) {
        let x = c.x;
        shown += line.length;
        for (const f of line) {
          severityTag(ink, f.severity, f.number, x, base);
          ink.link(x, base - 3, tagMm(f) - 2, 4, `finding:${f.number}`, `working:${f.number}`);
          x += tagMm(f);
        }
        if (i === lines.length - 1 && shown < own.length)
          ink.text(x, base, `+${own.length - shown}`, { role: 'ink-soft' });
        base += pitchOf(c.capMm);
      }
    },
  };
};

/** Circles no larger than this stay inside a row. */
const MOST_R_MM = 2.7;

/** Room of a unit number that is too long for a circle. */
const LONG_MM = 22;

interface Bubble {
  readonly capMm: number;
  readonly text: string;
  readonly w: number;
  readonly round: boolean;
}

/** A unit number in its circle, in smaller letters where it is long, and without a circle where it is longer still. */
const bubbleOf = (unit: string, capMm: number): Bubble => {
  const rOf = (cap: number): number => Math.max(cap * 0.95, 2, widthOf(unit, { capMm: cap }) / 2 + 0.5);
  const cap = rOf(capMm) <= MOST_R_MM ? capMm : CAP.note;
  const round = rOf(cap) <= MOST_R_MM;
  const text = round ? unit : fitText(unit, cap, 'regular', LONG_MM);
  return { capMm: cap, text, round, w: round ? 2 * rOf(cap) : widthOf(text, { capMm: cap }) };
};

/** Unit bubble, name and use of a load; the use goes on after the name where there is room, else under it. */
export const unitCell = (s: Schedule, l: CircuitLoad): Cell => {
  const f = l.fixture;
  const name = f ? (kindOf(s.info.plan, f.kindId)?.name ?? l.load.label) : l.load.label;
  const use = [f?.use ?? '', l.outlet ? `at ${l.outlet.label}` : ''].filter(Boolean).join(', ');
  const layOut = (c: { readonly w: number; readonly capMm: number }) => {
    const x = l.depth * 3 + (f ? bubbleOf(f.unit, c.capMm).w + 1.6 : 0);
    const w = Math.max(8, c.w - x);
    const names = wrapText(use ? `${name},` : name, c.capMm, 'regular', w, UNIT_LINES);
    const nameW = widthOf(names.at(-1) ?? '', { capMm: c.capMm });
    const after = use !== '' && nameW + 1 + widthOf(use) <= w;
    return {
      x,
      w,
      names,
      after,
      nameW,
      uses: use === '' ? [] : wrapText(use, CAP.note, 'regular', w, UNIT_LINES),
    };
  };
  return {
    lines: (c) => {
      const { names, after, uses } = layOut(c);
      return names.length + (after ? 0 : uses.length);
    },
    draw: (ink, c) => {
      const base = c.y + c.h / 2 + c.capMm / 2;
      const { x, w, after, nameW } = layOut(c);
      if (f) {
        const b = bubbleOf(f.unit, c.capMm);
        const xMm = c.x + l.depth * 3 + b.w / 2;
        if (b.round) ink.circle(xMm, base - b.capMm / 2, b.w / 2, { weightMm: 0.18 });
        ink.text(xMm, base, b.text, { capMm: b.capMm, align: 'center' });
      }
      const pitchMm = pitchOf(c.capMm);
      const next = ink.paragraph(c.x + x, base, use ? `${name},` : name, w, {
        capMm: c.capMm,
        pitchMm,
        maxLines: UNIT_LINES,
      });
      if (after) ink.text(c.x + x + nameW + 1, next - pitchMm, use);
      else if (use) ink.paragraph(c.x + x, next, use, w, { pitchMm, maxLines: UNIT_LINES });
    },
  };
};

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
    bar:
      limit === undefined
        ? ''
        : { draw: (ink: Ink, c) => loadBar(ink, c.x, c.y + 1.4, c.w, c.h - 2.8, { here, worst, limit }) },
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
