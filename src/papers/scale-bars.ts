import type { LengthUnits } from '../kernel/units.ts';
import { MM_PER_FOOT } from '../kernel/units.ts';
import { CAP, type Ink, widthOf } from './ink.ts';

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** One scale bar: alternating fields and their numbers; the bar is no longer than `maxMm`. */
const bar = (ink: Ink, x: number, y: number, maxMm: number, unitPaperMm: number, unit: string): void => {
  const step = STEPS.find((s) => s * unitPaperMm >= 6.5) ?? 1000;
  const n = Math.max(1, Math.min(6, Math.floor((maxMm - 6) / (step * unitPaperMm))));
  const w = step * unitPaperMm;
  for (let i = 0; i < n; i++) {
    ink.rect(x + i * w, y, w, 0.9, i % 2 === 0 ? { weightMm: 0.18, fill: 'ink' } : { weightMm: 0.18 });
    ink.rect(x + i * w, y + 0.9, w, 0.9, i % 2 === 1 ? { weightMm: 0.18, fill: 'ink' } : { weightMm: 0.18 });
  }
  for (let i = 0; i <= n; i++) {
    const last = i === n;
    ink.text(x + i * w, y + 5, last ? `${i * step} ${unit}` : String(i * step), { align: 'center' });
  }
};

/** Drawn scales in feet and metres, a bar of exact length to check a print by, and the north arrow. */
export const drawScales = (
  ink: Ink,
  what: {
    /** Undefined where nothing is drawn: there are no bars then. */
    readonly ratio: number | undefined;
    readonly text: string;
    readonly units: LengthUnits;
    readonly northDeg: number;
  },
  x: number,
  y: number,
  w: number,
  h: number,
): void => {
  ink.text(x, y + 5, `Scale ${what.text}`, { capMm: CAP.value, weight: 'semibold', maxMm: w - 20 });
  const head = widthOf(`Scale ${what.text}`, { capMm: CAP.value, weight: 'semibold' }) + 4;
  if (what.units === 'imperial' && what.ratio !== undefined)
    ink.text(x + head, y + 5, `1:${what.ratio}`, { capMm: CAP.value, role: 'ink-soft' });
  const barW = w - 22;
  if (what.ratio !== undefined) {
    bar(ink, x + 1, y + 10, barW, MM_PER_FOOT / what.ratio, 'ft');
    bar(ink, x + 1, y + 21, barW, 1000 / what.ratio, 'm');
  }
  const checkMm = what.units === 'imperial' ? 50.8 : 50;
  const cy = y + h - 10.5;
  ink.text(
    x,
    cy - 3.2,
    what.units === 'imperial' ? 'Print check: this bar is 2 in (50.8 mm)' : 'Print check: this bar is 50 mm',
    { maxMm: w },
  );
  const cx = x + 1;
  ink.line(cx, cy, cx + checkMm, cy, 0.25);
  for (let i = 0; i <= 4; i++)
    ink.line(
      cx + (checkMm * i) / 4,
      cy - (i % 4 === 0 ? 1.4 : 0.8),
      cx + (checkMm * i) / 4,
      cy + (i % 4 === 0 ? 1.4 : 0.8),
      0.25,
    );
  ink.text(x, cy + 6, 'If it is not, the print is not to scale.', { role: 'ink-soft', maxMm: w });
  northArrow(ink, x + w - 8, y + h * 0.42, what.northDeg);
};

/** An arrow towards north (`deg` clockwise from +x) with its letter. */
const northArrow = (ink: Ink, x: number, y: number, deg: number): void => {
  const rad = (deg * Math.PI) / 180;
  const p = (along: number, side: number): readonly [number, number] => [
    x + along * Math.cos(rad) - side * Math.sin(rad),
    y + along * Math.sin(rad) + side * Math.cos(rad),
  ];
  const tip = p(8, 0);
  const left = p(-6, -3);
  const right = p(-6, 3);
  const notch = p(-3.5, 0);
  ink.path([['M', ...tip], ['L', ...right], ['L', ...notch], ['Z']], { fill: 'ink' });
  ink.path([['M', ...tip], ['L', ...right], ['L', ...notch], ['L', ...left], ['Z']], { weightMm: 0.25 });
  const n = p(11, 0);
  ink.text(n[0], n[1] + 1.25, 'N', { capMm: CAP.value, weight: 'semibold', align: 'center' });
};
