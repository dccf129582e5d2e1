import { formatClock } from '../../kernel/units.ts';
import type { DaySummary } from '../../report/day.ts';
import type { Scale } from './scale.ts';

const HEIGHT = 42;
const SKY_Y = 2;
const SKY_H = 16;
/** Room for the words beside a mark. */
const MARK_PX = 86;

/** Hours, and over them night, twilight and day with sun and moon, where place and date are known. */
export const Ruler = ({ scale, sky }: { readonly scale: Scale; readonly sky: DaySummary['sky'] }) => {
  const hours: number[] = [];
  for (let m = scale.fromMin; m <= scale.toMin; m += 60) hours.push(m);
  return (
    <svg
      width={scale.widthPx}
      height={HEIGHT}
      role="img"
      aria-label={sky ? skyWords(sky) : 'Hours of the day'}
    >
      {sky ? <SkyBands scale={scale} sky={sky} /> : null}
      {hours.map((m) => (
        <g key={m}>
          <line className="tick" x1={scale.x(m)} x2={scale.x(m)} y1={34} y2={HEIGHT} />
          {scale.x(m) > scale.widthPx - 30 ? null : (
            <text className="tick-text" x={scale.x(m) + 3} y={HEIGHT - 3}>
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
    at('first light', s.dawnMin),
    at('sunrise', s.sunriseMin),
    at('sunset', s.sunsetMin),
    at('last light', s.duskMin),
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
  const later = (m: number | undefined): number | undefined => (m === undefined ? undefined : m + 1440);
  const marks = [
    { name: 'sunrise', min: sky.sunriseMin },
    { name: 'sunset', min: sky.sunsetMin },
    { name: 'moonrise', min: sky.moonriseMin },
    { name: 'moonset', min: sky.moonsetMin },
    { name: 'sunrise', min: later(sky.sunriseMin) },
  ].flatMap(({ name, min }) =>
    min === undefined || min < scale.fromMin || min > scale.toMin - MARK_PX / scale.pxPerMin
      ? []
      : [{ name, min }],
  );
  // Words that would run into one another: the sun's stay.
  const shown = marks.filter(
    (m) =>
      m.name.startsWith('sun') ||
      !marks.some((x) => x !== m && Math.abs(scale.x(x.min) - scale.x(m.min)) < MARK_PX),
  );
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
      {shown.map(({ name, min }) => (
        <g key={`${name}${min}`}>
          <line className="sky-mark" x1={scale.x(min)} x2={scale.x(min)} y1={SKY_Y} y2={29} />
          <text className="sky-text" x={scale.x(min) + 3} y={28}>
            {name} {formatClock(min)}
          </text>
        </g>
      ))}
      <rect className="sky-words" x={0} y={SKY_Y} width={scale.widthPx} height={SKY_H}>
        <title>{skyWords(sky)}</title>
      </rect>
    </g>
  );
};

const clipped = (scale: Scale, from: number, to: number, name: string) => {
  const [a, b] = [Math.max(scale.fromMin, from), Math.min(scale.toMin, to)];
  return b > a ? (
    <rect
      key={name}
      className={name}
      x={scale.x(a)}
      y={SKY_Y}
      width={(b - a) * scale.pxPerMin}
      height={SKY_H}
    />
  ) : null;
};
