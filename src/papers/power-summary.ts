import { legName } from '../derive/systems.ts';
import { formatVoltAmps, formatWatts } from '../kernel/units.ts';
import { planRecord } from '../plan/plan.ts';
import { loadBar } from './bars.ts';
import { cell, LEG_QUANTITIES, largestLegA, pctOf, type Reader, readerOf } from './figures.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import type { SetInfo } from './sheet-info.ts';

interface SummaryRow {
  readonly name: string;
  readonly here: number;
  readonly worst: number;
  readonly limit: number | undefined;
}

/** Legs and neutral of every source; for a house panel its circuits that carry something. */
const summaryRows = (info: SetInfo, r: Reader): readonly SummaryRow[] => {
  const practice = planRecord(info.plan).practice;
  const rows: SummaryRow[] = [];
  for (const s of r.roots()) {
    const record = info.plan.records.get(s.recordId);
    const kind = record?.type === 'source' ? info.plan.records.get(record.kindId) : undefined;
    const house =
      kind?.type === 'kind' &&
      kind.family === 'source' &&
      (kind.what === 'house-panel' || kind.what === 'wall-circuit');
    if (house) {
      // By circuit, not by outlet: outlets on one breaker share its limit.
      for (const way of r.children(s.key)) {
        if (r.children(way.key).length === 0) continue;
        rows.push({
          name: way.label,
          here: largestLegA(r, way, 'here'),
          worst: largestLegA(r, way, 'worst'),
          limit: way.legLimit?.limitA,
        });
      }
      continue;
    }
    for (const leg of s.legs) {
      const q = LEG_QUANTITIES[leg] ?? 'leg0A';
      rows.push({
        name: `${s.label} ${legName(practice, s.system, leg)}`,
        here: r.here(s.key, q),
        worst: r.worst(s.key, q),
        limit: s.legLimit?.limitA,
      });
    }
    if (s.neutral) {
      rows.push({
        name: `${s.label} N`,
        here: r.here(s.key, 'neutralA'),
        worst: r.worst(s.key, 'neutralA'),
        limit: s.neutralLimit?.limitA,
      });
    }
  }
  return rows.map((row) => ({
    ...row,
    limit: Number.isFinite(row.limit ?? Number.NaN) ? row.limit : undefined,
  }));
};

/** Amps per source and leg as bars, with what the sources carry in all. */
export const drawPowerSummary = (
  ink: Ink,
  info: SetInfo,
  x: number,
  y: number,
  w: number,
  h: number,
): void => {
  const r = readerOf(info.assessment, info.setupId);
  ink.text(x, y + 4, 'Power summary', { capMm: CAP.value, weight: 'semibold' });
  ink.text(x + w, y + 4, 'amps; the bar shows the worst setup', {
    role: 'ink-soft',
    align: 'right',
    maxMm: w - 32,
  });
  const nameW = Math.min(30, w * 0.24);
  const cols = [x + w - 34, x + w - 22, x + w - 11, x + w] as const;
  const barX = x + nameW + 1;
  const barW = cols[0] - 13 - barX;
  loadBar(ink, barX, y + 7.2, 5, 1.6, { here: -1, worst: 1, limit: 1.39 });
  ink.text(barX + 6.4, y + 9, 'worst', { role: 'ink-soft' });
  ['this setup', 'worst', 'limit', '% limit'].forEach((head, i) => {
    ink.text(cols[i] ?? x, y + 9, head, { role: 'ink-soft', align: 'right' });
  });
  ink.line(x, y + 10.6, x + w, y + 10.6, 0.25);
  const rows = summaryRows(info, r);
  const footer = 7;
  const room = h - 11.5 - footer;
  const rowH = Math.min(5, Math.max(3.7, room / Math.max(1, rows.length)));
  const fit = Math.min(rows.length, Math.floor(room / rowH));
  const shown =
    fit === rows.length
      ? rows
      : [...rows]
          .sort((a, b) => (pctOf(b.worst, b.limit) || 0) - (pctOf(a.worst, a.limit) || 0))
          .slice(0, fit);
  let at = y + 10.6;
  for (const row of shown) {
    const base = at + rowH / 2 + CAP.note / 2;
    ink.text(x, base, row.name, { weight: 'semibold', maxMm: nameW });
    loadBar(ink, barX, at + rowH / 2 - 1.1, barW, 2.2, row);
    const pct = pctOf(row.worst, row.limit);
    const over = pct > 100;
    ink.text(cols[0], base, cell(row.here, 1), { align: 'right' });
    ink.text(cols[1], base, cell(row.worst, 1), {
      align: 'right',
      weight: 'semibold',
      role: over ? 'stop' : 'ink',
    });
    ink.text(cols[2], base, row.limit === undefined ? '–' : cell(row.limit), { align: 'right' });
    ink.text(cols[3], base, cell(pct), {
      align: 'right',
      weight: over ? 'semibold' : 'regular',
      role: over ? 'stop' : 'ink',
    });
    at += rowH;
    ink.line(x, at, x + w, at, 0.13, 'ink-faint');
  }
  if (rows.length === 0) ink.text(x, at + 5, 'No source is drawn.', { role: 'ink-soft' });
  const totals = r
    .roots()
    .map(
      (s) => `${s.label}: ${formatWatts(r.here(s.key, 'loadW'))}, ${formatVoltAmps(r.here(s.key, 'loadVa'))}`,
    )
    .join(' · ');
  const more = fit < rows.length ? `The ${fit} fullest of ${rows.length}; all on the circuit schedule. ` : '';
  // Of many sources there is no room for each; the leg summary has them.
  const foot =
    widthOf(`${more}${totals}`) <= w ? totals : `Watts of ${r.roots().length} sources: see the leg summary.`;
  if (totals || more) ink.text(x, y + h - 2, `${more}${foot}`, { maxMm: w });
};
