import { type RefObject, useEffect } from 'react';
import { toFloor } from '../editor/camera.ts';
import { pinch, wheelZoom } from '../editor/gestures.ts';
import { OPTIONS } from '../editor/options.ts';
import { notePointer } from '../editor/pointer-spot.ts';
import type { Session } from '../editor/session.ts';
import type { PointerInfo } from '../editor/tools/tool.ts';
import type { Toolbox } from '../editor/tools/toolbox.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

const MIDDLE = 1;

const typeOf = (t: string): PointerInfo['pointerType'] => (t === 'touch' || t === 'pen' ? t : 'mouse');

/** Leads mouse, pen, fingers and wheel to the tools and the camera. */
export const usePointer = (
  container: RefObject<HTMLDivElement | null>,
  session: Session,
  toolbox: Toolbox,
  onType: (coarse: boolean) => void,
  /** Where a menu was asked for: the right button, a long press, or the menu key. */
  onMenu: (spot: Spot, type: PointerInfo['pointerType']) => void,
): void => {
  useEffect(() => {
    const el = container.current;
    if (!el) return;
    const fingers = new Map<number, Spot>();
    let active: number | undefined;
    let spaceHeld = false;
    let press: ReturnType<typeof setTimeout> | undefined;
    let pressed: Spot | undefined;
    /** A finger that rests asks for the menu. */
    const unpress = (): void => {
      clearTimeout(press);
      pressed = undefined;
    };

    const spot = (e: { clientX: number; clientY: number }): Spot => {
      const r = el.getBoundingClientRect();
      return { x: e.clientX - r.left, y: e.clientY - r.top };
    };
    const info = (e: PointerEvent): PointerInfo => {
      const { x, y } = spot(e);
      const { camera, viewport } = session.getState();
      return {
        at: toFloor(camera, viewport, x, y),
        x,
        y,
        shift: e.shiftKey,
        alt: e.altKey,
        ctrl: e.ctrlKey || e.metaKey,
        pointerType: typeOf(e.pointerType),
      };
    };
    const cursor = (): void => {
      el.style.cursor = toolbox.cursor();
    };
    const lend = (): void => toolbox.lend(spaceHeld ? 'pan' : undefined);

    const down = (e: PointerEvent): void => {
      el.focus({ preventScroll: true });
      onType(e.pointerType === 'touch');
      el.setPointerCapture(e.pointerId);
      if (e.pointerType === 'touch') {
        fingers.set(e.pointerId, spot(e));
        if (fingers.size > 1) {
          unpress();
          toolbox.cancel();
          active = undefined;
          return;
        }
      }
      if (active !== undefined || (e.button !== 0 && e.button !== MIDDLE)) return;
      e.preventDefault();
      active = e.pointerId;
      if (e.button === MIDDLE) toolbox.lend('pan');
      toolbox.pointerDown(info(e));
      cursor();
      if (e.pointerType === 'touch' && session.getState().tool === 'select') {
        pressed = spot(e);
        press = setTimeout(() => {
          if (!pressed) return;
          const at = pressed;
          unpress();
          toolbox.cancel();
          active = undefined;
          onMenu(at, 'touch');
        }, OPTIONS.longPressMs);
      }
    };
    const move = (e: PointerEvent): void => {
      if (e.pointerType === 'touch' && fingers.has(e.pointerId)) {
        const pair = [...fingers.entries()];
        const [a, b] = pair;
        if (a && b) {
          const was: [Spot, Spot] = [a[1], b[1]];
          fingers.set(e.pointerId, spot(e));
          const now: [Spot, Spot] = [fingers.get(a[0]) ?? a[1], fingers.get(b[0]) ?? b[1]];
          const { camera, viewport } = session.getState();
          session.set({ camera: pinch(camera, viewport, was, now) });
          return;
        }
        fingers.set(e.pointerId, spot(e));
      }
      if (pressed) {
        const { x, y } = spot(e);
        if (Math.hypot(x - pressed.x, y - pressed.y) > OPTIONS.touchDragPx) unpress();
      }
      if (active !== undefined && e.pointerId !== active) return;
      if (e.pointerType !== 'touch') notePointer(session, info(e).at);
      // A finger lifted out of a pinch leaves one that must not draw.
      if (e.pointerType === 'touch' && active === undefined) return;
      toolbox.pointerMove(info(e));
      cursor();
    };
    const up = (e: PointerEvent): void => {
      fingers.delete(e.pointerId);
      unpress();
      const { placing } = session.getState();
      if (active === undefined && placing?.dragging) {
        // Taken from the shelf and let go here.
        toolbox.pointerMove(info(e));
        toolbox.pointerDown(info(e));
        toolbox.pointerUp(info(e));
        session.set({ placing: undefined, tool: 'select' });
        return;
      }
      if (e.pointerId !== active) return;
      active = undefined;
      toolbox.pointerUp(info(e));
      lend();
      cursor();
    };
    const lost = (e: PointerEvent): void => {
      fingers.delete(e.pointerId);
      unpress();
      if (e.pointerId !== active) return;
      active = undefined;
      toolbox.cancel();
      lend();
    };
    const leave = (): void => {
      notePointer(session, undefined);
      // What a tool shows under a hovering pointer goes when the pointer does.
      const { tool } = session.getState();
      if (active === undefined && (tool === 'place' || tool === 'opening' || tool === 'outlet'))
        toolbox.cancel();
    };
    const wheel = (e: WheelEvent): void => {
      e.preventDefault();
      const { camera, viewport } = session.getState();
      const w = { ...spot(e), deltaY: e.deltaY, deltaMode: e.deltaMode, ctrl: e.ctrlKey };
      session.set({ camera: wheelZoom(camera, viewport, w) });
    };
    /** Keys there belong to a field, a dialog or a menu. */
    const elsewhere = (t: EventTarget | null): boolean =>
      t instanceof HTMLElement &&
      (t.isContentEditable ||
        /^(INPUT|TEXTAREA|SELECT)$/.test(t.tagName) ||
        t.closest('[role="dialog"],[role="menu"],[role="listbox"]') !== null);

    const keyDown = (e: KeyboardEvent): void => {
      if (
        e.key === ' ' &&
        !toolbox.typing() &&
        !elsewhere(e.target) &&
        (el.contains(document.activeElement) || active !== undefined)
      ) {
        e.preventDefault();
        if (active === undefined && !spaceHeld) {
          spaceHeld = true;
          lend();
          cursor();
        }
        return;
      }
      if (e.ctrlKey || e.metaKey) return;
      const working = active !== undefined && e.key === 'Escape';
      if ((working || !elsewhere(e.target)) && toolbox.key(e.key)) {
        if (working) active = undefined;
        e.preventDefault();
        e.stopImmediatePropagation();
        cursor();
      }
    };
    const keyUp = (e: KeyboardEvent): void => {
      if (e.key !== ' ' || !spaceHeld) return;
      spaceHeld = false;
      if (active === undefined) lend();
      cursor();
    };
    const menu = (e: MouseEvent): void => {
      e.preventDefault();
      // A finger's long press asks by itself; another gesture at work is not broken off.
      if (active !== undefined || fingers.size > 0) return;
      const asked = e.clientX === 0 && e.clientY === 0;
      const { viewport } = session.getState();
      onMenu(asked ? { x: viewport.widthPx / 2, y: viewport.heightPx / 2 } : spot(e), 'mouse');
    };
    const blur = (): void => {
      spaceHeld = false;
      lend();
    };

    el.addEventListener('pointerdown', down);
    el.addEventListener('pointermove', move);
    el.addEventListener('pointerup', up);
    el.addEventListener('pointercancel', lost);
    el.addEventListener('pointerleave', leave);
    el.addEventListener('wheel', wheel, { passive: false });
    el.addEventListener('contextmenu', menu);
    window.addEventListener('keydown', keyDown, { capture: true });
    window.addEventListener('keyup', keyUp);
    window.addEventListener('blur', blur);
    const stop = session.subscribe((now, was) => {
      if (now.tool !== was.tool) cursor();
    });
    cursor();
    return () => {
      stop();
      el.removeEventListener('pointerdown', down);
      el.removeEventListener('pointermove', move);
      el.removeEventListener('pointerup', up);
      el.removeEventListener('pointercancel', lost);
      el.removeEventListener('pointerleave', leave);
      el.removeEventListener('wheel', wheel);
      el.removeEventListener('contextmenu', menu);
      unpress();
      window.removeEventListener('keydown', keyDown, { capture: true });
      window.removeEventListener('keyup', keyUp);
      window.removeEventListener('blur', blur);
    };
  }, [container, session, toolbox, onType, onMenu]);
};
