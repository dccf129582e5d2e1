import table from '../../../shared/rigging.json' with { type: 'json' };

/** Speeds that figures are shown for where the plan does not give the wind, m/s. */
export const WIND_SPEEDS_MPS: readonly number[] = table.speedsMps;

/**
 * Force of the wind on a face in newtons: q × c × A, q = pressure × v². `pressure` is in N/m² for (m/s)², the speed in
 * m/s, the area in m². Source: q = 0.00256 V² lbf/ft² (V in mph), which is 0.613 v².
 */
export const windForceN = (pressure: number, speedMps: number, coefficient: number, areaM2: number): number =>
  pressure * speedMps ** 2 * coefficient * areaM2;

/**
 * Number of the Beaufort scale for a speed in m/s. Source: the scale's lower bounds as printed.
 */
export const beaufort = (speedMps: number): number =>
  table.beaufort.fromMps.reduce((n, from, i) => (speedMps >= from ? i : n), 0);

/** Distance from the column to a tipping edge, legs evenly spaced on a circle: R · cos(π/n). Millimetres. */
export const tipRadiusMm = (legCircleMm: number, legs: number): number =>
  (Math.max(0, legCircleMm) / 2) * Math.cos(Math.PI / Math.max(3, legs));

/** A mass and where it hangs: out from the column in the direction that is looked at, negative on the other side. */
export interface Mass {
  readonly name: string;
  readonly massKg: number;
  readonly outMm: number;
  readonly heightMm: number;
  /** Distance from its own column to the tipping edge. */
  readonly radiusMm: number;
}

/** A push from the side. */
export interface Push {
  readonly name: string;
  readonly forceN: number;
  readonly heightMm: number;
  /** Force upwards, and its distance to the tipping edge. */
  readonly upN?: number;
  readonly radiusMm?: number;
}

export interface Moments {
  readonly restoringNm: number;
  readonly overturningNm: number;
  /** Restoring over overturning; infinite where nothing tips. */
  readonly factor: number;
}

/**
 * Moments about the tipping edge. A mass inside the edge holds down, one beyond it tips, pushes tip with force × height and,
 * where they lift, with their upward part × its distance to the edge.
 * g in m/s². Gives newton metres.
 */
export const momentsOf = (g: number, masses: readonly Mass[], pushes: readonly Push[]): Moments => {
  let restoringNm = 0;
  let overturningNm = 0;
  for (const m of masses) {
    const nm = (g * m.massKg * (m.radiusMm - m.outMm)) / 1000;
    if (nm >= 0) restoringNm += nm;
    else overturningNm -= nm;
  }
  for (const p of pushes)
    overturningNm +=
      (p.forceN * Math.max(0, p.heightMm) + (p.upN ?? 0) * Math.max(0, p.radiusMm ?? 0)) / 1000;
  return { restoringNm, overturningNm, factor: overturningNm > 0 ? restoringNm / overturningNm : Infinity };
};

/** The same masses seen from the other side. */
export const fromBehind = (masses: readonly Mass[]): readonly Mass[] =>
  masses.map((m) => ({ ...m, outMm: -m.outMm }));

/** Slope in degrees on which the masses tip over: atan(net moment / Σ weight × height). 90 where nothing is above the floor. */
export const tiltDeg = (masses: readonly Mass[]): number => {
  let net = 0;
  let above = 0;
  for (const m of masses) {
    net += m.massKg * (m.radiusMm - m.outMm);
    above += m.massKg * Math.max(0, m.heightMm);
  }
  return (Math.atan2(net, above) * 180) / Math.PI;
};

/** Ballast on the column in kg that brings the factor to `factor`: (factor × M overturning − M restoring) / (g × r); 0 where it is there. */
export const ballastKg = (g: number, m: Moments, radiusMm: number, factor: number): number => {
  const short = factor * m.overturningNm - m.restoringNm;
  if (short <= 0) return 0;
  return radiusMm > 0 ? short / ((g * radiusMm) / 1000) : Infinity;
};

/** Counterweight in kg that balances a load about the column: m × d / d′. */
export const counterweightKg = (massKg: number, outMm: number, counterMm: number): number =>
  counterMm > 0 ? (massKg * outMm) / counterMm : Infinity;

/**
 * Pull in one windward line of a frame in newtons: the lines take the whole force at the top edge. The moment over the
 * height of the top gives the pull to the side; it is shared by half the lines, each at `angleDeg` to the floor. What lifts
 * the frame (`upN`) is shared by all lines.
 */
export const guyPullN = (
  momentNm: number,
  topMm: number,
  lines: number,
  angleDeg: number,
  upN = 0,
): number => {
  const windward = Math.floor(lines / 2);
  const side = topMm > 0 ? momentNm / (topMm / 1000) : Infinity;
  const rad = (angleDeg * Math.PI) / 180;
  return windward > 0 ? side / (windward * Math.cos(rad)) + upN / (lines * Math.sin(rad)) : Infinity;
};
