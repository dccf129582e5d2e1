import { useEffect, useMemo, useRef, useState } from 'react';
import { PALETTES } from '../../canvas/palette.ts';
import type { DisplayItem } from '../../drawing/display-list.ts';
import { ENDLESS, oneLineSheets } from '../../drawing/one-line/index.ts';
import { displayItemSvg } from '../../output/svg.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

interface View {
  readonly x: number;
  readonly y: number;
  /** Pixels for a millimetre of the diagram. */
  readonly k: number;
}

const LEAST = 0.5;
const MOST = 12;
/** Pixels for a millimetre at which the smallest texts can be read. */
const LEGIBLE = 3.6;
const STEP_PX = 60;
const PAN: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const zoomed = (v: View, by: number, x: number, y: number): View => {
  const k = Math.min(MOST, Math.max(LEAST, v.k * by));
  return { k, x: x - ((x - v.x) * k) / v.k, y: y - ((y - v.y) * k) / v.k };
};

/** The one-line diagram of the whole network, the same as on paper, to pan and zoom. Choosing a part selects its record. */
export const OneLineTab = () => {
  const { session, scheme } = useServices();
  const { plan, assessment, revision, setupId, selection, tried } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    revision: s.revision,
    setupId: s.setupId,
    selection: s.selection,
    tried: s.tried,
  }));
  const frame = useRef<SVGSVGElement>(null);
  const drag = useRef<{ x: number; y: number; moved: boolean } | undefined>(undefined);
  const [view, setView] = useState<View | undefined>(undefined);
  const current = assessment?.revision === revision;
  const sheet = useMemo(
    () => (assessment && current ? oneLineSheets(plan, assessment, setupId, ENDLESS)[0] : undefined),
    [plan, assessment, current, setupId],
  );
  const width = sheet?.widthMm ?? 0;
  const height = sheet?.heightMm ?? 0;

  const fitView = (): void => {
    const box = frame.current?.getBoundingClientRect();
    if (!box || width === 0) return;
    const k = Math.min(MOST, Math.max(LEAST, Math.min((box.width - 32) / width, (box.height - 32) / height)));
    setView({ k, x: Math.max(16, (box.width - width * k) / 2), y: 16 });
  };
  /** At first the texts can be read: all of it where that fits, else what is chosen or the upper left. */
  const firstView = (): void => {
    const box = frame.current?.getBoundingClientRect();
    if (!box || width === 0) return;
    const k = Math.max(LEGIBLE, Math.min((box.width - 32) / width, (box.height - 32) / height));
    const at = sheet?.items.find((i) => selection.has(i.recordId))?.box;
    if (k > LEGIBLE || !at) setView({ k: Math.min(MOST, k), x: 16, y: 16 });
    else setView({ k, x: box.width / 2 - at.minX * k, y: box.height / 2 - at.minY * k });
  };
  const size = `${width}×${height}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: placed once for a diagram of another size
  useEffect(firstView, [size]);
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
    return () => svg.removeEventListener('wheel', wheel);
  }, []);

  const zoom = (by: number): void => {
    const box = frame.current?.getBoundingClientRect();
    if (box) setView((v) => (v ? zoomed(v, by, box.width / 2, box.height / 2) : v));
  };
  const pan = (x: number, y: number): void => setView((v) => (v ? { ...v, x: v.x + x, y: v.y + y } : v));
  const act = (key: string): boolean => {
    const shift = PAN[key];
    if (shift) pan(shift[0] * STEP_PX, shift[1] * STEP_PX);
    else if (key === '+' || key === '=') zoom(1.25);
    else if (key === '-') zoom(0.8);
    else if (key === '0') fitView();
    else return false;
    return true;
  };

  return (
    <section className="one-line" aria-label="One-line diagram">
      <div className="one-line-tools">
        <button type="button" className="button" onClick={fitView}>
          Fit
        </button>
        <button type="button" className="button" onClick={() => zoom(1.25)}>
          Nearer
        </button>
        <button type="button" className="button" onClick={() => zoom(0.8)}>
          Further
        </button>
        <span className="soft small">
          Drag to pan, wheel to zoom, click to select. With the keyboard: arrows, + and −, 0 fits; units are
          in the Circuits table.
        </span>
      </div>
      {current && !sheet ? <p className="soft">There is no source of power in this plan yet.</p> : null}
      <svg
        ref={frame}
        className="one-line-view"
        role="application"
        aria-label="One-line diagram, pan and zoom"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it pans and zooms by keys
        tabIndex={0}
        onKeyDown={(e) => {
          if (!e.ctrlKey && !e.metaKey && act(e.key)) e.preventDefault();
        }}
        onPointerDown={(e) => {
          drag.current = { x: e.clientX, y: e.clientY, moved: false };
        }}
        onPointerMove={(e) => {
          const from = drag.current;
          if (!from || e.buttons === 0) return;
          const dx = e.clientX - from.x;
          const dy = e.clientY - from.y;
          if (!from.moved && Math.hypot(dx, dy) < 4) return;
          if (!from.moved) e.currentTarget.setPointerCapture(e.pointerId);
          drag.current = { x: e.clientX, y: e.clientY, moved: true };
          pan(dx, dy);
        }}
        onPointerUp={(e) => {
          const moved = drag.current?.moved;
          drag.current = undefined;
          if (moved) return;
          const id = (e.target as Element).closest('[data-record]')?.getAttribute('data-record');
          session.set({ selection: new Set(id ? [id] : []) });
        }}
      >
        {view ? (
          <g
            transform={`translate(${view.x} ${view.y}) scale(${view.k})`}
            fill="none"
            className="one-line-ink"
          >
            {sheet?.items.map((i) => (
              <Item
                key={i.key}
                item={i}
                chosen={selection.has(i.recordId)}
                hit={tried?.get(i.recordId)}
                scheme={scheme}
              />
            ))}
          </g>
        ) : null}
      </svg>
    </section>
  );
};

const Item = ({
  item,
  chosen,
  hit,
  scheme,
}: {
  readonly item: DisplayItem;
  readonly chosen: boolean;
  readonly hit: 'dark' | 'fewer legs' | 'wrong volts' | undefined;
  readonly scheme: 'bench' | 'truck';
}) => {
  const html = useMemo(() => displayItemSvg(item, PALETTES[scheme].roles), [item, scheme]);
  const { minX, minY, maxX, maxY } = item.box;
  // A box's or source's item spans its whole frame: only what is small enough to aim at takes clicks over all its area.
  const small = maxX - minX < 60 && maxY - minY < 60;
  return (
    <g
      data-record={item.recordId}
      className={`one-line-item${chosen ? ' chosen' : ''}${hit && small ? ` hit ${hit.replace(' ', '-')}` : ''}`}
    >
      {hit ? <title>{`While tried: ${hit}`}</title> : null}
      {small ? (
        <rect
          className="one-line-back"
          x={minX - 0.5}
          y={minY - 0.5}
          width={maxX - minX + 1}
          height={maxY - minY + 1}
        />
      ) : null}
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own writer escapes every text */}
      <g dangerouslySetInnerHTML={{ __html: html }} />
      {small ? (
        <rect
          className="one-line-hit"
          x={minX - 0.5}
          y={minY - 0.5}
          width={maxX - minX + 1}
          height={maxY - minY + 1}
        />
      ) : null}
    </g>
  );
};
