import type { SkyDay } from '../../derive/sun.ts';
import { formatClock } from '../../kernel/units.ts';
import type { Scale } from './scale.ts';

const DAY_MIN = 1440;
/** About the width of a letter of the words, and what is left between two of them. */
const LETTER_PX = 5.4;
const GAP_PX = 10;

export interface SkyMark {
  readonly name: string;
  readonly minute: number;
  readonly text: string;
}

/** Moments of sun and moon that are told on the ruler: the sun's first, then the moon's, then the twilights, where there is room. */
export const skyMarks = (sky: SkyDay, scale: Scale): readonly SkyMark[] => {
  const next = (m: number | undefined): number | undefined => (m === undefined ? undefined : m + DAY_MIN);
  const wanted: readonly (readonly [string, number | undefined])[] = [
    ['sunrise', sky.sunriseMin],
    ['sunset', sky.sunsetMin],
    ['sunrise', next(sky.sunriseMin)],
    ['moonrise', sky.moonriseMin],
    ['moonset', sky.moonUp.map(([, to]) => to).find((m) => m > scale.fromMin && m < scale.toMin)],
    ['first light', sky.dawnMin],
    ['last light', sky.duskMin],
    ['first light', next(sky.dawnMin)],
  ];
  const taken: { readonly from: number; readonly to: number }[] = [];
  const out: SkyMark[] = [];
  for (const [name, minute] of wanted) {
    if (minute === undefined || minute < scale.fromMin || minute > scale.toMin) continue;
    const text = `${name} ${formatClock(minute)}`;
    const from = scale.x(minute);
    const to = from + text.length * LETTER_PX + GAP_PX;
    if (to > scale.widthPx || taken.some((t) => from < t.to && to > t.from)) continue;
    taken.push({ from, to });
    out.push({ name, minute, text });
  }
  return out.sort((a, b) => a.minute - b.minute);
};
