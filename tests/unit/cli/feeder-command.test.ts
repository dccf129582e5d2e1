import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { run } from '../../../src/cli/main.ts';
import { solveFeeder } from '../../../src/engines/power/index.ts';
import { feeder37, loads37 } from '../../support/feeder-37.ts';

const folder = mkdtempSync(join(tmpdir(), 'lampwright-feeder-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const feeder = async (file: unknown, ...more: string[]) => {
  const path = join(folder, 'feeder.json');
  writeFileSync(path, typeof file === 'string' ? file : JSON.stringify(file));
  let out = '';
  let err = '';
  const status = await run(['feeder', path, ...more], {
    out: (t) => {
      out += t;
    },
    err: (t) => {
      err += t;
    },
  });
  return { status, out, err };
};

const wye = (volts: number) => [0, -120, 120].map((degrees) => ({ volts, degrees }));
const head = { format: 'lampwright-feeder', version: 1, source: 's', sourceV: wye(230) };
const load = { node: 'e', from: 0, to: 3, watts: 2300, nominalV: 230, expP: 1, expQ: 1 };

test('power-feeder: a published feeder in a file gives the volts of the solver, to the last digit', async () => {
  const spec = feeder37();
  const file = {
    ...head,
    source: spec.source,
    sourceV: wye(4800 / Math.sqrt(3)),
    segments: spec.segments.map(({ from, to, ohm, shuntS, ratio }) => ({
      from,
      to,
      ...(shuntS ? { line: `${from}-${to}`, length: 1 } : { ohm }),
      ...(ratio ? { transformer: { ratio } } : {}),
    })),
    configurations: Object.fromEntries(
      spec.segments.flatMap(({ from, to, ohm, shuntS }) =>
        shuntS ? [[`${from}-${to}`, { ohm, siemens: shuntS }]] : [],
      ),
    ),
    loads: spec.loads.map(({ wattsW, varsVar, ...l }) => ({ ...l, watts: wattsW, vars: varsVar })),
  };
  expect(loads37.length).toBeGreaterThan(20);
  const told = await feeder(file, '--json');
  expect([told.status, told.err]).toEqual([0, '']);
  const answer = JSON.parse(told.out) as { nodes: { node: string; volts: number[] }[] };
  const direct = solveFeeder(spec);
  if (!direct.ok) throw new Error(direct.error.what);
  for (const { node, volts } of answer.nodes)
    for (const w of [0, 1, 2])
      expect(Math.abs((volts[w] ?? 0) - Math.hypot(...direct.value.volts(node, w)))).toBeLessThan(1e-6);
});

test('power-feeder: lines by sequence impedance, lengths, regulators and spread loads', async () => {
  const file = {
    ...head,
    name: 'Lane',
    configurations: { cable: { z1: [0.3, 0.1], z0: [1.2, 0.4] } },
    segments: [
      { from: 's', to: 'r', transformer: { regulator: [1.1, 1, 1] } },
      { from: 'r', to: 'e', line: 'cable', length: 0.1 },
    ],
    loads: [load],
    spread: [{ along: ['r', 'e'], from: 1, to: 3, watts: 2300, nominalV: 230, expP: 1, expQ: 1 }],
    spreadAt: 'ends',
  };
  const { status, out } = await feeder(file);
  expect(status).toBe(0);
  expect(out).toMatch(/^Lane\nat rest after \d+ passes/);
  // A tenth more on leg A.
  expect(out).toMatch(/r: A 253\.00 V/);
  const told = JSON.parse((await feeder(file, '--json')).out) as {
    nodes: { node: string; volts: number[]; amps: number[] }[];
  };
  const end = told.nodes.find((n) => n.node === 'e');
  expect(end?.amps[0]).toBeCloseTo(10, 6);
  // Half of the spread load stands at each end.
  expect(end?.amps[1]).toBeCloseTo(5, 6);
});

test('power-feeder: what cannot be read or solved is refused in words, with the place', async () => {
  const one = { ...head, segments: [{ from: 's', to: 'e', ohm: [[[0.1, 0]]] }], loads: [load] };
  for (const [file, words] of [
    ['{', /no JSON/],
    [{ ...one, format: 'x' }, /at format/],
    [{ ...one, loads: [{ ...load, watts: 'many' }] }, /at loads\/0\/watts/],
    [one, /3×3 or 4×4/],
    [{ ...one, segments: [{ from: 's', to: 'e', line: 'gone' }] }, /“gone”/],
    [{ ...one, segments: [{ from: 's', to: 'e', line: 'c', length: -1 }] }, /length/],
    [
      {
        ...head,
        configurations: { c: { z1: [1, 0], z0: [1, 0] } },
        segments: [{ from: 's', to: 'e', line: 'c' }],
        loads: [{ ...load, watts: 1e5, expP: 0 }],
      },
      /from s to e loses most/,
    ],
  ] as const) {
    const r = await feeder(file);
    expect([r.status, r.out]).toEqual([2, '']);
    expect(r.err).toMatch(words);
  }
});
