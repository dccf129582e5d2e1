import type { SupplyEntity } from '../../derive/types.ts';
import { waysOf } from '../../plan/ports.ts';
import { cell, largestLegA, pctOf } from '../../report/reader.ts';
import { loadBar } from '../marks.ts';
import { CAP, type Sketch, widthOf } from '../sketch.ts';
import { drawTags, tagsHeight } from './context.ts';
import { fullestLeg, hereKey, markFigure, worstKey } from './figures.ts';
import { BREAKER_MM, LINE, ROW_MM, TEXT_MM } from './metrics.ts';
import { breakerSign, outletSign, residualSign, transformerSign } from './symbols.ts';
import type { OneLineContext } from './types.ts';
import { legsWords } from './words.ts';

/** What leaves a bus in one place: a way, or an outlet without a breaker of its own. */
export interface Tap {
  readonly way: SupplyEntity | undefined;
  readonly children: readonly SupplyEntity[];
}

const LEG_MM = 5;
/** Room of the percentage after the bar. */
const PCT_MM = 9.5;

/** Taps of a source or box that something hangs on, and the labels of ways with nothing on them. */
export const tapsOf = (
  c: OneLineContext,
  owner: SupplyEntity,
): { readonly taps: readonly Tap[]; readonly free: readonly string[] } => {
  const taps: Tap[] = [];
  const free: string[] = [];
  for (const e of c.r.children(owner.key)) {
    if (e.what !== 'way') {
      taps.push({ way: undefined, children: [e] });
      continue;
    }
    const children = c.r.children(e.key);
    if (children.length > 0 || c.findingsOf(e).length > 0) taps.push({ way: e, children });
    else free.push(wayName(c, e));
  }
  return { taps, free };
};

const wayName = (c: OneLineContext, way: SupplyEntity): string =>
  waysOf(c.plan, way.recordId).find((w) => w.id === way.wayId)?.label ?? way.wayId ?? '';

const extraOf = (c: OneLineContext, way: SupplyEntity): string => {
  const t = way.transformer;
  if (t)
    return `${Number((t.ratedVa / 1000).toFixed(1))} kVA, ${Math.round(t.shape.nominalV / t.ratio)} to ${Math.round(t.shape.nominalV)} V`;
  const w = waysOf(c.plan, way.recordId).find((x) => x.id === way.wayId);
  if (!w) return '';
  return [
    w.poles > 1 ? `${w.poles}P` : '',
    w.curve === 'na' ? '' : w.curve,
    w.rcdMa === undefined ? '' : `RCD ${w.rcdMa} mA${w.rcdType === undefined ? '' : ` type ${w.rcdType}`}`,
  ]
    .filter(Boolean)
    .join(', ');
};

/** The figures of a tap are its way's, or those of what leaves it. */
const figured = (t: Tap): SupplyEntity | undefined => t.way ?? t.children[0];

export const tapHeight = (c: OneLineContext, t: Tap): number => {
  const e = figured(t);
  if (!e) return LEG_MM + BREAKER_MM;
  if (!t.way) return LEG_MM + 4 * ROW_MM + 2;
  const rows = 4 + (extraOf(c, t.way) === '' ? 0 : 1);
  return LEG_MM + rows * ROW_MM + 4 + tagsHeight(c.findingsOf(t.way), c.textMm) + 1.6;
};

/** Key of the share of its limit; of the current itself where the share on show is not the largest of all its wires. */
const usedKey = (c: OneLineContext, e: SupplyEntity, pct: number): string | undefined =>
  Math.abs(c.r.worst(e.key, 'usePct') - pct) < 0.5
    ? worstKey(c, e, 'usePct')
    : worstKey(c, e, fullestLeg(c, e, 'worst'));

