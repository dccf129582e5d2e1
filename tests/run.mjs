// `npm test`: gets everything ready, runs every stage and counts. `--quick` leaves out the browser and the long tests.
import { execFile, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { checkNode, ensureBuilt, ensureInstalled, ROOT, runMain, Stop } from '../src/cli/bootstrap.mjs';
import { findChromium } from './support/chromium.mjs';

const PROJECTS = ['unit', 'published', 'oracle', 'property', 'faults', 'golden'];
const quick = process.argv.includes('--quick');
const bin = (name, ...path) => [process.execPath, join(ROOT, 'node_modules', name, ...path)];

const STATIC = [
  ['type check', ...bin('typescript', 'bin', 'tsc'), '-p', '.'],
  ['type check of the pure folders', ...bin('typescript', 'bin', 'tsc'), '-p', 'src/tsconfig.pure.json'],
  ['lint and format', ...bin('@biomejs/biome', 'bin', 'biome'), 'ci', '--colors=off'],
  ['layers', process.execPath, join('tests', 'support', 'layers.mjs')],
];

const total = { passed: 0, failed: 0, skipped: 0 };
const heading = (text) => console.log(`\n== ${text}`);
const count = (stage, { passed = 0, failed = 0, skipped = 0 }) => {
  total.passed += passed;
  total.failed += failed;
  total.skipped += skipped;
  const more = skipped > 0 ? `, ${skipped} skipped` : '';
  console.log(`-- ${stage}: ${passed} passed, ${failed} failed${more}`);
};

const runStatic = async ([stage, command, ...args]) => {
  const r = await new Promise((done) => {
    execFile(command, args, { cwd: ROOT, maxBuffer: Infinity }, (error, out, err) =>
      done({ ok: error === null, text: out + err }),
    );
  });
  heading(stage);
  process.stdout.write(r.text);
  count(stage, r.ok ? { passed: 1 } : { failed: 1 });
};

const runBuild = (target) => {
  heading(`build of the ${target}`);
  try {
    ensureBuilt(target, console.log);
    count(`build of the ${target}`, { passed: 1 });
    return true;
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    console.error(error.message);
    count(`build of the ${target}`, { failed: 1 });
    return false;
  }
};

/** Counts of each project in a report of the test runner. A file that could not run counts as one failure. */
const countsOf = (report, projects) => {
  const counts = Object.fromEntries(projects.map((p) => [p, { passed: 0, failed: 0, skipped: 0 }]));
  for (const file of report.testResults) {
    const project = relative(ROOT, file.name).split(sep)[1] ?? '';
    const c = counts[project] ?? { passed: 0, failed: 0, skipped: 0 };
    counts[project] = c;
    for (const { status } of file.assertionResults) {
      if (status === 'passed') c.passed++;
      else if (status === 'failed') c.failed++;
      else c.skipped++;
    }
    if (file.status === 'failed' && !file.assertionResults.some((a) => a.status === 'failed')) c.failed++;
  }
  return counts;
};

const runVitest = (projects, environment) => {
  heading(projects.join(', '));
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  const output = join(ROOT, '.cache', `tests-${process.pid}.json`);
  rmSync(output, { force: true });
  const [command, ...args] = bin('vitest', 'vitest.mjs');
  const r = spawnSync(
    command,
    [
      ...args,
      'run',
      ...projects.flatMap((p) => ['--project', p]),
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${output}`,
      ...(quick ? ['--exclude', '**/*.long.test.ts'] : []),
    ],
    { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...environment, NO_COLOR: '1' } },
  );
  let report;
  try {
    report = JSON.parse(readFileSync(output, 'utf8'));
  } catch {
    report = { testResults: [] };
  }
  rmSync(output, { force: true });
  const counts = countsOf(report, projects);
  for (const [stage, c] of Object.entries(counts)) {
    if (c.passed + c.failed === 0) {
      console.log(`${stage} ran no tests; that counts as a failure.`);
      c.failed++;
    }
    count(stage, c);
  }
  // An error outside any test fails the run without failing a test.
  const anyFailed = Object.values(counts).some((c) => c.failed > 0);
  if (r.status !== 0 && !anyFailed) count('errors outside the tests', { failed: 1 });
};

await runMain(async () => {
  checkNode();
  ensureInstalled(console.log);
  await Promise.all(STATIC.map(runStatic));
  runBuild('cli');
  runVitest(PROJECTS, {});
  if (!quick && runBuild('app')) {
    const chromium = findChromium(console.log);
    if (chromium.path) {
      console.log(`\nThe browser is ${chromium.path}`);
      runVitest(['browser'], { LAMPWRIGHT_CHROMIUM: chromium.path });
    } else {
      heading('browser');
      console.error(chromium.todo);
      count('browser', { failed: 1 });
    }
  }
  if (total.skipped > 0) console.log(`\n${total.skipped} skipped`);
  console.log(`\n${total.passed} passed, ${total.failed} failed`);
  return total.failed > 0 ? 1 : 0;
});
