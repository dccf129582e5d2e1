import { connector } from '../plan/connectors.ts';
import { type FixtureKind, fixtureKindSchema } from '../plan/kinds/kinds.ts';
import { kindRecord } from './book.ts';
import { PROFILES } from './mains.ts';

const SOURCES = {
  led: { profile: PROFILES.led, symbol: 'led-panel', style: 'panel' },
  tungsten: { profile: PROFILES.tungsten, symbol: 'tungsten-fresnel', style: 'fresnel' },
  discharge: { profile: PROFILES['ballast-corrected'], symbol: 'discharge-par', style: 'par' },
  fluorescent: { profile: PROFILES.fluorescent, symbol: 'fluorescent-bank', style: 'bank' },
} as const;

/** Taken where a cell is empty, and marked so. */
const ASSUMED = {
  massKg: 3,
  lengthMm: 300,
  widthMm: 300,
  voltsMinV: 100,
  voltsMaxV: 240,
  connector: 'appliance-lock-20',
  mount: ['pin-16'],
} as const;
/** Basis of what a row says. */
export const OWN = 'entered by the user';
/** Basis of a field whose cell was empty. */
export const EMPTY = 'assumed: not in the list';

/** What a row says, cell by cell. */
export interface RowValues {
  readonly name: string;
  readonly source: keyof typeof SOURCES;
  readonly connectorId: string | undefined;
  readonly mount: readonly string[] | undefined;
  readonly modes: readonly unknown[] | undefined;
  readonly given: Readonly<Record<string, number | undefined>>;
  readonly text: (field: string) => string | undefined;
}

/** The kind of a row. What it does not say is assumed and marked so. */
export const kindOfRow = ({
  name,
  source,
  connectorId,
  mount,
  modes,
  given,
  text,
}: RowValues): FixtureKind => {
  const { profile, symbol, style } = SOURCES[source];
  const { range: _range, ...behaviour } = { range: undefined, ...profile };
  const id = connectorId ?? ASSUMED.connector;
  const basis: Record<string, string> = {
    all: OWN,
    'load.behaviour': 'assumed for its sort of light source',
  };
  const or = (field: string, assumed: number): number => {
    const value = given[field];
    if (value === undefined) basis[field] = EMPTY;
    return value ?? assumed;
  };
  if (connectorId === undefined) basis.connector = EMPTY;
  if (mount === undefined) basis.mount = EMPTY;
  if (given.wattsW === undefined) basis.wattsW = 'not known';
  const min = or('voltsMinV', Math.min(ASSUMED.voltsMinV, given.voltsMaxV ?? ASSUMED.voltsMinV));
  const max = or('voltsMaxV', Math.max(ASSUMED.voltsMaxV, given.voltsMinV ?? ASSUMED.voltsMaxV));
  const watts = given.wattsW ?? 0;
  const optional = (...fields: readonly string[]) =>
    Object.fromEntries(fields.flatMap((f) => (given[f] === undefined ? [] : [[f, given[f]]])));
  const notes = text('notes');
  const kind = fixtureKindSchema.parse({
    id: 'unhashed',
    type: 'kind',
    family: 'fixture',
    slug: text('slug') ?? slugOf(name),
    name,
    also: (text('also') ?? '')
      .split(';')
      .map((t) => t.trim())
      .filter(Boolean),
    source,
    style,
    symbol,
    massKg: or('massKg', ASSUMED.massKg),
    sizeMm: {
      lengthMm: or('lengthMm', ASSUMED.lengthMm),
      widthMm: or('widthMm', ASSUMED.widthMm),
      ...optional('heightMm'),
    },
    mount: { fits: mount ?? ASSUMED.mount },
    inlets: [inletOf(id)],
    load: {
      ...behaviour,
      wattsW: watts,
      standbyW: Math.min(behaviour.standbyW, watts),
      powerFactor: or('powerFactor', profile.powerFactor),
      voltsMinV: min,
      voltsMaxV: max,
      ...(given.wattsW === undefined ? { unknown: true } : {}),
    },
    modes: modes ?? [],
    ...optional('beamDeg', 'fieldDeg'),
    ...(notes === undefined ? {} : { notes }),
    basis,
    origin: { book: 'user', version: '1' },
  });
  return kindRecord(kind) as FixtureKind;
};

const inletOf = (id: string) => {
  const row = connector(id);
  return { id: 'in', connector: id, legs: row?.legs ?? 1, neutral: row?.neutral ?? true };
};

/** A light source by its word. */
export const sourceOf = (text: string): keyof typeof SOURCES | undefined => {
  const t = text.toLowerCase();
  return Object.hasOwn(SOURCES, t) ? (t as keyof typeof SOURCES) : undefined;
};

/** A slug made from a name. */
export const slugOf = (name: string): string => {
  const word = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/×/g, 'x')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `own-${word.slice(0, 60).replace(/-+$/, '') || 'unit'}`;
};
