import type { SupplyEntity } from '../../derive/types.ts';
import type { Plan } from '../../plan/plan.ts';
import { readerOf } from '../../report/reader.ts';
import type { Assessment, Finding } from '../../report/types.ts';
import { severityTag } from '../marks.ts';
import { type Sketch, widthOf } from '../sketch.ts';
import { COLUMN_MM, TAG_ROW_MM, TEXT_MM, TRUNK_MM } from './metrics.ts';
import type { OneLineContext } from './types.ts';

/** What the diagram reads: figures of one setup and the worst, and each finding at the one place it is about. */
export const oneLineContext = (
  plan: Plan,
  assessment: Assessment,
  setupId: string | undefined,
  columnMm: number = COLUMN_MM,
  folded?: ReadonlySet<string>,
  onFigure?: OneLineContext['onFigure'],
): OneLineContext => {
  const r = readerOf(assessment, setupId);
  const byKey = new Map<string, Finding[]>();
  for (const f of assessment.findings) {
    const figured = f.figureKey?.split('@')[1];
    const named = f.recordIds.find((id) => r.entity(id) !== undefined);
    const key = figured !== undefined && r.entity(figured) ? figured : named;
    if (key === undefined) continue;
    const list = byKey.get(key);
    if (list) list.push(f);
    else byKey.set(key, [f]);
  }
  const textMm = columnMm - TRUNK_MM - TEXT_MM - 1;
  return { plan, r, columnMm, textMm, setupId, findingsOf: (e) => byKey.get(e.key) ?? [], folded, onFigure };
};

const tagWidth = (f: Finding): number =>
  4 + widthOf(`${f.severity.toUpperCase()} ${f.number}`, { weight: 'semibold' });

/** Rows of tags for a width; at most `maxRows`, what is left over is counted at the end of the last. */
const tagRows = (
  findings: readonly Finding[],
  widthMm: number,
  maxRows: number,
): { readonly rows: readonly (readonly Finding[])[]; readonly left: number } => {
  const rows: Finding[][] = [];
  let x = Number.POSITIVE_INFINITY;
  let placed = 0;
  for (const f of findings) {
    const w = tagWidth(f);
    const last = placed === findings.length - 1;
    const fits = (from: number, row: number): boolean =>
      from + w + (row === maxRows - 1 && !last ? 5 : 0) <= widthMm;
    if (rows.length === 0 || !fits(x, rows.length - 1)) {
      if (rows.length === maxRows) break;
      rows.push([]);
      x = 0;
    }
    rows.at(-1)?.push(f);
    x += w + 2;
    placed++;
  }
  return { rows, left: findings.length - placed };
};

export const tagsHeight = (findings: readonly Finding[], widthMm: number, maxRows = 2): number =>
  tagRows(findings, widthMm, maxRows).rows.length * TAG_ROW_MM;

/** Tags from the left with the first baseline `TAG_ROW_MM` below y. */
export const drawTags = (
  s: Sketch,
  findings: readonly Finding[],
  x: number,
  y: number,
  widthMm: number,
  maxRows = 2,
): void => {
  const { rows, left } = tagRows(findings, widthMm, maxRows);
  rows.forEach((row, i) => {
    let at = x;
    const base = y + (i + 1) * TAG_ROW_MM - 0.6;
    for (const f of row) at = severityTag(s, f.severity, f.number, at, base) + 2;
    if (left > 0 && i === rows.length - 1) s.text(at, base, `+${left}`, { role: 'ink-soft' });
  });
};

/** Whether a unit is dark in the setup shown. */
export const isOff = (c: OneLineContext, e: SupplyEntity): boolean => {
  const w = c.r.here(e.key, 'loadW');
  return Number.isFinite(w) && w <= 0;
};
