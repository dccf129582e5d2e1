import type { Point } from '../../kernel/geometry.ts';
import type { Book } from '../book.ts';
import { OPTIONS } from '../options.ts';
import { NO_OVERLAY } from '../overlay.ts';
import type { Picker } from '../picking.ts';
import type { Session, ToolId } from '../session.ts';

/** One pointer event: where on the floor, where in the view in pixels, and what else was held. */
export interface PointerInfo {
  readonly at: Point;
  readonly x: number;
  readonly y: number;
  readonly shift: boolean;
  readonly alt: boolean;
  readonly ctrl: boolean;
  readonly pointerType: 'mouse' | 'pen' | 'touch';
}

export interface ToolContext {
  readonly session: Session;
  readonly book: Book;
  readonly picker: Picker;
}

/** What the pointer does on the floor. A tool keeps the state of its gesture; the plan changes once, at the end. */
export interface Tool {
  readonly id: ToolId;
  /** What it waits for, in one line. */
  readonly hint: string;
  onPointerDown(ctx: ToolContext, e: PointerInfo): void;
  /** Also called without a button held, so that tools can show what a press would do. */
  onPointerMove(ctx: ToolContext, e: PointerInfo): void;
  onPointerUp(ctx: ToolContext, e: PointerInfo): void;
  /** Ends the gesture without an edit and without a trace. */
  onPointerCancel(ctx: ToolContext): void;
  /** A key by its name (`Escape`, `[`). Says whether the tool used it. */
  onKey(ctx: ToolContext, key: string): boolean;
  /** Whether keys that type text, the space bar among them, are the tool's now. */
  typing?(): boolean;
  /** CSS cursor over the floor now. */
  cursor(ctx: ToolContext): string;
}

const zoom = (ctx: ToolContext): number => ctx.session.getState().camera.pxPerMm;

/** How far from a thing a press still means it, in floor millimetres at this zoom. */
export const hitMm = (ctx: ToolContext, e: Pick<PointerInfo, 'pointerType'>): number =>
  (e.pointerType === 'touch' ? OPTIONS.touchHitPx : OPTIONS.hitPx) / zoom(ctx);

/** Reach of snapping in floor millimetres at this zoom. */
export const snapMm = (ctx: ToolContext): number => OPTIONS.snapPx / zoom(ctx);

/** Whether the pointer went far enough for a drag. */
export const isDrag = (a: PointerInfo, b: PointerInfo): boolean =>
  Math.hypot(b.x - a.x, b.y - a.y) >= (b.pointerType === 'touch' ? OPTIONS.touchDragPx : OPTIONS.dragPx);

/** Whether snapping is held off. */
export const snapsOff = (e: PointerInfo): boolean => e.alt || e.ctrl;

/** Takes everything a tool shows off the floor. */
export const clearTraces = (ctx: ToolContext): void => {
  const { preview, overlay } = ctx.session.getState();
  if (preview || overlay !== NO_OVERLAY) ctx.session.set({ preview: undefined, overlay: NO_OVERLAY });
};
