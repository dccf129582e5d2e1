import type { DrawContext } from '../drawing/context.ts';
import type { PathCommand } from '../drawing/display-list.ts';
import type { Point } from '../kernel/geometry.ts';
import { fixturePlace, recordsOf } from '../plan/plan.ts';
import type { Rect } from './frame.ts';
import type { Ink } from './ink.ts';

/** Size of the dot of a unit. */
const DOT_MM = 0.7;

const circle = (x: number, y: number, rMm: number, fill: boolean) => ({
  kind: 'circle' as const,
  xMm: x,
  yMm: y,
  rMm,
  ...(fill ? { fill: { role: 'ink' as const } } : { stroke: { role: 'ink' as const, weightMm: 0.25 } }),
});

/** The floor in a small box, its walls and units as dots, with a ring where one unit stands. */
export const cardPlan = (ink: Ink, ctx: DrawContext, at: Point, box: Rect): void => {
  if (box.w < 8 || box.h < 8) return;
  const walls = recordsOf(ctx.plan, 'wall').filter((w) => w.floorId === ctx.floorId);
  const spots = recordsOf(ctx.plan, 'fixture')
    .filter((f) => f.floorId === ctx.floorId)
    .map((f) => fixturePlace(ctx.plan, f).at);
  const all = [...walls.flatMap((w) => [w.from, w.to]), ...spots];
  const minX = Math.min(...all.map((p) => p.xMm));
  const minY = Math.min(...all.map((p) => p.yMm));
  const spanX = Math.max(1, Math.max(...all.map((p) => p.xMm)) - minX);
  const spanY = Math.max(1, Math.max(...all.map((p) => p.yMm)) - minY);
  const pad = 2;
  const k = Math.min((box.w - 2 * pad) / spanX, (box.h - 2 * pad) / spanY);
  const x0 = box.x + (box.w - spanX * k) / 2;
  const y0 = box.y + (box.h - spanY * k) / 2;
  const x = (p: Point): number => x0 + (p.xMm - minX) * k;
  const y = (p: Point): number => y0 + (p.yMm - minY) * k;
  for (const w of walls) ink.line(x(w.from), y(w.from), x(w.to), y(w.to), 0.35, 'wall');
  // One path for all of them, each spot of the small picture once: a card is one of hundreds.
  const dots = new Map<string, PathCommand[]>();
  for (const p of spots) {
    const [px, py] = [x(p), y(p)];
    const key = `${Math.round(px / DOT_MM)}|${Math.round(py / DOT_MM)}`;
    if (!dots.has(key))
      dots.set(key, [
        ['M', px - DOT_MM / 2, py],
        ['L', px, py - DOT_MM / 2],
        ['L', px + DOT_MM / 2, py],
        ['L', px, py + DOT_MM / 2],
        ['Z'],
      ]);
  }
  if (dots.size > 0) ink.path([...dots.values()].flat(), { fill: 'ink-faint' });
  ink.add([circle(x(at), y(at), 1.6, false), circle(x(at), y(at), 0.7, true)]);
};
