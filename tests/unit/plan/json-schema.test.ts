import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planJsonSchemaText } from '../../../src/plan/json-schema.ts';

const published = readFileSync(new URL('../../../shared/plan.schema.json', import.meta.url), 'utf8');

test('the published JSON Schema is the one that plans are read with', () => {
  // When this fails on purpose: npm run --silent lampwright -- schema > shared/plan.schema.json
  expect(published).toBe(planJsonSchemaText());
});
