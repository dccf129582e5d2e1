import { angleDeg, type Box, normaliseDeg, type Point, point, sub } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { movedWith, moveRecords, rotateRecords } from '../../plan/edits/arrange.ts';
import { withGroups } from '../../plan/edits/groups.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import type { RecordType } from '../../plan/records/index.ts';
import { aimThere } from '../aiming.ts';
import { type CornerHandle, cornerAt, cornersFor } from '../corners.ts';
import { type Handle, handleAt, poseOf, ringFor } from '../handles.ts';
import { type HeldLabel, labelDragged } from '../label-drag.ts';
import { insideLoop } from '../lasso.ts';
import { gridMm, OPTIONS } from '../options.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { pullCorner } from '../pull.ts';
import { snapOverlay } from '../snap-overlay.ts';
import { type SnapTargets, snapTargets } from '../snap-targets.ts';
import { turnTo } from '../snap-turn.ts';
import { snapPoint } from '../snapping.ts';
import { heldUnderlay } from '../underlays.ts';
import { wordsFor } from '../words.ts';
import {
  clearTraces,
  hitMm,
  isDrag,
  type PointerInfo,
  snapMm,
  snapsOff,
  type Tool,
  type ToolContext,
} from './tool.ts';

type State =
  | { readonly name: 'idle' }
  | {
      readonly name: 'pressed';
      readonly start: PointerInfo;
      readonly id: Id | undefined;
      readonly handle: Handle['what'] | undefined;
      readonly corner: CornerHandle | undefined;
      readonly label: HeldLabel | undefined;
    }
  | {
      readonly name: 'dragging';
      readonly start: PointerInfo;
      readonly ids: ReadonlySet<Id>;
      /** The spot of the thing under the pointer, which snaps. */
      readonly anchor: Point;
      readonly targets: SnapTargets;
    }
  | { readonly name: 'marquee'; readonly start: PointerInfo; readonly touches: boolean }
  | { readonly name: 'lasso'; readonly start: PointerInfo }
  | { readonly name: 'pulling'; readonly handle: CornerHandle }
  | { readonly name: 'labelling'; readonly start: PointerInfo; readonly label: HeldLabel }
  | { readonly name: 'turning'; readonly start: PointerInfo; readonly id: Id }
  | { readonly name: 'aiming'; readonly id: Id };

/** Part of the room, or led by others: never caught in a marquee, and dragged only once selected. */
const BACKGROUND: readonly RecordType[] = ['wall', 'opening', 'setPiece', 'cable', 'line', 'feature'];

const isBackground = (plan: Plan, id: Id): boolean => {
  const type = plan.records.get(id)?.type;
  return type !== undefined && BACKGROUND.includes(type);
};

const boxBetween = (a: Point, b: Point): Box => ({
  minX: Math.min(a.xMm, b.xMm),
  minY: Math.min(a.yMm, b.yMm),
  maxX: Math.max(a.xMm, b.xMm),
  maxY: Math.max(a.yMm, b.yMm),
});

