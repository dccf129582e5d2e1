import { run } from '../../src/cli/main.ts';

/** Calls the command line as the program does, and gives what it printed and its exit status. */
export const lampwright = async (
  ...args: readonly string[]
): Promise<{ readonly status: number; readonly out: string; readonly err: string }> => {
  let out = '';
  let err = '';
  const status = await run(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { status, out, err };
};
