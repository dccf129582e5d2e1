/** How a power station takes up charge: watts into its cells, what it can give, and where the charge tapers off. */
export interface StationCharger {
  readonly cellsW: number;
  readonly usableWh: number;
  /** Share of full up to which it charges at full power. */
  readonly changeOver: number;
  /** Share of `usableWh` an hour at which charging ends. */
  readonly endC: number;
}

/** A part of a charge: minutes from its start, shares of full, mean watts into the cells. */
export interface ChargePart {
  readonly fromMin: number;
  readonly toMin: number;
  readonly fromShare: number;
  readonly toShare: number;
  readonly cellsW: number;
}

/**
 * Charging from a share of full for so many minutes: at full power to the change-over, then a power that falls
 * exponentially. The charge balance sets its time constant: τ = (1 − s) × E ÷ (P − P_end), as for packs.
 */
export const chargeParts = (c: StationCharger, share: number, minutes: number): readonly ChargePart[] => {
  if (!(c.cellsW > 0) || !(c.usableWh > 0) || share >= 1 || !(minutes > 0)) return [];
  const endW = c.endC * c.usableWh;
  const s = c.cellsW > 1.01 * endW ? Math.min(1, Math.max(0, c.changeOver)) : 1;
  const parts: ChargePart[] = [];
  let at = 0;
  let now = share;
  if (now < s) {
    const lasts = Math.min(minutes, (60 * (s - now) * c.usableWh) / c.cellsW);
    const toShare = Math.min(1, now + (c.cellsW * lasts) / 60 / c.usableWh);
    parts.push({ fromMin: 0, toMin: lasts, fromShare: now, toShare, cellsW: c.cellsW });
    at = lasts;
    now = toShare;
  }
  if (s < 1 && at < minutes - 1e-9 && now < 1 - 1e-9) {
    const tauMin = (60 * (1 - s) * c.usableWh) / (c.cellsW - endW);
    /** All that a taper without an end would put in, as a share of full. */
    const whole = (c.cellsW * tauMin) / 60 / c.usableWh;
    const began = -tauMin * Math.log(1 - Math.min(1 - 1e-12, (now - s) / whole));
    const lasts = Math.min(minutes - at, Math.max(0, tauMin * Math.log(c.cellsW / endW) - began));
    const toShare = Math.min(1, s + whole * (1 - Math.exp(-(began + lasts) / tauMin)));
    if (lasts > 1e-9)
      parts.push({
        fromMin: at,
        toMin: at + lasts,
        fromShare: now,
        toShare,
        cellsW: (60 * (toShare - now) * c.usableWh) / lasts,
      });
  }
  return parts;
};
