import { drawContext } from '../drawing/context.ts';
import { unitFacts } from '../drawing/label-text.ts';
import { wrapText } from '../drawing/text.ts';
import type { Box } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { issuesOf } from '../plan/edits/issue.ts';
import { planInSetup } from '../plan/moves.ts';
import { fixturePlace, kindOf, planRecord, recordOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { datumOf } from './datum.ts';
import { zoneOf } from './frame.ts';
import { CAP, type Ink, PITCH_MM } from './ink.ts';
import type { PlotView } from './plot-layout.ts';
import { changedBoxes, revisionTriangle } from './revision-marks.ts';
import { CAUTION, type SetInfo } from './sheet-info.ts';

/** A piece of the column beside a plot. */
export interface ColumnBlock {
  readonly heightMm: number;
  draw(ink: Ink, x: number, y: number, w: number): void;
}

const ROW_MM = 3.9;
const HEAD_MM = 10;

const numberedBlock = (head: string, texts: readonly string[], w: number): ColumnBlock => {
  const notes = texts.map((t) => wrapText(t, CAP.note, 'regular', w - 5));
  return {
    heightMm: 8.4 + notes.flat().length * PITCH_MM,
    draw: (ink, x, y) => {
      ink.text(x, y + 5.2, head, { capMm: CAP.value, weight: 'semibold' });
      let base = y + 9.6;
      notes.forEach((lines, i) => {
        ink.text(x, base, String(i + 1), { weight: 'semibold' });
        for (const l of lines) {
          ink.text(x + 5, base, l);
          base += PITCH_MM;
        }
      });
    },
  };
};

export const notesBlock = (info: SetInfo, w: number): ColumnBlock => {
  const n = info.assessment.findings.length;
  return numberedBlock(
    'Notes',
    [
      'Sizes are of the plan as drawn. If a size looks wrong, ask; do not scale a copy. Heights are floor to lamp centre.',
      'A label reads: name, use, then way of the box, universe and address, height.',
      'Cable lengths are stock lengths made up to cover route, rises and slack.',
      `${n} ${n === 1 ? 'finding' : 'findings'}, and what was assumed, are on the circuit schedule.`,
    ],
    w,
  );
};

export const cautionBlock = (w: number): ColumnBlock => {
  const lines = wrapText(CAUTION, CAP.note, 'regular', w);
  return {
    heightMm: 8.4 + lines.length * PITCH_MM,
    draw: (ink, x, y) => {
      ink.text(x, y + 5.2, 'Cautions', { capMm: CAP.value, weight: 'semibold' });
      lines.forEach((l, i) => {
        ink.text(x, y + 9.6 + i * PITCH_MM, l);
      });
    },
  };
};

interface Revision {
  readonly letter: string;
  readonly date: string;
  readonly zone: string;
  readonly what: string;
  readonly by: string;
  readonly current: boolean;
}

const zonesOf = (info: SetInfo, floorId: Id, view: PlotView | undefined): string => {
  if (!view) return '';
  const middle = (b: Box) => ({ xMm: (b.minX + b.maxX) / 2, yMm: (b.minY + b.maxY) / 2 });
  const { bounds } = view;
  const here = changedBoxes(info, floorId, view.ratio).filter((b) => {
    const m = middle(b);
    return (
      view.part === undefined ||
      (m.xMm >= bounds.minX && m.xMm <= bounds.maxX && m.yMm >= bounds.minY && m.yMm <= bounds.maxY)
    );
  });
  const zones = here.map((b: Box) =>
    zoneOf(
      info.sheet,
      ((b.minX + b.maxX) / 2 - view.originXMm) / view.ratio,
      ((b.minY + b.maxY) / 2 - view.originYMm) / view.ratio,
    ),
  );
  const each = [...new Set(zones)].sort(compareNatural);
  return each.length > 2 ? `${each.slice(0, 2).join(' ')} …` : each.join(' ');
};

/** The issues of the plan, the last four, with where what changed is marked on this sheet. */
export const revisionsBlock = (
  info: SetInfo,
  floorId: Id,
  view: PlotView | undefined,
  w: number,
): ColumnBlock | undefined => {
  const { revision, draft, since } = info.options;
  const marked = info.changes.length;
  const list = issuesOf(info.plan).map((i): Revision => {
    const current = i.revision === revision && since !== undefined;
    return {
      letter: i.revision,
      date: i.date,
      zone: current ? zonesOf(info, floorId, view) : '',
      what: i.note || (current ? `${marked} changes` : i.revision === 'A' ? 'First issue' : ''),
      by: i.by,
      current,
    };
  });
  if (draft && since)
    list.push({
      letter: revision,
      date: 'draft',
      zone: zonesOf(info, floorId, view),
      what: `${marked} ${marked === 1 ? 'change' : 'changes'} since ${since.revision}`,
      by: '',
      current: true,
    });
  const shown = list.slice(-4);
  if (shown.length === 0) return undefined;
  const at = { date: 8, zone: 25, what: 36, by: w - 16 };
  const heights = shown.map(
    (r) => wrapText(r.what, CAP.note, 'regular', at.by - at.what - 2, 2).length * PITCH_MM + 1.2,
  );
  return {
    heightMm: 12.2 + heights.reduce((s, h) => s + h, 0),
    draw: (ink, x, y) => {
      ink.text(x, y + 5.2, 'Revisions', { capMm: CAP.value, weight: 'semibold' });
      const head = y + 9.8;
      ink.text(x, head, 'Rev', { role: 'ink-soft' });
      ink.text(x + at.date, head, 'Date', { role: 'ink-soft' });
      ink.text(x + at.zone, head, 'Zone', { role: 'ink-soft' });
      ink.text(x + at.what, head, 'What changed', { role: 'ink-soft' });
      ink.text(x + at.by, head, 'By', { role: 'ink-soft' });
      ink.line(x, head + 1.2, x + w, head + 1.2, 0.25);
      let base = head + 4.6;
      shown.forEach((r, i) => {
        if (r.current) revisionTriangle(ink, x + 2.6, base - 0.8, r.letter, 3.6);
        else ink.text(x + 2.6, base, r.letter, { weight: 'semibold', align: 'center', maxMm: 6 });
        ink.text(x + at.date, base, r.date, { maxMm: at.zone - at.date - 1 });
        ink.text(x + at.zone, base, r.zone, { maxMm: at.what - at.zone - 1 });
        ink.paragraph(x + at.what, base, r.what, at.by - at.what - 2, { maxLines: 2 });
        ink.text(x + at.by, base, r.by, { maxMm: w - at.by });
        base += heights[i] ?? PITCH_MM;
      });
    },
  };
};

interface TableColumn {
  readonly head: string;
  readonly x: number;
  readonly w: number;
  readonly align: 'left' | 'right';
}

const smallTable = (
  title: string,
  remark: string,
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
): ColumnBlock => ({
  heightMm: HEAD_MM + 3 + rows.length * ROW_MM,
  draw: (ink, x, y, w) => {
    ink.text(x, y + 5.2, title, { capMm: CAP.value, weight: 'semibold' });
    ink.text(x + w, y + 5.2, remark, { role: 'ink-soft', align: 'right', maxMm: w - 42 });
    const cell = (c: TableColumn, base: number, text: string, strong: boolean, soft: boolean): void =>
      ink.text(c.align === 'right' ? x + c.x + c.w : x + c.x, base, text, {
        align: c.align,
        maxMm: c.w,
        ...(strong ? { weight: 'semibold' as const } : {}),
        ...(soft ? { role: 'ink-soft' as const } : {}),
      });
    for (const c of columns) cell(c, y + 9.6, c.head, false, true);
    ink.line(x, y + 10.8, x + w, y + 10.8, 0.25);
    rows.forEach((r, i) => {
      const top = y + 10.8 + i * ROW_MM;
      columns.forEach((c, k) => {
        cell(c, top + 2.9, r[k] ?? '', k === 0, false);
      });
      ink.line(x, top + ROW_MM, x + w, top + ROW_MM, 0.13, 'ink-faint');
    });
  },
});

/** Rows of a small table that a height has room for. */
const rowsIn = (heightMm: number): number => Math.floor((heightMm - HEAD_MM - 3) / ROW_MM);

const unitsOf = (info: SetInfo, ids: readonly Id[]): readonly Fixture[] =>
  ids
    .flatMap((id) => recordOf(info.plan, 'fixture', id) ?? [])
    .sort((a, b) => compareNatural(a.unit, b.unit));

/**
 * What the labels of these units would have said, as a table in the margin. Gives how many of them it has; nothing where
 * the room is not enough for three.
 */
export const reducedBlock = (
  info: SetInfo,
  floorId: Id,
  ids: readonly Id[],
  w: number,
  roomMm: number,
): { readonly block: ColumnBlock; readonly shown: number } | undefined => {
  const fit = Math.min(ids.length, rowsIn(roomMm));
  if (ids.length === 0 || fit < Math.min(3, ids.length)) return undefined;
  const ctx = drawContext(info.plan, { floorId, setupId: info.setupId, nominalScale: 50 });
  const units = unitsOf(info, ids);
  const rows = units.slice(0, fit).map((f) => {
    const name = kindOf(info.plan, f.kindId)?.name ?? '';
    return [f.unit, f.use || name, unitFacts(ctx, f)];
  });
  const facts = Math.min(46, w * 0.5);
  return {
    shown: fit,
    block: smallTable(
      'Labels without room',
      fit < ids.length ? `${fit} of ${ids.length}; the rest in the unit list` : `${ids.length} units`,
      [
        { head: 'Unit', x: 0, w: 9, align: 'left' },
        { head: 'Use or name', x: 10, w: w - 12 - facts, align: 'left' },
        { head: 'Power, address, height', x: w - facts, w: facts, align: 'left' },
      ],
      rows,
    ),
  };
};

/** Places of all units of a floor from its datum; nothing where not all have room. */
export const settingOutBlock = (
  info: SetInfo,
  floorId: Id,
  ids: readonly Id[],
  w: number,
  roomMm: number,
): ColumnBlock | undefined => {
  if (ids.length === 0 || rowsIn(roomMm) < ids.length) return undefined;
  const { lengthUnits } = planRecord(info.plan);
  const plan = planInSetup(info.plan, info.setupId);
  const datum = datumOf(plan, floorId);
  const rows = unitsOf({ ...info, plan }, ids).map((f) => {
    const { at, heightMm } = fixturePlace(plan, f);
    return [
      f.unit,
      f.use,
      formatLength(at.xMm - datum.xMm, lengthUnits),
      formatLength(datum.yMm - at.yMm, lengthUnits),
      formatLength(heightMm, lengthUnits),
    ];
  });
  const col = 16;
  return smallTable(
    'Setting out',
    'from the lower left corner of the walls',
    [
      { head: 'Unit', x: 0, w: 9, align: 'left' },
      { head: 'Use', x: 10, w: w - 10 - 3 * col - 2, align: 'left' },
      { head: 'Right', x: w - 3 * col, w: col - 1, align: 'right' },
      { head: 'Up', x: w - 2 * col, w: col - 1, align: 'right' },
      { head: 'High', x: w - col, w: col, align: 'right' },
    ],
    rows,
  );
};
