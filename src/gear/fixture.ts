import type { Practice } from '../plan/records/index.ts';
import { CLEARANCE_BASIS, clearanceOf } from './clearance.ts';
import { FIXTURE_SYMBOLS } from './data/fixture-symbols.ts';
import { CLASS_VALUES, type Feed, mains, type ProfileName } from './mains.ts';
import { COMMON, type Entry, fieldOfBeamDeg, wattsTyped, worded } from './shape.ts';

export type Mount = 'pin-16' | 'spigot-28' | 'clamp' | 'clip' | 'socket' | 'hung' | 'floor' | 'held';

/** `16`, `28`, `C` and so on, as mounts are written in the tables. */
const MOUNTS: Readonly<Record<string, Mount>> = {
  '16': 'pin-16',
  '28': 'spigot-28',
  C: 'clamp',
  clip: 'clip',
  socket: 'socket',
  hung: 'hung',
  floor: 'floor',
  held: 'held',
};

/** One row of a fixture table. `optics` is [wide beam °, wide cd] and, for a zoom, [narrow beam °, narrow cd]. */
export interface FixtureRow {
  readonly slug: string;
  readonly name: string;
  readonly wattsW: number;
  readonly massKg: number;
  /** Head across and along the throw, mm, without barn doors. */
  readonly head: readonly [widthMm: number, lengthMm: number];
  readonly mount: string;
  readonly optics?: readonly [beamDeg: number, cd: number, spotDeg?: number, spotCd?: number];
  readonly also?: string;
  readonly over?: Record<string, unknown>;
}

/** What the rows of one table have in common. */
export interface FixtureTable {
  readonly source: 'tungsten' | 'discharge' | 'led' | 'fluorescent';
  readonly style: string;
  readonly symbol: string;
  readonly profile: ProfileName;
  /** `ballast` for heads that draw nothing themselves. */
  readonly feed: Feed | 'ballast';
  readonly also: string;
  readonly common?: Record<string, unknown>;
  /** Practices the table is for; both when absent. */
  readonly only?: Practice;
  readonly rows: readonly FixtureRow[];
}

/** What of a discharge head depends on its ignitor and age. */
const HEAD_BASIS = {
  warmUpMin: 'planning value of the class, assumed',
  hotRestrikeMin: 'of an ignitor that starts a hot lamp, assumed; others wait ten minutes and more',
};

/** What a unit takes from packs. */
const PACK_BASIS =
  'volts and plates by the class; what a plate or inlet carries and the inrush are assumed: look at the unit';

/** A lamp without a supply between is a resistance. */
const LAMP_BASIS = {
  ...CLASS_VALUES,
  powerFactor: 'a resistance',
  thirdHarmonicPct: 'a resistance',
  standbyW: 'a lamp alone',
};

const optical = (row: FixtureRow) => {
  if (!row.optics) return {};
  const [beamDeg, candelaCd, spotDeg, spotCd] = row.optics;
  const field = beamDeg < 170 ? { fieldDeg: Math.min(180, fieldOfBeamDeg(beamDeg)) } : {};
  const spot =
    spotDeg !== undefined && spotCd !== undefined ? { spot: { beamDeg: spotDeg, candelaCd: spotCd } } : {};
  return { beamDeg, ...field, candelaCd, ...spot };
};

const mountsOf = (text: string): Mount[] =>
  text.split(' ').map((m) => {
    const mount = MOUNTS[m];
    if (!mount) throw new Error(`no mount “${m}”`);
    return mount;
  });

const entry = (table: FixtureTable, row: FixtureRow, practice: Practice): Entry => {
  const { over = {}, ...plain } = row;
  const { profile, feed, ...rest } = {
    profile: table.profile,
    feed: table.feed,
    ...table.common,
    ...over,
  } as {
    profile: ProfileName;
    feed: Feed | 'ballast';
  } & Record<string, unknown>;
  const power = feed === 'ballast' ? { needsBallast: true } : mains(practice, feed, profile, row.wattsW);
  const clearance = clearanceOf(table.source, table.style, row.wattsW);
  const { basis, ...own } = rest;
  const words = `${table.also},${row.also ?? ''}`.split(',').filter(Boolean);
  return {
    family: 'fixture',
    slug: row.slug,
    name: worded(row.name, practice),
    also: [...new Set([...words, ...wattsTyped(row.wattsW)])],
    source: table.source,
    style: table.style,
    symbol: FIXTURE_SYMBOLS.get(row.slug) ?? table.symbol,
    massKg: row.massKg,
    sizeMm: { widthMm: row.head[0], lengthMm: row.head[1] },
    mount: { fits: mountsOf(plain.mount) },
    ...power,
    ...optical(row),
    ...(clearance ? { clearanceMm: clearance } : {}),
    ...own,
    basis: {
      all: COMMON,
      ...(feed === 'ballast' ? HEAD_BASIS : profile === 'tungsten' ? LAMP_BASIS : CLASS_VALUES),
      ...(clearance ? { clearanceMm: CLEARANCE_BASIS } : {}),
      ...('packIn' in own ? { packIn: PACK_BASIS } : {}),
      ...(basis as Record<string, string> | undefined),
    },
  } as Entry;
};

/** All rows of some tables as kinds of one practice. */
export const fixtureEntries = (tables: readonly FixtureTable[], practice: Practice): Entry[] =>
  tables
    .filter((t) => t.only === undefined || t.only === practice)
    .flatMap((t) => t.rows.map((row) => entry(t, row, practice)));

type RowTail = [optics?: FixtureRow['optics'], also?: string, over?: Record<string, unknown>];

/** A row from its columns: slug, name, watts, kg, head [width, length], mount, optics, also, overrides. */
export const row = (
  slug: string,
  name: string,
  wattsW: number,
  massKg: number,
  head: readonly [number, number],
  mount: string,
  ...[optics, also, over]: RowTail
): FixtureRow => ({
  slug,
  name,
  wattsW,
  massKg,
  head,
  mount,
  ...(optics ? { optics } : {}),
  ...(also ? { also } : {}),
  ...(over ? { over } : {}),
});