/** Selects by click and by marquee, drags what is selected, turns and aims it by its handles. */
export const createSelectTool = (): Tool => {
  let state: State = { name: 'idle' };
  let before: ReadonlySet<Id> = new Set();
  let loop: readonly Point[] = [];

  const reset = (ctx: ToolContext): void => {
    state = { name: 'idle' };
    clearTraces(ctx);
  };

  const begin = (ctx: ToolContext, s: Extract<State, { name: 'pressed' }>): void => {
    const { plan, selection, readOnly, floorId } = ctx.session.getState();
    const ring = ringFor(plan, ctx.session.getState());
    if (s.corner) {
      state = { name: 'pulling', handle: s.corner };
      return;
    }
    if (s.handle && ring) {
      state =
        s.handle === 'aim'
          ? { name: 'aiming', id: ring.id }
          : { name: 'turning', start: s.start, id: ring.id };
      return;
    }
    if (s.label && !readOnly) {
      state = { name: 'labelling', start: s.start, label: s.label };
      return;
    }
    const grabs = s.id !== undefined && (selection.has(s.id) || !isBackground(plan, s.id));
    if (s.id === undefined || !grabs || readOnly) {
      loop = [s.start.at];
      state = s.start.alt
        ? { name: 'lasso', start: s.start }
        : { name: 'marquee', start: s.start, touches: s.start.ctrl };
      return;
    }
    if (!selection.has(s.id)) {
      const chosen = withGroups(plan, new Set([s.id]));
      ctx.session.set({ selection: s.start.shift ? new Set([...selection, ...chosen]) : chosen });
    }
    const chosen = [...ctx.session.getState().selection];
    // Cables follow what they are plugged into; moved along by hand they would stop following.
    const units = chosen.filter((id) => plan.records.get(id)?.type !== 'cable');
    const ids = movedWith(plan, new Set(units.length > 0 ? units : chosen));
    const anchor = poseOf(plan, s.id)?.center ?? s.start.at;
    const targets = floorId ? snapTargets(plan, floorId, ids) : { points: [], faces: [], centers: [] };
    state = { name: 'dragging', start: s.start, ids, anchor, targets };
  };

  const follow = (ctx: ToolContext, e: PointerInfo): void => {
    const { plan, overlay, camera } = ctx.session.getState();
    switch (state.name) {
      case 'dragging': {
        const raw = sub(e.at, state.start.at);
        const wanted = point(state.anchor.xMm + raw.xMm, state.anchor.yMm + raw.yMm);
        const grid = gridMm(planRecord(plan).lengthUnits).light;
        const snapped = snapsOff(e)
          ? { at: wanted, guides: [] }
          : snapPoint(wanted, state.targets, snapMm(ctx), grid);
        const by = sub(snapped.at, state.anchor);
        ctx.session.set({
          preview: by.xMm === 0 && by.yMm === 0 ? undefined : moveRecords(plan, state.ids, by),
          overlay: snapOverlay(plan, snapped),
        });
        break;
      }
      case 'marquee':
        ctx.session.set({ overlay: { ...overlay, marquee: boxBetween(state.start.at, e.at) } });
        break;
      case 'lasso':
        loop = [...loop, e.at];
        ctx.session.set({ overlay: { ...NO_OVERLAY, loop } });
        break;
      case 'pulling': {
        const grid = gridMm(planRecord(plan).lengthUnits).light;
        const { floorId } = ctx.session.getState();
        const targets = floorId && snapTargets(plan, floorId, new Set([state.handle.recordId]));
        const snapped =
          snapsOff(e) || !targets ? { at: e.at, guides: [] } : snapPoint(e.at, targets, snapMm(ctx), grid);
        const pulled = pullCorner(plan, state.handle, snapped.at);
        ctx.session.set({
          preview: pulled.ok ? pulled.value : undefined,
          overlay: { ...NO_OVERLAY, guides: snapped.guides },
          message: pulled.ok ? '' : problemText(pulled.error),
        });
        break;
      }
      case 'labelling':
        ctx.session.set({ preview: labelDragged(plan, state.label, sub(e.at, state.start.at)) });
        break;
      case 'turning': {
        const pose = poseOf(plan, state.id);
        if (!pose) break;
        const by = angleDeg(pose.center, e.at) - angleDeg(pose.center, state.start.at);
        const to = turnTo(plan, state.id, pose.facingDeg + by, snapsOff(e));
        const turn = normaliseDeg(to.deg - pose.facingDeg);
        ctx.session.set({
          preview: turn === 0 ? undefined : rotateRecords(plan, new Set([state.id]), turn),
          overlay: { ...NO_OVERLAY, guides: to.guides },
        });
        break;
      }
      case 'aiming': {
        const aim = aimThere(plan, [state.id], e.at, camera.pxPerMm, snapsOff(e));
        const from = poseOf(plan, state.id)?.center ?? e.at;
        ctx.session.set({
          preview: aim.changes,
          overlay: {
            ...NO_OVERLAY,
            rubber: { from, to: aim.target, what: 'aim', fits: true },
            target: aim.mark?.at,
          },
        });
        break;
      }
      default:
        break;
    }
  };

  const click = (ctx: ToolContext, s: Extract<State, { name: 'pressed' }>): void => {
    const { selection } = ctx.session.getState();
    if (s.handle) return;
    const adds = s.start.shift || s.start.ctrl;
    if (s.id === undefined) {
      if (!adds && selection.size > 0) ctx.session.set({ selection: new Set() });
      return;
    }
    // With alt held, one thing comes out of its group.
    const chosen = s.start.alt ? new Set([s.id]) : withGroups(ctx.session.getState().plan, new Set([s.id]));
    const next = new Set(adds ? selection : []);
    for (const id of chosen)
      if (adds && selection.has(s.id)) next.delete(id);
      else next.add(id);
    ctx.session.set({ selection: next });
  };

  const finish = (ctx: ToolContext, e: PointerInfo): void => {
    const { plan, preview, selection } = ctx.session.getState();
    if (state.name === 'marquee' || state.name === 'lasso') {
      const box = boxBetween(state.start.at, e.at);
      const inside =
        state.name === 'lasso'
          ? insideLoop(plan, ctx.picker, loop)
          : state.touches
            ? ctx.picker.touching(box)
            : ctx.picker.within(box);
      const found = withGroups(plan, new Set(inside.filter((id) => !isBackground(plan, id))));
      ctx.session.set({
        selection: new Set(state.start.shift ? [...selection, ...found] : found),
        overlay: NO_OVERLAY,
      });
    } else if (preview) {
      const words = {
        dragging: 'Move',
        turning: 'Turn',
        aiming: 'Aim',
        pulling: 'Pull',
        labelling: 'Move the label of',
      } as const;
      const name = state.name as keyof typeof words;
      const ids =
        state.name === 'dragging'
          ? [...state.ids]
          : state.name === 'pulling'
            ? [state.handle.recordId]
            : state.name === 'labelling'
              ? [state.label.recordId]
              : 'id' in state && state.id
                ? [state.id]
                : [];
      ctx.session.commit(`${words[name]} ${wordsFor(plan, ids)}`, preview);
    }
    reset(ctx);
  };

  return {
    id: 'select',
    hint: '',
    onPointerDown: (ctx, e) => {
      const s = ctx.session.getState();
      before = s.selection;
      const handlePx = e.pointerType === 'touch' ? OPTIONS.touchHandlePx : OPTIONS.handlePx + 3;
      const handle = handleAt(ringFor(s.plan, s), e.at, handlePx / s.camera.pxPerMm);
      const corner = cornerAt(cornersFor(s.plan, s), e.at, handlePx / s.camera.pxPerMm);
      state = {
        name: 'pressed',
        start: e,
        handle,
        corner,
        id: ctx.picker.pick(e.at, hitMm(ctx, e)) ?? heldUnderlay(s, e.at),
        label: ctx.picker.labelAt(e.at, hitMm(ctx, e) / 2),
      };
    },
    onPointerMove: (ctx, e) => {
      if (state.name === 'pressed' && isDrag(state.start, e)) begin(ctx, state);
      follow(ctx, e);
    },
    onPointerUp: (ctx, e) => {
      if (state.name === 'idle') return;
      if (state.name === 'pressed') {
        click(ctx, state);
        reset(ctx);
        return;
      }
      follow(ctx, e);
      finish(ctx, e);
    },
    onPointerCancel: (ctx) => {
      if (state.name !== 'idle' && ctx.session.getState().selection !== before) {
        ctx.session.set({ selection: before });
      }
      reset(ctx);
    },
    onKey(ctx, key) {
      if (key !== 'Escape' || state.name === 'idle') return false;
      this.onPointerCancel(ctx);
      return true;
    },
    cursor: () =>
      state.name === 'dragging' ? 'grabbing' : state.name === 'turning' ? 'grabbing' : 'default',
  };
};
