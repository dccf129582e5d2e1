import { open, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { gearBookPage, type MergeChoice, readBook } from '../../gear/index.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import type { Practice } from '../../plan/records/index.ts';
import { type Command, EXIT, type Output, orRefuse, Refusal, UsageError } from '../command.ts';
import { type GearResult, gearList, gearShow } from '../gear.ts';
import { gearImport } from '../gear-import.ts';
import { columnsText } from '../gear-show.ts';

const PRACTICES: readonly Practice[] = ['north-america', 'europe'];
const CHOICES: readonly MergeChoice[] = ['mine', 'theirs', 'both'];
/** Nothing this command reads may be larger. */
const MAX_FILE_BYTES = 64 * 1024 * 1024;

const practicesOf = (asked: string | undefined): readonly Practice[] => {
  if (asked === undefined) return PRACTICES;
  const practice = PRACTICES.find((p) => p === asked);
  if (!practice) throw new UsageError(`“${asked}” is not a practice: use north-america or europe.`);
  return [practice];
};

/** The bytes of a file, its size looked at first; undefined where there is none. */
const bytesOf = async (path: string): Promise<Uint8Array | undefined> => {
  try {
    const file = await open(path, 'r');
    try {
      const stat = await file.stat();
      if (!stat.isFile()) throw new Refusal({ what: `${path} is not a file.`, todo: 'Name a file.' });
      if (stat.size > MAX_FILE_BYTES)
        throw new Refusal({
          what: `${path} is too large (${Math.ceil(stat.size / 1e6)} MB; the limit is ${Math.round(MAX_FILE_BYTES / 1e6)} MB).`,
          todo: 'Ask for a copy without its 3D models; only its description is used here.',
        });
      return await file.readFile();
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (code === 'ENOENT') return undefined;
    throw new Refusal({
      what: `${path} could not be read (${code}).`,
      todo: 'Check its name and permissions.',
    });
  }
};

const needBytes = async (path: string): Promise<Uint8Array> => {
  const bytes = await bytesOf(path);
  if (!bytes)
    throw new Refusal({ what: `There is no file ${path}.`, todo: 'Check the name and the folder.' });
  return bytes;
};

const ownKinds = async (path: string | undefined, output: Output): Promise<readonly Kind[]> => {
  if (path === undefined) return [];
  const { book, notices } = orRefuse(readBook(new TextDecoder().decode(await needBytes(path)), path));
  for (const notice of notices) output.err(`Note: ${notice}\n`);
  return book.kinds;
};

/** Writes beside the file first, so that a book is never left half written. */
const writeBook = async (path: string, text: string): Promise<void> => {
  const beside = `${path}.${process.pid}.part`;
  try {
    await writeFile(beside, text, { flag: 'wx' });
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new Refusal({ what: `${path} could not be written (${code}).`, todo: 'Choose another place.' });
  }
};

const sameFile = async (a: string, b: string): Promise<boolean> => {
  try {
    return (await realpath(a)) === (await realpath(b));
  } catch {
    // One of them is not there yet, so they are not the same.
    return false;
  }
};

interface ImportFlags {
  readonly json?: boolean;
  readonly out?: string;
  readonly conflicts?: string;
  readonly watts?: string;
  readonly name?: string;
}

const runImport = async (
  path: string,
  flags: ImportFlags,
  practice: Practice | undefined,
): Promise<GearResult> => {
  const conflicts = CHOICES.find((c) => c === flags.conflicts);
  if (flags.conflicts !== undefined && !conflicts)
    throw new UsageError(`“${flags.conflicts}” is no choice: use mine, theirs or both.`);
  const wattsW = flags.watts === undefined ? undefined : Number(flags.watts);
  if (wattsW !== undefined && !(wattsW > 0 && wattsW <= 100_000))
    throw new UsageError(`“${flags.watts}” is no number of watts.`);
  const bytes = await needBytes(path);
  const { out } = flags;
  if (out !== undefined && (await sameFile(path, out)))
    throw new Refusal({ what: `${out} is the file that is read.`, todo: 'Name another file for --out.' });
  const before = out === undefined ? undefined : await bytesOf(out);
  const { bookText, ...result } = gearImport(
    bytes,
    basename(path),
    {
      json: flags.json ?? false,
      ...(out === undefined ? {} : { book: before ? new TextDecoder().decode(before) : '', bookName: out }),
      ...(conflicts ? { conflicts } : {}),
    },
    {
      ...(practice ? { practice } : {}),
      ...(flags.name === undefined ? {} : { name: flags.name }),
      ...(wattsW === undefined ? {} : { wattsW }),
    },
  );
  if (out !== undefined && bookText !== undefined) await writeBook(out, bookText);
  return result;
};

export const gear: Command = {
  usage:
    'gear (list [WORDS] | show SLUG | import FILE [--out BOOK] | columns | page) [--practice north-america|europe] [--book BOOK] [--json]',
  summary: 'look into the gear book, and bring in kinds from fixture files, lists and other books',
  details:
    '  list [WORDS]       kinds of the book, or those that fit the words\n' +
    '  show SLUG          one kind: every figure with its unit and where it is from\n' +
    '  import FILE        show what a fixture file (GDTF), a list (CSV) or a gear book would bring\n' +
    '  columns            the columns a list (CSV) may have, and which a row needs\n' +
    '  page               the whole book as tables in Markdown\n' +
    '  --practice P       only the kinds of one practice; at import, whose plugs are assumed\n' +
    '  --book BOOK        list and show the kinds of this book too\n' +
    '  --json             list, show and import as JSON\n' +
    '  --out BOOK         put what was imported into this book; it is made where it is not there\n' +
    '  --conflicts WHICH  where the book has another kind of that slug: keep mine, take theirs, or both\n' +
    '  --watts W          watts at the inlet, in place of what a fixture file says\n' +
    '  --name TEXT        a description in place of the one made from a fixture file’s figures',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        practice: { type: 'string' },
        json: { type: 'boolean' },
        book: { type: 'string' },
        out: { type: 'string' },
        conflicts: { type: 'string' },
        watts: { type: 'string' },
        name: { type: 'string' },
      },
    });
    const practices = practicesOf(values.practice);
    const [what, ...words] = positionals;
    const [word = ''] = words;
    const own = await ownKinds(values.book, output);
    const tell = ({ text, exitCode }: GearResult): number => {
      (exitCode === EXIT.done ? output.out : output.err)(text);
      return exitCode;
    };
    if (what === 'list')
      return tell(gearList({ practices, own }, words.join(' '), { json: values.json ?? false }));
    if (what === 'show' && words.length === 1)
      return tell(gearShow({ practices, own }, word, { json: values.json ?? false }));
    if (what === 'import' && words.length === 1)
      return tell(await runImport(word, values, practices.length === 1 ? practices[0] : undefined));
    if ((what !== 'page' && what !== 'columns') || words.length > 0)
      throw new UsageError('Say what to do: list, show SLUG, import FILE, columns or page.');
    if (what === 'columns') {
      output.out(columnsText());
      return EXIT.done;
    }
    output.out(gearBookPage());
    return EXIT.done;
  },
};
