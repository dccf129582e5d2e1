import { angleDeg, distanceMm, type Point, point } from '../../kernel/geometry.ts';
import { formatArea, formatLength } from '../../kernel/units.ts';
import { addDimension, anchorAt, type DimensionAnchor } from '../../plan/edits/dimensions.ts';
import { planRecord } from '../../plan/plan.ts';
import { withLineEnd } from '../line-snap.ts';
import { gridMm } from '../options.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { snapTargets } from '../snap-targets.ts';
import { snapPoint } from '../snapping.ts';
import { clearTraces, type PointerInfo, snapMm, snapsOff, type Tool, type ToolContext } from './tool.ts';

const HINT =
  'Press from corner to corner: distance, angle and area show. K keeps the last stretch as a dimension line. Escape ends.';

/** Area of a polygon in square millimetres. */
const areaMm2 = (points: readonly Point[]): number => {
  let sum = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    sum += p.xMm * q.yMm - q.xMm * p.yMm;
  });
  return Math.abs(sum) / 2;
};

/** The angle at the middle one of three points, 0 to 180 degrees. */
const cornerDeg = (a: Point, b: Point, c: Point): number => {
  const d = Math.abs(angleDeg(b, a) - angleDeg(b, c));
  return d > 180 ? 360 - d : d;
};

/** Measures from point to point, with running distance, the angle at the last corner, and the area enclosed. */
export const createMeasureTool = (): Tool => {
  let points: readonly Point[] = [];
  let pointed: Point | undefined;

  const spot = (ctx: ToolContext, e: PointerInfo): Point => {
    const { plan, floorId } = ctx.session.getState();
    if (!floorId || snapsOff(e)) return e.at;
    const first = points.at(-1);
    const targets = snapTargets(plan, floorId, new Set());
    const all = { ...targets, points: [...targets.points, ...targets.centers, ...points.slice(0, 1)] };
    const near = withLineEnd(all, plan, floorId, e.at, snapMm(ctx));
    const { at } = snapPoint(e.at, near, snapMm(ctx), gridMm(planRecord(plan).lengthUnits).light);
    if (!e.shift || !first) return at;
    // Straight across or straight down from the last point.
    return Math.abs(at.xMm - first.xMm) >= Math.abs(at.yMm - first.yMm)
      ? point(at.xMm, first.yMm)
      : point(first.xMm, at.yMm);
  };

  const show = (ctx: ToolContext): void => {
    const units = planRecord(ctx.session.getState().plan).lengthUnits;
    const all = pointed ? [...points, pointed] : points;
    const measures = all.slice(1).map((to, i) => {
      const from = all[i] ?? to;
      return { from, to, text: formatLength(distanceMm(from, to), units) };
    });
    const sum = all.slice(1).reduce((s, p, i) => s + distanceMm(all[i] ?? p, p), 0);
    const [a, b, c] = all.slice(-3);
    const facts = [
      measures.length > 1 ? `sum ${formatLength(sum, units)}` : '',
      a && b && c ? `angle ${Math.round(cornerDeg(a, b, c))}°` : '',
      all.length > 2 ? `area ${formatArea(areaMm2(all), units)}` : '',
    ].filter(Boolean);
    ctx.session.set({
      overlay: {
        ...NO_OVERLAY,
        measures,
        target: pointed,
        entry:
          facts.length > 0 && pointed
            ? { at: pointed, text: '', hint: facts.join(' · '), wrong: false }
            : undefined,
      },
    });
  };

  const reset = (ctx: ToolContext): void => {
    points = [];
    pointed = undefined;
    clearTraces(ctx);
  };

  const keep = (ctx: ToolContext): boolean => {
    const { plan, floorId, readOnly } = ctx.session.getState();
    const all = pointed && points.length === 1 ? [...points, pointed] : points;
    const [from, to] = all.slice(-2);
    if (!from || !to || !floorId || readOnly) return false;
    const anchor = (p: Point): DimensionAnchor => anchorAt(plan, floorId, p);
    const made = addDimension(plan, { floorId, from: anchor(from), to: anchor(to) }, ctx.session.newId);
    if (!made.ok) {
      ctx.session.set({ message: made.error.what });
      return true;
    }
    reset(ctx);
    ctx.session.commit('Keep a dimension line', made.value.changes);
    ctx.session.set({
      selection: new Set([made.value.dimension.id]),
      message: 'Kept. It follows what it measures; drag it to move the line off.',
    });
    return true;
  };

  return {
    id: 'measure',
    hint: HINT,
    onPointerDown: (ctx, e) => {
      const at = spot(ctx, e);
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
      if (key === 'k' || key === 'K' || key === 'Enter') return keep(ctx);
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
