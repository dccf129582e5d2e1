import { fail, ok, type Result } from '../kernel/result.ts';
import { MAX_PLAN_FILE_BYTES, readPlanBytes } from '../plan/container.ts';
import type { ReadPlan } from '../plan/file.ts';

/** The part of the File System Access API that is used, where the browser has it. */
interface FilePickers {
  showOpenFilePicker?: (o: object) => Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?: (o: object) => Promise<FileSystemFileHandle>;
}

const pickers = (): FilePickers => window as unknown as FilePickers;
const ACCEPT = { 'application/json': ['.json'], 'application/zip': ['.zip'] };
const PLAN_TYPES = [{ description: 'Lampwright plan', accept: ACCEPT }];

const cancelled = (cause: unknown): boolean => cause instanceof DOMException && cause.name === 'AbortError';

/** Lets the person choose a plan file and reads it; undefined when they change their mind. */
export const choosePlan = async (): Promise<Result<ReadPlan | undefined>> => {
  try {
    const file = await chooseFile();
    return file ? await readPlanOf(file) : ok(undefined);
  } catch (cause) {
    if (cancelled(cause)) return ok(undefined);
    return unreadable(cause);
  }
};

const unreadable = (cause: unknown): Result<never> =>
  fail({ what: `The file could not be read: ${cause instanceof Error ? cause.message : 'unknown error'}.` });

/** Reads a plan file that was chosen or dropped. Its size is looked at first. */
export const readPlanOf = async (file: File): Promise<Result<ReadPlan>> => {
  if (file.size > MAX_PLAN_FILE_BYTES) {
    return fail({
      what: `${file.name} is too large to be a plan (${Math.round(file.size / 1e6)} MB).`,
      todo: 'Choose a plan file saved by this program.',
    });
  }
  try {
    return readPlanBytes(new Uint8Array(await file.arrayBuffer()), file.name);
  } catch (cause) {
    return unreadable(cause);
  }
};

const chooseFile = async (): Promise<File | undefined> => {
  const open = pickers().showOpenFilePicker;
  if (open) return (await open.call(window, { types: PLAN_TYPES }))[0]?.getFile();
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,.zip,application/json,application/zip';
    input.addEventListener('change', () => resolve(input.files?.[0]));
    input.addEventListener('cancel', () => resolve(undefined));
    input.click();
  });
};

/** Writes bytes to a file the person chooses, or downloads them where the browser cannot. Gives the name. */
export const deliverFile = async (
  name: string,
  bytes: Uint8Array | string,
  mime: string,
): Promise<Result<string>> => {
  const blob = new Blob([bytes as BlobPart], { type: mime });
  const save = pickers().showSaveFilePicker;
  const extensions = mime in ACCEPT ? ACCEPT[mime as keyof typeof ACCEPT] : undefined;
  if (save && extensions) {
    try {
      const types = [{ description: 'Lampwright plan', accept: { [mime]: extensions } }];
      const handle = await save.call(window, { suggestedName: name, types });
      const out = await handle.createWritable();
      await out.write(blob);
      await out.close();
      return ok(handle.name);
    } catch (cause) {
      if (cancelled(cause)) return ok('');
      return fail({
        what: `The file could not be written: ${cause instanceof Error ? cause.message : 'unknown error'}.`,
        todo: 'Choose another folder, or try again.',
      });
    }
  }
  const url = URL.createObjectURL(blob);
  const a = document.createElement('a');
  a.href = url;
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return ok(name);
};

/** A file name from a title: letters, digits and hyphens only. */
export const fileStem = (title: string): string =>
  title
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .toLowerCase() || 'plan';
