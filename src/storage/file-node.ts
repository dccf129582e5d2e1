import { open } from 'node:fs/promises';
import { fail, type Result } from '../kernel/result.ts';
import { MAX_PLAN_FILE_BYTES, readPlanBytes } from '../plan/container.ts';
import type { ReadPlan } from '../plan/file.ts';

const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;

const openProblem = (path: string, error: unknown): ReturnType<typeof fail> => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT')
    return fail({ what: `There is no file ${path}.`, todo: 'Check the name and the folder.' });
  if (code === 'EISDIR') return fail({ what: `${path} is a folder.`, todo: 'Name the plan file inside it.' });
  if (code === 'EACCES' || code === 'EPERM')
    return fail({
      what: `${path} may not be read by this user.`,
      todo: 'Change its permissions, or copy it.',
    });
  return fail({
    what: `${path} could not be read (${code || String(error)}).`,
    todo: 'Copy the file elsewhere and try again.',
  });
};

/** Reads a plan file, plain or with parts. Its size is looked at before anything of it is read into memory. */
export const readPlanFile = async (path: string): Promise<Result<ReadPlan>> => {
  let bytes: Uint8Array;
  try {
    const file = await open(path, 'r');
    try {
      const stat = await file.stat();
      if (stat.isDirectory())
        return fail({ what: `${path} is a folder.`, todo: 'Name the plan file inside it.' });
      // A pipe or a device has no size to look at, and may have no end.
      if (!stat.isFile())
        return fail({ what: `${path} is not a file.`, todo: 'Save the plan to a file first.' });
      if (stat.size > MAX_PLAN_FILE_BYTES)
        return fail({
          what: `${path} is too large to be a plan (${megabytes(stat.size)}; the limit is ${megabytes(MAX_PLAN_FILE_BYTES)}).`,
          todo: 'Choose a plan file saved by this program.',
        });
      bytes = await file.readFile();
    } finally {
      await file.close();
    }
  } catch (error) {
    return openProblem(path, error) as Result<ReadPlan>;
  }
  return readPlanBytes(bytes, path);
};
