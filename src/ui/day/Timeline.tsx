import { ZoomIn, ZoomOut } from 'lucide-react';
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { formatWatts } from '../../kernel/units.ts';
import type { DaySummary, UnitLane } from '../../report/day.ts';
import { Figure } from '../common/Figure.tsx';
import { BlockLane } from './BlockLane.tsx';
import { ChargerStrip, chargersOf } from './charger-lane.tsx';
import { PowerStrip, UnitStrip } from './lanes.tsx';
import { Ruler, skyWords } from './Ruler.tsx';
import { type Scale, timeScale } from './scale.ts';

const ZOOMS = [1, 1.5, 2.2, 3.3, 5, 7.5] as const;
/** Width of the names and the frame, and of a bar to scroll by. */
const BESIDE_PX = 230;

/** The day from left to right: sky and hours, blocks, a lane for each unit on packs, the charger bays, watts of each source. */
export const Timeline = ({
  summary,
  shiftRest,
  onPlace,
}: {
  readonly summary: DaySummary;
  readonly shiftRest: boolean;
  /** Asks for the date and the place, where sun and moon are not known. */
  readonly onPlace: () => void;
}) => {
  const [zoom, setZoom] = useState(0);
  const box = useRef<HTMLElement>(null);
  const widthPx = useWidth(box);
  const scroll = useRef<HTMLElement>(null);
  const zoomTo = (to: number): void => setZoom(Math.max(0, Math.min(ZOOMS.length - 1, to)));
  useWheelZoom(scroll, (by) => setZoom((z) => Math.max(0, Math.min(ZOOMS.length - 1, z + by))));
  const scale: Scale = timeScale(summary, ZOOMS[zoom] ?? 1, Math.max(300, widthPx - BESIDE_PX));
  const crews = [...new Set(summary.blocks.map((b) => b.block.crew))].sort().reverse();
  return (
    <section ref={box} className="timeline" aria-label="Time line">
      <div className="timeline-head">
        <h3>Time line</h3>
        <button
          type="button"
          className="button icon"
          aria-label="Zoom out"
          title="Zoom out"
          disabled={zoom === 0}
          onClick={() => zoomTo(zoom - 1)}
        >
          <ZoomOut size={16} aria-hidden="true" />
        </button>
        <button
          type="button"
          className="button icon"
          aria-label="Zoom in"
          title="Zoom in"
          disabled={zoom === ZOOMS.length - 1}
          onClick={() => zoomTo(zoom + 1)}
        >
          <ZoomIn size={16} aria-hidden="true" />
        </button>
        <span className="soft">
          Height of a lane is the charge of its packs; ▲ a change, hatched: dark. Drag a block or its edges,
          or move them with the arrow keys. Rest on anything for its figures.
        </span>
      </div>
      <section
        ref={scroll}
        className="timeline-scroll"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide time line has to scroll and zoom by keyboard too
        tabIndex={0}
        aria-label="Lanes; plus and minus zoom"
        onKeyDown={(e) => {
          if (e.ctrlKey || e.metaKey || e.altKey) return;
          if (e.key === '+' || e.key === '=') zoomTo(zoom + 1);
          else if (e.key === '-') zoomTo(zoom - 1);
          else if (e.key === '0') zoomTo(0);
        }}
      >
        <Lane
          name={
            summary.sky ? (
              <span className="soft sky-moon" title={skyWords(summary.sky)}>
                {summary.sky.moonPhase}, {Math.round(100 * summary.sky.moonShare)} % lit
              </span>
            ) : (
              <button type="button" className="link soft" onClick={onPlace}>
                sun and moon: date and place…
              </button>
            )
          }
          className="lane-ruler"
        >
          <Ruler scale={scale} sky={summary.sky} />
        </Lane>
        {crews.map((crew) => (
          <Lane
            key={crew}
            name={crew === 'shooting' ? 'Blocks' : 'Rigging crew'}
            {...(crews.length === 1 ? { className: 'lane-blocks' } : {})}
          >
            <BlockLane
              rows={summary.blocks.filter((b) => b.block.crew === crew)}
              scale={scale}
              shiftRest={shiftRest}
            />
          </Lane>
        ))}
        {summary.lanes.map((l) => (
          <Lane key={l.fixtureId} name={<UnitName lane={l} />}>
            <UnitStrip lane={l} scale={scale} />
          </Lane>
        ))}
        {chargersOf(summary.bays).map((c) => (
          <Lane key={c.label} name={<ChargerName charger={c} />}>
            <ChargerStrip bays={c.bays} scale={scale} />
          </Lane>
        ))}
        {summary.sources.map((s) => (
          <Lane
            key={s.id}
            name={
              <>
                <b>{s.label}</b>{' '}
                <span className="soft">
                  peak {formatWatts(s.peakW)}
                  {s.station ? `, ${Math.round(s.station.usableWh)} Wh` : ''}
                </span>
              </>
            }
          >
            <PowerStrip source={s} scale={scale} />
          </Lane>
        ))}
      </section>
    </section>
  );
};

const Lane = ({
  name,
  className,
  children,
}: {
  readonly name: React.ReactNode;
  readonly className?: string;
  readonly children: React.ReactNode;
}) => (
  <div className={className ? `lane ${className}` : 'lane'}>
    <div className="lane-name">{name}</div>
    {children}
  </div>
);

/** How wide an element is on the screen, as it changes. */
const useWidth = (of: RefObject<HTMLElement | null>): number => {
  const [px, setPx] = useState(1200);
  useLayoutEffect(() => {
    const el = of.current;
    if (!el) return;
    const look = (): void => setPx(el.clientWidth);
    look();
    const watch = new ResizeObserver(look);
    watch.observe(el);
    return () => watch.disconnect();
  }, [of]);
  return px;
};

/** Ctrl and the wheel zoom. A listener of its own: React's cannot keep the page from zooming. */
const useWheelZoom = (of: RefObject<HTMLElement | null>, zoomBy: (by: number) => void): void => {
  const act = useRef(zoomBy);
  act.current = zoomBy;
  useLayoutEffect(() => {
    const el = of.current;
    if (!el) return;
    const onWheel = (e: WheelEvent): void => {
      if (!e.ctrlKey || e.deltaY === 0) return;
      e.preventDefault();
      act.current(e.deltaY < 0 ? 1 : -1);
    };
    el.addEventListener('wheel', onWheel, { passive: false });
    return () => el.removeEventListener('wheel', onWheel);
  }, [of]);
};

const ChargerName = ({ charger }: { readonly charger: { label: string; bays: readonly unknown[] } }) => (
  <>
    <b>{charger.label}</b>{' '}
    <span className="soft">
      {charger.bays.length} {charger.bays.length === 1 ? 'bay' : 'bays'}
    </span>
  </>
);

/** A unit's name with its shortest runtime of the day; choosing it opens the arithmetic. */
const UnitName = ({ lane }: { readonly lane: UnitLane }) => {
  const least = [...lane.runtimes].sort((a, b) => a.minutes.low - b.minutes.low)[0];
  return (
    <>
      <b>{lane.label}</b>{' '}
      {lane.problem ? (
        <span className="day-fault">not computed</span>
      ) : least ? (
        <span className="soft" title={`${lane.on}; the shortest of the day, in ${least.setupName}`}>
          <Figure figureKey={least.key}>{least.text}</Figure>
        </span>
      ) : (
        <span className="soft">off</span>
      )}
    </>
  );
};
