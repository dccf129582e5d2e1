import { distanceMm, type Point } from '../../kernel/geometry.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { scaleUnderlay } from '../../plan/edits/underlays.ts';
import { planRecord } from '../../plan/plan.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { underlayToScale } from '../underlays.ts';
import { clearTraces, type PointerInfo, type Tool, type ToolContext } from './tool.ts';
import { typedAfter } from './typed.ts';

const HINT =
  'Scale the underlay: press on two spots whose distance you know, then type it and press Enter. Escape goes back.';
const TYPE = 'Type how long that is, and press Enter.';

/** Scales an underlay from one known length: two spots, then what is measured between them. */
export const createScaleTool = (): Tool => {
  let from: Point | undefined;
  let to: Point | undefined;
  let pointed: Point | undefined;
  let text = '';

  const units = (ctx: ToolContext) => planRecord(ctx.session.getState().plan).lengthUnits;

  const reset = (ctx: ToolContext): void => {
    from = undefined;
    to = undefined;
    pointed = undefined;
    text = '';
    clearTraces(ctx);
  };

  const show = (ctx: ToolContext): void => {
    const end = to ?? pointed;
    const typed = text === '' ? undefined : parseLengthMm(text, units(ctx));
    const now = from && end ? formatLength(distanceMm(from, end), units(ctx)) : '';
    ctx.session.set({
      overlay: {
        ...NO_OVERLAY,
        target: end ?? from,
        measures: from && end ? [{ from, to: end, text: now }] : [],
        entry: to
          ? {
              at: to,
              text,
              hint: !typed
                ? `now ${now}; type the real length`
                : typed.ok
                  ? `= ${formatLength(typed.value, units(ctx))}`
                  : problemText(typed.error),
              wrong: typed !== undefined && !typed.ok,
            }
          : undefined,
      },
    });
  };

  const finish = (ctx: ToolContext): void => {
    const { session } = ctx;
    const u = underlayToScale(session.getState());
    if (!from || !to || !u || session.getState().readOnly) return;
    const typed = parseLengthMm(text, units(ctx));
    if (!typed.ok) return session.set({ message: text === '' ? TYPE : problemText(typed.error) });
    const made = scaleUnderlay(session.getState().plan, u.id, from, to, typed.value);
    if (!made.ok) return session.set({ message: problemText(made.error) });
    const words = formatLength(typed.value, units(ctx));
    reset(ctx);
    session.commit(`Scale ${u.name}`, made.value);
    session.set({ tool: 'select', selection: new Set([u.id]) });
    session.set({
      message: `“${u.name}” is to scale: that stretch is ${words}. Drag it to its place; lock it in the panel at the right.`,
    });
  };

  const press = (ctx: ToolContext, e: PointerInfo): void => {
    const { session } = ctx;
    const u = underlayToScale(session.getState());
    if (!u || to) {
      session.set({ message: u ? TYPE : 'There is no underlay on this floor to scale. Import one first.' });
      return;
    }
    if (!from) from = e.at;
    else if (distanceMm(from, e.at) * session.getState().camera.pxPerMm < 2)
      return session.set({ message: 'Both spots are the same. Press where the known length ends.' });
    else to = e.at;
    session.set({ message: to ? TYPE : `Scaling “${u.name}”: press where the known length ends.` });
    show(ctx);
  };

  return {
    id: 'scale',
    hint: HINT,
    onPointerDown: press,
    onPointerMove: (ctx, e) => {
      if (to) return;
      pointed = e.at;
      if (from) show(ctx);
    },
    onPointerUp: () => {},
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      if (key === 'Escape') {
        if (!from) return false;
        if (text !== '') text = '';
        else if (to) to = undefined;
        else reset(ctx);
        if (from) show(ctx);
        ctx.session.set({ message: to ? TYPE : HINT });
        return true;
      }
      if (!to) return false;
      if (key === 'Enter') {
        finish(ctx);
        return true;
      }
      const next = typedAfter(text, key);
      if (next === undefined) return false;
      text = next;
      show(ctx);
      return true;
    },
    typing: () => to !== undefined,
    cursor: () => 'crosshair',
  };
};
