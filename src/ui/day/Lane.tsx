import { formatWatts } from '../../kernel/units.ts';
import type { SharedPackLane, SourceDay, StationLoadLane, UnitLane } from '../../report/day.ts';
import { dayKey } from '../../report/day-keys.ts';
import { Figure } from '../common/Figure.tsx';
import type { ChargerLane } from './charger-lane.tsx';

/** A lane: its name, which stays in sight, and its drawing. */
export const Lane = ({
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
export const UnitName = ({ lane }: { readonly lane: UnitLane }) => {
  const least = [...lane.runtimes].sort((a, b) => a.minutes.low - b.minutes.low)[0];
  return (
    <>
      <b>{lane.label}</b>{' '}
      {lane.problem ? (
        <span className="day-fault" title={lane.problem}>
          not computed
        </span>
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

/** A pack on the floor with the units on it. */
export const PackName = ({ pack }: { readonly pack: SharedPackLane }) => (
  <>
    <b>{pack.label}</b>{' '}
    <span className="soft lane-fed" title={`${pack.on}, feeds ${pack.units.map((u) => u.label).join(', ')}`}>
      feeds {pack.units.map((u) => u.label.replace(/^Unit /, '')).join(', ')}
    </span>
  </>
);

export const StationUnitName = ({ lane }: { readonly lane: StationLoadLane }) => (
  <>
    <b>{lane.label}</b> <span className="soft">on {lane.sourceLabel}</span>
  </>
);

export const ChargerName = ({ charger }: { readonly charger: ChargerLane }) => (
  <>
    <b>{charger.label}</b>{' '}
    <span className="soft">
      {charger.bays.length} {charger.bays.length === 1 ? 'bay' : 'bays'}
    </span>
  </>
);

export const SourceName = ({ source: s, day }: { readonly source: SourceDay; readonly day: number }) => (
  <>
    <b>{s.label}</b>{' '}
    <span className="soft">
      peak{' '}
      <Figure figureKey={s.peakW > 0 ? dayKey('dayPeakW', s.id, day) : undefined}>
        {formatWatts(s.peakW)}
      </Figure>
      {s.station ? `, ${Math.round(s.station.usableWh)} Wh` : ''}
    </span>
  </>
);
