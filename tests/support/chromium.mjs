// Finds a Chromium for the browser tests, or gets one.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { ROOT } from '../../src/cli/bootstrap.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const isProgram = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const onThisMachine = () => {
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)];
  const ending = process.platform === 'win32' ? '.exe' : '';
  for (const name of NAMES)
    for (const folder of folders)
      if (folder && isProgram(join(folder, name + ending))) return join(folder, name + ending);
  const places =
    process.platform === 'darwin'
      ? [
          '/Applications/Chromium.app/Contents/MacOS/Chromium',
          '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
        ]
      : process.platform === 'win32'
        ? [process.env.ProgramFiles, process.env['ProgramFiles(x86)'], process.env.LOCALAPPDATA]
            .filter(Boolean)
            .map((p) => join(p, 'Google', 'Chrome', 'Application', 'chrome.exe'))
        : [];
  return places.find(existsSync);
};

const run = (command, args, env = {}) =>
  spawnSync(command, args, {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  }).status === 0;

const fromDebian = (log) => {
  if (process.env.CI !== 'true' || process.getuid?.() !== 0) return undefined;
  if (spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status !== 0) return undefined;
  log('Installing the Chromium package of this system for the browser tests.');
  const quietly = { DEBIAN_FRONTEND: 'noninteractive' };
  run('apt-get', ['update', '-qq'], quietly);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quietly);
  return onThisMachine();
};

/** Where the test library keeps its own browser, asked in a fresh process so that nothing is loaded twice. */
const libraryPath = () => {
  const code = "import('playwright').then((p) => console.log(p.chromium.executablePath()))";
  const r = spawnSync(process.execPath, ['-e', code], { cwd: ROOT, encoding: 'utf8' });
  const path = r.stdout?.trim();
  return path && existsSync(path) ? path : undefined;
};

const fromLibrary = (log) => {
  const there = libraryPath();
  if (there) return there;
  log('Downloading a Chromium for the browser tests.');
  const cli = join(ROOT, 'node_modules', 'playwright', 'cli.js');
  return run(process.execPath, [cli, 'install', 'chromium']) ? libraryPath() : undefined;
};

/** The path of a Chromium, or what to do where there is none. */
export const findChromium = (log = console.log) => {
  const named = process.env.LAMPWRIGHT_CHROMIUM ?? process.env.CHROME_PATH;
  if (named)
    return isProgram(named)
      ? { path: named }
      : {
          todo: `LAMPWRIGHT_CHROMIUM or CHROME_PATH names ${named}, which is no program. Correct it or unset it.`,
        };
  const path = onThisMachine() ?? fromDebian(log) ?? fromLibrary(log);
  return path
    ? { path }
    : {
        todo:
          'The browser tests need a Chromium and none was found or could be downloaded.\n' +
          'Install one (on Debian: apt-get install chromium), or set LAMPWRIGHT_CHROMIUM to its path, and run npm test again.',
      };
};
