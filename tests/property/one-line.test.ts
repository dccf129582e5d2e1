import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ENDLESS, oneLineSheets, type Room } from '../../src/drawing/one-line/index.ts';
import { assess } from '../../src/report/assess.ts';
import { crossings, touching } from '../support/one-line-laws.ts';
import { buildRig, randomRig } from '../support/random-rig.ts';

const room: fc.Arbitrary<Room> = fc.oneof(
  fc.constant(ENDLESS),
  fc.record({ widthMm: fc.integer({ min: 150, max: 900 }), heightMm: fc.integer({ min: 130, max: 700 }) }),
);

describe('the one-line diagram of any rig in any room', () => {
  it('touches and crosses nothing, stays in the room, and draws every load once', () => {
    fc.assert(
      fc.property(randomRig, room, (rig, size) => {
        const { plan } = buildRig(rig);
        const assessment = assess(plan, { revision: 0 });
        const sheets = oneLineSheets(plan, assessment, undefined, size);
        for (const sheet of sheets) {
          expect(touching(sheet)).toEqual([]);
          expect(crossings(sheet)).toEqual([]);
          expect(sheet.widthMm).toBeLessThanOrEqual(size.widthMm);
          expect(sheet.heightMm).toBeLessThanOrEqual(size.heightMm);
        }
        const keys = sheets.flatMap((s) => s.items.map((i) => i.key));
        for (const e of assessment.entities) {
          if (e.what === 'load' && e.sourceId !== undefined)
            expect(keys.filter((k) => k === e.key)).toEqual([e.key]);
        }
      }),
      { numRuns: 60 },
    );
  });
});
