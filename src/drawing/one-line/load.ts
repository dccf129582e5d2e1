import type { SupplyEntity } from '../../derive/types.ts';
import { formatAmps, formatWatts } from '../../kernel/units.ts';
import { kindOf, recordOf } from '../../plan/plan.ts';
import { largestLegA } from '../../report/reader.ts';
import { CAP, linesOf, type Sketch, widthOf } from '../sketch.ts';
import { fitText } from '../text.ts';
import { drawTags, isOff, tagsHeight } from './context.ts';
import { fullestLeg, markFigure, markFigures, worstKey } from './figures.ts';
import { LINE, ROW_MM, TEXT_MM } from './metrics.ts';
import { nodeSign, unitSign, writeInSign } from './symbols.ts';
import type { OneLineContext } from './types.ts';

/** Widest unit number in its circle. */
const UNIT_MM = 12;

/** Largest circle round a unit number. */
const MOST_R_MM = 2.9;

const SYMBOL_MM = 7;
const COMPACT_SYMBOL_MM = 5;

interface LoadWords {
  readonly unit: string;
  readonly name: readonly string[];
  readonly power: readonly string[];
  readonly use: readonly string[];
  readonly symbolId: string;
  readonly look: { readonly lengthMm: number; readonly widthMm: number };
}

/** A name in lines of which the last is not a lone unit: `LED panel 60×60,` and `300 W` rather than `W`. */
const nameLines = (name: string, widthMm: number, maxLines: number): readonly string[] => {
  const style = { weight: 'semibold' } as const;
  const first = linesOf(name, widthMm, style, maxLines);
  for (let w = widthMm; (first.at(-1)?.length ?? 9) < 4 && w > widthMm * 0.5; w -= 1) {
    const lines = linesOf(name, w, style, maxLines);
    if (lines.length === first.length && (lines.at(-1)?.length ?? 0) > 3) return lines;
  }
  return first;
};

const wordsOf = (c: OneLineContext, e: SupplyEntity, compact: boolean): LoadWords => {
  const ballast = recordOf(c.plan, 'ballast', e.recordId);
  const fixture = recordOf(c.plan, 'fixture', ballast ? ballast.fixtureId : e.recordId);
  const kind = fixture && kindOf(c.plan, fixture.kindId, 'fixture');
  const name = kind?.name ?? e.label;
  const worst = c.r.worst(e.key, 'loadW');
  const amps = largestLegA(c.r, e, 'worst');
  const figures = Number.isFinite(amps) ? [formatAmps(amps), formatWatts(worst)] : ['not computed'];
  return {
    unit: fitText(fixture?.unit ?? '', CAP.note, 'regular', UNIT_MM),
    // Drawn tight a name has one line where that is enough.
    name: nameLines(name, c.textMm, compact && widthOf(name, { weight: 'semibold' }) <= c.textMm ? 1 : 3),
    power: figures,
    use: compact
      ? []
      : linesOf(
          [ballast ? 'by its ballast' : '', fixture?.use ?? ''].filter(Boolean).join(', '),
          c.textMm,
          {},
          2,
        ),
    symbolId: kind?.symbol ?? '',
    look: kind?.sizeMm ?? { lengthMm: 1, widthMm: 1 },
  };
};

