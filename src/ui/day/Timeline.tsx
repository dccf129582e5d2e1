import { ZoomIn, ZoomOut } from 'lucide-react';
import { Fragment, type RefObject, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { DaySummary, SourceDay, UnitLane } from '../../report/day.ts';
import { powerParts } from '../../report/power-parts.ts';
import { useSessionSlice } from '../hooks.ts';
import { BlockLane } from './BlockLane.tsx';
import { ChargerStrip, chargersOf } from './charger-lane.tsx';
import { ChargerName, Lane, PackName, SourceName, StationUnitName, UnitName } from './Lane.tsx';
import { PowerStrip, StationUnitStrip, UnitStrip } from './lanes.tsx';
import { Ruler, skyWords } from './Ruler.tsx';
import { type Scale, timeScale } from './scale.ts';
import { packAsLane } from './stops.ts';
import { TimeLine, TipBox } from './TipLayer.tsx';
import { makeTips, TipsContext } from './tips.ts';
import { useZoom } from './use-zoom.ts';
import './lanes.css';

const NAMES_PX = 212;
/** Width of the names and the frame, and of a bar to scroll by. */
const BESIDE_PX = NAMES_PX + 18;
/** From so many units on their lanes are low. */
const MANY_UNITS = 14;
/** From so many bays on those of all chargers are. */
const MANY_BAYS = 16;

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
  const box = useRef<HTMLElement>(null);
  const widthPx = useWidth(box);
  const scroll = useRef<HTMLElement>(null);
  const lanesPx = useRef(1);
  const zoom = useZoom(scroll, NAMES_PX, lanesPx);
  const [onlyDark, setOnlyDark] = useState(false);
  const [tips] = useState(makeTips);
  const scale: Scale = useMemo(
    () => timeScale(summary, zoom.factor, Math.max(300, widthPx - BESIDE_PX)),
    [summary, zoom.factor, widthPx],
  );
  lanesPx.current = scale.widthPx;
  const crews = [...new Set(summary.blocks.map((b) => b.block.crew))].sort().reverse();
  const onStations = summary.stationLoads;
  const packs = useMemo(
    () => summary.sharedPacks.map((pack) => ({ pack, lane: packAsLane(pack, summary.lanes) })),
    [summary],
  );
  const darkUnits =
    summary.lanes.filter((l) => l.darkMin > 0 || l.problem).length +
    onStations.filter((l) => l.darkMin > 0).length;
  const only = onlyDark && darkUnits > 0;
  const lanes = only ? summary.lanes.filter((l) => l.darkMin > 0 || l.problem) : summary.lanes;
  const low = lanes.length + onStations.length > MANY_UNITS;
  const unit = (l: UnitLane) => (
    <Lane
      key={l.fixtureId}
      name={<UnitName lane={l} />}
      {...(l.sharedPackId === undefined ? {} : { className: 'lane-under' })}
    >
      <UnitStrip lane={l} scale={scale} low={low} />
    </Lane>
  );
  // The Tab key comes to one of the lanes, arrow keys go on from it.
  useLayoutEffect(() => {
    const all = [...(scroll.current?.querySelectorAll<SVGElement>('.track') ?? [])];
    if (!all.some((x) => x.tabIndex === 0)) all[0]?.setAttribute('tabindex', '0');
  });
  return (
    <TipsContext.Provider value={tips}>
      <section ref={box} className="timeline" aria-label="Time line">
        <div className="timeline-head">
          <h3>Time line</h3>
          <button
            type="button"
            className="button icon"
            aria-label="Zoom out"
            title="Zoom out (−, Ctrl and wheel); 0 shows all of the day"
            disabled={zoom.atLeast}
            onClick={() => zoom.by(-1)}
          >
            <ZoomOut size={16} aria-hidden="true" />
          </button>
          <button
            type="button"
            className="button icon"
            aria-label="Zoom in"
            title="Zoom in (+, Ctrl and wheel)"
            disabled={zoom.atMost}
            onClick={() => zoom.by(1)}
          >
            <ZoomIn size={16} aria-hidden="true" />
          </button>
          {darkUnits > 0 ? (
            <label className="day-check">
              <input type="checkbox" checked={onlyDark} onChange={(e) => setOnlyDark(e.target.checked)} />{' '}
              only units with gaps ({darkUnits})
            </label>
          ) : null}
          <span className="soft timeline-hint">
            Height of a lane is the charge of its packs; ▲ a change (△ without a gap), hatched: dark. Point at
            anything, or step along a lane with the arrow keys, for its figures.
          </span>
        </div>
        <section
          ref={scroll}
          className="timeline-scroll"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide time line has to scroll and zoom by keyboard too
          tabIndex={0}
          aria-label="Lanes; plus and minus zoom"
          onScroll={(e) => e.currentTarget.style.setProperty('--scrolled', `${e.currentTarget.scrollLeft}px`)}
          onKeyDown={(e) => {
            if (e.ctrlKey || e.metaKey || e.altKey) return;
            if (e.key === '+' || e.key === '=') zoom.by(1);
            else if (e.key === '-') zoom.by(-1);
            else if (e.key === '0') zoom.fit();
          }}
        >
          <div className="lanes">
            <div className="lanes-head">
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
              >
                <Ruler scale={scale} sky={summary.sky} />
              </Lane>
              {crews.map((crew) => (
                <Lane key={crew} name={crew === 'shooting' ? 'Blocks' : 'Rigging crew'}>
                  <BlockLane
                    rows={summary.blocks.filter((b) => b.block.crew === crew)}
                    scale={scale}
                    shiftRest={shiftRest}
                  />
                </Lane>
              ))}
            </div>
            {lanes.filter((l) => l.sharedPackId === undefined).map(unit)}
            {packs
              .filter((p) => !only || p.lane.darkMin > 0)
              .map(({ pack, lane }) => (
                <Fragment key={pack.id}>
                  <Lane name={<PackName pack={pack} />}>
                    <UnitStrip lane={lane} scale={scale} low={false} />
                  </Lane>
                  {lanes.filter((l) => l.sharedPackId === pack.id).map(unit)}
                </Fragment>
              ))}
            {lanes
              .filter((l) => l.sharedPackId !== undefined && !packs.some((p) => p.pack.id === l.sharedPackId))
              .map(unit)}
            {chargersOf(summary.bays).map((c) => (
              <Lane key={c.label} name={<ChargerName charger={c} />}>
                <ChargerStrip bays={c.bays} scale={scale} crowded={summary.bays.length > MANY_BAYS} />
              </Lane>
            ))}
            {summary.sources.map((s) => (
              <SourceLanes key={s.id} source={s} day={summary.day} scale={scale}>
                {onStations
                  .filter((l) => l.sourceId === s.id)
                  .filter((l) => !only || l.darkMin > 0)
                  .map((l) => (
                    <Lane key={l.fixtureId} className="lane-under" name={<StationUnitName lane={l} />}>
                      <StationUnitStrip lane={l} station={s.station} scale={scale} low={low} />
                    </Lane>
                  ))}
              </SourceLanes>
            ))}
            <TimeLine scale={scale} leftPx={NAMES_PX} />
          </div>
        </section>
        <TipBox />
      </section>
    </TipsContext.Provider>
  );
};

/** The lane of a source, and under a power station those of its units. */
const SourceLanes = ({
  source,
  day,
  scale,
  children,
}: {
  readonly source: SourceDay;
  readonly day: number;
  readonly scale: Scale;
  readonly children: React.ReactNode;
}) => {
  const plan = useSessionSlice((s) => s.plan);
  const partsAt = useCallback(
    (atMin: number) => powerParts(plan, day, source.id, atMin),
    [plan, day, source.id],
  );
  return (
    <>
      <Lane name={<SourceName source={source} day={day} />}>
        <PowerStrip source={source} day={day} scale={scale} partsAt={partsAt} />
      </Lane>
      {children}
    </>
  );
};

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
