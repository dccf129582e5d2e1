import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DESCRIPTIONS, FILES, importLaws } from '../support/gear-import-laws.ts';
import { mutatedBytes, mutatedText } from '../support/mutate.ts';

test('the unchanged files give kinds', () => {
  expect(FILES.map(importLaws)).toEqual(FILES.map(() => 'kind'));
});

test('a description with anything changed gives an answer or a clear refusal', () => {
  const seen = { kind: 0, refused: 0 };
  fc.assert(
    fc.property(mutatedText(DESCRIPTIONS), (bytes) => {
      seen[importLaws(bytes)]++;
    }),
    { numRuns: 350 },
  );
  // Both ends are met, so that the test is about both.
  expect(Math.min(seen.kind, seen.refused)).toBeGreaterThan(20);
});

test('a container with any bytes changed gives an answer or a clear refusal', () => {
  fc.assert(
    fc.property(mutatedBytes(FILES), (bytes) => void importLaws(bytes)),
    { numRuns: 150 },
  );
});
