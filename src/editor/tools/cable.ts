import type { Id } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { bridgeWords, plugByBridge } from '../../plan/edits/adapters.ts';
import { portName, recordName } from '../../plan/names.ts';
import { placeOf } from '../../plan/ports.ts';
import { givesPower, runEitherWay, takerOf, takesPower } from '../connect.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { capital } from '../words.ts';
import { clearTraces, hitMm, isDrag, type PointerInfo, type Tool, type ToolContext } from './tool.ts';

const HINT = 'Press on what takes the power and on what gives it, in either order.';

/** Runs a cable between two things that are pressed one after the other, or dragged from one to the other. */
export const createCableTool = (): Tool => {
  let first: Id | undefined;
  let start: PointerInfo | undefined;
  /** The press that chose the first end: letting go there must not count as the second. */
  let choosing = false;

  const endAt = (ctx: ToolContext, e: PointerInfo): Id | undefined => {
    const { plan } = ctx.session.getState();
    return ctx.picker.pick(e.at, hitMm(ctx, e), (r) => takesPower(plan, r.id) || givesPower(plan, r.id));
  };

  const reset = (ctx: ToolContext): void => {
    first = undefined;
    start = undefined;
    choosing = false;
    clearTraces(ctx);
  };

  const show = (ctx: ToolContext, e: PointerInfo): void => {
    if (first === undefined) return;
    const { plan } = ctx.session.getState();
    const from = placeOf(plan, takerOf(plan, first))?.at;
    if (!from) return reset(ctx);
    const over = endAt(ctx, e);
    const run =
      over === undefined || over === first
        ? undefined
        : runEitherWay(plan, first, over, ctx.book.cables(), ctx.book.adapters());
    const target = over === undefined ? undefined : placeOf(plan, takerOf(plan, over))?.at;
    ctx.session.set({
      overlay: {
        ...NO_OVERLAY,
        rubber: { from, to: target ?? e.at, what: 'cable', fits: run?.ok ?? false },
        target: run?.ok ? target : undefined,
      },
    });
  };

  const connect = (ctx: ToolContext, second: Id): void => {
    const { plan, session } = { plan: ctx.session.getState().plan, session: ctx.session };
    if (first === undefined) return;
    const run = runEitherWay(plan, first, second, ctx.book.cables(), ctx.book.adapters());
    if (!run.ok) {
      session.set({ message: problemText(run.error) });
      return;
    }
    const { from, to, bridge } = run.value;
    const words = `${recordName(plan, to.recordId)} into ${portName(plan, from)}`;
    reset(ctx);
    session.commit(`Plug ${words}`, plugByBridge(plan, from, to, bridge, session.newId));
    session.set({ message: `Plugged ${words}: ${bridgeWords(bridge)}.` });
  };

  return {
    id: 'cable',
    hint: HINT,
    onPointerDown: (ctx, e) => {
      const { plan, readOnly } = ctx.session.getState();
      if (readOnly) return;
      start = e;
      choosing = false;
      if (first !== undefined) return;
      const id = endAt(ctx, e);
      if (id === undefined) {
        ctx.session.set({ message: `Nothing to plug there. ${HINT}` });
        return;
      }
      first = id;
      choosing = true;
      const name = capital(recordName(plan, id));
      ctx.session.set({
        selection: new Set([id]),
        message: givesPower(plan, id)
          ? `${name}: now press on what it feeds.`
          : `${name}: now press on the box or outlet that feeds it.`,
      });
      show(ctx, e);
    },
    onPointerMove: show,
    onPointerUp: (ctx, e) => {
      if (first === undefined || !start) return;
      const moved = isDrag(start, e);
      start = undefined;
      if (choosing && !moved) return;
      choosing = false;
      const over = endAt(ctx, e);
      if (over === undefined || over === first) {
        if (over === undefined) ctx.session.set({ message: `Nothing to plug there. ${HINT}` });
        return;
      }
      connect(ctx, over);
    },
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      if (key !== 'Escape' || first === undefined) return false;
      reset(ctx);
      ctx.session.set({ message: HINT });
      return true;
    },
    cursor: () => 'crosshair',
  };
};
