import chart from '../../shared/fuel.json' with { type: 'json' };

/** A US gallon in litres. */
export const LITRES_PER_GALLON = 3.785412;

/** Where the fuel chart is from, for people. */
export const fuelSource: string = chart.source;

const between = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const i = Math.max(
    1,
    xs.findIndex((v) => x <= v),
  );
  const [x0, x1, y0, y1] = [xs[i - 1] ?? 0, xs[i] ?? 0, ys[i - 1] ?? 0, ys[i] ?? 0];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
};

/**
 * Fuel of a diesel set in litres per hour at a load in kilowatts, from the chart: straight lines between its loads and
 * between its sizes. Below a quarter of the rating the quarter's figure holds. Undefined where the chart does not go:
 * sets below its smallest or above its largest, and overloaded ones. A set that carries nothing is not counted.
 */
export const fuelLitresPerH = (ratedKw: number, loadKw: number): number | undefined => {
  const sizes = chart.rows.map((r) => r.ratedKw);
  const [first, last] = [sizes[0] ?? 0, sizes.at(-1) ?? 0];
  const pct = (100 * loadKw) / ratedKw;
  if (!(ratedKw >= first && ratedKw <= last) || !(pct >= 0 && pct <= 100)) return undefined;
  if (loadKw === 0) return 0;
  const share = Math.max(chart.sharesPct[0] ?? 0, pct);
  return between(
    sizes,
    chart.rows.map((r) => between(chart.sharesPct, r.litresPerH, share)),
    ratedKw,
  );
};
