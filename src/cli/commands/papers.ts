import { mkdir, readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import packageJson from '../../../package.json' with { type: 'json' };
import type { PaperFonts } from '../../output/pdf.ts';
import { readSheetChoice, SHEET_PRESETS } from '../../papers/presets.ts';
import { SHEET_CHOICES } from '../../papers/sheet-kinds.ts';
import { type Plan, setupsOf } from '../../plan/plan.ts';
import { assess } from '../../report/assess.ts';
import { type Command, EXIT, planFrom, Refusal, UsageError } from '../command.ts';
import { PAPER_FORMATS, type PaperFile, type PaperFormat, papersCommand } from '../papers.ts';

const FONTS = '@expo-google-fonts/source-sans-3';

const readFonts = async (): Promise<PaperFonts> => {
  const { resolve: find } = createRequire(import.meta.url);
  const [regular, semibold] = await Promise.all([
    readFile(find(`${FONTS}/400Regular/SourceSans3_400Regular.ttf`)),
    readFile(find(`${FONTS}/600SemiBold/SourceSans3_600SemiBold.ttf`)),
  ]);
  return { regular, semibold };
};

/** A date that a calendar has. */
const checkDate = (date: string | undefined): string | undefined => {
  if (date === undefined) return undefined;
  const valid = /^\d{4}-\d{2}-\d{2}$/.test(date) && new Date(`${date}T12:00:00Z`).toJSON()?.startsWith(date);
  if (!valid) throw new UsageError(`“${date}” is not a date. Write it like 2026-03-09.`);
  return date;
};

const setupIdOf = (plan: Plan, asked: string | undefined): string | undefined => {
  if (asked === undefined) return undefined;
  const setup = setupsOf(plan).find((s) => s.id === asked || s.name === asked);
  if (!setup)
    throw new Refusal({
      what: `The plan has no setup “${asked}”.`,
      todo: `It has: ${setupsOf(plan)
        .map((s) => s.name)
        .join(', ')}.`,
    });
  return setup.id;
};

const sheetsOf = (asked: string | undefined): readonly string[] | undefined => {
  if (asked === undefined) return undefined;
  const { sheets, unknown } = readSheetChoice(asked);
  if (unknown.length > 0 || sheets.length === 0)
    throw new UsageError(
      `There is no sheet “${unknown[0] ?? asked}”. Sheets: ${SHEET_CHOICES.map((c) => c.id).join(', ')}. Presets: ${SHEET_PRESETS.map((p) => p.id).join(', ')}.`,
    );
  return sheets;
};

const formatsOf = (asked: string | undefined): readonly PaperFormat[] | undefined => {
  if (asked === undefined) return undefined;
  const words = asked
    .split(',')
    .map((w) => w.trim().toLowerCase())
    .filter(Boolean);
  const known = (w: string): w is PaperFormat => (PAPER_FORMATS as readonly string[]).includes(w);
  const unknown = words.find((w) => !known(w));
  if (unknown !== undefined || words.length === 0)
    throw new UsageError(`There is no format “${unknown ?? asked}”. Formats: ${PAPER_FORMATS.join(', ')}.`);
  return words.filter(known);
};

const makeFolder = async (folder: string): Promise<void> => {
  const there = await stat(folder).catch(() => undefined);
  if (there && !there.isDirectory())
    throw new Refusal({ what: `${folder} is a file, not a folder.`, todo: 'Name a folder for --out.' });
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new Refusal({
      what: `The folder ${folder} could not be made (${error instanceof Error ? error.message : String(error)}).`,
      todo: 'Name another folder for --out.',
    });
  }
};

/** Writes the files whole or not at all, and never over the plan they were made from. */
const writeFiles = async (folder: string, files: readonly PaperFile[], input: string): Promise<void> => {
  const plan = await realpath(input);
  for (const { name } of files) {
    const path = join(folder, name);
    const there = await stat(path).catch(() => undefined);
    if (there && (await realpath(path)) === plan)
      throw new Refusal({ what: `${path} is the plan itself.`, todo: 'Name another folder for --out.' });
    if (there?.isDirectory())
      throw new Refusal({ what: `${path} is a folder.`, todo: 'Move it, or name another folder for --out.' });
  }
  for (const { name, bytes } of files) {
    const path = join(folder, name);
    const beside = join(folder, `.${name}.${process.pid}`);
    try {
      await writeFile(beside, bytes);
      await rename(beside, path);
    } catch (error) {
      await rm(beside, { force: true });
      throw new Refusal({
        what: `${path} could not be written (${error instanceof Error ? error.message : String(error)}).`,
        todo: 'Check free space and permissions, or name another folder for --out.',
      });
    }
  }
};

export const papers: Command = {
  usage: 'papers PLAN --out DIR [--format LIST] [--date YYYY-MM-DD] [--setup NAME] [--sheets LIST]',
  summary: 'write the PDF set, the lists and the drawing as files',
  details:
    '  --out DIR       where to; made when it is not there, files of the same names are replaced\n' +
    `  --format LIST   formats with commas between, of ${PAPER_FORMATS.join(', ')}; else pdf,csv;\n` +
    '                  dxf is in inches where the plan is in feet and inches, else in millimetres\n' +
    '  --date DATE     date printed in the title block where the plan is not as it was issued; else none\n' +
    '  --setup NAME    the setup the plot shows; else the first\n' +
    `  --sheets LIST   sheets or presets with commas between, of ${SHEET_CHOICES.map((c) => c.id).join(', ')};\n` +
    `                  presets ${SHEET_PRESETS.map((p) => p.id).join(', ')}; in the order given; else the plan’s own, else all`,
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        format: { type: 'string' },
        date: { type: 'string' },
        setup: { type: 'string' },
        sheets: { type: 'string' },
      },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new UsageError('Name one plan file.');
    if (values.out === undefined) throw new UsageError('Say where the papers go: --out DIR.');
    const date = checkDate(values.date);
    const formats = formatsOf(values.format);
    const plan = await planFrom(path, output);
    const setupId = setupIdOf(plan, values.setup);
    const sheets = sheetsOf(values.sheets);
    const folder = resolve(values.out);
    await makeFolder(folder);
    const { files, notices } = await papersCommand(plan, assess(plan, { revision: 0 }), {
      fonts: await readFonts(),
      date,
      setupId,
      programVersion: packageJson.version,
      sheets,
      formats,
    });
    await writeFiles(folder, files, path);
    for (const notice of notices) output.err(`Note: ${notice}\n`);
    for (const { name } of files) output.out(`${join(values.out, name)}\n`);
    return EXIT.done;
  },
};
