import type { PathCommand } from '../drawing/display-list.ts';
import type { DaySummary } from '../report/day.ts';
import type { Rect } from './frame.ts';
import type { Ink } from './ink.ts';

export const NAME_MM = 46;
export const HOUR = 60;

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

export const xOf = (s: DayScale, a: Rect) => {
  const w = a.w - NAME_MM;
  return (m: number): number =>
    a.x +
    NAME_MM +
    (w * (Math.min(s.toMin, Math.max(s.fromMin, m)) - s.fromMin)) / Math.max(1, s.toMin - s.fromMin);
};

/** A shape filled with a grey. */
export const filled = (ink: Ink, d: readonly PathCommand[], color: string): void =>
  ink.add([{ kind: 'path', d, fill: { role: 'ink-faint', color } }]);

/** The outline of an upright box. */
export const box = (x1: number, y1: number, x2: number, y2: number): readonly PathCommand[] => [
  ['M', x1, y1],
  ['L', x2, y1],
  ['L', x2, y2],
  ['L', x1, y2],
  ['Z'],
];
