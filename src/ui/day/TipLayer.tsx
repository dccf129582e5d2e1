import { useLayoutEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { formatClock } from '../../kernel/units.ts';
import { explain } from '../../report/explain.ts';
import { useSessionSlice } from '../hooks.ts';
import type { Scale } from './scale.ts';
import { useTips } from './tips.ts';

const AWAY_PX = 14;
const EDGE_PX = 8;
const MOST_STEPS = 9;

/** The words at the pointer or at the stop that keys stepped to, with the arithmetic where there is one. */
export const TipBox = () => {
  const tips = useTips();
  const tip = useSyncExternalStore(tips.subscribe, tips.get);
  const plan = useSessionSlice((s) => s.plan);
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ w: 320, h: 120 });
  const stop = tip?.stop;
  const key = stop?.key;
  const working = useMemo(() => (key ? explain(plan, key) : undefined), [plan, key]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is told changes its size
  useLayoutEffect(() => {
    const el = box.current;
    if (el && (el.offsetWidth !== size.w || el.offsetHeight !== size.h))
      setSize({ w: el.offsetWidth, h: el.offsetHeight });
  }, [stop]);
  const left = tip ? Math.max(EDGE_PX, Math.min(tip.xPx + AWAY_PX, innerWidth - size.w - EDGE_PX)) : 0;
  const below = tip ? tip.yPx + AWAY_PX : 0;
  const top = tip && below + size.h > innerHeight - EDGE_PX ? tip.yPx - AWAY_PX - size.h : below;
  return (
    <>
      {tip && stop ? (
        <div ref={box} className="tip" role="tooltip" style={{ left, top: Math.max(EDGE_PX, top) }}>
          <b>{stop.head}</b>
          {stop.lines.map((l) => (
            <div key={l}>{l}</div>
          ))}
          {working ? (
            <div className="tip-working">
              <div className="soft">{working.formula}</div>
              <ol>
                {working.steps.slice(0, MOST_STEPS).map((s) => (
                  <li key={s}>{s}</li>
                ))}
              </ol>
              <div className="soft">
                {tip.byKeys ? 'Enter' : 'A click'} opens the whole working with its sources.
              </div>
            </div>
          ) : null}
        </div>
      ) : null}
      <p className="visually-hidden" aria-live="polite">
        {tip?.byKeys && stop
          ? [stop.head, ...stop.lines, key ? 'Enter opens the working' : ''].filter(Boolean).join('. ')
          : ''}
      </p>
    </>
  );
};

/** A line down all lanes at the minute that is pointed at, with its time. */
export const TimeLine = ({ scale, leftPx }: { readonly scale: Scale; readonly leftPx: number }) => {
  const tips = useTips();
  const tip = useSyncExternalStore(tips.subscribe, tips.get);
  if (!tip || tip.minute < scale.fromMin || tip.minute > scale.toMin) return null;
  return (
    <div className="hairline" aria-hidden="true" style={{ left: leftPx + scale.x(tip.minute) }}>
      <span>{formatClock(Math.round(tip.minute))}</span>
    </div>
  );
};
