import type { PathCommand } from '../drawing/display-list.ts';
import { SIGN_RINGS } from '../drawing/severity.ts';
import type { Severity } from '../report/types.ts';
import { CAP, type Ink, widthOf } from './ink.ts';

const WORD: Readonly<Record<Severity, string>> = { stop: 'STOP', warn: 'WARN', note: 'NOTE' };

/**
 * The sign of a severity, `sizeMm` across with its middle at (x, y): a solid octagon with a bar, a half-filled diamond,
 * an open square. The shape says it without colour.
 */
export const severitySign = (ink: Ink, severity: Severity, x: number, y: number, sizeMm = 3): void => {
  const ring = (name: keyof typeof SIGN_RINGS): PathCommand[] => [
    ...SIGN_RINGS[name].map(
      ([dx, dy], i) => [i === 0 ? 'M' : 'L', x + dx * sizeMm, y + dy * sizeMm] as const,
    ),
    ['Z'],
  ];
  if (severity === 'stop') {
    ink.path(ring('octagon'), { fill: 'stop' });
    ink.path(ring('bar'), { fill: 'paper' });
  } else if (severity === 'warn') {
    ink.path(ring('diamond'), { weightMm: 0.25, role: 'warn', fill: 'paper' });
    ink.path(ring('half'), { fill: 'warn' });
  } else {
    ink.path(ring('square'), { weightMm: 0.25, fill: 'paper' });
  }
};

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
