import type { PathCommand } from '../drawing/display-list.ts';
import { formatClock, formatWatts } from '../kernel/units.ts';
import type { BayLane, BlockRow, SourceDay, StationLoadLane, UnitLane } from '../report/day.ts';
import { onStation } from '../report/station-spans.ts';
import { box, type DayScale, filled, NAME_MM, xOf } from './day-scale.ts';
import type { Block } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';

/** Grey of a lane that is filled: charge and watts. */
const CHARGE = '#e3e6e8';

const lane = (heightMm: number, name: string, draw: (ink: Ink, a: Rect) => void): Block => ({
  heightMm,
  draw: (ink, a) => {
    ink.text(a.x, a.y + heightMm / 2 + CAP.note / 2, name, { maxMm: NAME_MM - 2, weight: 'semibold' });
    draw(ink, a);
    ink.line(a.x, a.y + heightMm, a.x + a.w, a.y + heightMm, 0.13, 'ink-faint');
  },
});

/** Words for blocks too narrow for their name. */
const SHORT: Readonly<Record<string, string>> = {
  'pre-light': 'Pre-light',
  meal: 'Meal',
  move: 'Move',
  wrap: 'Wrap',
};

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
      const short = SHORT[r.block.what];
      const name = short && widthOf(r.name, { weight: 'semibold' }) > w - 2 ? short : r.name;
      ink.text(from + 1, a.y + 4.6, name, { weight: 'semibold', maxMm: w - 2 });
      const times = `${formatClock(r.block.startMin)}–${formatClock(r.block.endMin)}`;
      if (widthOf(times) < w - 2) ink.text(from + 1, a.y + 8.6, times, { role: 'ink-soft' });
    }
  });

const LANE_MM = { top: 0.9, bottom: 6.6 } as const;

/** A stretch of a lane: charge as a slope over a grey, dark hatched. */
const stretch = (
  ink: Ink,
  a: Rect,
  at: readonly [from: number, to: number],
  charge: readonly [from: number, to: number] | undefined,
): void => {
  const [from, to] = at;
  const [top, bottom] = [a.y + LANE_MM.top, a.y + LANE_MM.bottom];
  if (!charge) {
    ink.rect(from, top, to - from, bottom - top, {
      weightMm: 0.25,
      role: 'stop',
      hatch: { role: 'stop', angleDeg: -45, spacingMm: 1 },
    });
    return;
  }
  const y = (soc: number): number => bottom - (bottom - top) * soc;
  const d: readonly PathCommand[] = [
    ['M', from, bottom],
    ['L', from, y(charge[0])],
    ['L', to, y(charge[1])],
    ['L', to, bottom],
    ['Z'],
  ];
  filled(ink, d, CHARGE);
  ink.path(d, { weightMm: 0.18 });
};

/** Where the packs' names go in a stretch: under its slope, else over it; nowhere where they would be struck through. */
const nameIn = (
  ink: Ink,
  a: Rect,
  text: string,
  at: readonly [from: number, to: number],
  soc: readonly [from: number, to: number],
): void => {
  const w = widthOf(text);
  const [from, to] = at;
  if (text === '' || w >= to - from - 2) return;
  const [top, bottom] = [a.y + LANE_MM.top, a.y + LANE_MM.bottom];
  const yAt = (x: number): number =>
    bottom - (bottom - top) * (soc[0] + ((soc[1] - soc[0]) * (x - from)) / (to - from));
  const over = Math.min(yAt(from), yAt(from + 0.8 + w));
  const under = Math.max(yAt(from), yAt(from + 0.8 + w));
  if (under < bottom - 0.8 - CAP.note - 0.3) ink.text(from + 0.8, bottom - 0.8, text, { role: 'ink-soft' });
  else if (over > top + 0.2 + CAP.note + 0.5)
    ink.text(from + 0.8, top + 0.2 + CAP.note, text, { role: 'ink-soft' });
};

/** What a lane of packs is drawn from: a unit's own, or that of a pack on the floor. */
type PackLane = Pick<UnitLane, 'label' | 'spans' | 'swaps'> & { readonly problem?: string | undefined };

