import { formatClock, formatWatts } from '../../kernel/units.ts';
import type { BayLane, SourceDay, UnitLane } from '../../report/day.ts';
import type { Scale } from './scale.ts';

const UNIT_H = 34;
const BAY_H = 20;
const POWER_H = 46;
const PAD = 3;

const pct = (share: number): string => `${Math.round(100 * share)} %`;

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
            <title>{`${formatClock(s.startMin)} to ${formatClock(s.endMin)}${packs} at ${s.levelPct} %: charge ${pct(s.fromSoc)} to ${pct(s.toSoc)}`}</title>
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

const laneWords = (l: UnitLane): string =>
  l.problem
    ? `${l.label}: not computed, ${l.problem}`
    : `${l.label} on ${l.on}: burns ${Math.round(l.burnsMin)} minutes, ${l.swaps.filter((s) => !s.first).length} changes, ${l.darkMin > 0 ? `${Math.round(l.darkMin)} minutes dark` : 'never dark'}`;

/** A charger's bay: which pack is in it when. */
export const BayStrip = ({ bay, scale }: { readonly bay: BayLane; readonly scale: Scale }) => (
  <svg
    width={scale.widthPx}
    height={BAY_H}
    className="lane-svg"
    role="img"
    aria-label={`${bay.label}: ${bay.spans.length} packs charged`}
  >
    <line className="lane-base" x1={0} x2={scale.widthPx} y1={BAY_H - 2} y2={BAY_H - 2} />
    {bay.spans.map((s) => {
      const a = scale.x(s.startMin);
      const b = Math.min(scale.widthPx, scale.x(s.endMin));
      return b <= a ? null : (
        <g key={s.startMin}>
          <rect className="bay" x={a} y={2} width={b - a} height={BAY_H - 4} />
          {b - a > 26 ? (
            <text className="bay-text" x={a + 5} y={BAY_H - 6}>
              #{s.pack}
            </text>
          ) : null}
          <title>{`#${s.pack} from ${pct(s.fromSoc)}: ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`}</title>
        </g>
      );
    })}
  </svg>
);

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
            <title>{`${formatClock(s.startMin)} to ${formatClock(s.endMin)}: ${formatWatts(total)}${s.chargerW > 0 ? `, of which chargers ${formatWatts(s.chargerW)}` : ''}`}</title>
          </g>
        );
      })}
    </svg>
  );
};
