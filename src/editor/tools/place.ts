import { angleDeg, distanceMm, normaliseDeg, type Point } from '../../kernel/geometry.ts';
import type { NewId } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { gridMm, OPTIONS } from '../options.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { placeThere } from '../placing.ts';
import { snapOverlay } from '../snap-overlay.ts';
import { snapTargets } from '../snap-targets.ts';
import { snapPoint } from '../snapping.ts';
import { gapsOf, placeRow, ROW, type RowPlaces } from './place-row.ts';
import {
  clearTraces,
  isDrag,
  type PointerInfo,
  snapMm,
  snapsOff,
  type Tool,
  type ToolContext,
} from './tool.ts';

/** Ids for what is only shown; the real ones are made when it is placed. */
const ghostId: NewId = (prefix) => `ghost-${prefix}`;

/** Puts the chosen kind down where the pointer is. Dragging from there turns it to face the pointer. */
export const createPlaceTool = (): Tool => {
  let facingDeg = 0;
  let last: PointerInfo | undefined;
  let pressed: { readonly e: PointerInfo; readonly at: Point } | undefined;
  /** With shift held a drag is a row; how many there are in it. */
  let row: RowPlaces | undefined;
  let count = 4;
  let turnedFor: string | undefined;

  const spot = (ctx: ToolContext, e: PointerInfo): Point => {
    const { plan, floorId } = ctx.session.getState();
    if (snapsOff(e) || !floorId) return e.at;
    const snapped = snapPoint(
      e.at,
      snapTargets(plan, floorId, new Set()),
      snapMm(ctx),
      gridMm(planRecord(plan).lengthUnits).light,
    );
    ctx.session.set({ overlay: snapOverlay(plan, snapped) });
    return snapped.at;
  };

  const show = (ctx: ToolContext, at: Point): void => {
    const { plan, floorId, placing, readOnly } = ctx.session.getState();
    if (!placing || !floorId || readOnly) return;
    const ghost = placeThere(plan, ctx.book, { slug: placing.kindSlug, floorId, at, facingDeg }, ghostId);
    if (ghost.ok) ctx.session.set({ preview: ghost.value.changes });
  };

  const place = (ctx: ToolContext, at: Point): void => {
    const { plan, floorId, placing, readOnly } = ctx.session.getState();
    clearTraces(ctx);
    if (readOnly) return;
    if (!floorId) {
      ctx.session.set({ message: 'The plan has no floor to put it on.' });
      return;
    }
    if (!placing) {
      ctx.session.set({ message: 'Choose a kind from the gear shelf, then press on the floor.' });
      return;
    }
    const slug = placing.kindSlug;
    const placed = placeThere(plan, ctx.book, { slug, floorId, at, facingDeg }, ctx.session.newId);
    if (!placed.ok) {
      ctx.session.set({ message: problemText(placed.error) });
      return;
    }
    ctx.session.commit(`Place ${placed.value.name}`, placed.value.changes);
    ctx.session.set({ selection: new Set([placed.value.id]), message: `Placed ${placed.value.name}.` });
  };

  const showRow = (ctx: ToolContext): void => {
    const { plan, floorId, placing, readOnly } = ctx.session.getState();
    if (!placing || !floorId || readOnly || !row) return;
    let n = 0;
    const ghosts: NewId = (prefix) => `ghost-${prefix}-${n++}`;
    const what = { slug: placing.kindSlug, floorId, facingDeg };
    const made = placeRow(plan, ctx.book, what, row, ghosts);
    const { lengthUnits } = planRecord(plan);
    if (made.ok)
      ctx.session.set({
        preview: made.value.changes,
        overlay: {
          ...NO_OVERLAY,
          measures: gapsOf(row).map((g) => ({
            ...g,
            text: formatLength(distanceMm(g.from, g.to), lengthUnits),
          })),
        },
        message: `${row.count} in a row: digits, + and − change how many.`,
      });
  };

  const commitRow = (ctx: ToolContext): void => {
    const { plan, floorId, placing, readOnly } = ctx.session.getState();
    const asked = row;
    row = undefined;
    clearTraces(ctx);
    if (!placing || !floorId || readOnly || !asked) return;
    const what = { slug: placing.kindSlug, floorId, facingDeg };
    const made = placeRow(plan, ctx.book, what, asked, ctx.session.newId);
    if (!made.ok) return ctx.session.set({ message: problemText(made.error) });
    ctx.session.commit(`Place ${made.value.name}`, made.value.changes);
    ctx.session.set({ selection: made.value.ids, message: `Placed ${made.value.name}.` });
  };

  /** How many are in the row, by a key. */
  const countKey = (ctx: ToolContext, key: string): boolean => {
    const to =
      key === '+' || key === '='
        ? count + 1
        : key === '-'
          ? count - 1
          : /^[2-9]$/.test(key)
            ? Number(key)
            : undefined;
    if (!row || to === undefined) return false;
    count = Math.max(ROW.least, Math.min(ROW.most, to));
    row = { ...row, count };
    showRow(ctx);
    return true;
  };

  const aim = (e: PointerInfo): void => {
    if (!pressed || !isDrag(pressed.e, e)) return;
    const deg = angleDeg(pressed.at, e.at);
    const step = snapsOff(e) ? OPTIONS.rotateSmallDeg : OPTIONS.turnStepDeg;
    facingDeg = normaliseDeg(Math.round(deg / step) * step);
  };

  const turn = (ctx: ToolContext, by: number): boolean => {
    facingDeg = normaliseDeg(facingDeg + by);
    if (last) show(ctx, spot(ctx, last));
    return true;
  };

  return {
    id: 'place',
    hint: 'Press on the floor to put it there; drag to turn it, with shift for a row. [ and ] turn it too. Escape ends.',
    onPointerDown: (ctx, e) => {
      pressed = { e, at: spot(ctx, e) };
      show(ctx, pressed.at);
    },
    onPointerMove: (ctx, e) => {
      last = e;
      const { placing } = ctx.session.getState();
      if (placing?.kindSlug !== turnedFor) {
        turnedFor = placing?.kindSlug;
        facingDeg = 0;
      }
      if (pressed && (row || (e.shift && isDrag(pressed.e, e)))) {
        row = { from: pressed.at, to: spot(ctx, e), count };
        showRow(ctx);
      } else if (pressed) {
        aim(e);
        show(ctx, pressed.at);
      } else show(ctx, spot(ctx, e));
    },
    onPointerUp: (ctx, e) => {
      if (!pressed) return;
      if (row) {
        row = { ...row, to: spot(ctx, e) };
        pressed = undefined;
        commitRow(ctx);
        return;
      }
      aim(e);
      const { at } = pressed;
      pressed = undefined;
      place(ctx, at);
    },
    onPointerCancel: (ctx) => {
      pressed = undefined;
      row = undefined;
      clearTraces(ctx);
    },
    onKey(ctx, key) {
      if (countKey(ctx, key)) return true;
      if (key === '[') return turn(ctx, -OPTIONS.rotateLargeDeg);
      if (key === ']') return turn(ctx, OPTIONS.rotateLargeDeg);
      if (key !== 'Escape') return false;
      this.onPointerCancel(ctx);
      ctx.session.set({ tool: 'select', placing: undefined, message: '' });
      return true;
    },
    typing: () => row !== undefined,
    cursor: () => 'copy',
  };
};