/** Charge over the day: changes as ticks, dark gaps hatched. */
export const unitLane = (l: PackLane, s: DayScale, under = false): Block =>
  lane(7.4, under ? `   ${l.label}` : l.label, (ink, a) => {
    const x = xOf(s, a);
    if (l.problem) {
      ink.text(x(s.fromMin) + 1, a.y + 4.6, `not computed: ${l.problem}`, { role: 'ink-soft' });
      return;
    }
    for (const span of l.spans) {
      const at = [x(span.startMin), x(span.endMin)] as const;
      if (at[1] <= at[0]) continue;
      const soc = [span.fromSoc, span.toSoc] as const;
      stretch(ink, a, at, span.state === 'dark' ? undefined : soc);
      if (span.state !== 'dark') nameIn(ink, a, span.packs.map((p) => `#${p}`).join(' '), at, soc);
    }
    for (const swap of l.swaps)
      if (!swap.first) ink.line(x(swap.atMin), a.y, x(swap.atMin), a.y + LANE_MM.bottom, 0.5);
  });

/** A unit on a power station: the station's charge while it burns, hatched where that is empty. */
export const stationUnitLane = (l: StationLoadLane, source: SourceDay | undefined, s: DayScale): Block =>
  lane(7.4, `   ${l.label} on ${l.sourceLabel}`, (ink, a) => {
    const x = xOf(s, a);
    for (const span of onStation(l, source?.station)) {
      const at = [x(span.startMin), x(span.endMin)] as const;
      if (at[1] <= at[0]) continue;
      stretch(ink, a, at, span.state === 'dark' ? undefined : [span.fromShare, span.toShare]);
    }
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

/** Whether the line of what is left in a power station would run through a text of so wide on a base line. */
const struck = (
  p: SourceDay,
  x: (minute: number) => number,
  y: (share: number) => number,
  fromMm: number,
  widthMm: number,
  baseMm: number,
): boolean =>
  (p.station?.spans ?? []).some((s) => {
    const [a, b] = [x(s.startMin), x(s.endMin)];
    if (s.state === 'empty' || b <= a || b < fromMm || a > fromMm + widthMm) return false;
    const at = (mm: number): number =>
      y(s.fromShare + ((s.toShare - s.fromShare) * (Math.max(a, Math.min(b, mm)) - a)) / (b - a));
    const [p1, p2] = [at(fromMm), at(fromMm + widthMm)];
    return Math.max(p1, p2) > baseMm - CAP.note - 0.5 && Math.min(p1, p2) < baseMm + 0.5;
  });

/** Watts of a source in steps, with its rating and what is left in a power station dashed. */
export const powerLane = (p: SourceDay, s: DayScale): Block =>
  lane(11, `${p.label}  peak ${formatWatts(p.peakW)}`, (ink, a) => {
    const x = xOf(s, a);
    const most = Math.max(1, p.peakW, p.ratedW ?? 0);
    const bottom = a.y + 10.4;
    const up = (w: number): number => bottom - (9.4 * w) / most;
    for (const step of p.steps) {
      const w = step.lightW + step.chargerW;
      const [from, to] = [x(step.startMin), x(step.endMin)];
      if (to <= from || w <= 0) continue;
      filled(ink, box(from, up(w), to, bottom), CHARGE);
      ink.rect(from, up(w), to - from, bottom - up(w), { weightMm: 0.18 });
      const text = formatWatts(w);
      if (widthOf(text) >= to - from - 2) continue;
      // In the bar where it is high enough, else over it.
      const inside = bottom - up(w) > CAP.note + 1.8;
      const base = inside ? bottom - 0.9 : up(w) - 0.6;
      if (!struck(p, x, (share) => bottom - 9.4 * share, from + 0.8, widthOf(text), base))
        ink.text(from + 0.8, base, text, { role: 'ink-soft' });
    }
    if (p.ratedW !== undefined && p.ratedW < 4 * p.peakW)
      ink.line(x(s.fromMin), up(p.ratedW), x(s.toMin), up(p.ratedW), 0.18, 'stop', [1.2, 0.8]);
    for (const span of p.station?.spans ?? []) {
      const [from, to] = [x(span.startMin), x(span.endMin)];
      if (to <= from) continue;
      const y = (share: number): number => bottom - 9.4 * share;
      if (span.state === 'empty')
        ink.rect(from, a.y + 1, to - from, 9.4, {
          role: 'stop',
          hatch: { role: 'stop', angleDeg: -45, spacingMm: 1 },
        });
      else ink.line(from, y(span.fromShare), to, y(span.toShare), 0.25, 'ink-soft', [1, 0.7]);
    }
  });
