import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../src/cli/bootstrap.mjs';
import { lampwright } from '../../support/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'lampwright-'));
afterAll(() => rmSync(folder, { recursive: true }));
const PLAN = join(ROOT, 'tests', 'old-plans', 'v1.json');

const fileWith = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('the command line', () => {
  test('helps', async () => {
    const { status, out } = await lampwright('--help');
    expect(status).toBe(0);
    for (const word of [
      'check PLAN',
      'explain PLAN KEY',
      'schema',
      'Exit status',
      'authority having jurisdiction',
    ])
      expect(out).toContain(word);
    expect((await lampwright('check', '--help')).out).toContain('usage: lampwright check PLAN');
  });

  test('says its version', async () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(await lampwright('--version')).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  test.each([
    ['nothing', []],
    ['an unknown command', ['chek', PLAN]],
    ['an unknown option', ['check', PLAN, '--jsn']],
    ['too little', ['explain', PLAN]],
    ['too much', ['check', PLAN, PLAN]],
  ])('refuses %s with the usage on standard error', async (_name, args) => {
    const { status, out, err } = await lampwright(...args);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('usage: lampwright');
  });

  test.each([
    ['a file that is not there', () => join(folder, 'none.json'), /no file/],
    ['a folder', () => folder, /folder/],
    [
      'a truncated plan',
      () => fileWith('cut.json', readFileSync(PLAN, 'utf8').slice(0, 900)),
      /JSON.*(line \d+|end of the file)/s,
    ],
    ['other JSON', () => join(ROOT, 'package.json'), /not a plan/],
    ['text', () => fileWith('script.txt', 'INT. KITCHEN - DAY'), /JSON/],
  ])('refuses %s with status 2 and words', async (_name, path, words) => {
    for (const args of [['check'], ['check', '--json'], ['explain']]) {
      const more = args[0] === 'explain' ? ['ampsA@x@y'] : [];
      const { status, out, err } = await lampwright(...args, path(), ...more);
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(words);
      expect(err).not.toMatch(/\n\s+at /);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
  });

  test('tells on standard error what it could not read of a plan, and checks the rest', async () => {
    const text = readFileSync(PLAN, 'utf8').replace('"type":"mark"', '"type":"monster"');
    const { out, err } = await lampwright('check', fileWith('odd.json', text));
    expect(err).toMatch(/mark-1.*monster/);
    expect(out).toContain('Kept plan');
  });

  test('prints the assessment as one JSON document, and explains a figure of it', async () => {
    const { status, out } = await lampwright('check', '--json', PLAN);
    expect([0, 1]).toContain(status);
    const key = JSON.stringify(JSON.parse(out)).match(/"([a-zA-Z]+@[^"@]+@[^"@]*)"/)?.[1];
    expect(key).toBeDefined();
    const working = await lampwright('explain', PLAN, key ?? '');
    expect(working.status).toBe(0);
    expect(working.out).toMatch(/Formula:.*Rule:.*Source:/s);
    expect(await lampwright('explain', PLAN, 'ampsA@nothing@x')).toMatchObject({ status: 2, out: '' });
  });

  test('writes the papers: the same bytes each time, into a folder it makes', async () => {
    const out = join(folder, 'a', 'papers');
    const first = await lampwright('papers', PLAN, '--out', out, '--date', '2031-03-04');
    expect(first.status).toBe(0);
    const names = first.out.trim().split('\n');
    expect(names).toContain(join(out, 'papers.pdf'));
    expect(names.some((n) => n.endsWith('.csv'))).toBe(true);
    const bytes = names.map((n) => readFileSync(n));
    expect(bytes[names.indexOf(join(out, 'papers.pdf'))]?.subarray(0, 5).toString()).toBe('%PDF-');
    await lampwright('papers', PLAN, '--out', out, '--date', '2031-03-04');
    expect(names.map((n) => readFileSync(n)).every((b, i) => b.equals(bytes[i] ?? Buffer.of()))).toBe(true);
    expect(readdirSync(out).sort()).toEqual(names.map((n) => basename(n)).sort());
  });

  test('writes no papers over a file, over the plan itself, or with a date no calendar has', async () => {
    const file = fileWith('taken', 'mine');
    const plan = fileWith('papers.pdf', readFileSync(PLAN, 'utf8'));
    const cases = [
      [PLAN, '--out', file],
      [plan, '--out', folder],
      [PLAN, '--out', folder, '--date', '2031-02-30'],
      [PLAN, '--out', folder, '--date', 'today'],
      [PLAN, '--out', folder, '--setup', 'No such'],
      [PLAN],
    ];
    for (const args of cases) {
      const { status, out, err } = await lampwright('papers', ...args);
      expect([args.join(' '), status, out]).toEqual([args.join(' '), 2, '']);
      expect(err).not.toMatch(/\n\s+at /);
    }
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect(readFileSync(plan, 'utf8')).toBe(readFileSync(PLAN, 'utf8'));
  });

  test('prints the published schema', async () => {
    const { out } = await lampwright('schema');
    expect(out).toBe(readFileSync(join(ROOT, 'shared', 'plan.schema.json'), 'utf8'));
  });

  test('lists and shows gear', async () => {
    const { out } = await lampwright('gear', 'list', 'panel', '--practice', 'europe');
    const slug = out.split(/\s/, 1)[0] ?? '';
    expect(slug).not.toBe('');
    expect(JSON.parse((await lampwright('gear', 'show', slug, '--json')).out)).toMatchObject({ slug });
    expect(await lampwright('gear', 'show', 'no-such-lamp')).toMatchObject({ status: 2, out: '' });
    expect(await lampwright('gear', 'list', '--practice', 'mars')).toMatchObject({ status: 2, out: '' });
  });
});

test('the entry in package.json runs the same, and only the command’s own words reach standard output', () => {
  const { bin, version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const r = spawnSync(process.execPath, [join(ROOT, bin.lampwright), '--version'], { encoding: 'utf8' });
  expect([r.status, r.stdout]).toEqual([0, `${version}\n`]);
  const bad = spawnSync(process.execPath, [join(ROOT, bin.lampwright), 'check', 'none.json'], {
    encoding: 'utf8',
  });
  expect([bad.status, bad.stdout]).toEqual([2, '']);
});
