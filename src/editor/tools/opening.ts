import type { Point } from '../../kernel/geometry.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { addOpening, USUAL_OPENING } from '../../plan/edits/openings.ts';
import { planRecord } from '../../plan/plan.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { wallNear } from '../wall-near.ts';
import { clearTraces, type PointerInfo, snapMm, type Tool, type ToolContext } from './tool.ts';
import { typedAfter, typedLength } from './typed.ts';

const ghostId = (prefix: string): string => `ghost-${prefix}`;

/** Puts doors, windows and archways into walls. A typed length is the width. */
export const createOpeningTool = (): Tool => {
  let text = '';
  let pointed: Point | undefined;

  const wanted = (ctx: ToolContext, far: boolean) => {
    const { plan, floorId, floorView, camera } = ctx.session.getState();
    const { what } = floorView.opening;
    const units = planRecord(plan).lengthUnits;
    const at = pointed ?? camera.center;
    const reach = far ? Number.POSITIVE_INFINITY : snapMm(ctx) * 2;
    const wall = floorId === undefined ? undefined : wallNear(plan, floorId, at, reach);
    return { plan, what, units, at, wall, width: typedLength(text, units, USUAL_OPENING[what].widthMm) };
  };

  const show = (ctx: ToolContext): void => {
    const { plan, what, units, at, wall, width } = wanted(ctx, false);
    const made =
      wall && width.ok
        ? addOpening(
            plan,
            { wallId: wall.id, at, what, ...USUAL_OPENING[what], widthMm: width.value },
            ghostId,
          )
        : undefined;
    const problem = !width.ok ? width.error : made && !made.ok ? made.error : undefined;
    const hint = problem
      ? problemText(problem)
      : `${what}, ${width.ok ? formatLength(width.value, units) : ''} wide`;
    ctx.session.set({
      preview: made?.ok ? made.value.changes : undefined,
      overlay:
        pointed || text !== '' ? { ...NO_OVERLAY, entry: { at, text, hint, wrong: !!problem } } : NO_OVERLAY,
    });
  };

  const place = (ctx: ToolContext, far: boolean): void => {
    const { plan, what, at, wall, width } = wanted(ctx, far);
    const { session } = ctx;
    if (session.getState().readOnly) return;
    if (!wall) return session.set({ message: `No wall there. A ${what} sits in a wall: press on one.` });
    if (!width.ok) return session.set({ message: problemText(width.error) });
    const made = addOpening(
      plan,
      { wallId: wall.id, at, what, ...USUAL_OPENING[what], widthMm: width.value },
      session.newId,
    );
    if (!made.ok) return session.set({ message: problemText(made.error) });
    clearTraces(ctx);
    session.commit(`Place a ${what}`, made.value.changes);
    session.set({
      selection: new Set([made.value.opening.id]),
      message: `Placed a ${what}. Drag it to slide it along its wall.`,
    });
  };

  const reset = (ctx: ToolContext): void => {
    pointed = undefined;
    clearTraces(ctx);
  };

  return {
    id: 'opening',
    hint: 'Press on a wall. Type a width before pressing. Escape ends.',
    onPointerDown: (ctx, e: PointerInfo) => {
      pointed = e.at;
      place(ctx, false);
    },
    onPointerMove: (ctx, e) => {
      pointed = e.at;
      show(ctx);
    },
    onPointerUp: () => {},
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      if (key === 'Enter') {
        place(ctx, true);
        return true;
      }
      if (key === 'Escape' && text !== '') {
        text = '';
        show(ctx);
        return true;
      }
      const next = typedAfter(text, key);
      if (next === undefined) return false;
      text = next;
      show(ctx);
      return true;
    },
    typing: () => text !== '',
    cursor: () => 'copy',
  };
};
