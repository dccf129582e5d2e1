import type { LengthUnits } from '../../kernel/units.ts';

/** Mounts and receivers in words: by inch and by millimetre. */
const WORDS: Readonly<Record<string, readonly [inch: string, mm: string]>> = {
  'pin-16': ['5/8 in pin', '16 mm pin'],
  'spigot-28': ['1-1/8 in spigot', '28 mm spigot'],
  'grip-head': ['grip head', 'grip head'],
  clip: ['clips', 'clips'],
  held: ['by hand', 'by hand'],
};

/** A mount in words, its size in the plan's units: 5/8 in is the 16 mm pin, 1-1/8 in the 28 mm spigot. */
export const mountWords = (id: string, units: LengthUnits): string =>
  WORDS[id]?.[units === 'imperial' ? 0 : 1] ?? id;

/** Several mounts in words, the same as `mountWords` for each. */
export const mountsWords = (ids: readonly string[], units: LengthUnits): string =>
  ids.map((id) => mountWords(id, units)).join(', ');
