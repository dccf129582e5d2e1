import { formatClock, formatWatts } from '../../kernel/units.ts';
import { formatMinutes, type SourceDay, type UnitLane } from '../../report/day.ts';
import type { Scale } from './scale.ts';

const UNIT_H = 34;
const POWER_H = 46;
const PAD = 3;

export const pct = (share: number): string => `${Math.round(100 * share)} %`;

/** One unit over the day: charge of what it runs on, changes, dark gaps. */
export const UnitStrip = ({ lane, scale }: { readonly lane: UnitLane; readonly scale: Scale }) => {
  const room = UNIT_H - 2 * PAD;
  const y = (soc: number): number => PAD + room * (1 - soc);
  return (
    <svg width={scale.widthPx} height={UNIT_H} className="lane-svg" role="img" aria-label={laneWords(lane)}>
      <line className="lane-base" x1={0} x2={scale.widthPx} y1={UNIT_H - PAD} y2={UNIT_H - PAD} />
      {lane.charges.map((c) => (
        <polygon
          key={`c${c.startMin}`}
          className="soc-charge"
          points={`${scale.x(c.startMin)},${UNIT_H - PAD} ${scale.x(c.startMin)},${y(c.fromSoc)} ${scale.x(c.endMin)},${y(c.toSoc)} ${scale.x(c.endMin)},${UNIT_H - PAD}`}
        >
          <title>{`${formatClock(c.startMin)} to ${formatClock(c.endMin)}: charging on its lead, ${pct(c.fromSoc)} to ${pct(c.toSoc)}`}</title>
        </polygon>
      ))}
      {lane.spans.map((s) => {
        const [a, b] = [scale.x(s.startMin), scale.x(s.endMin)];
        if (s.state === 'dark')
          return (
            <g key={s.startMin}>
              <rect className="lane-dark" x={a} y={PAD} width={b - a} height={room} />
              <rect
                className="lane-dark-hatch"
                x={a}
                y={PAD}
                width={b - a}
                height={room}
                fill="url(#over-hatch)"
              />
              {b - a > 34 ? (
                <text className="lane-dark-text" x={(a + b) / 2} y={UNIT_H / 2 + 4} textAnchor="middle">
                  dark
                </text>
              ) : null}
              <title>{`dark ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`}</title>
            </g>
          );
        const packs = s.packs.length > 0 ? ` on ${s.packs.map((p) => `#${p}`).join(' ')}` : '';
        return (
          <g key={s.startMin}>
            <polygon
              className="soc"
              points={`${a},${UNIT_H - PAD} ${a},${y(s.fromSoc)} ${b},${y(s.toSoc)} ${b},${UNIT_H - PAD}`}
            />
            {b - a > 40 && s.packs.length > 0 ? (
              <text className="soc-text" x={a + 5} y={s.fromSoc > 0.55 ? UNIT_H - PAD - 4 : PAD + 10}>
                {s.packs.map((p) => `#${p}`).join(' ')}
              </text>
            ) : null}
            <title>{`${formatClock(s.startMin)} to ${formatClock(s.endMin)}${packs} at ${s.levelPct} %: charge ${pct(s.fromSoc)} to ${pct(s.toSoc)}${lastsWords(lane, s.setupId)}`}</title>
          </g>
        );
      })}
      {lane.swaps
        .filter((s) => !s.first)
        .map((s) => (
          <path key={`s${s.atMin}`} className="swap" d={`M ${scale.x(s.atMin) - 4} 10 h 8 l -4 -7 z`}>
            <title>{`${formatClock(s.atMin)}: ${s.out ? `${s.out} off, ` : ''}${s.into} on${s.darkMin > 0 ? `, ${s.darkMin} min dark` : ', without a gap'}`}</title>
          </path>
        ))}
    </svg>
  );
};

/** How long a full loading lasts in a setup: what the slope of the lane follows from. */
const lastsWords = (l: UnitLane, setupId: string): string => {
  const r = l.runtimes.find((x) => x.setupId === setupId);
  return r
    ? `. ${l.on}: a full one lasts ${r.text}, planned with ${formatMinutes(r.minutes.plan)}; the working opens from the name`
    : '';
};

const laneWords = (l: UnitLane): string =>
  l.problem
    ? `${l.label}: not computed, ${l.problem}`
    : `${l.label} on ${l.on}: burns ${Math.round(l.burnsMin)} minutes, ${l.swaps.filter((s) => !s.first).length} changes, ${l.darkMin > 0 ? `${Math.round(l.darkMin)} minutes dark` : 'never dark'}`;

/** Watts of a source in steps; chargers lie on top of the light. */
export const PowerStrip = ({ source, scale }: { readonly source: SourceDay; readonly scale: Scale }) => {
  const top = Math.max(1, source.peakW, source.ratedW ?? 0);
  const h = (w: number): number => ((POWER_H - 2 * PAD) * w) / top;
  return (
    <svg
      width={scale.widthPx}
      height={POWER_H}
      className="lane-svg"
      role="img"
      aria-label={`${source.label}: peak ${formatWatts(source.peakW)}, average ${formatWatts(source.averageW)}`}
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
      {source.station?.spans.map((s) => {
        const [a, b] = [scale.x(s.startMin), scale.x(s.endMin)];
        const y = (share: number): number => PAD + (POWER_H - 2 * PAD) * (1 - share);
        return s.state === 'empty' ? (
          <g key={`e${s.startMin}`}>
            <rect className="lane-dark" x={a} y={PAD} width={b - a} height={POWER_H - 2 * PAD} />
            <title>{`${source.label} empty ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`}</title>
          </g>
        ) : (
          <polyline
            key={`s${s.startMin}`}
            className="station-left"
            points={`${a},${y(s.fromShare)} ${b},${y(s.toShare)}`}
          />
        );
      })}
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
              <text className="power-text" x={a + 5} y={POWER_H - PAD - 4}>
                {formatWatts(total)}
              </text>
            ) : null}
            <title>{`${formatClock(s.startMin)} to ${formatClock(s.endMin)}: ${formatWatts(total)}${s.chargerW > 0 ? `, of which chargers ${formatWatts(s.chargerW)}` : ''}${leftWords(source, s.endMin)}`}</title>
          </g>
        );
      })}
    </svg>
  );
};

/** What a power station has left at a moment. */
const leftWords = (source: SourceDay, atMin: number): string => {
  const span = source.station?.spans.find((x) => x.startMin < atMin && x.endMin >= atMin);
  return span ? `; ${pct(span.toShare)} left in its cells at ${formatClock(atMin)}` : '';
};
