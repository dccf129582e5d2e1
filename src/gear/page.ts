import type { FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import type { Practice } from '../plan/records/index.ts';
import { gearBook } from './book.ts';

type Column = readonly [head: string, cell: (kind: Kind) => string | number | undefined];

const table = (kinds: readonly Kind[], columns: readonly Column[]): string[] => [
  `| ${columns.map(([head]) => head).join(' | ')} |`,
  `|${columns.map(() => ' --- ').join('|')}|`,
  ...kinds.map((k) => `| ${columns.map(([, cell]) => cell(k) ?? '–').join(' | ')} |`),
];

const size = (k: Kind): string => `${k.sizeMm.widthMm} × ${k.sizeMm.lengthMm}`;
const connectorsOf = (k: Kind): string | undefined =>
  k.family === 'fixture' || k.family === 'ballast' || k.family === 'box'
    ? k.inlets.map((i) => i.connector).join(', ') || undefined
    : undefined;
const basisOf = (k: Kind): string =>
  Object.entries(k.basis)
    .map(([field, from]) => (field === 'all' ? from : `${field}: ${from}`))
    .join('; ');

const grouped = (items: readonly string[]): string => {
  const counts = new Map<string, number>();
  for (const i of items) counts.set(i, (counts.get(i) ?? 0) + 1);
  return [...counts].map(([item, n]) => (n > 1 ? `${n} × ${item}` : item)).join(', ');
};

const waysOf = (k: Kind): string | undefined =>
  k.family === 'box' || k.family === 'source'
    ? grouped(
        k.ways.map((w) => `${w.breakerA} A ${w.poles}-pole ${w.curve}${w.rcdMa ? ` ${w.rcdMa} mA` : ''}`),
      ) || undefined
    : undefined;
const outletsOf = (k: Kind): string | undefined =>
  k.family === 'box' || k.family === 'source'
    ? grouped(k.outlets.map((o) => o.connector)) || undefined
    : undefined;

const loadOf = (k: Kind): LoadSpec | undefined =>
  k.family === 'fixture' || k.family === 'ballast' ? k.load : undefined;
const isFixture = (k: Kind): k is FixtureKind => k.family === 'fixture';
const optics = (k: Kind): string | undefined => {
  if (!isFixture(k) || k.beamDeg === undefined) return undefined;
  return k.spot ? `${k.spot.beamDeg}–${k.beamDeg}°` : `${k.beamDeg}°`;
};
const candela = (k: Kind): string | number | undefined => {
  if (!isFixture(k)) return undefined;
  return k.spot ? `${k.spot.candelaCd} / ${k.candelaCd}` : k.candelaCd;
};

const NAME: Column = ['Kind', (k) => k.name];
const BASIS: Column = ['From', basisOf];
const MASS: Column = ['kg', (k) => k.massKg];
const SIZE: Column = ['Size mm', size];
const WATTS: Column = ['Input W', (k) => loadOf(k)?.wattsW];
const FACTOR: Column = ['Power factor', (k) => loadOf(k)?.powerFactor];
const INLET: Column = ['Inlet', connectorsOf];

const COLUMNS: Readonly<Record<string, readonly Column[]>> = {
  fixture: [NAME, WATTS, FACTOR, MASS, SIZE, ['Beam', optics], ['Candela', candela], INLET, BASIS],
  ballast: [NAME, WATTS, FACTOR, MASS, SIZE, INLET, BASIS],
  stand: [
    NAME,
    ['Load kg', (k) => (k.family === 'stand' ? k.ratedLoadKg : undefined)],
    [
      'Height m',
      (k) => (k.family === 'stand' ? `${k.heightMinMm / 1000}–${k.heightMaxMm / 1000}` : undefined),
    ],
    ['Leg circle m', (k) => (k.family === 'stand' ? k.legCircleMm / 1000 : undefined)],
    MASS,
    ['Top', (k) => (k.family === 'stand' ? k.receives.join(', ') : undefined)],
    BASIS,
  ],
  grip: [
    NAME,
    SIZE,
    ['Area m²', (k) => (k.family === 'grip' ? k.areaM2 : undefined)],
    ['Share of wind', (k) => (k.family === 'grip' ? k.windShare : undefined)],
    ['Stands', (k) => (k.family === 'grip' && k.stands > 0 ? k.stands : undefined)],
    ['Lines', (k) => (k.family === 'grip' && k.guys > 0 ? k.guys : undefined)],
    ['Goes on', (k) => (k.family === 'grip' ? k.fits.join(', ') : undefined)],
    MASS,
    BASIS,
  ],
  rigging: [
    NAME,
    ['Load kg', (k) => (k.family === 'rigging' ? k.ratedLoadKg : undefined)],
    ['Reach m', (k) => (k.family === 'rigging' && k.reachMm ? k.reachMm / 1000 : undefined)],
    [
      'Height m',
      (k) =>
        k.family === 'rigging' && k.heightMinMm !== undefined && k.heightMaxMm !== undefined
          ? `${k.heightMinMm / 1000}–${k.heightMaxMm / 1000}`
          : undefined,
    ],
    ['People', (k) => (k.family === 'rigging' ? k.people : undefined)],
    ['Wind m/s', (k) => (k.family === 'rigging' ? k.windLimitMps : undefined)],
    ['Worked by', (k) => (k.family === 'rigging' ? k.operator : undefined)],
    ['Goes on', (k) => (k.family === 'rigging' ? k.fits.join(', ') : undefined)],
    ['Offers', (k) => (k.family === 'rigging' ? k.receives.join(', ') : undefined)],
    MASS,
    BASIS,
  ],
  source: [
    NAME,
    ['kVA', (k) => (k.family === 'source' ? k.ratedKva : undefined)],
    ['Main A', (k) => (k.family === 'source' ? k.mainBreakerA : undefined)],
    ['Ways', waysOf],
    ['Outlets', outletsOf],
    BASIS,
  ],
  box: [
    NAME,
    INLET,
    ['Main A', (k) => (k.family === 'box' ? k.mainBreakerA : undefined)],
    ['Ways', waysOf],
    ['Outlets', outletsOf],
    MASS,
    BASIS,
  ],
  cable: [
    NAME,
    ['Conductor', (k) => (k.family === 'cable' ? k.conductor : undefined)],
    ['Ampacity A', (k) => (k.family === 'cable' ? k.ampacityA : undefined)],
    ['Plug', (k) => (k.family === 'cable' ? k.plug : undefined)],
    ['Socket', (k) => (k.family === 'cable' ? k.socket : undefined)],
    [
      'Lengths m',
      (k) =>
        k.family === 'cable'
          ? k.stockLengthsMm.map((l) => Number((l / 1000).toFixed(1))).join(', ')
          : undefined,
    ],
    BASIS,
  ],
  scenery: [NAME, SIZE, MASS, BASIS],
};

const TITLES: readonly (readonly [title: string, columns: string, families: readonly Kind['family'][]])[] = [
  ['Fixtures', 'fixture', ['fixture']],
  ['Ballasts', 'ballast', ['ballast']],
  ['Stands', 'stand', ['stand']],
  ['Frames, flags, cloths, bags', 'grip', ['grip']],
  ['Rigging, lifts, cranes', 'rigging', ['rigging']],
  ['Sources', 'source', ['source']],
  ['Distribution boxes', 'box', ['box']],
  ['Cables', 'cable', ['cable']],
  ['Cameras, furniture, vehicles', 'scenery', ['camera', 'furniture', 'vehicle']],
];

const NAMES: Readonly<Record<Practice, string>> = { 'north-america': 'North America', europe: 'Europe' };

/** The gear book as a page of tables for people, in Markdown. Made from the same data the program uses. */
export const gearBookPage = (): string => {
  const lines = [
    '# The gear book',
    '',
    'Generic gear by description. Watts are drawn at the inlet, losses included. Where no source is named a figure is common',
    'practice of the trade and may differ from the unit in front of you: its own label comes first. Beam and candela of a zoom',
    'read narrow to wide, and narrow / wide.',
  ];
  for (const practice of ['north-america', 'europe'] as const) {
    const kinds = gearBook(practice);
    lines.push('', `## ${NAMES[practice]}: ${kinds.length} kinds`);
    for (const [title, columns, families] of TITLES) {
      const rows = kinds.filter((k) => families.includes(k.family));
      lines.push('', `### ${title} (${rows.length})`, '', ...table(rows, COLUMNS[columns] ?? []));
    }
  }
  return `${lines.join('\n')}\n`;
};
