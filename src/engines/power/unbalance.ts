/**
 * Voltage unbalance in per cent by NEMA MG 1: the largest deviation of the volts between lines from their mean, over that
 * mean.
 */
export const nemaUnbalancePct = (lineV: readonly [number, number, number]): number => {
  const mean = (lineV[0] + lineV[1] + lineV[2]) / 3;
  return (100 * Math.max(...lineV.map((v) => Math.abs(v - mean)))) / mean;
};

/**
 * Voltage unbalance in per cent as negative over positive sequence, from the three volts between lines:
 * √((1 − √(3 − 6β)) ÷ (1 + √(3 − 6β))), β = Σ V⁴ ÷ (Σ V²)². IEC 61000-4-30 (formula from memory; proved in the tests
 * against symmetrical components).
 */
export const negativeSequencePct = (lineV: readonly [number, number, number]): number => {
  const squares = lineV.map((v) => v * v);
  const sum = squares.reduce((a, b) => a + b, 0);
  const beta = squares.reduce((a, b) => a + b * b, 0) / (sum * sum);
  const root = Math.sqrt(Math.max(0, 3 - 6 * beta));
  return 100 * Math.sqrt(Math.max(0, (1 - root) / (1 + root)));
};
