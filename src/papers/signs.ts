import type { PathCommand } from '../drawing/display-list.ts';
import type { Severity } from '../report/types.ts';
import { CAP, type Ink, widthOf } from './ink.ts';

const WORD: Readonly<Record<Severity, string>> = { stop: 'STOP', warn: 'WARN', note: 'NOTE' };

/**
 * The sign of a severity, `sizeMm` across with its middle at (x, y): a solid octagon with a bar, a half-filled diamond,
 * an open square. The shape says it without colour.
 */
export const severitySign = (ink: Ink, severity: Severity, x: number, y: number, sizeMm = 3): void => {
  const r = sizeMm / 2;
  if (severity === 'stop') {
    const k = r * Math.tan(Math.PI / 8);
    const ring: readonly (readonly [number, number])[] = [
      [-k, -r],
      [k, -r],
      [r, -k],
      [r, k],
      [k, r],
      [-k, r],
      [-r, k],
      [-r, -k],
    ];
    ink.path(closed(ring, x, y), { fill: 'stop' });
    ink.rect(x - r * 0.55, y - r * 0.17, r * 1.1, r * 0.34, { fill: 'paper' });
  } else if (severity === 'warn') {
    const d = r * 1.15;
    ink.path(
      closed(
        [
          [0, -d],
          [d, 0],
          [0, d],
          [-d, 0],
        ],
        x,
        y,
      ),
      { weightMm: 0.25, role: 'warn', fill: 'paper' },
    );
    ink.path(
      closed(
        [
          [0, -d],
          [d, 0],
          [0, d],
        ],
        x,
        y,
      ),
      { fill: 'warn' },
    );
  } else {
    ink.rect(x - r * 0.85, y - r * 0.85, r * 1.7, r * 1.7, { weightMm: 0.25, fill: 'paper' });
  }
};

const closed = (ring: readonly (readonly [number, number])[], x: number, y: number): PathCommand[] => [
  ...ring.map(([dx, dy], i) => [i === 0 ? 'M' : 'L', x + dx, y + dy] as const),
  ['Z'],
];

/** Sign, word and number, like ◆ WARN F3, from the left at a baseline; gives where it ends. */
export const severityTag = (
  ink: Ink,
  severity: Severity,
  number: string,
  x: number,
  baseline: number,
): number => {
  severitySign(ink, severity, x + 1.6, baseline - CAP.note / 2, 2.8);
  const text = `${WORD[severity]} ${number}`.trim();
  ink.text(x + 4, baseline, text, { weight: 'semibold', role: severity });
  return x + 4 + widthOf(text, { weight: 'semibold' });
};
