import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { checkNode, ROOT } from '../../../src/cli/bootstrap.mjs';

test.each(['20.19.0', '20.20.2', '22.12.0', '22.20.1', '24.0.0', '25.1.0'])('Node %s is taken', (version) => {
  expect(() => checkNode(version)).not.toThrow();
});

test.each(['18.20.0', '20.18.9', '21.7.0', '22.11.9', '16.0.0'])(
  'Node %s is refused with words',
  (version) => {
    expect(() => checkNode(version)).toThrow(`This is ${version}`);
  },
);

test('package.json says the same', () => {
  const { engines } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  expect(engines.node).toBe('>=20.19 <21 || >=22.12');
});
