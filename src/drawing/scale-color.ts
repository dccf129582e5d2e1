import type { Fill } from './display-list.ts';

/**
 * Stops of a scale from dark blue over green to yellow with even steps of lightness, which people with any of the usual
 * colour deficiencies can read in order: the published “viridis” map (CC0), every quarter, from memory.
 */
const STOPS: readonly (readonly [number, number, number])[] = [
  [0x44, 0x01, 0x54],
  [0x3b, 0x52, 0x8b],
  [0x21, 0x91, 0x8c],
  [0x5e, 0xc9, 0x62],
  [0xfd, 0xe7, 0x25],
];

/** Colour of a value from 0 to 1 on the scale, as `#rrggbb`; values outside are taken to the nearest end. */
export const scaleColor = (value: number): string => {
  const at = Math.min(1, Math.max(0, value)) * (STOPS.length - 1);
  const i = Math.min(STOPS.length - 2, Math.floor(at));
  const a = STOPS[i] ?? [0, 0, 0];
  const b = STOPS[i + 1] ?? a;
  return `#${[0, 1, 2]
    .map((k) =>
      Math.round((a[k] ?? 0) + ((b[k] ?? 0) - (a[k] ?? 0)) * (at - i))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
};

/** The colour of a fill: its own, its place on the scale, or its role's. */
export const fillColor = (fill: Fill, roles: Readonly<Record<Fill['role'], string>>): string =>
  fill.color ?? (fill.scale === undefined ? roles[fill.role] : scaleColor(fill.scale));
