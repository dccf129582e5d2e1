import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import { aimThere } from '../aiming.ts';
import { poseOf } from '../handles.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { wordsFor } from '../words.ts';
import { clearTraces, hitMm, type PointerInfo, snapsOff, type Tool, type ToolContext } from './tool.ts';

const free = (plan: Plan, selection: ReadonlySet<Id>): readonly Id[] =>
  [...selection].filter((id) => {
    const r = plan.records.get(id);
    return r?.type === 'fixture' && !r.locked;
  });

/** Drag from a unit to a spot: it faces it. Near a mark it follows the mark. All selected units aim together, also at a spot pressed alone. */
export const createAimTool = (): Tool => {
  let ids: readonly Id[] = [];
  let grabbed: Id | undefined;
  let start: PointerInfo | undefined;

  const follow = (ctx: ToolContext, e: PointerInfo): void => {
    if (grabbed === undefined) return;
    const { plan, camera } = ctx.session.getState();
    const aim = aimThere(plan, ids, e.at, camera.pxPerMm, snapsOff(e));
    const from = poseOf(plan, grabbed)?.center ?? e.at;
    ctx.session.set({
      preview: aim.changes,
      overlay: {
        ...NO_OVERLAY,
        rubber: { from, to: aim.target, what: 'aim', fits: true },
        target: aim.mark?.at,
      },
      message: aim.mark ? `Follows ${aim.mark.name}.` : '',
    });
  };

  const end = (ctx: ToolContext): void => {
    grabbed = undefined;
    ids = [];
    start = undefined;
    clearTraces(ctx);
  };

  return {
    id: 'aim',
    hint: 'Drag from a unit to what it lights, or press where the selected units aim. Near a mark they follow it.',
    onPointerDown: (ctx, e) => {
      const { plan, selection, readOnly } = ctx.session.getState();
      if (readOnly) return;
      const id = ctx.picker.pick(e.at, hitMm(ctx, e), (r) => r.type === 'fixture');
      if (id === undefined) {
        const { camera } = ctx.session.getState();
        const chosen = free(plan, selection);
        const first = chosen[0];
        if (first === undefined) {
          ctx.session.set({ message: 'No unit there. Press on a unit, then drag to what it lights.' });
          return;
        }
        // Units that are selected already aim where is pressed.
        const aim = aimThere(plan, chosen, e.at, camera.pxPerMm, snapsOff(e));
        ctx.session.commit(`Aim ${wordsFor(plan, chosen)}`, aim.changes);
        ctx.session.set({ message: aim.mark ? `Follows ${aim.mark.name}.` : '' });
        return;
      }
      if (plan.records.get(id)?.locked) {
        ctx.session.set({ message: 'This unit is locked.' });
        return;
      }
      const units = free(plan, selection);
      grabbed = id;
      ids = units.includes(id) ? units : [id];
      start = e;
      if (!selection.has(id)) ctx.session.set({ selection: new Set([id]) });
    },
    onPointerMove: (ctx, e) => {
      if (start && Math.hypot(e.x - start.x, e.y - start.y) > 2) follow(ctx, e);
    },
    onPointerUp: (ctx, e) => {
      if (grabbed === undefined) return;
      if (ctx.session.getState().preview) {
        follow(ctx, e);
        const { plan, preview, message } = ctx.session.getState();
        if (preview) {
          ctx.session.commit(`Aim ${wordsFor(plan, ids)}`, preview);
          ctx.session.set({ message });
        }
      }
      end(ctx);
    },
    onPointerCancel: end,
    onKey: (ctx, key) => {
      if (key !== 'Escape' || grabbed === undefined) return false;
      end(ctx);
      return true;
    },
    cursor: () => 'crosshair',
  };
};
