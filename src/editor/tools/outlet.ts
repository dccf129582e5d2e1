import { add, direction, type Point, scale } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { faceNear } from '../../plan/edits/openings.ts';
import { addOutlet } from '../../plan/edits/outlets.ts';
import { recordsOf } from '../../plan/plan.ts';
import { waysOf } from '../../plan/ports.ts';
import type { SessionState } from '../session.ts';
import { wallNear } from '../wall-near.ts';
import { clearTraces, type PointerInfo, snapMm, snapsOff, type Tool, type ToolContext } from './tool.ts';

/** The circuit the next outlets hang on: the chosen one while it exists, else the first of the floor's sources. */
export const circuitFor = (
  s: Pick<SessionState, 'plan' | 'floorView' | 'floorId'>,
): { readonly sourceId: Id; readonly wayId: Id } | undefined => {
  const { circuit } = s.floorView;
  if (circuit && waysOf(s.plan, circuit.sourceId).some((w) => w.id === circuit.wayId)) return circuit;
  for (const source of recordsOf(s.plan, 'source')) {
    const [way] = source.floorId === s.floorId ? waysOf(s.plan, source.id) : [];
    if (way) return { sourceId: source.id, wayId: way.id };
  }
  return undefined;
};

const BESIDE_MM = 800;
const OFF_MM = 100;

/** Puts wall outlets on wall faces, facing the room, on the chosen circuit. */
export const createOutletTool = (): Tool => {
  let last: PointerInfo | undefined;

  const made = (
    ctx: ToolContext,
    e: Pick<PointerInfo, 'at' | 'alt' | 'ctrl'>,
    far: boolean,
    newId: NewId,
  ) => {
    const s = ctx.session.getState();
    const circuit = circuitFor(s);
    if (!s.floorId || !circuit) return undefined;
    const reach = far ? Number.POSITIVE_INFINITY : snapMm(ctx) * 3;
    const wall = snapsOff(e as PointerInfo) ? undefined : wallNear(s.plan, s.floorId, e.at, reach);
    return addOutlet(s.plan, { ...circuit, floorId: s.floorId, at: e.at, wall }, newId);
  };

  /** A spot on the same wall beside where was pressed: a new panel goes there, to be moved to where it is. */
  const besides = (ctx: ToolContext, e: Pick<PointerInfo, 'at'>, far: boolean): Point | undefined => {
    const { plan, floorId } = ctx.session.getState();
    const reach = far ? Number.POSITIVE_INFINITY : snapMm(ctx) * 3;
    const wall = floorId === undefined ? undefined : wallNear(plan, floorId, e.at, reach);
    if (!wall) return undefined;
    const face = faceNear(wall, e.at);
    const along = add(face.at, scale(direction(face.outDeg + 90), BESIDE_MM));
    return add(along, scale(direction(face.outDeg), OFF_MM));
  };

  const place = (ctx: ToolContext, e: Pick<PointerInfo, 'at' | 'alt' | 'ctrl'>, far: boolean): void => {
    const { session } = ctx;
    const s = session.getState();
    if (s.readOnly) return;
    const placed = made(ctx, e, far, session.newId);
    if (!placed) {
      session.set({
        floorView: { ...s.floorView, ask: 'circuit', askAt: besides(ctx, e, far), outletAt: e.at },
        message: 'A wall outlet hangs on a breaker: say which.',
      });
      return;
    }
    clearTraces(ctx);
    session.commit(`Place wall outlet ${placed.outlet.label}`, placed.changes);
    session.set({
      selection: new Set([placed.outlet.id]),
      message: `Placed wall outlet ${placed.outlet.label}.`,
    });
  };

  return {
    id: 'outlet',
    hint: 'Press on a wall’s face. The circuit is chosen at the right. Escape ends.',
    onPointerDown: (ctx, e) => place(ctx, e, false),
    onPointerMove: (ctx, e) => {
      last = e;
      const ghost = made(ctx, e, false, (p) => `ghost-${p}`);
      ctx.session.set({ preview: ghost?.changes });
    },
    onPointerUp: () => {},
    onPointerCancel: clearTraces,
    onKey: (ctx, key) => {
      if (key !== 'Enter') return false;
      const { center } = ctx.session.getState().camera;
      place(ctx, last ?? { at: center, alt: false, ctrl: false }, true);
      return true;
    },
    cursor: () => 'copy',
  };
};
