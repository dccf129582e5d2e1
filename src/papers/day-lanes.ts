import { formatClock, formatWatts } from '../kernel/units.ts';
import type { BayLane, BlockRow, DaySummary, SourceDay, UnitLane } from '../report/day.ts';
import type { Block } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';

const NAME_MM = 46;
const HOUR = 60;

/** Where minutes of the day lie across an area. */
export interface DayScale {
  readonly fromMin: number;
  readonly toMin: number;
}

export const dayScale = (d: DaySummary): DayScale => ({
  fromMin: Math.max(
    0,
    Math.floor(Math.min(d.startMin, ...d.blocks.map((b) => b.block.startMin)) / HOUR) * HOUR,
  ),
  toMin: Math.ceil(Math.max(d.endMin, ...d.blocks.map((b) => b.block.endMin)) / HOUR) * HOUR,
});

const xOf = (s: DayScale, a: Rect) => {
  const w = a.w - NAME_MM;
  return (m: number): number =>
    a.x +
    NAME_MM +
    (w * (Math.min(s.toMin, Math.max(s.fromMin, m)) - s.fromMin)) / Math.max(1, s.toMin - s.fromMin);
};

const lane = (heightMm: number, name: string, draw: (ink: Ink, a: Rect) => void): Block => ({
  heightMm,
  draw: (ink, a) => {
    ink.text(a.x, a.y + heightMm / 2 + CAP.note / 2, name, { maxMm: NAME_MM - 2, weight: 'semibold' });
    draw(ink, a);
    ink.line(a.x, a.y + heightMm, a.x + a.w, a.y + heightMm, 0.13, 'ink-faint');
  },
});

/** Hours of the day, with sun and moon where they are known. */
export const rulerBlock = (d: DaySummary, s: DayScale): Block => ({
  heightMm: d.sky ? 12 : 7,
  keep: true,
  draw: (ink, a) => {
    const x = xOf(s, a);
    const base = a.y + (d.sky ? 12 : 7);
    const hours = (s.toMin - s.fromMin) / HOUR;
    const every = hours > 18 ? 2 : 1;
    for (let m = s.fromMin; m <= s.toMin; m += HOUR) {
      ink.line(x(m), base - 2, x(m), base, 0.18);
      if (((m - s.fromMin) / HOUR) % every === 0 && m < s.toMin)
        ink.text(x(m) + 0.8, base - 1.2, formatClock(m));
    }
    ink.line(a.x, base, a.x + a.w, base, 0.35);
    if (!d.sky) return;
    let free = Number.NEGATIVE_INFINITY;
    for (const [name, minute] of [
      ['sunrise', d.sky.sunriseMin],
      ['sunset', d.sky.sunsetMin],
      ['moonrise', d.sky.moonriseMin],
    ] as const) {
      if (minute === undefined || minute < s.fromMin || minute > s.toMin) continue;
      const text = `${name} ${formatClock(minute)}`;
      const w = widthOf(text);
      const at = Math.min(x(minute) + 0.8, a.x + a.w - w);
      // It ends above the hours, through whose figures it would run.
      ink.line(x(minute), a.y, x(minute), base - 4.2, 0.18, 'ink-soft', [0.8, 0.6]);
      if (at > free) ink.text(at, a.y + 3.4, text, { role: 'ink-soft' });
      free = at + w + 1;
    }
  },
});

/** The blocks of one crew as bars. */
export const blocksLane = (name: string, rows: readonly BlockRow[], s: DayScale): Block =>
  lane(11, name, (ink, a) => {
    const x = xOf(s, a);
    for (const r of rows) {
      const [from, to] = [x(r.block.startMin), x(r.block.endMin)];
      const w = to - from;
      if (w <= 0) continue;
      ink.rect(from, a.y + 0.8, w, 9.4, { weightMm: r.block.what === 'setup' ? 0.35 : 0.18 });
      if (w < 6) continue;
      ink.text(from + 1, a.y + 4.6, r.name, { weight: 'semibold', maxMm: w - 2 });
      const times = `${formatClock(r.block.startMin)}–${formatClock(r.block.endMin)}`;
      if (widthOf(times) < w - 2) ink.text(from + 1, a.y + 8.6, times, { role: 'ink-soft' });
    }
  });

/** A unit's charge over the day: changes as ticks, dark gaps hatched with their word. */
export const unitLane = (l: UnitLane, s: DayScale): Block =>
  lane(7.4, l.label, (ink, a) => {
    const x = xOf(s, a);
    const [top, bottom] = [a.y + 0.9, a.y + 6.6];
    const y = (soc: number): number => bottom - (bottom - top) * soc;
    if (l.problem) {
      ink.text(x(s.fromMin) + 1, a.y + 4.6, `not computed: ${l.problem}`, { role: 'ink-soft' });
      return;
    }
    for (const span of l.spans) {
      const [from, to] = [x(span.startMin), x(span.endMin)];
      if (to <= from) continue;
      if (span.state === 'dark') {
        ink.rect(from, top, to - from, bottom - top, {
          weightMm: 0.25,
          role: 'stop',
          hatch: { role: 'stop', angleDeg: -45, spacingMm: 1 },
        });
        continue;
      }
      ink.path(
        [
          ['M', from, bottom],
          ['L', from, y(span.fromSoc)],
          ['L', to, y(span.toSoc)],
          ['L', to, bottom],
          ['Z'],
        ],
        {
          weightMm: 0.18,
        },
      );
      const packs = span.packs.map((p) => `#${p}`).join(' ');
      if (packs && widthOf(packs) < to - from - 2)
        ink.text(from + 0.8, span.fromSoc > 0.55 ? bottom - 0.8 : top + 2, packs, { role: 'ink-soft' });
    }
    for (const swap of l.swaps) if (!swap.first) ink.line(x(swap.atMin), a.y, x(swap.atMin), bottom, 0.5);
  });

/** A bay: which pack is in it when. */
export const bayLane = (b: BayLane, s: DayScale): Block =>
  lane(4.6, b.label, (ink, a) => {
    const x = xOf(s, a);
    for (const span of b.spans) {
      const [from, to] = [x(span.startMin), x(span.endMin)];
      if (to <= from) continue;
      ink.rect(from, a.y + 0.5, to - from, 3.6, { weightMm: 0.18 });
      const name = `#${span.pack}`;
      if (widthOf(name) < to - from - 2) ink.text(from + 0.8, a.y + 3.4, name, { role: 'ink-soft' });
    }
  });

/** Watts of a source in steps. */
export const powerLane = (p: SourceDay, s: DayScale): Block =>
  lane(11, `${p.label}  peak ${formatWatts(p.peakW)}`, (ink, a) => {
    const x = xOf(s, a);
    const most = Math.max(1, p.peakW, p.ratedW ?? 0);
    const bottom = a.y + 10.4;
    for (const step of p.steps) {
      const w = step.lightW + step.chargerW;
      const [from, to] = [x(step.startMin), x(step.endMin)];
      const h = (9.4 * w) / most;
      if (to <= from || w <= 0) continue;
      ink.rect(from, bottom - h, to - from, h, { weightMm: 0.18 });
      const text = formatWatts(w);
      if (widthOf(text) < to - from - 2) ink.text(from + 0.8, bottom - 0.9, text, { role: 'ink-soft' });
    }
  });
