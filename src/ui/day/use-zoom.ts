import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

const ZOOMS = [1, 1.5, 2.2, 3.3, 5, 7.5] as const;
const LAST = ZOOMS.length - 1;

export interface Zoom {
  readonly factor: number;
  readonly atLeast: boolean;
  readonly atMost: boolean;
  /** Steps in (+1) or out (−1) about a place across the lanes; about their middle without one. */
  by(steps: number, clientX?: number): void;
  /** All of the day at once. */
  fit(): void;
}

/**
 * Zoom of lanes that scroll sideways beside names `namesPx` wide and are `lanesPx` wide themselves: what is at the pointer stays there. Ctrl and the wheel zoom, by a
 * listener of its own, since React's cannot keep the page from zooming.
 */
export const useZoom = (
  of: RefObject<HTMLElement | null>,
  namesPx: number,
  lanesPx: RefObject<number>,
): Zoom => {
  const [step, setStep] = useState(0);
  const keep = useRef<{ readonly share: number; readonly px: number } | undefined>(undefined);
  const by = (steps: number, clientX?: number): void => {
    const el = of.current;
    if (el) {
      const px =
        (clientX === undefined ? (el.clientWidth + namesPx) / 2 : clientX - el.getBoundingClientRect().left) -
        namesPx;
      keep.current = { share: (el.scrollLeft + px) / Math.max(1, lanesPx.current), px };
    }
    setStep((s) => Math.max(0, Math.min(LAST, s + steps)));
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the lanes are as wide as the step says
  useLayoutEffect(() => {
    const el = of.current;
    if (el && keep.current) el.scrollLeft = keep.current.share * lanesPx.current - keep.current.px;
    keep.current = undefined;
  }, [step]);
  const act = useRef(by);
  act.current = by;
  useLayoutEffect(() => {
    const el = of.current;
    if (!el) return;
    const onWheel = (e: WheelEvent): void => {
      if (!e.ctrlKey || e.deltaY === 0) return;
      e.preventDefault();
      act.current(e.deltaY < 0 ? 1 : -1, e.clientX);
    };
    el.addEventListener('wheel', onWheel, { passive: false });
    return () => el.removeEventListener('wheel', onWheel);
  }, [of]);
  return {
    factor: ZOOMS[step] ?? 1,
    atLeast: step === 0,
    atMost: step === LAST,
    by,
    fit: () => setStep(0),
  };
};
