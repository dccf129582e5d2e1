import { useMemo, useRef, useState } from 'react';
import { useUi } from '../ui-state.ts';
import type { Scale } from './scale.ts';
import type { LaneStop } from './stops.ts';
import { stopAt, useTips } from './tips.ts';

interface LaneTrackProps {
  readonly label: string;
  readonly stops: readonly LaneStop[];
  readonly scale: Scale;
  readonly heightPx: number;
  /** Rows one below the other, each so high, from so far down. */
  readonly rows?: { readonly topPx: number; readonly heightPx: number };
  readonly children: React.ReactNode;
}

/** Where a key leads along a lane, and how many lanes down. */
const STEPS: Readonly<Record<string, (now: number, count: number) => number>> = {
  ArrowRight: (now) => now + 1,
  ArrowLeft: (now) => now - 1,
  Home: () => 0,
  End: (_now, count) => count - 1,
};
const LANES: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: 5, PageUp: -5 };

/** All lanes of the time line that one is in, from above. */
const lanesAround = (of: SVGElement | null): readonly SVGElement[] => [
  ...(of?.closest('.timeline-scroll')?.querySelectorAll<SVGElement>('.track') ?? []),
];

/** A lane's drawing. Pointing tells what is there; arrow keys step along it and to the lanes above and below, Enter opens the working. */
export const LaneTrack = ({ label, stops, scale, heightPx, rows, children }: LaneTrackProps) => {
  const tips = useTips();
  const openWorking = useUi((u) => u.openWorking);
  const svg = useRef<SVGSVGElement>(null);
  const [at, setAt] = useState<number | undefined>(undefined);
  const current = at === undefined ? undefined : stops[Math.min(at, stops.length - 1)];

  const under = (e: React.PointerEvent): { stop: LaneStop | undefined; minute: number } => {
    const box = e.currentTarget.getBoundingClientRect();
    const minute = scale.fromMin + (e.clientX - box.left) / scale.pxPerMin;
    const row = rows ? Math.floor((e.clientY - box.top - rows.topPx) / rows.heightPx) : undefined;
    return { stop: stopAt(stops, minute, scale.pxPerMin, row), minute };
  };
  const stepTo = (index: number): void => {
    const i = Math.max(0, Math.min(stops.length - 1, index));
    const s = stops[i];
    const el = svg.current;
    if (!s || !el) return;
    setAt(i);
    const middle = (s.startMin + s.endMin) / 2;
    const scroll = el.closest<HTMLElement>('.timeline-scroll');
    const name = el.previousElementSibling?.clientWidth ?? 0;
    if (scroll) {
      const [left, right] = [scale.x(s.startMin), scale.x(s.endMin)];
      const room = scroll.clientWidth - name;
      if (left < scroll.scrollLeft || right - left > room) scroll.scrollLeft = Math.max(0, left - 8);
      else if (right > scroll.scrollLeft + room) scroll.scrollLeft = right - room + 8;
    }
    const box = el.getBoundingClientRect();
    tips.show({ stop: s, minute: middle, xPx: box.left + scale.x(middle), yPx: box.bottom, byKeys: true });
  };
  const toLane = (by: number): void => {
    const all = lanesAround(svg.current);
    const here = svg.current ? all.indexOf(svg.current) : 0;
    all[Math.max(0, Math.min(all.length - 1, here + by))]?.focus();
  };
  const onKeyDown = (e: React.KeyboardEvent): void => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const now = at ?? -1;
    const step = STEPS[e.key];
    const lane = LANES[e.key];
    if (step) stepTo(step(now, stops.length));
    else if (lane !== undefined) toLane(lane);
    else if (e.key === 'Escape') tips.show(undefined);
    else if (e.key === 'Enter' && current?.key) openWorking(current.key);
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const mark = useMemo(() => {
    if (!current) return null;
    const x = scale.x(current.startMin);
    const y = rows && current.row !== undefined ? rows.topPx + current.row * rows.heightPx : 1;
    const h = rows && current.row !== undefined ? rows.heightPx : heightPx - 2;
    return <rect className="track-mark" x={x - 2} y={y} width={scale.x(current.endMin) - x + 4} height={h} />;
  }, [current, scale, rows, heightPx]);

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no form element
    <svg
      ref={svg}
      role="group"
      // One lane at a time is a stop of the Tab key; the time line says which to begin with.
      tabIndex={-1}
      className="track lane-svg"
      aria-label={label}
      width={scale.widthPx}
      height={heightPx}
      data-opens={current?.key !== undefined}
      onKeyDown={onKeyDown}
      onFocus={(e) => {
        for (const x of lanesAround(e.currentTarget)) x.tabIndex = x === e.currentTarget ? 0 : -1;
        if (!e.currentTarget.matches(':focus-visible')) return;
        const minute = tips.lastMinute() ?? scale.fromMin;
        const after = stops.findIndex((s) => s.endMin >= minute);
        stepTo(after < 0 ? stops.length - 1 : after);
      }}
      onBlur={() => {
        setAt(undefined);
        tips.show(undefined);
      }}
      onPointerMove={(e) => {
        const { stop, minute } = under(e);
        tips.show({ stop, minute, xPx: e.clientX, yPx: e.clientY, byKeys: false });
      }}
      onPointerLeave={() => tips.show(undefined)}
      onClick={(e) => {
        const { stop } = under(e as unknown as React.PointerEvent);
        if (stop?.key) openWorking(stop.key);
      }}
    >
      {children}
      {mark}
    </svg>
  );
};
