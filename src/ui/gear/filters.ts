import { searchKinds } from '../../gear/index.ts';
import { compareNatural } from '../../kernel/ids.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { loadOf, wattsUnknown } from '../../report/kind-words.ts';

export { FAMILY_WORDS, wattsUnknown } from '../../report/kind-words.ts';

export interface GearFilters {
  readonly query: string;
  readonly family: Kind['family'] | 'all';
  readonly mount: string;
  readonly maxWattsW: number | undefined;
  readonly maxMassKg: number | undefined;
  /** Volts it must take, line to neutral or line to line. */
  readonly supplyV: number | undefined;
  /** Has a mode of no more than so many slots. */
  readonly maxSlots: number | undefined;
  /** Runs on cells of its own, or on packs. */
  readonly battery: '' | 'cells' | 'packs';
  readonly sort: GearSort;
  readonly ownOnly: boolean;
}

/** The book's own order, or by one figure; kinds without it last. */
export type GearSort = 'book' | 'name' | 'watts' | 'mass';

export const noFilters: GearFilters = {
  query: '',
  family: 'all',
  mount: '',
  maxWattsW: undefined,
  maxMassKg: undefined,
  supplyV: undefined,
  maxSlots: undefined,
  battery: '',
  sort: 'book',
  ownOnly: false,
};

export const wattsOf = (k: Kind): number | undefined => (wattsUnknown(k) ? undefined : loadOf(k)?.wattsW);

/** Kinds that pass the filters; with words typed, the best match first. */
export const filterKinds = (kinds: readonly Kind[], f: GearFilters): readonly Kind[] => {
  const passing = kinds.filter((k) => {
    if (f.family !== 'all' && k.family !== f.family) return false;
    if (f.mount !== '' && !mountsOf(k).includes(f.mount)) return false;
    if (f.maxWattsW !== undefined && !((wattsOf(k) ?? Number.POSITIVE_INFINITY) <= f.maxWattsW)) return false;
    if (f.maxMassKg !== undefined && k.massKg > f.maxMassKg) return false;
    if (f.supplyV !== undefined && !takesVolts(k, f.supplyV)) return false;
    if (f.maxSlots !== undefined && !hasMode(k, f.maxSlots)) return false;
    if (f.battery === 'cells' && !hasCells(k)) return false;
    if (f.battery === 'packs' && !takesPacks(k)) return false;
    return !f.ownOnly || k.origin.book !== 'built-in';
  });
  const found = f.query.trim() === '' ? passing : searchKinds(passing, f.query, { limit: passing.length });
  return sorted(found, f.sort);
};

const sorted = (kinds: readonly Kind[], by: GearSort): readonly Kind[] => {
  if (by === 'book') return kinds;
  if (by === 'name') return [...kinds].sort((a, b) => compareNatural(a.name, b.name));
  const figure = (k: Kind): number => (by === 'watts' ? wattsOf(k) : k.massKg) ?? Number.POSITIVE_INFINITY;
  return [...kinds].sort((a, b) => {
    const [x, y] = [figure(a), figure(b)];
    return x === y ? compareNatural(a.name, b.name) : x - y;
  });
};

/** What a kind is put on, or what it offers to put gear on. */
const mountsOf = (k: Kind): readonly string[] =>
  k.family === 'fixture'
    ? k.mount.fits
    : k.family === 'stand'
      ? k.receives
      : k.family === 'grip'
        ? k.fits
        : k.family === 'rigging'
          ? [...k.fits, ...k.receives]
          : [];

const takesPacks = (k: Kind): boolean =>
  (k.family === 'fixture' && k.packIn !== undefined) || (k.family === 'converter' && k.plates.length > 0);

const hasCells = (k: Kind): boolean =>
  k.family === 'pack' ||
  (k.family === 'fixture' && k.ownCellsWh !== undefined) ||
  (k.family === 'source' && k.storedWh !== undefined) ||
  ('backupWh' in k && k.backupWh !== undefined);

const takesVolts = (k: Kind, volts: number): boolean => {
  const load = loadOf(k);
  if (load) return load.voltsMinV <= volts && volts <= load.voltsMaxV;
  return k.family === 'source' && k.system.split('/').some((v) => Number.parseInt(v, 10) === volts);
};

const hasMode = (k: Kind, maxSlots: number): boolean =>
  k.family === 'fixture' && k.modes.some((m) => m.slots > 0 && m.slots <= maxSlots);
