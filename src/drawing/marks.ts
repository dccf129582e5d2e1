import type { Severity } from '../report/types.ts';
import type { PathCommand } from './display-list.ts';
import { SIGN_RINGS } from './severity.ts';
import { CAP, type Sketch, widthOf } from './sketch.ts';

/**
 * A load bar: worst as the filled part, this setup as a dotted tick, the limit as a heavy tick at three quarters.
 * What lies over the limit is hatched. Unknown figures leave the bar empty.
 */
export const loadBar = (
  ink: Sketch,
  x: number,
  y: number,
  w: number,
  h: number,
  f: { readonly here: number; readonly worst: number; readonly limit: number | undefined },
): void => {
  const mark = w * 0.72;
  ink.rect(x, y, w, h, { weightMm: 0.13, role: 'ink-faint' });
  const limit = f.limit;
  if (limit === undefined || !(limit > 0)) return;
  const at = (v: number): number => Math.min(w, (v / limit) * mark);
  if (f.worst > 0) {
    const end = at(f.worst);
    const over = f.worst > limit;
    ink.rect(x, y, Math.min(end, mark), h, { fill: over ? 'stop' : 'ink-soft' });
    if (over) {
      ink.rect(x + mark, y, end - mark, h, {
        hatch: { role: 'stop', angleDeg: -45, spacingMm: 0.8 },
        weightMm: 0.18,
        role: 'stop',
      });
    }
  }
  if (f.here >= 0) ink.line(x + at(f.here), y - 0.5, x + at(f.here), y + h + 0.5, 0.35, 'ink', [0.5, 0.4]);
  ink.line(x + mark, y - 0.7, x + mark, y + h + 0.7, 0.5);
};

const WORD: Readonly<Record<Severity, string>> = { stop: 'STOP', warn: 'WARN', note: 'NOTE' };

/**
 * The sign of a severity, `sizeMm` across with its middle at (x, y): a solid octagon with a bar, a half-filled diamond,
 * an open square. The shape says it without colour.
 */
export const severitySign = (ink: Sketch, severity: Severity, x: number, y: number, sizeMm = 3): void => {
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
  ink: Sketch,
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
