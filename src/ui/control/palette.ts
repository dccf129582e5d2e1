/**
 * Colours of universes after Okabe and Ito, told apart by people of every colour vision. Each comes with a hatch of its own as
 * a second sign; the number always stands beside it.
 */
export const UNIVERSE_COLORS = [
  { name: 'orange', hex: '#e69f00' },
  { name: 'sky blue', hex: '#56b4e9' },
  { name: 'green', hex: '#009e73' },
  { name: 'yellow', hex: '#f0e442' },
  { name: 'blue', hex: '#0072b2' },
  { name: 'vermilion', hex: '#d55e00' },
  { name: 'purple', hex: '#cc79a7' },
  { name: 'grey', hex: '#8c8c8c' },
] as const;

const entry = (index: number) => UNIVERSE_COLORS[index % UNIVERSE_COLORS.length] ?? UNIVERSE_COLORS[0];

export const universeColor = (index: number): string => entry(index).hex;
export const universeColorName = (index: number): string => entry(index).name;
export const universeHatch = (index: number): string =>
  `url(#universe-hatch-${index % UNIVERSE_COLORS.length})`;
