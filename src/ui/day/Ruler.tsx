import { formatClock } from '../../kernel/units.ts';
import type { DaySummary } from '../../report/day.ts';
import type { Scale } from './scale.ts';
import { skyMarks } from './sky.ts';

const TALL = 44;
/** Without sun and moon there are hours only. */
const FLAT = 26;
const SKY_Y = 2;
const SKY_H = 14;
const MOON_H = 3;

/** Hours, and over them night, twilight and day with sun and moon, where place and date are known. */
export const Ruler = ({ scale, sky }: { readonly scale: Scale; readonly sky: DaySummary['sky'] }) => {
  const height = sky ? TALL : FLAT;
  const hours: number[] = [];
  for (let m = scale.fromMin; m <= scale.toMin; m += 60) hours.push(m);
  const halves = scale.pxPerMin > 1.6;
  return (
    <svg
      width={scale.widthPx}
      height={height}
      role="img"
      aria-label={sky ? skyWords(sky) : 'Hours of the day'}
    >
      {sky ? <SkyBands scale={scale} sky={sky} /> : null}
      {hours.map((m) => (
        <g key={m}>
          <line className="tick" x1={scale.x(m)} x2={scale.x(m)} y1={height - 9} y2={height} />
          {halves && m < scale.toMin ? (
            <line className="tick" x1={scale.x(m + 30)} x2={scale.x(m + 30)} y1={height - 4} y2={height} />
          ) : null}
          {scale.x(m) > scale.widthPx - 30 ? null : (
            <text className="tick-text" x={scale.x(m) + 3} y={height - 3}>
              {formatClock(m)}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
};

const at = (name: string, m: number | undefined): string =>
  m === undefined ? `no ${name}` : `${name} ${formatClock(m)}`;

export const skyWords = (s: NonNullable<DaySummary['sky']>): string =>
  [
    at('nautical dawn', s.nauticalDawnMin),
    at('first light', s.dawnMin),
    at('sunrise', s.sunriseMin),
    at('sunset', s.sunsetMin),
    at('last light', s.duskMin),
    at('nautical dusk', s.nauticalDuskMin),
    at('moonrise', s.moonriseMin),
    at('moonset', s.moonsetMin),
    `${s.moonPhase}, ${Math.round(100 * s.moonShare)} % lit`,
  ].join(', ');

const SkyBands = ({
  scale,
  sky,
}: {
  readonly scale: Scale;
  readonly sky: NonNullable<DaySummary['sky']>;
}) => {
  // The night that follows looks like the one before: rises of the next day are within minutes of today's.
  const days = [0, 1440];
  const band = (name: string, from: number | undefined, to: number | undefined, by: number) =>
    from === undefined || to === undefined ? null : clipped(scale, from + by, to + by, name);
  return (
    <g>
      <rect className="sky-night" x={0} y={SKY_Y} width={scale.widthPx} height={SKY_H} />
      {days.map((by) => (
        <g key={by}>
          {band('sky-nautical', sky.nauticalDawnMin, sky.nauticalDuskMin, by)}
          {band('sky-civil', sky.dawnMin, sky.duskMin, by)}
          {band('sky-day', sky.sunriseMin, sky.sunsetMin, by)}
        </g>
      ))}
      {sky.moonUp.map(([from, to]) => clipped(scale, from, to, 'sky-moon-up', SKY_Y + SKY_H + 1, MOON_H))}
      {skyMarks(sky, scale).map((m) => (
        <g key={`${m.name}${m.minute}`}>
          <line className="sky-mark" x1={scale.x(m.minute)} x2={scale.x(m.minute)} y1={SKY_Y} y2={31} />
          <text className="sky-text" x={scale.x(m.minute) + 3} y={30}>
            {m.text}
          </text>
        </g>
      ))}
      <rect className="sky-words" x={0} y={SKY_Y} width={scale.widthPx} height={SKY_H + MOON_H + 2}>
        <title>{skyWords(sky)}</title>
      </rect>
    </g>
  );
};

const clipped = (
  scale: Scale,
  from: number,
  to: number,
  name: string,
  y: number = SKY_Y,
  height: number = SKY_H,
) => {
  const [a, b] = [Math.max(scale.fromMin, from), Math.min(scale.toMin, to)];
  return b > a ? (
    <rect
      key={`${name}${a}`}
      className={name}
      x={scale.x(a)}
      y={y}
      width={(b - a) * scale.pxPerMin}
      height={height}
    />
  ) : null;
};
