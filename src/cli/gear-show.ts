import { sheetColumns, writeKindSheet } from '../gear/index.ts';
import type { LengthUnits } from '../kernel/units.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import { type Fact, kindFacts } from '../report/kind-facts.ts';
import { FAMILY_WORDS } from '../report/kind-words.ts';

const UNITS_WORDS: Readonly<Record<LengthUnits, string>> = { imperial: 'feet', metric: 'metres' };

/** Bases in the order they are first met, each with its number. */
const numbered = (facts: readonly Fact[]): ReadonlyMap<string, number> => {
  const numbers = new Map<string, number>();
  for (const f of facts) if (f.basis && !numbers.has(f.basis)) numbers.set(f.basis, numbers.size + 1);
  return numbers;
};

/**
 * A kind for people: a line for each figure with its unit and the number of where it is from, and those sources below.
 * What a kind does not say is left out. `where` says which book it is in.
 */
export const kindText = (kind: Kind, units: LengthUnits, where: string): string => {
  const all = kind.basis.all ?? 'not said';
  const facts = kindFacts(kind, units)
    .filter((f) => f.value !== '–' && f.name !== 'Figures from')
    .map((f) => ({ ...f, basis: f.basis || all }));
  const numbers = numbered(facts);
  const width = Math.max(...facts.map((f) => f.name.length)) + 2;
  const line = (f: Fact): string =>
    `  ${f.name.padEnd(width)}${f.value}  ${/assumed/.test(f.basis) ? 'assumed ' : ''}[${numbers.get(f.basis) ?? ''}]`;
  return [
    kind.name,
    `${kind.slug} · ${FAMILY_WORDS[kind.family] ?? kind.family} · ${where} · lengths in ${UNITS_WORDS[units]}`,
    ...(kind.also.length > 0 ? [`also: ${kind.also.join(', ')}`] : []),
    '',
    ...facts.map(line),
    '',
    'Where the figures are from',
    ...[...numbers].map(([basis, n]) => `  [${n}] ${basis}`),
    ...(kind.notes ? ['', `Note: ${kind.notes}`] : []),
    'The label on the real unit comes first.',
    '',
  ].join('\n');
};

/** The columns of a list of gear, family by family, for people. */
export const columnsText = (): string => {
  const lines = [
    'The first row of a list names its columns, in any order. A column “family” says what a row is (light when empty);',
    '“name” is needed in every row; “slug”, “also” and “notes” may be given.',
    '',
    'light',
    `  ${writeKindSheet([])
      .replace(/^\uFEFF/, '')
      .trim()
      .split(',')
      .join(', ')}`,
  ];
  for (const { family, columns } of sheetColumns()) {
    lines.push('', family);
    for (const c of columns)
      lines.push(`  ${c.heading.padEnd(16)} ${c.need ? 'needed  ' : '        '}${c.words}`);
  }
  return `${lines.join('\n')}\n`;
};