/** Volts and drop at a node, or a box to write the volts in. Gives no more than one row. */
export const drawVolts = (
  s: Sketch,
  c: OneLineContext,
  e: SupplyEntity,
  x: number,
  baseline: number,
): void => {
  const volts = c.r.worst(e.key, 'voltsV');
  const dropV = c.r.worst(e.key, 'dropV');
  if (Number.isFinite(volts)) {
    const text = `${volts.toFixed(1)} V`;
    const style = { capMm: CAP.value, weight: 'semibold' } as const;
    s.text(x, baseline, text, style);
    markFigure(c, e, worstKey(c, e, 'voltsV'), x, baseline, text, style);
    const pct = c.r.worst(e.key, 'dropPct');
    if (Number.isFinite(pct) && pct >= 0.05) {
      const right = x + widthOf(text, style) + 1.6;
      s.text(right, baseline, `${pct.toFixed(1)} %`);
      markFigure(c, e, worstKey(c, e, 'dropPct'), right, baseline, `${pct.toFixed(1)} %`);
    }
    return;
  }
  writeInSign(s, x, baseline, 9);
  const words = dropV >= 0.05 ? `V, −${dropV.toFixed(1)} V` : 'V, measure';
  s.text(x + 10, baseline, words);
  if (dropV >= 0.05) markFigure(c, e, worstKey(c, e, 'dropV'), x + 10, baseline, words);
};

/** Height of a load with its node, from the end of its run. */
export const loadHeight = (c: OneLineContext, e: SupplyEntity, compact: boolean): number => {
  const w = wordsOf(c, e, compact);
  const rows = 1 + w.name.length + w.use.length;
  const tags = tagsHeight(c.findingsOf(e), c.textMm, 1);
  return (
    (compact ? 4.4 : 5.4) +
    Math.max(rows * ROW_MM, compact ? COMPACT_SYMBOL_MM : SYMBOL_MM) +
    tags +
    (compact ? 0.8 : 2)
  );
};

/**
 * A load below its node: volts, symbol on the conductor, number, watts, amps, name and use. `onward` when it passes power on.
 */
export const drawLoad = (
  s: Sketch,
  c: OneLineContext,
  e: SupplyEntity,
  x: number,
  y: number,
  compact: boolean,
  onward: boolean,
): void => {
  const w = wordsOf(c, e, compact);
  const size = compact ? COMPACT_SYMBOL_MM : SYMBOL_MM;
  const top = y + (compact ? 4.4 : 5.4);
  const h = loadHeight(c, e, compact);
  // Behind the symbol, which is filled: flat ones do not reach the edge of their room.
  s.line(x, y, x, onward ? y + h : top + size / 2, LINE.cable, 'cable');
  nodeSign(s, x, y + 2);
  drawVolts(s, c, e, x + TEXT_MM, y + 3.2);
  if (w.symbolId === '') {
    s.rect(x - 3, top + 0.4, 6, size - 0.8, { weightMm: LINE.device, fill: 'paper' });
    s.line(x - 3, top + size - 0.4, x + 3, top + 0.4, LINE.thin);
  } else {
    unitSign(s, w.symbolId, w.look, x, top + size / 2, size, isOff(c, e));
  }
  const left = x + TEXT_MM;
  let base = top + 3;
  let from = left;
  if (w.unit !== '') {
    const r = Math.max(1.9, widthOf(w.unit) / 2 + 0.6);
    // A long number would need a circle that goes through its neighbours: it stands without one.
    if (r <= MOST_R_MM) s.circle(left + r, base - CAP.note / 2, r, { weightMm: LINE.frame });
    s.text(left + r, base, w.unit, { align: 'center' });
    from = left + 2 * r + 1;
  }
  const whole = w.power.join(', ');
  const power = widthOf(whole) <= c.textMm - (from - left) ? whole : (w.power[0] ?? '');
  s.text(from, base, power, { maxMm: c.textMm - (from - left) });
  markFigures(
    c,
    e,
    [{ text: power, x: from, baseline: base }],
    [
      { text: w.power[0] ?? '', key: worstKey(c, e, fullestLeg(c, e, 'worst')) },
      { text: w.power[1] ?? '', key: worstKey(c, e, 'loadW') },
    ],
  );
  for (const line of w.name) {
    base += ROW_MM;
    s.text(left, base, line, { weight: 'semibold' });
  }
  for (const line of w.use) {
    base += ROW_MM;
    s.text(left, base, line, { role: 'ink-soft' });
  }
  drawTags(s, c.findingsOf(e), left, base + 0.6, c.textMm, 1);
};
