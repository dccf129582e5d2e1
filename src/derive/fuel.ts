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

/** How a figure is read off the fuel chart: the load it is read at, and litres an hour of the sizes on either side. */
export interface FuelReading {
  /** Load in per cent of the rated kilowatts, and where the chart is read for it: at a quarter at least. */
  readonly loadPct: number;
  readonly readPct: number;
  readonly sizes: readonly { readonly ratedKw: number; readonly litresPerH: number }[];
  readonly litresPerH: number;
}

/**
 * Fuel of a diesel set at a load in kilowatts as read off the chart: straight lines between its loads and between its sizes.
 * Below a quarter of the rating the quarter's figure holds. Undefined where the chart does not go: sets below its smallest or
 * above its largest, and overloaded ones. A set that carries nothing is not counted.
 */
export const readFuel = (ratedKw: number, loadKw: number): FuelReading | undefined => {
  const sizes = chart.rows.map((r) => r.ratedKw);
  const [first, last] = [sizes[0] ?? 0, sizes.at(-1) ?? 0];
  const loadPct = (100 * loadKw) / ratedKw;
  if (!(ratedKw >= first && ratedKw <= last) || !(loadPct >= 0 && loadPct <= 100)) return undefined;
  if (loadKw === 0) return { loadPct, readPct: loadPct, sizes: [], litresPerH: 0 };
  const readPct = Math.max(chart.sharesPct[0] ?? 0, loadPct);
  const at = chart.rows.map((r) => ({
    ratedKw: r.ratedKw,
    litresPerH: between(chart.sharesPct, r.litresPerH, readPct),
  }));
  const same = at.find((r) => r.ratedKw === ratedKw);
  const above = at.findIndex((r) => r.ratedKw > ratedKw);
  return {
    loadPct,
    readPct,
    sizes: same ? [same] : at.slice(above - 1, above + 1),
    litresPerH: between(
      sizes,
      at.map((r) => r.litresPerH),
      ratedKw,
    ),
  };
};

/** Fuel of a diesel set in litres per hour at a load in kilowatts, as `readFuel` reads it. */
export const fuelLitresPerH = (ratedKw: number, loadKw: number): number | undefined =>
  readFuel(ratedKw, loadKw)?.litresPerH;
