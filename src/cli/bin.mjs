#!/usr/bin/env node
// The command line's entry: gets the program ready, then runs it. All it says itself goes to standard error.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { checkNode, ensureBuilt, ensureInstalled, runMain } from './bootstrap.mjs';

await runMain(async () => {
  checkNode();
  ensureInstalled(console.error);
  const folder = ensureBuilt('cli', console.error);
  const { main } = await import(pathToFileURL(join(folder, 'main.js')).href);
  return main(process.argv.slice(2));
});
