import type { Ink } from './ink.ts';

/**
 * A load bar: worst as the filled part, this setup as a dotted tick, the limit as a heavy tick at three quarters.
 * What lies over the limit is hatched. Unknown figures leave the bar empty.
 */
export const loadBar = (
  ink: Ink,
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
