// `npm run bench`: builds the bench and runs it. Names after -- choose parts: engines, papers, load, canvas.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { checkNode, ensureInstalled, ROOT, runMain } from '../../src/cli/bootstrap.mjs';

await runMain(async () => {
  checkNode();
  ensureInstalled(console.log);
  if (!globalThis.gc) {
    const args = ['--expose-gc', import.meta.filename, ...process.argv.slice(2)];
    return spawnSync(process.execPath, args, { stdio: 'inherit' }).status ?? 1;
  }
  process.env.NODE_ENV = 'production';
  const { build } = await import('vite');
  const outDir = join(ROOT, '.cache', 'bench');
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'error',
    build: { ssr: join(ROOT, 'tests', 'bench', 'bench.ts'), outDir, emptyOutDir: true, minify: false },
  });
  const { bench } = await import(pathToFileURL(join(outDir, 'bench.js')).href);
  await bench(process.argv.slice(2));
});
