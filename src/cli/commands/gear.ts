import { parseArgs } from 'node:util';
import { findKind, gearBook, gearBookPage, searchGear } from '../../gear/index.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import type { Practice } from '../../plan/records/index.ts';
import { type Command, EXIT, Refusal, UsageError } from '../command.ts';

const PRACTICES: readonly Practice[] = ['north-america', 'europe'];

const practicesOf = (asked: string | undefined): readonly Practice[] => {
  if (asked === undefined) return PRACTICES;
  const practice = PRACTICES.find((p) => p === asked);
  if (!practice) throw new UsageError(`“${asked}” is not a practice: use north-america or europe.`);
  return [practice];
};

/** One line per kind, with the practices that have it under this name. */
const list = (practices: readonly Practice[], query: string): string => {
  const rows = new Map<string, { readonly kind: Kind; readonly of: Practice[] }>();
  for (const practice of practices)
    for (const kind of searchGear(practice, query)) {
      const key = `${kind.slug} ${kind.name}`;
      const row = rows.get(key) ?? { kind, of: [] };
      row.of.push(practice);
      rows.set(key, row);
    }
  return [...rows.values()]
    .map(
      ({ kind, of }) => `${kind.slug.padEnd(34)}${kind.family.padEnd(11)}${kind.name} [${of.join(', ')}]\n`,
    )
    .join('');
};

const show = (practices: readonly Practice[], slug: string): string => {
  for (const practice of practices) {
    const kind = findKind(practice, slug);
    if (kind) return `${JSON.stringify(kind, undefined, 2)}\n`;
  }
  throw new Refusal({
    what: `The gear book has no kind “${slug}”.`,
    todo: 'Look for its name with: lampwright gear list WORDS.',
  });
};

export const gear: Command = {
  usage: 'gear (list [WORDS] | show SLUG | page) [--practice north-america|europe] [--json]',
  summary: 'look into the gear book',
  details:
    '  list [WORDS]   kinds of the book, or those that fit the words\n' +
    '  show SLUG      one kind with all its figures and where they are from\n' +
    '  page           the whole book as tables in Markdown\n' +
    '  --practice P   only the kinds of one practice\n' +
    '  --json         list as JSON',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { practice: { type: 'string' }, json: { type: 'boolean' } },
    });
    const practices = practicesOf(values.practice);
    const [what, ...words] = positionals;
    if (what === 'list' && values.json) {
      const kinds = practices.flatMap((p) =>
        words.length > 0 ? searchGear(p, words.join(' ')) : gearBook(p),
      );
      output.out(`${JSON.stringify(kinds, undefined, 2)}\n`);
    } else if (what === 'list') output.out(list(practices, words.join(' ')));
    else if (what === 'show' && words.length === 1) output.out(show(practices, words[0] ?? ''));
    else if (what === 'page' && words.length === 0) output.out(gearBookPage());
    else throw new UsageError('Say what to do: list, show SLUG or page.');
    return EXIT.done;
  },
};
