import { type Problem, problemText, type Result } from '../kernel/result.ts';
import type { ReadPlan } from '../plan/file.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlanFile } from '../storage/file-node.ts';

/** Exit statuses, as documented: a stop finding nobody has acknowledged is 1, what could not be done at all is 2. */
export const EXIT = { done: 0, stop: 1, refused: 2 } as const;

/** Where a command writes. */
export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** One subcommand of the command line. */
export interface Command {
  /** The command line after the program's name. */
  readonly usage: string;
  /** One line for the overview. */
  readonly summary: string;
  /** Options and what they do, for the command's own help. */
  readonly details?: string;
  /** Runs with the arguments after the command's name. Gives the exit status. */
  run(args: readonly string[], output: Output): Promise<number>;
}

/** A command that was called wrongly. Caught by `main` and shown with the usage. */
export class UsageError extends Error {}

/** Something that cannot be done, told in the words of a problem. Caught by `main`. */
export class Refusal extends Error {
  constructor(problem: Problem) {
    super(problemText(problem));
  }
}

/** The value, or a refusal in words. */
export const orRefuse = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Refusal(result.error);
  return result.value;
};

/** The plan in a file. What was set aside while reading is told on standard error. */
export const planFrom = async (path: string, output: Output): Promise<Plan> => {
  const read: ReadPlan = orRefuse(await readPlanFile(path));
  for (const notice of read.notices) output.err(`Note: ${notice}\n`);
  return read.plan;
};
