interface MeterProps {
  readonly now: number;
  readonly worst: number;
  readonly limit: number | undefined;
  /** What the device is rated at, where less of it may be used. */
  readonly rating?: number | undefined;
  /** What a set gives on it where it stands, beside the limit. */
  readonly derated?: number | undefined;
  readonly unit?: string;
}

const FULL = 1.25;

/** A bar for the worst setup, a dotted tick for this one, a heavy tick for the limit, a thin one for the rating; past the limit it is hatched. */
export const Meter = ({ now, worst, limit, rating, derated, unit = 'A' }: MeterProps) => {
  // Without a limit there is nothing to measure against, so the bar stays empty and the figures speak.
  const top =
    limit !== undefined && limit > 0
      ? Math.max(limit * FULL, (rating ?? 0) * 1.04, (derated ?? 0) * 1.04)
      : Number.POSITIVE_INFINITY;
  const x = (a: number): number => (Number.isFinite(a) ? Math.min(100, Math.max(0, (100 * a) / top)) : 0);
  const over = limit !== undefined && worst > limit;
  const say = (word: string, n: number | undefined): string =>
    n === undefined ? '' : `, ${word} ${n.toFixed(1)} ${unit}`;
  const words = `now ${now.toFixed(1)} ${unit}${say('worst', worst)}${say('limit', limit)}${say('rated', rating)}${say('the set gives', derated)}`;
  return (
    <svg className="meter" viewBox="0 0 100 10" preserveAspectRatio="none" role="img" aria-label={words}>
      <title>{words}</title>
      <rect className="meter-back" x="0" y="1" width="100" height="8" />
      <rect className={over ? 'meter-bar over' : 'meter-bar'} x="0" y="1" width={x(worst)} height="8" />
      {over && limit !== undefined ? (
        <rect className="meter-hatch" x={x(limit)} y="1" width={x(worst) - x(limit)} height="8" />
      ) : null}
      <line className="meter-now" x1={x(now)} x2={x(now)} y1="0" y2="10" />
      {limit !== undefined && rating !== undefined && rating > limit * 1.001 ? (
        <line className="meter-rating" x1={x(rating)} x2={x(rating)} y1="0" y2="10" />
      ) : null}
      {limit !== undefined && derated !== undefined ? (
        <line className="meter-derated" x1={x(derated)} x2={x(derated)} y1="0" y2="10" />
      ) : null}
      {limit !== undefined ? (
        <line className="meter-limit" x1={x(limit)} x2={x(limit)} y1="0" y2="10" />
      ) : null}
    </svg>
  );
};
