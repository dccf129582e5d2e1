import packageJson from '../../package.json' with { type: 'json' };
import { type Command, EXIT, type Output, Refusal, UsageError } from './command.ts';
import { commands } from './commands/index.ts';

const START = 'lampwright';

const overview = (): string => {
  const lines = [...commands.values()].map((c) => `  ${c.usage}\n      ${c.summary}`);
  return `Lampwright ${packageJson.version}: plans the lighting of a film set and computes power, control and papers from it.

usage: ${START} COMMAND …

${lines.join('\n')}

  --help, --version; COMMAND --help tells more

Exit status: 0 done; 1 stop findings that nobody has acknowledged; 2 could not be done (a file that cannot be read as a plan, a wrong call).
What is computed here is no permission to energize anything: local electrical codes, the authority having jurisdiction and qualified people decide.
`;
};

const usageOf = (c: Command): string =>
  `usage: ${START} ${c.usage}\n\n${c.summary}\n${c.details ? `\n${c.details}\n` : ''}`;

const isArgumentError = (error: unknown): error is Error =>
  error instanceof UsageError ||
  (error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'));

/** Runs the command line with the arguments after the program's name. Gives the exit status. */
export const run = async (args: readonly string[], output: Output): Promise<number> => {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    (name === undefined ? output.err : output.out)(overview());
    return name === undefined ? EXIT.refused : EXIT.done;
  }
  if (name === '--version') {
    output.out(`${packageJson.version}\n`);
    return EXIT.done;
  }
  const command = commands.get(name);
  if (!command) {
    output.err(`There is no command “${name}”.\n\n${overview()}`);
    return EXIT.refused;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    output.out(usageOf(command));
    return EXIT.done;
  }
  try {
    return await command.run(rest, output);
  } catch (error) {
    if (error instanceof Refusal) output.err(`${error.message}\n`);
    else if (isArgumentError(error)) output.err(`${error.message}\n\n${usageOf(command)}`);
    else throw error;
    return EXIT.refused;
  }
};

/** Runs the command line on this process's own streams. */
export const main = async (args: readonly string[]): Promise<number> => {
  // A reader that has seen enough (`| head`) is no error.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(EXIT.done);
  });
  return run(args, {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
  });
};
