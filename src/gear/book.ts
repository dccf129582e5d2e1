import { contentHash } from '../kernel/canonical.ts';
import { type Kind, kindSchema } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';
import { adapterKinds } from './data/adapters.ts';
import { boxKinds } from './data/boxes.ts';
import { cableKinds } from './data/cables.ts';
import { chargerKinds } from './data/chargers.ts';
import { converterKinds } from './data/converters.ts';
import { dataCableKinds } from './data/data-cables.ts';
import { dataGearKinds } from './data/data-gear.ts';
import { dimmerKinds } from './data/dimmers.ts';
import { ballastKinds, dischargeFixtures } from './data/fixtures-discharge.ts';
import { ledFixtures } from './data/fixtures-led.ts';
import { otherFixtures } from './data/fixtures-other.ts';
import { tungstenFixtures } from './data/fixtures-tungsten.ts';
import { gripKinds } from './data/grip.ts';
import { packKinds } from './data/packs.ts';
import { radioKinds } from './data/radio.ts';
import { riggingKinds } from './data/rigging.ts';
import { sceneryKinds } from './data/scenery.ts';
import { sourceKinds } from './data/sources.ts';
import { standKinds } from './data/stands.ts';
import { videoKinds } from './data/video.ts';
import type { Entry, Family } from './shape.ts';

/** Version of the built-in book, stamped on its kinds. */
export const BOOK_VERSION = '1';

const families: readonly Family[] = [
  tungstenFixtures,
  dischargeFixtures,
  ledFixtures,
  otherFixtures,
  ballastKinds,
  standKinds,
  gripKinds,
  riggingKinds,
  sourceKinds,
  boxKinds,
  dimmerKinds,
  cableKinds,
  adapterKinds,
  converterKinds,
  packKinds,
  chargerKinds,
  radioKinds,
  dataGearKinds,
  videoKinds,
  dataCableKinds,
  sceneryKinds,
];

/** SHA-256 (hexadecimal) of what a kind says, whoever wrote it: all but its id and origin. */
export const kindHash = (kind: Kind): string => {
  const { id: _id, origin: _origin, ...content } = kind;
  return contentHash(content);
};

/** The kind as a plan keeps it: with the id `<slug>@<first 8 of its hash>`. */
export const kindRecord = (kind: Kind): Kind => ({
  ...kind,
  id: `${kind.slug}@${kindHash(kind).slice(0, 8)}`,
});

const make = (entry: Entry): Kind =>
  kindRecord(
    kindSchema.parse({
      ...entry,
      id: 'unhashed',
      type: 'kind',
      origin: { book: 'built-in', version: BOOK_VERSION },
    }),
  );

interface Book {
  readonly kinds: readonly Kind[];
  readonly bySlug: ReadonlyMap<string, Kind>;
}

const books = new Map<Practice, Book>();

const bookOf = (practice: Practice): Book => {
  let book = books.get(practice);
  if (!book) {
    const kinds = families.flatMap((family) => family(practice).map(make));
    book = { kinds, bySlug: new Map(kinds.map((k) => [k.slug, k])) };
    books.set(practice, book);
  }
  return book;
};

/** All built-in kinds of a practice, by family, ready to be put into a plan. */
export const gearBook = (practice: Practice): readonly Kind[] => bookOf(practice).kinds;

/** The built-in kind of a practice with this slug. */
export const findKind = (practice: Practice, slug: string): Kind | undefined =>
  bookOf(practice).bySlug.get(slug);

/** The built-in kind with this slug in one family. Throws when the book has none: for code that names its own kinds. */
export const needKind = <F extends Kind['family']>(
  practice: Practice,
  slug: string,
  family: F,
): Extract<Kind, { family: F }> => {
  const kind = findKind(practice, slug);
  if (kind?.family !== family) throw new Error(`the ${practice} gear book has no ${family} “${slug}”`);
  return kind as Extract<Kind, { family: F }>;
};

/** Whether a kind is word for word one of the built-in book's. Its own claim of origin is not enough. */
export const isBuiltIn = (kind: Kind): boolean => {
  if (kind.origin.book !== 'built-in') return false;
  const hash = kindHash(kind);
  return (['north-america', 'europe'] as const).some((practice) => {
    const own = findKind(practice, kind.slug);
    return own !== undefined && kindHash(own) === hash;
  });
};
