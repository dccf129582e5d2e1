import { fail, ok, type Result } from '../kernel/result.ts';
import type { Way } from './kinds/ports.ts';

/** How a way trips besides by its rating: the class of its breaker, and its residual-current device with its type. */
export type WayDevice = Pick<Way, 'curve' | 'rcdMa' | 'rcdType'>;

/** A way's device in one short line: `C 30 mA A`, `5 mA`, empty for a North American breaker alone. */
export const wayDeviceText = (w: WayDevice): string =>
  [
    w.curve === 'na' ? '' : w.curve,
    w.rcdMa === undefined ? '' : `${w.rcdMa} mA`,
    w.rcdMa === undefined ? '' : (w.rcdType ?? ''),
  ]
    .filter(Boolean)
    .join(' ');

const CURVES: Readonly<Record<string, Way['curve']>> = { B: 'B', C: 'C', D: 'D' };
const TYPES: Readonly<Record<string, Way['rcdType']>> = { AC: 'AC', A: 'A', F: 'F', B: 'B' };

/**
 * A device as typed: the curve (B, C or D; nothing for a North American breaker), then the trip class of a residual-current device
 * in milliamps with its type (AC, A, F or B) where it is known. `none` or nothing is a plain breaker.
 */
export const readWayDevice = (text: string): Result<WayDevice> => {
  const t = text.trim().toUpperCase();
  const m = /^(?:(B|C|D)(?![A-Z])[\s,]*)?(?:(\d+(?:[.,]\d+)?)\s*MA[\s,]*(?:TYPE\s*)?(AC|A|F|B)?)?$/.exec(
    t === 'NONE' ? '' : t,
  );
  const ma = m?.[2] === undefined ? undefined : Number(m[2].replace(',', '.'));
  if (!m || (ma !== undefined && !(ma > 0 && ma <= 30_000)))
    return fail({
      what: `“${text}” is no curve and no residual-current device.`,
      todo: 'Write what is printed on it, like C 30 mA A or 5 mA; nothing for a plain breaker.',
    });
  const type = TYPES[m[3] ?? ''];
  return ok({
    curve: CURVES[m[1] ?? ''] ?? 'na',
    ...(ma === undefined ? {} : { rcdMa: ma }),
    ...(ma === undefined || type === undefined ? {} : { rcdType: type }),
  });
};
