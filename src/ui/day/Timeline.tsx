import { ZoomIn, ZoomOut } from 'lucide-react';
import { useState } from 'react';
import { formatWatts } from '../../kernel/units.ts';
import type { DaySummary, UnitLane } from '../../report/day.ts';
import { Figure } from '../common/Figure.tsx';
import { BlockLane } from './BlockLane.tsx';
import { BayStrip, PowerStrip, UnitStrip } from './lanes.tsx';
import { Ruler } from './Ruler.tsx';
import { type Scale, timeScale } from './scale.ts';

const ZOOMS = [0.7, 1, 1.4, 2, 3, 4.5] as const;

/** The day from left to right: sky and hours, blocks, a lane for each unit on packs, the charger bays, watts of each source. */
export const Timeline = ({
  summary,
  shiftRest,
}: {
  readonly summary: DaySummary;
  readonly shiftRest: boolean;
}) => {
  const [zoom, setZoom] = useState(1);
  const scale: Scale = timeScale(summary, ZOOMS[zoom] ?? 1);
  if (summary.blocks.length === 0) return null;
  const crews = [...new Set(summary.blocks.map((b) => b.block.crew))].sort().reverse();
  return (
    <section className="timeline" aria-label="Time line">
      <div className="timeline-head">
        <h3>Time line</h3>
        <button
          type="button"
          className="button icon"
          aria-label="Zoom out"
          title="Zoom out"
          disabled={zoom === 0}
          onClick={() => setZoom(zoom - 1)}
        >
          <ZoomOut size={16} aria-hidden="true" />
        </button>
        <button
          type="button"
          className="button icon"
          aria-label="Zoom in"
          title="Zoom in"
          disabled={zoom === ZOOMS.length - 1}
          onClick={() => setZoom(zoom + 1)}
        >
          <ZoomIn size={16} aria-hidden="true" />
        </button>
        <span className="soft">
          Height of a lane is the charge of its packs; ▲ a change, hatched: dark. Drag the edges of a block,
          or move them with the arrow keys.
        </span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide time line has to scroll by keyboard too */}
      <section className="timeline-scroll" tabIndex={0} aria-label="Lanes">
        <Lane name="" className="lane-ruler">
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
        {summary.lanes.map((l) => (
          <Lane key={l.fixtureId} name={<UnitName lane={l} />}>
            <UnitStrip lane={l} scale={scale} />
          </Lane>
        ))}
        {summary.bays.map((b) => (
          <Lane key={b.label} name={b.label}>
            <BayStrip bay={b} scale={scale} />
          </Lane>
        ))}
        {summary.sources.map((s) => (
          <Lane
            key={s.id}
            name={
              <>
                {s.label} <span className="soft">peak {formatWatts(s.peakW)}</span>
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
