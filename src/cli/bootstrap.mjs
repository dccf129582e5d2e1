// Gets a bare checkout ready: the right Node, installed packages, fresh builds. Uses nothing that needs installing.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const at = (...parts) => join(ROOT, ...parts);

/** A reason to stop that is told to the person as it is, without a stack trace. */
export class Stop extends Error {}

/** Runs `main`, prints a Stop as plain text and ends with its status. */
export const runMain = async (main) => {
  try {
    process.exitCode = (await main()) ?? 0;
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
};

/** Throws a Stop unless this Node is one of package.json's `engines`. */
export const checkNode = (version = process.versions.node) => {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (!fits)
    throw new Stop(
      `Lampwright needs Node 20.19 or newer of line 20, or 22.12 or newer. This is ${version}.\n` +
        'Install a current Node and run the command again.',
    );
};

/** Whether node_modules holds what the lock file names (optional packages may be missing: they depend on the machine). */
const installedMatchesLock = (lock) => {
  const hidden = at('node_modules', '.package-lock.json');
  if (!existsSync(hidden)) return false;
  const wanted = JSON.parse(lock).packages;
  const present = JSON.parse(readFileSync(hidden, 'utf8')).packages;
  return Object.entries(wanted).every(([path, p]) => {
    if (path === '' || p.optional || p.devOptional) return true;
    return present[path]?.version === p.version && existsSync(at(path, 'package.json'));
  });
};

/** Installs from the lock file where node_modules is missing or does not match it. */
export const ensureInstalled = (log) => {
  const lock = readFileSync(at('package-lock.json'), 'utf8');
  const mark = at('node_modules', '.lampwright-lock');
  const key = createHash('sha256').update(`${process.platform} ${process.arch}\n${lock}`).digest('hex');
  if (existsSync(mark) && readFileSync(mark, 'utf8') === key) return;
  if (!installedMatchesLock(lock)) {
    log('Installing packages from package-lock.json. This takes a minute the first time.');
    withLock(() => {
      if (installedMatchesLock(lock)) return;
      const status = npm(['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
      if (status !== 0)
        throw new Stop(
          'The packages could not be installed. Check the network and free disk space, then run the command again.',
        );
    });
  }
  writeFileSync(mark, key);
};

// npm's chatter goes to standard error, so that a command's own output stays clean.
const npm = (args) => {
  const script = process.env.npm_execpath;
  const options = { cwd: ROOT, stdio: ['ignore', 2, 2] };
  const r = script?.endsWith('.js')
    ? spawnSync(process.execPath, [script, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  return r.status ?? 1;
};

/** What each build is made from. */
const TARGETS = {
  app: ['src', 'symbols', 'shared', 'demo-sets', 'vite.config.ts', 'package-lock.json', 'package.json'],
  cli: ['src', 'symbols', 'shared', 'vite.config.ts', 'package-lock.json', 'package.json'],
};

const fingerprint = (target) => {
  const hash = createHash('sha256');
  const visit = (path) => {
    const s = statSync(at(path), { throwIfNoEntry: false });
    if (!s) return;
    if (s.isDirectory()) for (const name of readdirSync(at(path)).sort()) visit(`${path}/${name}`);
    else hash.update(`${path} ${s.size} ${s.mtimeMs}\n`);
  };
  for (const path of TARGETS[target]) visit(path);
  return hash.digest('hex');
};

const isFresh = (target) => {
  const stamp = at('dist', target, '.stamp');
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint(target);
};

/** Builds `app` or `cli` into dist/ where something it is made from has changed. Gives the folder. */
export const ensureBuilt = (target, log) => {
  const out = at('dist', target);
  if (isFresh(target)) return out;
  withLock(() => {
    if (isFresh(target)) return;
    log(target === 'app' ? 'Building the editor.' : 'Building the command line.');
    const key = fingerprint(target);
    const fresh = at('dist', `.${target}-new`);
    const vite = at('node_modules', 'vite', 'bin', 'vite.js');
    const args = [vite, 'build', '--mode', target, '--logLevel', 'warn', '--outDir', fresh, '--emptyOutDir'];
    // The same build whoever asks for it: a test runner names another environment.
    const env = { ...process.env, NODE_ENV: 'production' };
    const r = spawnSync(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 2, 2], env });
    if (r.status !== 0) throw new Stop(`The build of the ${target} failed; see the lines above.`);
    writeFileSync(join(fresh, '.stamp'), key);
    const old = at('dist', `.${target}-old`);
    rmSync(old, { recursive: true, force: true });
    if (existsSync(out)) renameSync(out, old);
    renameSync(fresh, out);
    rmSync(old, { recursive: true, force: true });
  });
  return out;
};

const isAlive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
};

/** Only one process at a time installs or builds in this checkout; a dead one's lock is taken over. */
const withLock = (work) => {
  const lock = at('.cache', 'build-lock');
  const owner = join(lock, 'pid');
  mkdirSync(dirname(lock), { recursive: true });
  for (const end = Date.now() + 300_000; ; ) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const pid = existsSync(owner) ? Number(readFileSync(owner, 'utf8')) : undefined;
    const abandoned =
      pid === undefined
        ? Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now()) > 5000
        : !isAlive(pid);
    if (abandoned) rmSync(lock, { recursive: true, force: true });
    else if (Date.now() > end)
      throw new Stop(`Another build has been running for five minutes. If none is, delete ${lock}.`);
    else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
  }
  try {
    writeFileSync(owner, String(process.pid));
    work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
};