/** A tap from the bus down to its outlet: breaker, amps now and worst, limit, bar. `h` is the height of all taps of the bus. */
export const drawTap = (s: Sketch, c: OneLineContext, t: Tap, x: number, y: number, h: number): void => {
  const e = figured(t);
  const left = x + TEXT_MM;
  const end = t.children.length > 0 ? y + h : y + LEG_MM;
  s.line(x, y, x, t.way ? y + LEG_MM : end, LINE.device);
  if (t.way && end > y + LEG_MM) s.line(x, y + LEG_MM + BREAKER_MM, x, end, LINE.device);
  if (!e) return;
  s.text(x + 1.4, y + 4, legsWords(c.plan, e), { weight: 'semibold' });
  const here = largestLegA(c.r, e, 'here');
  const worst = largestLegA(c.r, e, 'worst');
  const mostKey = worstKey(c, e, fullestLeg(c, e, 'worst'));
  let base = y + LEG_MM + 2.9;
  if (!t.way) {
    for (const [text, strong] of [
      ['no breaker here', false],
      [`${cell(here, 1)} A this setup`, false],
      [`${cell(worst, 1)} A worst`, true],
    ] as const) {
      const style = { weight: strong ? 'semibold' : 'regular', maxMm: c.textMm } as const;
      s.text(left, base, text, style);
      if (text.endsWith('setup'))
        markFigure(c, e, hereKey(c, e, fullestLeg(c, e, 'here')), left, base, text, style);
      if (text.endsWith('worst')) markFigure(c, e, mostKey, left, base, text, style);
      base += ROW_MM;
    }
    outletSign(s, x, y + h - 1.2);
    return;
  }
  const w = waysOf(c.plan, t.way.recordId).find((v) => v.id === t.way?.wayId);
  const limit = t.way.legLimit?.limitA;
  const pct = pctOf(worst, limit);
  const over = pct > 100;
  if (t.way.transformer) transformerSign(s, x, y + LEG_MM);
  else breakerSign(s, w?.breakerA, x, y + LEG_MM);
  if (w?.rcdMa !== undefined) residualSign(s, x, y + LEG_MM + BREAKER_MM + 2.2);
  const name = wayName(c, t.way);
  s.text(left, base, /^\d/.test(name) ? `Way ${name}` : name, {
    capMm: CAP.value,
    weight: 'semibold',
    maxMm: c.textMm,
  });
  const extra = extraOf(c, t.way);
  if (extra !== '') {
    base += ROW_MM;
    s.text(left, base, extra, { role: 'ink-soft', maxMm: c.textMm });
  }
  base += ROW_MM;
  const now = `${cell(here, 1)} A this setup`;
  s.text(left, base, now, { maxMm: c.textMm });
  markFigure(c, e, hereKey(c, e, fullestLeg(c, e, 'here')), left, base, now, { maxMm: c.textMm });
  base += ROW_MM;
  const bold = cell(worst, 1);
  s.text(left, base, bold, { weight: 'semibold', role: over ? 'stop' : 'ink' });
  s.text(left + widthOf(bold, { weight: 'semibold' }) + 0.6, base, 'A worst');
  markFigure(c, e, mostKey, left, base, `${bold} A worst`, { weight: 'semibold' });
  base += ROW_MM;
  s.text(left, base, limit === undefined ? 'limit not known' : `${cell(limit)} A limit`, {
    maxMm: c.textMm,
  });
  const barMm = Math.min(22, c.textMm - PCT_MM);
  loadBar(s, left, base + 1.6, barMm, 2.1, { here, worst, limit });
  s.text(left + barMm + 1.2, base + 3.7, Number.isFinite(pct) ? `${Math.round(pct)} %` : '–', {
    weight: over ? 'semibold' : 'regular',
    role: over ? 'stop' : 'ink',
  });
  if (Number.isFinite(pct))
    markFigure(c, e, usedKey(c, e, pct), left + barMm + 1.2, base + 3.7, `${Math.round(pct)} %`);
  drawTags(s, c.findingsOf(t.way), left, base + 4.4, c.textMm);
  if (t.children.length > 0) outletSign(s, x, y + h - 1.2);
};
