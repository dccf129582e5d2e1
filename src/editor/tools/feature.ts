import { FEATURE_SHAPE } from '../../derive/outdoors.ts';
import { distanceMm, type Point } from '../../kernel/geometry.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { addFeature } from '../../plan/edits/features.ts';
import { planRecord } from '../../plan/plan.ts';
import { withLineEnd } from '../line-snap.ts';
import { gridMm } from '../options.ts';
import { type Guide, NO_OVERLAY } from '../overlay.ts';
import { snapTargets } from '../snap-targets.ts';
import { snapPoint } from '../snapping.ts';
import { clearTraces, type PointerInfo, snapMm, snapsOff, type Tool, type ToolContext } from './tool.ts';

const HINT = 'Choose at the right what to draw. Press its corners; Enter ends it, Escape takes it back.';

/** Draws what is outdoors and what stays clear: spots at one press, lines and areas corner by corner. */
export const createFeatureTool = (): Tool => {
  let points: readonly Point[] = [];
  let pointed: Point | undefined;
  let guides: readonly Guide[] = [];

  const reset = (ctx: ToolContext): void => {
    points = [];
    pointed = undefined;
    guides = [];
    clearTraces(ctx);
  };

  const shapeNow = (ctx: ToolContext) => FEATURE_SHAPE[ctx.session.getState().floorView.feature.what];

  const spot = (ctx: ToolContext, e: PointerInfo): Point => {
    const { plan, floorId } = ctx.session.getState();
    if (!floorId || snapsOff(e)) {
      guides = [];
      return e.at;
    }
    const targets = snapTargets(plan, floorId, new Set());
    const own = withLineEnd(
      { ...targets, points: [...targets.points, ...points] },
      plan,
      floorId,
      e.at,
      snapMm(ctx),
    );
    const snapped = snapPoint(e.at, own, snapMm(ctx), gridMm(planRecord(plan).lengthUnits).light);
    guides = snapped.guides;
    return snapped.at;
  };

  const made = (ctx: ToolContext, all: readonly Point[], newId: (p: string) => string) => {
    const { plan, floorId, floorView } = ctx.session.getState();
    if (!floorId) return undefined;
    const { what, heightMm, voltsV } = floorView.feature;
    const ofLine = what === 'power-line' && voltsV !== undefined ? { voltsV } : {};
    return addFeature(plan, { floorId, what, shape: shapeNow(ctx), points: all, heightMm, ...ofLine }, newId);
  };

  const show = (ctx: ToolContext): void => {
    const all = pointed ? [...points, pointed] : points;
    const ghost = made(ctx, all, (p) => `ghost-${p}`);
    const from = points.at(-1);
    const units = planRecord(ctx.session.getState().plan).lengthUnits;
    ctx.session.set({
      preview: ghost?.ok ? ghost.value.changes : undefined,
      overlay: {
        ...NO_OVERLAY,
        guides,
        target: pointed,
        measures:
          from && pointed && distanceMm(from, pointed) > 1
            ? [{ from, to: pointed, text: formatLength(distanceMm(from, pointed), units) }]
            : [],
      },
    });
  };

  const finish = (ctx: ToolContext): void => {
    const { session } = ctx;
    const done = made(ctx, points, session.newId);
    if (!done || session.getState().readOnly) return;
    if (!done.ok) {
      session.set({ message: problemText(done.error) });
      return;
    }
    const { feature, changes } = done.value;
    reset(ctx);
    session.commit(`Draw ${feature.what.replace('-', ' ')}`, changes);
    session.set({
      selection: new Set([feature.id]),
      message: 'Drawn. Its name and measures are at the right; press for the next one, Escape ends.',
    });
  };

  return {
    id: 'feature',
    hint: HINT,
    onPointerDown: (ctx, e) => {
      const { readOnly, floorId } = ctx.session.getState();
      if (readOnly || !floorId) return;
      const at = spot(ctx, e);
      const [first] = points;
      const last = points.at(-1);
      const shape = shapeNow(ctx);
      if (shape === 'spot') {
        points = [at];
        finish(ctx);
        return;
      }
      const reach = snapMm(ctx) * 1.5;
      // Back on the first corner closes an area; twice on one spot ends a line.
      if (shape === 'area' && first && points.length > 2 && distanceMm(first, at) <= reach)
        return finish(ctx);
      if (last && distanceMm(last, at) < 1) return finish(ctx);
      points = [...points, at];
      pointed = undefined;
      show(ctx);
    },
    onPointerMove: (ctx, e) => {
      pointed = spot(ctx, e);
      show(ctx);
    },
    onPointerUp: () => {},
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      if (key === 'Enter' && points.length > 0) {
        finish(ctx);
        return true;
      }
      if (key === 'Backspace' && points.length > 0) {
        points = points.slice(0, -1);
        show(ctx);
        return true;
      }
      if (key !== 'Escape' || points.length === 0) return false;
      reset(ctx);
      ctx.session.set({ message: HINT });
      return true;
    },
    cursor: () => 'crosshair',
  };
};
