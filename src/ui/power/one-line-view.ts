import { type RefObject, useEffect, useRef, useState } from 'react';

/** Where a diagram lies in its frame: shift in pixels, and pixels for a millimetre. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly k: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const LEAST = 0.3;
const MOST = 12;
/** Pixels for a millimetre at which the smallest texts can be read. */
export const LEGIBLE = 3.6;
const MARGIN_PX = 16;

const clamp = (k: number): number => Math.min(MOST, Math.max(LEAST, k));

/** Nearer or further about a spot of the frame. */
export const zoomed = (v: View, by: number, x: number, y: number): View => {
  const k = clamp(v.k * by);
  return { k, x: x - ((x - v.x) * k) / v.k, y: y - ((y - v.y) * k) / v.k };
};

/** All of a diagram in its frame. */
export const fitted = (frame: Size, sheet: Size): View => {
  const k = clamp(
    Math.min((frame.width - 2 * MARGIN_PX) / sheet.width, (frame.height - 2 * MARGIN_PX) / sheet.height),
  );
  return { k, x: Math.max(MARGIN_PX, (frame.width - sheet.width * k) / 2), y: MARGIN_PX };
};

/** So large that every text can be read: all of it where that fits, else about a spot, else the upper left. */
export const legible = (
  frame: Size,
  sheet: Size,
  about: { readonly x: number; readonly y: number } | undefined,
): View => {
  const all = fitted(frame, sheet);
  if (all.k >= LEGIBLE) return all;
  return about
    ? { k: LEGIBLE, x: frame.width / 2 - about.x * LEGIBLE, y: frame.height / 2 - about.y * LEGIBLE }
    : { k: LEGIBLE, x: MARGIN_PX, y: MARGIN_PX };
};

/** A view that pans and zooms, with the wheel bound to the frame; `size` follows the frame. */
export const usePanZoom = (
  frame: RefObject<SVGSVGElement | null>,
): {
  readonly view: View | undefined;
  readonly size: Size | undefined;
  readonly setView: (v: View) => void;
  readonly pan: (x: number, y: number) => void;
  readonly zoom: (by: number) => void;
} => {
  const [view, setView] = useState<View | undefined>(undefined);
  const [size, setSize] = useState<Size | undefined>(undefined);
  const at = useRef(size);
  at.current = size;
  useEffect(() => {
    const svg = frame.current;
    if (!svg) return;
    // React's own wheel listener may not keep the page from scrolling.
    const wheel = (e: WheelEvent): void => {
      e.preventDefault();
      const box = svg.getBoundingClientRect();
      const by = Math.exp(-e.deltaY * 0.0015);
      setView((v) => (v ? zoomed(v, by, e.clientX - box.x, e.clientY - box.y) : v));
    };
    svg.addEventListener('wheel', wheel, { passive: false });
    const watch = new ResizeObserver(() => {
      const { width, height } = svg.getBoundingClientRect();
      setSize({ width, height });
    });
    watch.observe(svg);
    return () => {
      svg.removeEventListener('wheel', wheel);
      watch.disconnect();
    };
  }, [frame]);
  return {
    view,
    size,
    setView,
    pan: (x, y) => setView((v) => (v ? { ...v, x: v.x + x, y: v.y + y } : v)),
    zoom: (by) => {
      const s = at.current;
      if (s) setView((v) => (v ? zoomed(v, by, s.width / 2, s.height / 2) : v));
    },
  };
};
