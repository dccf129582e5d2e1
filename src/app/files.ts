import { fail, ok, type Result } from '../kernel/result.ts';
import { MAX_PLAN_BYTES } from '../plan/file.ts';

/** The part of the File System Access API that is used, where the browser has it. */
interface FilePickers {
  showOpenFilePicker?: (o: object) => Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?: (o: object) => Promise<FileSystemFileHandle>;
}

const pickers = (): FilePickers => window as unknown as FilePickers;
const PLAN_TYPES = [{ description: 'Lampwright plan', accept: { 'application/json': ['.json'] } }];

const cancelled = (cause: unknown): boolean => cause instanceof DOMException && cause.name === 'AbortError';

/** Lets the person choose a file and gives its text; undefined when they change their mind. */
export const chooseText = async (): Promise<
  Result<{ readonly name: string; readonly text: string } | undefined>
> => {
  try {
    const file = await chooseFile();
    if (!file) return ok(undefined);
    if (file.size > MAX_PLAN_BYTES) {
      return fail({
        what: `${file.name} is too large to be a plan (${Math.round(file.size / 1e6)} MB).`,
        todo: 'Choose a plan file saved by this program.',
      });
    }
    return ok({ name: file.name, text: await file.text() });
  } catch (cause) {
    if (cancelled(cause)) return ok(undefined);
    return fail({
      what: `The file could not be read: ${cause instanceof Error ? cause.message : 'unknown error'}.`,
    });
  }
};

const chooseFile = async (): Promise<File | undefined> => {
  const open = pickers().showOpenFilePicker;
  if (open) return (await open.call(window, { types: PLAN_TYPES }))[0]?.getFile();
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
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
  if (save && mime === 'application/json') {
    try {
      const handle = await save.call(window, { suggestedName: name, types: PLAN_TYPES });
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
