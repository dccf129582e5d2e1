import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Problem } from '../../../src/kernel/result.ts';
import { PLAN_FORMAT, PLAN_VERSION, readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { planRecord } from '../../../src/plan/plan.ts';
import { readPlanFile } from '../../../src/storage/file-node.ts';
import { smallPlan } from '../../support/small-plan.ts';
import { need } from '../../support/storage-world.ts';

const good = serialisePlan(smallPlan());
const problemOf = (text: string): Problem => {
  const r = readPlan(text, 'night.json');
  if (r.ok) throw new Error('the file was read');
  return r.error;
};

/** A refusal says what, where and what to do, and names the file. */
const expectWords = (p: Problem): void => {
  expect(p.what).toContain('night.json');
  expect(p.todo ?? '').not.toBe('');
};

describe('a file that is no plan is refused with words', () => {
  test('a truncated one, with the place', () => {
    for (const share of [0.1, 0.5, 0.9, 0.99]) {
      const p = problemOf(good.slice(0, Math.floor(good.length * share)));
      expectWords(p);
      expect(p.where).toMatch(/line \d+|end of the file/);
    }
  });

  test('one broken by hand, with the line it is broken in', () => {
    const lines = good.split('\n');
    lines[2] = `${lines[2]?.slice(0, -1)} oops,`;
    const p = problemOf(lines.join('\n'));
    expectWords(p);
    expect(p.where).toContain('line 3');
  });

  test.each([
    ['empty', ''],
    ['plain text', 'EXT. YARD - NIGHT'],
    ['a picture', '\u0089PNG\r\n\u001a\n'],
    ['a number', '42'],
    ['null', 'null'],
    ['a list', '[]'],
    ['other JSON', '{"name": "x"}'],
    ['another format', '{"format": "other", "version": 1, "records": []}'],
  ])('%s', (_name, text) => {
    expectWords(problemOf(text));
  });

  test.each(['"1"', 'null', '0', '-1', '1.5', '[]'])('one whose version is %s', (version) => {
    const p = problemOf(good.replace(`"version": ${PLAN_VERSION}`, `"version": ${version}`));
    expectWords(p);
    expect(p.where).toContain('version');
  });

  test('one without records, or without the record about the plan', () => {
    expectWords(problemOf(`{"format": "${PLAN_FORMAT}", "version": 1}`));
    expectWords(problemOf(`{"format": "${PLAN_FORMAT}", "version": 1, "records": {}}`));
    expectWords(problemOf(`{"format": "${PLAN_FORMAT}", "version": 1, "records": []}`));
  });

  test('one with a key that reaches into the program, wherever it is', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      const p = problemOf(
        good.replace('"type":"mark"', `"type":"mark","deep":{"list":[{"${key}":{"polluted":1}}]}`),
      );
      expectWords(p);
      expect(p.where).toContain(key);
    }
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test('one that is nested without end', () => {
    const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`;
    expectWords(problemOf(good.replace('"type":"mark"', `"type":"mark","deep":${deep}`)));
  });
});

describe('a file with something wrong in it is read, and says what was set aside', () => {
  test('a record that does not fit its type is kept as it was', () => {
    const text = good.replace('"name":"Mark 1"', '"name":17');
    const read = need(readPlan(text));
    expect(read.plan.records.has('mark-1')).toBe(false);
    expect(read.notices.join()).toMatch(/mark-1.*name/);
    expect(serialisePlan(read.plan)).toContain('"name":17');
  });

  test('a record with a number too large to be meant is kept as it was, with the place and the number told', () => {
    const lines = good.split('\n');
    const mark = lines.findIndex((l) => l.includes('"name":"Mark 1"'));
    const spoilt = (key: string, value: string): string =>
      lines
        .map((l, i) => (i === mark ? l.replace(new RegExp(`"${key}":[-\\d.]+`), `"${key}":${value}`) : l))
        .join('\n');
    for (const [key, value, words] of [
      ['xMm', '1e300', /set aside, unchanged: at\.xMm is 1e\+300, more than 100 km/],
      ['xMm', '-100000001', /at\.xMm is -100000001, more than 100 km/],
      ['facingDeg', '1e21', /facingDeg is 1e\+21, too large to be meant/],
    ] as const) {
      const text = spoilt(key, value);
      expect(text, key).not.toBe(good);
      const read = need(readPlan(text));
      expect(read.notices.join(' ')).toMatch(words);
      expect(serialisePlan(read.plan)).toContain(`"${key}":${Number(value)}`);
    }
    expect(need(readPlan(spoilt('xMm', '100000000'))).notices).toEqual([]);
    const stock = { id: 'stock-1', type: 'stock', kindId: 'pack', reserve: 0 };
    for (const [count, told] of [
      [10_000, ''],
      [1e9, 'stock-1 could not be read and was set aside, unchanged: count is 1000000000, more than 10000.'],
    ] as const) {
      const text = good.replace('"records": [', `"records": [${JSON.stringify({ ...stock, count })},`);
      expect(need(readPlan(text)).notices.join(' ')).toBe(told);
    }
  });

  test('a record without what it needs is kept as it was, and told by what is missing', () => {
    const read = need(readPlan(good.replace('"name":"Mark 1",', '')));
    expect(read.notices).toEqual(['mark-1 could not be read and was set aside, unchanged: name is missing.']);
  });

  test('a record of an unknown type, one twice, and one that is no record are kept', () => {
    const more = '{"id":"z","type":"zeppelin"}, {"id":"mark-1","type":"mark"}, 42, null';
    const read = need(readPlan(good.replace('"records": [', `"records": [${more},`)));
    expect(read.plan.setAside).toHaveLength(4);
    expect(read.notices).toHaveLength(4);
    const again = need(readPlan(serialisePlan(read.plan)));
    expect(again.plan.setAside.map((s) => s.value)).toEqual(read.plan.setAside.map((s) => s.value));
  });

  test('a reference to nothing is no reason to refuse: the record stays as written', () => {
    const read = need(readPlan(good.replaceAll('"floorId":"floor-1"', '"floorId":"nowhere"')));
    expect(read.notices).toEqual([]);
    expect(read.plan.records.get('mark-1')).toMatchObject({ floorId: 'nowhere' });
  });

  test('a newer version is shown, and marked as not to be written', () => {
    const read = need(readPlan(good.replace(`"version": ${PLAN_VERSION}`, `"version": ${PLAN_VERSION + 1}`)));
    expect(read.newer).toBe(true);
    expect(read.notices.join()).toMatch(/newer version/);
  });

  test.each([
    '🎬 Night 🌙',
    'מטבח, לילה',
    '<img src=x onerror=alert(1)>',
    '=HYPERLINK("x")',
    'a"b\\c\nd',
    '‮abc',
  ])('the name %s comes back as it is', (title) => {
    const plan = smallPlan(title);
    expect(planRecord(need(readPlan(serialisePlan(plan))).plan).title).toBe(title);
  });
});

describe('reading from disk', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lampwright-'));
  const path = join(folder, 'night.json');
  afterAll(() => rmSync(folder, { recursive: true }));
  const problem = async (): Promise<Problem> => {
    const r = await readPlanFile(path);
    if (r.ok) throw new Error('the file was read');
    return r.error;
  };

  test('a plan, with a byte order mark too', async () => {
    writeFileSync(path, `\ufeff${good}`);
    expect(serialisePlan(need(await readPlanFile(path)).plan)).toBe(good);
  });

  test('200 MB are refused before they are read', async () => {
    writeFileSync(path, '');
    truncateSync(path, 200_000_000);
    const before = process.memoryUsage().arrayBuffers;
    const p = await problem();
    expectWords(p);
    expect(p.what).toContain('200 MB');
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(10_000_000);
    rmSync(path);
  });

  test('bytes that are no text', async () => {
    writeFileSync(path, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0x00]));
    expectWords(await problem());
  });

  test('no file, a folder, a pipe', async () => {
    rmSync(path, { force: true });
    expectWords(await problem());
    expect(await readPlanFile(folder)).toMatchObject({
      ok: false,
      error: { what: `${folder} is a folder.` },
    });
    if (process.platform === 'win32') return;
    execFileSync('mkfifo', [path]);
    // Opening a pipe waits for a writer; one that has something to say and goes is enough.
    const writing = execFileSync.bind(undefined, 'sh', ['-c', `(echo "{}" > "${path}") &`], {
      stdio: 'ignore',
    });
    writing();
    expectWords(await problem());
  });
});
