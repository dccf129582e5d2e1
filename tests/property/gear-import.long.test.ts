import fc from 'fast-check';
import { test } from 'vitest';
import { DESCRIPTIONS, FILES, importLaws } from '../support/gear-import-laws.ts';
import { mutatedBytes, mutatedText } from '../support/mutate.ts';

test('10 000 changed fixture files each give an answer or a clear refusal', { timeout: 300_000 }, () => {
  const files = fc.oneof(
    { weight: 3, arbitrary: mutatedText(DESCRIPTIONS) },
    { weight: 1, arbitrary: mutatedBytes(FILES) },
  );
  fc.assert(
    fc.property(files, (bytes) => void importLaws(bytes)),
    { numRuns: 10_000, endOnFailure: true },
  );
});
