import { formatClock } from '../kernel/units.ts';
import type { DaySummary } from '../report/day.ts';
import { box, type DayScale, filled, HOUR, xOf } from './day-scale.ts';
import type { Block } from './flow.ts';
import type { Rect } from './frame.ts';
import { type Ink, widthOf } from './ink.ts';

/** Greys of the sky from day to night. */
const SKY = { civil: '#e9ebec', nautical: '#d3d7da', night: '#b9bfc4' } as const;

const SKY_MM = 2.4;
const DAY_MIN = 1440;

/** The sky as a band: white by day, darker through the twilights, darkest at night; a line under it while the moon is up. */
const skyBand = (ink: Ink, sky: NonNullable<DaySummary['sky']>, s: DayScale, a: Rect): void => {
  const x = xOf(s, a);
  const [top, bottom] = [a.y + 0.4, a.y + 0.4 + SKY_MM];
  const band = (from: number | undefined, to: number | undefined, color: string): void => {
    if (from === undefined || to === undefined) return;
    for (const by of [0, DAY_MIN])
      if (from + by < s.toMin && to + by > s.fromMin)
        filled(ink, box(x(from + by), top, x(to + by), bottom), color);
  };
  filled(ink, box(x(s.fromMin), top, x(s.toMin), bottom), SKY.night);
  band(sky.nauticalDawnMin, sky.nauticalDuskMin, SKY.nautical);
  band(sky.dawnMin, sky.duskMin, SKY.civil);
  band(sky.sunriseMin, sky.sunsetMin, '#ffffff');
  ink.rect(x(s.fromMin), top, x(s.toMin) - x(s.fromMin), SKY_MM, { weightMm: 0.13, role: 'ink-soft' });
  for (const [from, to] of sky.moonUp)
    if (from < s.toMin && to > s.fromMin)
      ink.line(x(from), bottom + 0.5, x(to), bottom + 0.5, 0.5, 'ink-soft');
};

const RULER_MM = { sky: 14, plain: 7 } as const;

/** Hours of the day, with sun and moon where they are known. */
export const rulerBlock = (d: DaySummary, s: DayScale): Block => ({
  heightMm: d.sky ? RULER_MM.sky : RULER_MM.plain,
  keep: true,
  draw: (ink, a) => {
    const x = xOf(s, a);
    const base = a.y + (d.sky ? RULER_MM.sky : RULER_MM.plain);
    const hours = (s.toMin - s.fromMin) / HOUR;
    const every = hours > 18 ? 2 : 1;
    for (let m = s.fromMin; m <= s.toMin; m += HOUR) {
      ink.line(x(m), base - 2, x(m), base, 0.18);
      if (((m - s.fromMin) / HOUR) % every === 0 && m < s.toMin)
        ink.text(x(m) + 0.8, base - 1.2, formatClock(m));
    }
    ink.line(a.x, base, a.x + a.w, base, 0.35);
    if (!d.sky) return;
    skyBand(ink, d.sky, s, a);
    // The sun's come first, then the moon's, then the twilights: what would run into another is left out.
    const next = (m: number | undefined): number | undefined => (m === undefined ? undefined : m + DAY_MIN);
    const taken: (readonly [number, number])[] = [];
    for (const [name, minute] of [
      ['sunrise', d.sky.sunriseMin],
      ['sunset', d.sky.sunsetMin],
      ['sunrise', next(d.sky.sunriseMin)],
      ['moonrise', d.sky.moonriseMin],
      ['moonset', d.sky.moonUp.map(([, to]) => to).find((m) => m > s.fromMin && m < s.toMin)],
      ['last light', d.sky.duskMin],
      ['first light', d.sky.dawnMin],
      ['first light', next(d.sky.dawnMin)],
    ] as const) {
      if (minute === undefined || minute < s.fromMin || minute > s.toMin) continue;
      const text = `${name} ${formatClock(minute)}`;
      const from = x(minute);
      const to = from + 0.8 + widthOf(text) + 1;
      if (to > a.x + a.w + 1 || taken.some(([p, q]) => from < q && to > p)) continue;
      taken.push([from, to]);
      // It ends above the hours, through whose figures it would run.
      ink.line(from, a.y + 0.4, from, base - 4.2, 0.18, 'ink-soft');
      ink.text(from + 0.8, base - 5, text, { role: 'ink-soft' });
    }
  },
});
