import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { formatVoltAmps, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { bondingWord } from '../../report/cautions.ts';
import { cell, LEG_QUANTITIES } from '../../report/reader.ts';
import type { PowerMeter, SourceRow } from '../../report/summary-types.ts';
import { CAP, linesOf, type Sketch } from '../sketch.ts';
import { drawTags, tagsHeight } from './context.ts';
import { hereKey, markFigure, markFigures, worstKey } from './figures.ts';
import { BREAKER_MM, LINE, PAD_MM, ROW_MM, SOURCE_R_MM, TEXT_MM, TRUNK_MM } from './metrics.ts';
import { breakerSign, nodeSign, sourceSign, writeInSign } from './symbols.ts';
import type { OneLineContext } from './types.ts';

const TEXT_W_MM = 62;
const GROUND_W_MM = 46;
const TABLE_W_MM = 70;
const TEXT_AT_MM = SOURCE_R_MM + 2.5;

/** Left of the texts beside a source's circle, from the block's left. */
const TRUNK = PAD_MM + TRUNK_MM;

const powers = (m: PowerMeter, va: PowerMeter, of: 'now' | 'worst' | 'rated' | 'gives'): string => {
  const w = m[of];
  const v = va[of];
  const parts = [
    w !== undefined && Number.isFinite(w) ? formatWatts(w) : '',
    v !== undefined && Number.isFinite(v) ? formatVoltAmps(v) : '',
  ].filter(Boolean);
  return parts.join(', ');
};

const linesFor = (c: OneLineContext, row: SourceRow | undefined): readonly string[] => {
  if (!row) return [];
  const rated = powers(row.watts, row.voltAmps, 'rated');
  const gives = row.set && row.set.share !== 1 ? powers(row.watts, row.voltAmps, 'gives') : '';
  const now = powers(row.watts, row.voltAmps, 'now');
  const worst = powers(row.watts, row.voltAmps, 'worst');
  return [
    row.system,
    rated === '' ? '' : `rated ${rated}`,
    gives === '' ? '' : `gives ${gives} here`,
    now === '' ? '' : `load ${now} in this setup`,
    worst === '' ? '' : `load ${worst} in the worst`,
    // Only where the plan says what country it is in: a custom elsewhere is no help.
    planRecord(c.plan).country !== undefined && row.colours !== '' ? `colours by custom: ${row.colours}` : '',
  ].filter(Boolean);
};

/** Load in this setup and in the worst, as the lines have them. */
const loadFigures = (row: SourceRow) => {
  const text = (n: number, format: (n: number) => string): string => (Number.isFinite(n) ? format(n) : '');
  const worst = (m: PowerMeter): string | undefined =>
    m.worstSetupId && `${m.figureKey.slice(0, m.figureKey.lastIndexOf('@'))}@${m.worstSetupId}`;
  return [
    { text: text(row.watts.now, formatWatts), key: row.watts.figureKey },
    { text: text(row.voltAmps.now, formatVoltAmps), key: row.voltAmps.figureKey },
    { text: text(row.watts.worst, formatWatts), key: worst(row.watts) },
    { text: text(row.voltAmps.worst, formatVoltAmps), key: worst(row.voltAmps) },
  ];
};

/** The head of a source: circle, words, write-in box for grounding and bonding, table of legs where there is room. */
export interface SourceHead {
  readonly w: number;
  readonly h: number;
  readonly trunkX: number;
  draw(s: Sketch, x: number, y: number, blockW: number): void;
}

export const sourceHead = (
  c: OneLineContext,
  e: SupplyEntity,
  row: SourceRow | undefined,
  roomMm: number,
  trunkX: number,
): SourceHead => {
  const texts = linesFor(c, row).flatMap((l) => linesOf(l, TEXT_W_MM, {}, 2));
  const own = c.findingsOf(e);
  // A house is grounded by who owns it; a set or a tie-in is not until someone qualified says how.
  const grounded = row?.what !== 'house-panel' && row?.what !== 'wall-circuit';
  const textEnd = trunkX + TEXT_AT_MM + TEXT_W_MM;
  const groundEnd = textEnd + (grounded ? 3 + GROUND_W_MM : 0);
  const table = e.legs.length > 1 && roomMm >= groundEnd + 6 + TABLE_W_MM;
  const tableH = table ? 8 + 4 * 4 : 0;
  const textH =
    5 + (row?.kindName ? ROW_MM : 0) + texts.length * ROW_MM + tagsHeight(own, TEXT_W_MM, 3) + 1.5;
  const top = grounded ? 4 : 0;
  const voltsY = top + Math.max(2 * SOURCE_R_MM + 2, textH);
  const mainA = mainOf(c, e);
  const h = Math.max(voltsY + 6 + (mainA === undefined ? 0 : 11), tableH + top);
  return {
    w: table ? groundEnd + 6 + TABLE_W_MM : groundEnd,
    h,
    trunkX,
    draw: (s, x, y0, blockW) => {
      const y = y0 + top;
      const at = x + trunkX;
      const left = at + TEXT_AT_MM;
      const main = mainA === undefined ? undefined : y0 + voltsY + 5.5;
      s.line(at, y + 2 * SOURCE_R_MM, at, main ?? y0 + h, LINE.device);
      if (main !== undefined) s.line(at, main + BREAKER_MM, at, y0 + h, LINE.device);
      sourceSign(s, row?.what ?? '', at, y + SOURCE_R_MM);
      s.text(left, y + 4, e.label, { capMm: CAP.head, weight: 'semibold', maxMm: TEXT_W_MM });
      let base = y + 4;
      if (row?.kindName) {
        base += ROW_MM + 0.4;
        s.text(left, base, row.kindName, { role: 'ink-soft', maxMm: TEXT_W_MM });
      }
      const rows = texts.map((text, i) => ({ text, x: left, baseline: base + (i + 1) * ROW_MM }));
      for (const r of rows) s.text(r.x, r.baseline, r.text);
      base += texts.length * ROW_MM;
      const first = rows.findIndex((r) => r.text.startsWith('load '));
      if (first >= 0 && row) markFigures(c, e, rows.slice(first), loadFigures(row));
      drawTags(s, own, left, base + 0.8, TEXT_W_MM, 3);
      const volts = y0 + voltsY;
      nodeSign(s, at, volts + 2);
      if (row?.voltsV === undefined) {
        writeInSign(s, at + TEXT_MM, volts + 3.2, 12);
        s.text(at + TEXT_MM + 13, volts + 3.2, 'V: not known, measure');
      } else {
        s.text(at + TEXT_MM, volts + 3.2, `${row.voltsV.toFixed(1)} V`, {
          capMm: CAP.value,
          weight: 'semibold',
        });
      }
      if (mainA !== undefined) {
        breakerSign(s, mainA, at, volts + 5.5);
        const limit = e.legLimit?.limitA;
        const neutral = e.neutralLimit?.limitA;
        s.text(
          at + TEXT_MM,
          volts + 10.2,
          [
            `main ${mainA} A`,
            limit === undefined ? '' : `limit ${cell(limit)} A a leg`,
            neutral === undefined ? '' : `N ${cell(neutral)} A`,
          ]
            .filter(Boolean)
            .join(', '),
        );
      }
      if (grounded) {
        const gx = x + textEnd + 3;
        s.line(at, y, at, y0 + 1, LINE.frame, 'ink', [1.4, 0.9]);
        s.line(at, y0 + 1, gx + 10, y0 + 1, LINE.frame, 'ink', [1.4, 0.9]);
        s.line(gx + 10, y0 + 1, gx + 10, y, LINE.frame, 'ink', [1.4, 0.9]);
        s.rect(gx, y, GROUND_W_MM, 13, { weightMm: LINE.frame, fill: 'paper' });
        s.text(gx + 1.5, y + 3.4, `${bondingWord(planRecord(c.plan).practice)}:`, { role: 'ink-soft' });
        s.text(gx + 1.5, y + 6.8, 'as the qualified person directs', { role: 'ink-soft' });
      }
      if (table) legTable(s, c, e, Math.min(x + blockW - TABLE_W_MM - 4, x + groundEnd + 40), y);
    },
  };
};

const mainOf = (c: OneLineContext, e: SupplyEntity): number | undefined => {
  const record = c.plan.records.get(e.recordId);
  if (record?.type !== 'source') return undefined;
  const kind = c.plan.records.get(record.kindId);
  return (
    record.mainBreakerA ?? (kind?.type === 'kind' && kind.family === 'source' ? kind.mainBreakerA : undefined)
  );
};

const legTable = (s: Sketch, c: OneLineContext, e: SupplyEntity, x: number, y: number): void => {
  const practice = planRecord(c.plan).practice;
  const legs: readonly {
    name: string;
    q: 'leg0A' | 'leg1A' | 'leg2A' | 'neutralA';
    limit: number | undefined;
  }[] = [
    ...e.legs.map((l) => ({
      name: legName(practice, e.system, l),
      q: LEG_QUANTITIES[l] ?? ('leg0A' as const),
      limit: e.legLimit?.limitA,
    })),
    ...(e.neutral ? [{ name: 'N', q: 'neutralA' as const, limit: e.neutralLimit?.limitA }] : []),
  ];
  const right = (i: number): number => x + TABLE_W_MM - (legs.length - 1 - i) * 11;
  s.line(x, y, x + TABLE_W_MM, y, LINE.cable);
  legs.forEach((l, i) => {
    s.text(right(i), y + 4, l.name, { capMm: CAP.value, weight: 'semibold', align: 'right' });
  });
  s.line(x, y + 5.6, x + TABLE_W_MM, y + 5.6, LINE.frame);
  const rows: readonly (readonly [string, (l: (typeof legs)[number]) => string, boolean])[] = [
    ['This setup, A', (l) => cell(c.r.here(e.key, l.q), 1), false],
    ['Worst, A', (l) => cell(c.r.worst(e.key, l.q), 1), true],
    [`Limit at ${e.label}, A`, (l) => (l.limit === undefined ? '–' : cell(l.limit)), false],
  ];
  rows.forEach(([name, value, strong], row) => {
    const base = y + 9.4 + row * 4.6;
    s.text(x, base, name, { weight: strong ? 'semibold' : 'regular', maxMm: TABLE_W_MM - legs.length * 11 });
    legs.forEach((l, i) => {
      const style = {
        capMm: CAP.value,
        weight: strong ? 'semibold' : 'regular',
        align: 'right',
      } as const;
      s.text(right(i), base, value(l), style);
      const key = row === 0 ? hereKey(c, e, l.q) : row === 1 ? worstKey(c, e, l.q) : undefined;
      markFigure(c, e, key, right(i), base, value(l), style);
    });
    s.line(
      x,
      base + 1.5,
      x + TABLE_W_MM,
      base + 1.5,
      row === rows.length - 1 ? LINE.cable : 0.13,
      row === rows.length - 1 ? 'ink' : 'ink-faint',
    );
  });
};

export const SOURCE_TRUNK_MM = TRUNK;
