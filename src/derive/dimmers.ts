import type { DimmerKind } from '../plan/kinds/dimmer.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';

export type DimmerHow = DimmerKind['how'];

/** What a dimmer's way does to what hangs on it. */
export interface DimmerWay {
  readonly how: DimmerHow;
  readonly wayW: number;
  readonly leastW: number;
  readonly lossPct: number;
}

/** Ways of taking power out of the wave by switching within each half of it. */
export const cutsPhase = (how: DimmerHow | undefined): boolean =>
  how === 'leading-edge' || how === 'trailing-edge';

/** Whether a load runs on the wave as it comes, like a lamp or a heater: its current follows the volts at each moment. */
export const isResistive = (load: LoadSpec): boolean =>
  load.model === 'tungsten' || load.model === 'constant-impedance';

const POINTS = 400;

/** Share of full power and third over fundamental current of a resistance whose half-waves are cut at angle `a` (0 to π). */
const cutAt = (a: number): readonly [share: number, third: number] => {
  const share = 1 - a / Math.PI + Math.sin(2 * a) / (2 * Math.PI);
  // Fourier coefficients of sin θ from a to π, over the half wave.
  const order = (n: number): number => {
    const s = (k: number): number => (k === 0 ? Math.PI - a : (Math.sin(k * Math.PI) - Math.sin(k * a)) / k);
    const c = (k: number): number => (k === 0 ? 0 : -(Math.cos(k * Math.PI) - Math.cos(k * a)) / k);
    // ∫ sin θ sin nθ = ½∫ cos(n−1)θ − cos(n+1)θ; ∫ sin θ cos nθ = ½∫ sin(n+1)θ − sin(n−1)θ.
    return Math.hypot((s(n - 1) - s(n + 1)) / Math.PI, (c(n + 1) - c(n - 1)) / Math.PI);
  };
  const first = order(1);
  return [share, first === 0 ? 0 : order(3) / first];
};

let table: readonly (readonly [number, number])[] | undefined;

/**
 * Third harmonic over fundamental in the current of a resistance on a phase-cut dimmer, by the share of full power it runs
 * at: Fourier series of a half wave cut at an angle (any textbook of power electronics). Full power has none.
 */
export const phaseCutThird = (powerShare: number): number => {
  table ??= Array.from({ length: POINTS + 1 }, (_, i) => cutAt((i * Math.PI) / POINTS));
  const t = table;
  const p = Math.min(1, Math.max(0, powerShare));
  // Shares fall along the table.
  let low = 0;
  let high = POINTS;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if ((t[mid]?.[0] ?? 0) >= p) low = mid;
    else high = mid;
  }
  const [p0, k0] = t[low] ?? [1, 0];
  const [p1, k1] = t[high] ?? [0, 1];
  // Near nothing the third nears the fundamental itself.
  return p0 === p1 ? k0 : k0 + ((k1 - k0) * (p0 - p)) / (p0 - p1);
};
