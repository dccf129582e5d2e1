import type { Command } from '../command.ts';
import { check } from './check.ts';
import { explain } from './explain.ts';
import { gear } from './gear.ts';
import { papers } from './papers.ts';
import { patch } from './patch.ts';
import { schema } from './schema.ts';

/** All subcommands, in the order of the overview. */
export const commands: ReadonlyMap<string, Command> = new Map(
  Object.entries({ check, explain, papers, patch, gear, schema }),
);
