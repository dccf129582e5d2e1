import { wattsWord } from '../shape.ts';
import type { FileLight } from './gdtf-light.ts';
import type { FilePower } from './gdtf-power.ts';

/** What sort of unit it looks like: style and symbol of a kind, and the word for its name. */
export interface Style {
  readonly style: string;
  readonly symbol: string;
  readonly word: string;
}

/** The style that fits a file's light, parts and size. */
export const styleOf = (
  light: FileLight,
  parts: number,
  size: { readonly widthMm: number; readonly lengthMm: number } | undefined,
): Style => {
  const { source } = light;
  if (light.moves) return { style: 'moving-head', symbol: 'moving-head', word: 'moving head' };
  if (light.beamType === 'Fresnel')
    return {
      style: 'fresnel',
      symbol: `${source === 'fluorescent' ? 'tungsten' : source}-fresnel`,
      word: 'fresnel',
    };
  if (source === 'tungsten' || source === 'discharge')
    return light.beamType === 'Spot' && source === 'tungsten'
      ? { style: 'ellipsoidal', symbol: 'ellipsoidal', word: 'spot' }
      : { style: 'par', symbol: `${source}-par`, word: 'wash' };
  if (source === 'fluorescent') return { style: 'bank', symbol: 'fluorescent-bank', word: 'bank' };
  const long = size !== undefined && size.widthMm > 4 * size.lengthMm && size.widthMm >= 400;
  if (long) return { style: 'pixel-bar', symbol: 'pixel-bar', word: 'bar' };
  if (light.beamType === 'Rectangle' || (parts > 1 && size !== undefined && size.widthMm >= 300))
    return { style: 'panel', symbol: 'led-panel', word: 'panel' };
  if (light.beamType === 'Spot' || light.beamType === 'PC')
    return { style: 'spot', symbol: 'led-spot', word: 'spot' };
  return { style: 'par', symbol: 'led-par', word: 'wash' };
};

const SOURCE_WORDS = { led: 'LED', tungsten: 'Tungsten', discharge: 'Discharge', fluorescent: 'Fluorescent' };

/** A name that describes, like those of the book: `LED bar, 4 parts, 1000 mm, 135 W`. */
export const describe = (
  light: FileLight,
  style: Style,
  parts: number,
  widthMm: number | undefined,
  power: FilePower | undefined,
): string =>
  [
    `${SOURCE_WORDS[light.source]} ${style.word}`,
    parts > 1 ? `${parts} parts` : '',
    style.word === 'bar' && widthMm !== undefined ? `${widthMm} mm` : '',
    power ? wattsWord(Math.round(power.wattsW)) : 'watts not known',
  ]
    .filter(Boolean)
    .join(', ');
