import { cableCrossings, cableLine } from '../../derive/crossings.ts';
import { distanceMm, nearestOnSegment, type Point } from '../../kernel/geometry.ts';
import { addCrossing } from '../../plan/edits/features.ts';
import { recordsOf } from '../../plan/plan.ts';
import { clearTraces, type PointerInfo, snapMm, type Tool, type ToolContext } from './tool.ts';

/** What a crossing reaches beyond the way it crosses, at both ends together. */
const BEYOND_MM = 600;
const USUAL_MM = 1800;

/** Puts cable crossings: where a cable lies across a way, over its whole width and along the cable. */
export const createCrossingTool = (): Tool => {
  const place = (
    ctx: ToolContext,
    e: Pick<PointerInfo, 'at'>,
  ): { readonly at: Point; readonly rotationDeg: number; readonly lengthMm: number } => {
    const { plan, floorId } = ctx.session.getState();
    const reach = snapMm(ctx) * 2;
    const [over] = cableCrossings(plan)
      .filter((c) => c.over.type === 'opening' || c.over.floorId === floorId)
      .map((c) => ({ c, off: distanceMm(c.at, e.at) }))
      .filter((x) => x.off <= Math.max(reach, x.c.lengthMm / 2))
      .sort((a, b) => a.off - b.off);
    if (over) return { at: over.c.at, rotationDeg: over.c.deg, lengthMm: over.c.lengthMm + BEYOND_MM };
    let found: { at: Point; deg: number; off: number } | undefined;
    for (const c of recordsOf(plan, 'cable')) {
      const line = cableLine(plan, c);
      if (line?.floorId !== floorId) continue;
      line?.points.slice(1).forEach((b, i) => {
        const a = line.points[i] ?? b;
        const { at } = nearestOnSegment(e.at, a, b);
        const off = distanceMm(at, e.at);
        if (off > reach || (found && found.off <= off)) return;
        found = { at, off, deg: (Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm) * 180) / Math.PI };
      });
    }
    return { at: found?.at ?? e.at, rotationDeg: found?.deg ?? 0, lengthMm: USUAL_MM };
  };

  const made = (ctx: ToolContext, e: Pick<PointerInfo, 'at'>, newId: (p: string) => string) => {
    const { plan, floorId, floorView } = ctx.session.getState();
    if (!floorId) return undefined;
    return addCrossing(plan, { floorId, ...floorView.crossing, ...place(ctx, e) }, newId);
  };

  return {
    id: 'crossing',
    hint: 'Press where cables cross a way: the crossing lies along the cable, over the whole way. Escape ends.',
    onPointerDown: (ctx, e) => {
      if (ctx.session.getState().readOnly) return;
      const done = made(ctx, e, ctx.session.newId);
      if (!done) return;
      clearTraces(ctx);
      ctx.session.commit('Place a cable crossing', done.changes);
      ctx.session.set({
        selection: new Set([done.crossing.id]),
        message: 'Placed. Its length and height are at the right.',
      });
    },
    onPointerMove: (ctx, e) => {
      ctx.session.set({ preview: made(ctx, e, (p) => `ghost-${p}`)?.changes });
    },
    onPointerUp: () => {},
    onPointerCancel: clearTraces,
    onKey: () => false,
    cursor: () => 'copy',
  };
};
