import type { ColorRole } from '../drawing/display-list.ts';

/** A scheme gives each role a colour as `#rrggbb`. */
export type ColorScheme = Readonly<Record<ColorRole, string>>;

/** Issued paper is white. All of it holds in grey: every colour has a second sign on the sheet. */
export const PAPER_COLORS: ColorScheme = {
  ink: '#111417',
  'ink-soft': '#4d555b',
  'ink-faint': '#8b939a',
  wall: '#1b2126',
  paper: '#ffffff',
  glass: '#2f7d9c',
  gear: '#111417',
  'gear-fill': '#ffffff',
  stand: '#6c757c',
  cable: '#8a4b08',
  feeder: '#7a3d00',
  data: '#00654b',
  beam: '#7f878d',
  aim: '#4d555b',
  dimension: '#3b4248',
  'set-piece': '#5a6268',
  accent: '#0b5c8f',
  stop: '#a3200d',
  warn: '#7a4a00',
  note: '#4d555b',
};
