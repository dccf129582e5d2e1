import type { Kind } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';
import { gearBook } from './book.ts';
import type { Column } from './page-cells.ts';
import { COLUMNS } from './page-columns.ts';

const table = (kinds: readonly Kind[], columns: readonly Column[]): string[] => [
  `| ${columns.map(([head]) => head).join(' | ')} |`,
  `|${columns.map(() => ' --- ').join('|')}|`,
  ...kinds.map((k) => `| ${columns.map(([, cell]) => cell(k) ?? '–').join(' | ')} |`),
];

const TITLES: readonly (readonly [title: string, columns: string, families: readonly Kind['family'][]])[] = [
  ['Fixtures', 'fixture', ['fixture']],
  ['Ballasts', 'ballast', ['ballast']],
  ['Stands', 'stand', ['stand']],
  ['Frames, flags, cloths, bags', 'grip', ['grip']],
  ['Rigging, lifts, cranes', 'rigging', ['rigging']],
  ['Sources', 'source', ['source']],
  ['Distribution boxes', 'box', ['box']],
  ['Dimmers', 'dimmer', ['dimmer']],
  ['Cables', 'cable', ['cable']],
  ['Adapters, tees, tails', 'adapter', ['adapter']],
  ['Supplies, transformers, plates', 'converter', ['converter']],
  ['Packs', 'pack', ['pack']],
  ['Chargers', 'charger', ['charger']],
  ['Transmitters, receivers, repeaters', 'radio', ['transmitter', 'receiver', 'repeater']],
  ['Desks, nodes, data splitters', 'data', ['node', 'dataSplitter']],
  ['Data cables', 'dataCable', ['dataCable']],
  ['Monitors, picture links', 'video', ['video']],
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
