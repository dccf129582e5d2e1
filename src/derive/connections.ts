import type { InletPort, LoadSpec } from '../plan/kinds/ports.ts';
import { type LoadBranch, NEUTRAL } from './supply-types.ts';
import { legVoltsV, lineToLineV, type SystemShape } from './systems.ts';

/**
 * How a load lies over the legs that reach its inlet.
 * - one leg and neutral: leg to neutral;
 * - two legs without neutral: leg to leg, also where a one-leg inlet is fed by two legs;
 * - two legs with neutral: leg to leg where the kind's volts take it, else half on each leg to neutral;
 * - three legs: wye with a neutral, delta without.
 * Gives words instead where it cannot be connected.
 */
export const loadBranches = (
  shape: SystemShape,
  inlet: InletPort,
  legs: readonly number[],
  neutral: boolean,
  spec: LoadSpec,
): readonly LoadBranch[] | string => {
  const used = legs.slice(0, Math.max(inlet.legs, neutral ? 1 : 2));
  const [a, b, c] = used;
  if (a === undefined) return 'no leg reaches it';
  const ll = (x: number, y: number, share: number): LoadBranch => ({
    from: x,
    to: y,
    share,
    nominalV: lineToLineV(shape, x, y),
  });
  const ln = (x: number, share: number): LoadBranch => ({
    from: x,
    to: NEUTRAL,
    share,
    nominalV: legVoltsV(shape, x),
  });
  if (inlet.legs > legs.length && inlet.legs > 1)
    return `its inlet takes ${inlet.legs} legs and ${legs.length === 1 ? 'one leg reaches' : `${legs.length} legs reach`} it`;
  if (c !== undefined)
    return neutral && inlet.neutral
      ? used.map((l) => ln(l, 1 / 3))
      : [ll(a, b ?? a, 1 / 3), ll(b ?? a, c, 1 / 3), ll(c, a, 1 / 3)];
  if (b !== undefined) {
    if (!neutral || !inlet.neutral) return [ll(a, b, 1)];
    return lineToLineV(shape, a, b) <= spec.voltsMaxV ? [ll(a, b, 1)] : [ln(a, 0.5), ln(b, 0.5)];
  }
  return neutral ? [ln(a, 1)] : 'one leg reaches it and no neutral';
};
