import { memo, useMemo } from 'react';
import { formatWatts } from '../../kernel/units.ts';
import type { SourceDay, StationLoadLane, UnitLane } from '../../report/day.ts';
import type { PowerPart } from '../../report/power-parts.ts';
import { onStation } from '../../report/station-spans.ts';
import { LaneTrack } from './LaneTrack.tsx';
import type { Scale } from './scale.ts';
import { powerStops, stationUnitStops, unitStops } from './stops.ts';

/** Height of a unit's lane; lower where there are many. */
export const UNIT_H = 34;
export const LOW_H = 20;
const POWER_H = 46;
const PAD = 3;
const LOW_PAD = 2;
/** A bar has to be so high to have its watts in it. */
const TEXT_H = 16;

const Dark = ({
  x,
  width,
  top,
  height,
}: {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
}) => (
  <>
    <rect className="lane-dark" x={x} y={top} width={width} height={height} />
    <rect className="lane-dark-hatch" x={x} y={top} width={width} height={height} fill="url(#over-hatch)" />
    {width > 34 ? (
      <text className="lane-dark-text" x={x + width / 2} y={top + height / 2 + 4} textAnchor="middle">
        dark
      </text>
    ) : null}
  </>
);

/** One unit over the day: charge of what it runs on, changes, dark gaps. */
export const UnitStrip = memo(
  ({ lane, scale, low }: { readonly lane: UnitLane; readonly scale: Scale; readonly low: boolean }) => {
    const stops = useMemo(() => unitStops(lane), [lane]);
    const [h, pad] = low ? [LOW_H, LOW_PAD] : [UNIT_H, PAD];
    const room = h - 2 * pad;
    const y = (soc: number): number => pad + room * (1 - soc);
    const slope = (from: number, to: number, a: number, b: number): string =>
      `${from},${h - pad} ${from},${y(a)} ${to},${y(b)} ${to},${h - pad}`;
    return (
      <LaneTrack label={laneWords(lane)} stops={stops} scale={scale} heightPx={h}>
        <line className="lane-base" x1={0} x2={scale.widthPx} y1={h - pad} y2={h - pad} />
        {lane.charges.map((c) => (
          <polygon
            key={`c${c.startMin}`}
            className="soc-charge"
            points={slope(scale.x(c.startMin), scale.x(c.endMin), c.fromSoc, c.toSoc)}
          />
        ))}
        {lane.spans.map((s) => {
          const [a, b] = [scale.x(s.startMin), scale.x(s.endMin)];
          if (s.state === 'dark')
            return <Dark key={s.startMin} x={a} width={b - a} top={pad} height={room} />;
          const packs = s.packs.map((p) => `#${p}`).join(' ');
          return (
            <g key={s.startMin}>
              <polygon className="soc" points={slope(a, b, s.fromSoc, s.toSoc)} />
              {packs && b - a > Math.max(40, 7 * packs.length + 8) ? (
                <text
                  className="soc-text"
                  x={a + 5}
                  y={low ? h - pad - 3 : s.fromSoc > 0.55 ? h - pad - 4 : pad + 10}
                >
                  {packs}
                </text>
              ) : null}
            </g>
          );
        })}
        {lane.swaps
          .filter((s) => !s.first)
          .map((s) => (
            <path
              key={`s${s.atMin}`}
              className="swap"
              data-hot={s.darkMin <= 0 && s.out !== ''}
              d={`M ${scale.x(s.atMin) - 4} ${low ? 8 : 10} h 8 l -4 -7 z`}
            />
          ))}
      </LaneTrack>
    );
  },
);

const laneWords = (l: UnitLane): string =>
  l.problem
    ? `${l.label}: not computed, ${l.problem}`
    : `${l.label} on ${l.on}: burns ${Math.round(l.burnsMin)} minutes, ${l.swaps.filter((s) => !s.first).length} changes, ${l.darkMin > 0 ? `${Math.round(l.darkMin)} minutes dark` : 'never dark'}`;

