import {
  add,
  angleDeg,
  boxHolds,
  boxOf,
  direction,
  distanceMm,
  dot,
  growBox,
  type Point,
  scale,
  sub,
} from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { drawRun, LEAST_WALL_MM } from '../../plan/edits/walls.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import { fitBox, viewBox } from '../fit.ts';
import { withLineEnd } from '../line-snap.ts';
import { gridMm } from '../options.ts';
import { type Guide, NO_OVERLAY } from '../overlay.ts';
import { snapTargets } from '../snap-targets.ts';
import { snapPoint } from '../snapping.ts';
import { clearTraces, type PointerInfo, snapMm, snapsOff, type Tool, type ToolContext } from './tool.ts';
import { TYPED } from './typed.ts';

const HINT =
  'Press where the wall starts, or type a length to start in the middle of the view. Arrow keys or the pointer give the direction.';
const ARROWS: Readonly<Record<string, number>> = {
  ArrowRight: 0,
  ArrowDown: 90,
  ArrowLeft: 180,
  ArrowUp: 270,
};
const FREE_STEP_DEG = 1;

/** Draws walls one after the other, by pointer or by typed lengths and arrow keys. */
export const createWallTool = (): Tool => {
  /** Corners of the run so far and the walls it has. */
  let points: readonly Point[] = [];
  let wallIds: readonly Id[] = [];
  let deg = 0;
  let text = '';
  let pointed: Point | undefined;
  let guides: readonly Guide[] = [];

  const units = (ctx: ToolContext) => planRecord(ctx.session.getState().plan).lengthUnits;
  const last = (): Point | undefined => points.at(-1);

  const reset = (ctx: ToolContext): void => {
    points = [];
    wallIds = [];
    text = '';
    pointed = undefined;
    guides = [];
    clearTraces(ctx);
  };

  /** Walls that an undo took away end the run they belonged to. */
  const stillThere = (ctx: ToolContext): void => {
    const { plan } = ctx.session.getState();
    if (wallIds.some((id) => !recordOf(plan, 'wall', id))) {
      points = [];
      wallIds = [];
      text = '';
      pointed = undefined;
    }
  };

  /** Where the next wall would end, and whether it closes the run. */
  const next = (ctx: ToolContext): { end: Point; closes: boolean } | undefined => {
    const from = last();
    const first = points[0];
    if (!from || !first) return undefined;
    const typed = text === '' ? undefined : parseLengthMm(text, units(ctx));
    if (typed && !typed.ok) return undefined;
    const closing = pointed !== undefined && text === '' && points.length > 2 && pointed === first;
    if (closing) return { end: first, closes: true };
    const long = typed ? typed.value : pointed ? dot(sub(pointed, from), direction(deg)) : 0;
    const end = add(from, scale(direction(deg), long));
    return { end, closes: points.length > 2 && distanceMm(end, first) < LEAST_WALL_MM };
  };

  const show = (ctx: ToolContext): void => {
    const from = last();
    const { plan, floorId, floorView } = ctx.session.getState();
    if (!from || !floorId) {
      ctx.session.set({ overlay: { ...NO_OVERLAY, guides, target: pointed } });
      return;
    }
    const typed = text === '' ? undefined : parseLengthMm(text, units(ctx));
    const goal = next(ctx);
    const length = goal ? distanceMm(from, goal.end) : 0;
    const look = floorView.wall;
    const made =
      goal && length >= LEAST_WALL_MM
        ? drawRun(
            plan,
            {
              floorId,
              look,
              before: wallIds,
              run: {
                points: goal.closes ? points : [...points, goal.end],
                closed: goal.closes,
                along: look.along,
              },
            },
            (p) => `ghost-${p}`,
          )
        : undefined;
    const problem = typed && !typed.ok ? typed.error : made && !made.ok ? made.error : undefined;
    const hint = problem
      ? problemText(problem)
      : goal?.closes
        ? 'closes the room'
        : text === ''
          ? formatLength(length, units(ctx))
          : `= ${formatLength(length, units(ctx))}`;
    ctx.session.set({
      preview: made?.ok ? made.value.changes : undefined,
      overlay: {
        ...NO_OVERLAY,
        guides,
        target: goal?.closes ? points[0] : undefined,
        rubber: goal ? { from, to: goal.end, what: 'aim', fits: made?.ok ?? false } : undefined,
        entry: { at: goal?.end ?? from, text, hint, wrong: problem !== undefined },
      },
    });
  };

  const start = (ctx: ToolContext, at: Point): void => {
    points = [at];
    wallIds = [];
    ctx.session.set({
      selection: new Set(),
      message: 'Type a length and press Enter, or press where it ends. Arrow keys turn; Escape ends.',
    });
  };

  const finish = (ctx: ToolContext): void => {
    const from = last();
    const { plan, floorId, floorView, readOnly } = ctx.session.getState();
    if (!from || !floorId || readOnly) return;
    const goal = next(ctx);
    const typed = text === '' ? undefined : parseLengthMm(text, units(ctx));
    if (!goal) {
      if (typed && !typed.ok) ctx.session.set({ message: problemText(typed.error) });
      return;
    }
    const look = floorView.wall;
    const run = {
      points: goal.closes ? points : [...points, goal.end],
      closed: goal.closes,
      along: look.along,
    };
    const made = drawRun(plan, { floorId, look, before: wallIds, run }, ctx.session.newId);
    if (!made.ok) {
      ctx.session.set({ message: problemText(made.error) });
      return;
    }
    const kept = made.value.wallIds;
    const nextPoints = run.points;
    // The commit must find the run as it will be, for `stillThere`.
    wallIds = [];
    ctx.session.commit(goal.closes ? 'Close the room' : 'Draw a wall', made.value.changes);
    text = '';
    pointed = undefined;
    if (goal.closes) {
      reset(ctx);
      ctx.session.set({ message: 'The room is closed. Press where the next wall starts, or Escape.' });
      return;
    }
    points = nextPoints;
    wallIds = kept;
    keepInView(ctx);
    show(ctx);
  };

  /** Typed walls may end where the view does not reach: it is then fitted to the run. */
  const keepInView = (ctx: ToolContext): void => {
    const { camera, viewport } = ctx.session.getState();
    const end = last();
    if (!end || boxHolds(viewBox(camera, viewport), end)) return;
    const fitted = fitBox(growBox(boxOf(points), 2000), viewport);
    if (fitted) ctx.session.set({ camera: { ...fitted, pxPerMm: Math.min(fitted.pxPerMm, camera.pxPerMm) } });
  };

  /** Snaps the pointer: to the run's start, to what is on the floor, else to the direction and a round length. */
  const point = (ctx: ToolContext, e: PointerInfo): void => {
    stillThere(ctx);
    const { plan, floorId } = ctx.session.getState();
    if (!floorId) return;
    const reach = snapMm(ctx);
    const first = points[0];
    const from = last();
    if (first && points.length > 2 && distanceMm(first, e.at) <= reach * 1.5) {
      pointed = first;
      guides = [];
      return;
    }
    const snapped = snapsOff(e)
      ? { at: e.at, guides: [] }
      : snapPoint(
          e.at,
          withLineEnd(
            wallTargets(ctx, snapTargets(plan, floorId, new Set(wallIds))),
            plan,
            floorId,
            e.at,
            reach,
          ),
          reach,
          gridMm(units(ctx)).light,
        );
    pointed = snapped.at;
    guides = snapped.guides;
    if (!from || distanceMm(from, pointed) < 1) return;
    const to = angleDeg(from, pointed);
    const free = e.shift || e.alt;
    deg = free ? Math.round(to / FREE_STEP_DEG) * FREE_STEP_DEG : (Math.round(to / 90) * 90) % 360;
  };

  /** Corners of the run itself are lines to line up with. */
  const wallTargets = (_ctx: ToolContext, t: ReturnType<typeof snapTargets>): typeof t => ({
    ...t,
    centers: [...t.centers, ...points.slice(0, -1)],
  });

  return {
    id: 'wall',
    hint: HINT,
    onPointerDown: (ctx, e) => {
      const { readOnly, floorId } = ctx.session.getState();
      if (readOnly || !floorId) return;
      point(ctx, e);
      if (!last()) {
        start(ctx, pointed ?? e.at);
        pointed = undefined;
      } else finish(ctx);
      show(ctx);
    },
    onPointerMove: (ctx, e) => {
      point(ctx, e);
      show(ctx);
    },
    onPointerUp: () => {},
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      stillThere(ctx);
      const { camera, readOnly } = ctx.session.getState();
      const drawing = last() !== undefined;
      const turn = ARROWS[key];
      if (key === 'Escape') {
        if (!drawing && text === '') return false;
        if (text !== '') text = '';
        else reset(ctx);
        if (drawing) show(ctx);
        ctx.session.set({ message: HINT });
        return true;
      }
      if (readOnly) return false;
      if (key === 'Enter') {
        if (!drawing) start(ctx, { xMm: Math.round(camera.center.xMm), yMm: Math.round(camera.center.yMm) });
        else finish(ctx);
        show(ctx);
        return true;
      }
      if (turn !== undefined && drawing) {
        deg = turn;
        pointed = undefined;
        show(ctx);
        return true;
      }
      if (key === 'Backspace' && drawing) {
        text = text.slice(0, -1);
        show(ctx);
        return true;
      }
      // Before a wall is begun, letters are still the commands of the other tools.
      if (TYPED.test(key) && (drawing || /^[0-9]$/.test(key))) {
        if (!drawing) start(ctx, { xMm: Math.round(camera.center.xMm), yMm: Math.round(camera.center.yMm) });
        text += key;
        show(ctx);
        return true;
      }
      return false;
    },
    typing: () => last() !== undefined,
    cursor: () => 'crosshair',
  };
};
