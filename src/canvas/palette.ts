import type { ColorRole } from '../drawing/display-list.ts';

export type Scheme = 'bench' | 'truck';

/** Colours of the floor on the screen: one per role, and those of the view itself. */
export interface Palette {
  readonly roles: Readonly<Record<ColorRole, string>>;
  readonly ground: string;
  readonly gridLight: string;
  readonly gridHeavy: string;
  readonly accentSoft: string;
}

const bench: Palette = {
  ground: '#fdfcf8',
  gridLight: '#f1eee6',
  gridHeavy: '#e2ded3',
  accentSoft: 'rgba(11, 92, 148, 0.10)',
  roles: {
    ink: '#1d2329',
    'ink-soft': '#4f585f',
    'ink-faint': '#666d73',
    wall: '#2b3137',
    paper: '#fdfcf8',
    glass: '#2a7ea3',
    gear: '#1d2329',
    'gear-fill': '#fdfcf8',
    stand: '#7d8489',
    cable: '#8a5410',
    feeder: '#8a5410',
    data: '#1f7a4d',
    beam: '#84898c',
    aim: '#0b5c94',
    dimension: '#555d63',
    'set-piece': '#7d8489',
    accent: '#0b5c94',
    stop: '#b3261e',
    warn: '#7a5200',
    note: '#555d63',
  },
};

const truck: Palette = {
  ground: '#15130f',
  gridLight: '#1f1d18',
  gridHeavy: '#2b2821',
  accentSoft: 'rgba(236, 168, 62, 0.12)',
  roles: {
    ink: '#ece3d2',
    'ink-soft': '#b5aa97',
    'ink-faint': '#9c917f',
    wall: '#d8cdb8',
    paper: '#15130f',
    glass: '#6fa8ad',
    gear: '#ece3d2',
    'gear-fill': '#15130f',
    stand: '#8d8371',
    cable: '#d9a050',
    feeder: '#d9a050',
    data: '#74b487',
    beam: '#7d7464',
    aim: '#e9b04f',
    dimension: '#b5aa97',
    'set-piece': '#8d8371',
    accent: '#eca83e',
    stop: '#f28b76',
    warn: '#e2b34a',
    note: '#b5aa97',
  },
};

export const PALETTES: Readonly<Record<Scheme, Palette>> = { bench, truck };
