import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ALLOWED, checkLayers, readSources } from '../support/layers.mjs';

const check = (files: Record<string, string>): readonly string[] =>
  checkLayers(new Map(Object.entries(files))).errors;

test('every folder of the source is in the table', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const folders = new Set([...readSources(root).keys()].map((path) => path.split('/')[1] ?? ''));
  expect([...folders].sort()).toEqual(Object.keys(ALLOWED).sort());
});

test.each([
  [
    'upwards',
    { 'src/kernel/a.ts': "import { plan } from '../plan/plan.ts';\n" },
    'kernel may not import plan',
  ],
  [
    'upwards by type only',
    { 'src/plan/a.ts': "import type { Finding } from '../report/types.ts';\n" },
    'plan may not import report',
  ],
  [
    'upwards by an inline type',
    { 'src/plan/a.ts': "export type F = import('../report/types.ts').Finding;\n" },
    'plan may not import report',
  ],
  [
    'upwards by a dynamic import',
    { 'src/derive/a.ts': "export const f = () => import('../ui/panel.tsx');\n" },
    'derive may not import ui',
  ],
  [
    'upwards by a re-export',
    { 'src/plan/a.ts': "export * from '../gear/book.ts';\n" },
    'plan may not import gear',
  ],
  [
    'from one engine to another',
    { 'src/engines/power/a.ts': "import { x } from '../radio/index.ts';\n" },
    'one engine may not import another',
  ],
  [
    'past a door',
    { 'src/editor/a.ts': "import { x } from '../storage/indexed-db.ts';\n" },
    'only through its door',
  ],
  [
    'of tests',
    { 'src/ui/a.ts': "import { x } from '../../tests/support/x.ts';\n" },
    'ui may not import tests',
  ],
  [
    'of demo plans outside the app',
    { 'src/ui/a.ts': "import x from '../../demo-sets/a.json';\n" },
    'demo-sets',
  ],
  [
    'of a screen package in pure code',
    { 'src/editor/a.ts': "import { useState } from 'react';\n" },
    'react may only',
  ],
  [
    'of the PDF package outside output',
    { 'src/papers/a.ts': "import { jsPDF } from 'jspdf';\n" },
    'jspdf may only',
  ],
  ['of a build tool', { 'src/app/a.ts': "import { build } from 'vite';\n" }, 'vite may not be imported'],
  [
    'of a system module',
    { 'src/storage/journal.ts': "import { readFile } from 'node:fs';\n" },
    'node:fs may only',
  ],
  [
    'by a worker',
    { 'src/plan/a.ts': "new Worker(new URL('../app/w.ts', import.meta.url));\n" },
    'may not import app',
  ],
  ['of a folder nobody knows', { 'src/helpers/a.ts': 'export {};\n' }, 'not in the table'],
])('a wrong import is found: %s', (_name, files, message) => {
  expect(check(files).join('\n')).toContain(message);
});

test('a ring is found', () => {
  const errors = check({
    'src/plan/a.ts': "import { b } from './b.ts';\n",
    'src/plan/b.ts': "import { c } from './c.ts';\n",
    'src/plan/c.ts': "import type { a } from './a.ts';\n",
  });
  expect(errors).toEqual([
    'a ring of imports: src/plan/a.ts → src/plan/b.ts → src/plan/c.ts → src/plan/a.ts',
  ]);
});

test.each([
  ['Date.now()', 'export const f = () => Date.now();\n'],
  ['new Date()', 'export const f = () => new Date();\n'],
  ['Math.random()', 'export const f = () => Math.random();\n'],
  ['window', 'export const f = () => window.innerWidth;\n'],
  ['localStorage', "export const f = () => localStorage.getItem('x');\n"],
  ['globalThis', 'export const f = () => globalThis.crypto;\n'],
])('clock, chance and page are found in pure code: %s', (_name, text) => {
  expect(check({ 'src/derive/a.ts': text })).toHaveLength(1);
  expect(check({ 'src/app/a.ts': text })).toEqual([]);
});

test('names that only look like the page are let through', () => {
  const text =
    "export interface O { document: string }\nexport const f = (o: O, window: number) => [o.document, window, { document: 1 }, new Date(0)];\nexport const what = ['window'];\n";
  expect(check({ 'src/derive/a.ts': text })).toEqual([]);
});

test('long files are found, generated ones let through', () => {
  const lines = (n: number): string => 'export {};\n'.repeat(n);
  expect(check({ 'src/plan/a.ts': lines(400) })).toEqual([]);
  expect(check({ 'src/plan/a.ts': lines(401) })).toHaveLength(1);
  expect(check({ 'src/plan/generated/a.ts': lines(401) })).toEqual([]);
  expect(checkLayers(new Map([['src/plan/a.ts', lines(251)]])).warnings).toHaveLength(1);
});

test('what the table allows passes', () => {
  expect(
    check({
      'src/report/a.ts': "import { assess } from '../engines/power/index.ts';\n",
      'src/editor/a.ts': "import type { PlanStore } from '../storage/port.ts';\n",
      'src/plan/a.ts':
        "import t from '../../shared/t.json' with { type: 'json' };\nimport { z } from 'zod';\n",
      'src/storage/file-node.ts': "import { readFile } from 'node:fs/promises';\n",
    }),
  ).toEqual([]);
  expect(ALLOWED.kernel).toEqual([]);
});
