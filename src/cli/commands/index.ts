import type { Command } from '../command.ts';
import { balance } from './balance.ts';
import { changes } from './changes.ts';
import { check } from './check.ts';
import { day } from './day.ts';
import { explain } from './explain.ts';
import { feeder } from './feeder.ts';
import { gear } from './gear.ts';
import { papers } from './papers.ts';
import { patch } from './patch.ts';
import { plug } from './plug.ts';
import { radio } from './radio.ts';
import { schema } from './schema.ts';
import { size } from './size.ts';
import { whatIfCommand } from './what-if.ts';

/** All subcommands, in the order of the overview. */
export const commands: ReadonlyMap<string, Command> = new Map(
  Object.entries({
    check,
    explain,
    day,
    plug,
    balance,
    'what-if': whatIfCommand,
    size,
    feeder,
    papers,
    changes,
    patch,
    radio,
    gear,
    schema,
  }),
);
