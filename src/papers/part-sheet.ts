import { wrapText } from '../drawing/text.ts';
import { compareNatural } from '../kernel/ids.ts';
import { partGrid, partsOf } from '../plan/part-levels.ts';
import { kindOf, levelId, levelOf, recordsOf, setupsOf } from '../plan/plan.ts';
import type { Fixture, PartLevel, Setup } from '../plan/records/index.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { CAP, type Ink, PITCH_MM } from './ink.ts';
import { markFor, revisionTriangle } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { headingBlock } from './table.ts';

/** Width of the names at the left: number, level, use. */
const LABEL_MM = 62;
const USE_X_MM = 28;
const USE_W_MM = LABEL_MM - USE_X_MM - 2;
const ROW_MM = 6.4;
const MOST_CELL_MM = 12;
/** Cells narrower than this carry no number. */
const NUMBER_MM = 5.2;
const PLAIN = '#ffd9a0';

/** The cells of a row: each in its colour, as strong as its level, with the level where there is room. */
const drawRow = (
  ink: Ink,
  parts: readonly PartLevel[],
  at: { readonly x: number; readonly y: number; readonly cellMm: number },
): void => {
  parts.forEach((p, i) => {
    const x = at.x + i * at.cellMm;
    ink.add([
      {
        kind: 'path',
        d: [
          ['M', x, at.y],
          ['L', x + at.cellMm, at.y],
          ['L', x + at.cellMm, at.y + ROW_MM - 2.6],
          ['L', x, at.y + ROW_MM - 2.6],
          ['Z'],
        ],
        fill: { role: 'paper', color: p.color ?? PLAIN, opacity: Math.max(0, Math.min(1, p.levelPct / 100)) },
        stroke: { role: 'ink', weightMm: 0.13 },
      },
    ]);
  });
};

const unitBlock = (info: SetInfo, s: Setup, f: Fixture, widthMm: number): Block => {
  const parts = partsOf(info.plan, s.id, f.id) ?? [];
  const grid = partGrid(kindOf(info.plan, f.kindId, 'fixture'), parts.length);
  const cellMm = Math.min(MOST_CELL_MM, (widthMm - LABEL_MM) / grid.columns);
  const useLines = wrapText(f.use, CAP.note, 'regular', USE_W_MM).length;
  const numbered = cellMm >= NUMBER_MM;
  const rowMm = ROW_MM + (numbered ? 1.2 : -1.4);
  return {
    heightMm: Math.max(grid.rows * rowMm + 1.6, useLines * PITCH_MM + 2),
    draw: (ink, area) => {
      const letter = markFor(info, f.id, levelId(s.id, f.id));
      if (letter) revisionTriangle(ink, area.x - 2.7, area.y + 2.4, letter, 3.4);
      ink.text(area.x, area.y + 3.4, f.unit, { capMm: CAP.value, weight: 'semibold', maxMm: 14 });
      ink.text(area.x + 16, area.y + 3.4, `${levelOf(info.plan, s.id, f.id).levelPct} %`, { maxMm: 12 });
      ink.paragraph(area.x + USE_X_MM, area.y + 3.4, f.use, USE_W_MM, { role: 'ink-soft' });
      for (let r = 0; r < grid.rows; r++) {
        const row = parts.slice(r * grid.columns, (r + 1) * grid.columns);
        const y = area.y + 0.4 + r * rowMm;
        drawRow(ink, row, { x: area.x + LABEL_MM, y, cellMm });
        if (numbered)
          row.forEach((p, i) => {
            ink.text(
              area.x + LABEL_MM + (i + 0.5) * cellMm,
              y + ROW_MM + 0.1,
              String(Math.round(p.levelPct)),
              { align: 'center', role: 'ink-soft' },
            );
          });
      }
    },
  };
};

/** Levels and colours of the parts of units, setup by setup, as they are run on the desk. */
export const partSheets = (info: SetInfo): readonly PageMaker[] => {
  const { plan } = info;
  const w = flowArea(info).w;
  const fixtures = [...recordsOf(plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  const sections = setupsOf(plan).flatMap((s): readonly Section[] => {
    const own = fixtures.filter((f) => partsOf(plan, s.id, f.id));
    if (own.length === 0) return [];
    return [
      {
        head: (continued) =>
          headingBlock(
            `${[s.scene, s.name].filter(Boolean).join(' ')}${continued ? ' (continued)' : ''}`,
            `${own.length} ${own.length === 1 ? 'unit' : 'units'} with levels of their own for their parts`,
          ),
        blocks: own.map((f) => unitBlock(info, s, f, w)),
      },
    ];
  });
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Part levels',
      subtitle: 'Colour and level of each part, from the first part on',
      documentType: 'List',
      scale: 'none',
      units: '%',
    },
    sections,
    [
      'A part is as strong in print as its level; numbers are per cent where there is room. The per cent beside a unit are the mean of its parts, which its watts follow; colour is not counted in them.',
    ],
  );
};