/** A unit that hangs on a power station: the station's charge while it burns, dark when that is empty. */
export const StationUnitStrip = memo(
  ({
    lane,
    station,
    scale,
    low,
  }: {
    readonly lane: StationLoadLane;
    readonly station: SourceDay['station'];
    readonly scale: Scale;
    readonly low: boolean;
  }) => {
    const stops = useMemo(() => stationUnitStops(lane, station), [lane, station]);
    const spans = useMemo(() => onStation(lane, station), [lane, station]);
    const [h, pad] = low ? [LOW_H, LOW_PAD] : [UNIT_H - 8, PAD];
    const room = h - 2 * pad;
    const y = (share: number): number => pad + room * (1 - share);
    return (
      <LaneTrack
        label={`${lane.label} on ${lane.sourceLabel}: ${lane.darkMin > 0 ? `${Math.round(lane.darkMin)} minutes dark` : 'never dark'}`}
        stops={stops}
        scale={scale}
        heightPx={h}
      >
        <line className="lane-base" x1={0} x2={scale.widthPx} y1={h - pad} y2={h - pad} />
        {spans.map((s) => {
          const [a, b] = [scale.x(s.startMin), scale.x(s.endMin)];
          return s.state === 'dark' ? (
            <Dark key={s.startMin} x={a} width={b - a} top={pad} height={room} />
          ) : (
            <polygon
              key={s.startMin}
              className="soc"
              points={`${a},${h - pad} ${a},${y(s.fromShare)} ${b},${y(s.toShare)} ${b},${h - pad}`}
            />
          );
        })}
      </LaneTrack>
    );
  },
);

/** Watts of a source in steps; chargers lie on top of the light. */
export const PowerStrip = ({
  source,
  day,
  scale,
  partsAt,
}: {
  readonly source: SourceDay;
  readonly day: number;
  readonly scale: Scale;
  /** What draws from it at a minute. */
  readonly partsAt: (atMin: number) => readonly PowerPart[];
}) => {
  const top = Math.max(1, source.peakW, source.ratedW ?? 0);
  const stops = useMemo(() => powerStops(source, day, partsAt), [source, day, partsAt]);
  const h = (w: number): number => ((POWER_H - 2 * PAD) * w) / top;
  const share = (x: number): number => PAD + (POWER_H - 2 * PAD) * (1 - x);
  return (
    <LaneTrack
      label={`${source.label}: peak ${formatWatts(source.peakW)}, average ${formatWatts(source.averageW)}`}
      stops={stops}
      scale={scale}
      heightPx={POWER_H}
    >
      <line className="lane-base" x1={0} x2={scale.widthPx} y1={POWER_H - PAD} y2={POWER_H - PAD} />
      {source.ratedW === undefined ? null : (
        <line
          className="power-rated"
          x1={0}
          x2={scale.widthPx}
          y1={POWER_H - PAD - h(source.ratedW)}
          y2={POWER_H - PAD - h(source.ratedW)}
        />
      )}
      {source.steps.map((s) => {
        const a = scale.x(s.startMin);
        const w = scale.x(s.endMin) - a;
        const total = s.lightW + s.chargerW;
        return (
          <g key={s.startMin}>
            <rect
              className="power-light"
              x={a}
              y={POWER_H - PAD - h(s.lightW)}
              width={w}
              height={h(s.lightW)}
            />
            <rect
              className="power-charger"
              x={a}
              y={POWER_H - PAD - h(total)}
              width={w}
              height={h(s.chargerW)}
            />
            {w > 60 && total > 0 ? (
              <text
                className="power-text"
                data-lined={source.station !== undefined}
                x={a + 5}
                y={h(total) > TEXT_H ? POWER_H - PAD - 4 : POWER_H - PAD - h(total) - 3}
              >
                {formatWatts(total)}
              </text>
            ) : null}
          </g>
        );
      })}
      {source.station?.spans.map((s) => {
        const [a, b] = [scale.x(s.startMin), scale.x(s.endMin)];
        return s.state === 'empty' ? (
          <g key={`e${s.startMin}`}>
            <rect className="lane-dark" x={a} y={PAD} width={b - a} height={POWER_H - 2 * PAD} />
            {b - a > 60 ? (
              <text className="lane-dark-text" x={(a + b) / 2} y={POWER_H / 2 + 4} textAnchor="middle">
                empty
              </text>
            ) : null}
          </g>
        ) : (
          <polyline
            key={`s${s.startMin}`}
            className="station-left"
            data-charges={s.state === 'charges'}
            points={`${a},${share(s.fromShare)} ${b},${share(s.toShare)}`}
          />
        );
      })}
    </LaneTrack>
  );
};
