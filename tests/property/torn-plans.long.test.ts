import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCommand } from '../../src/cli/check.ts';
import { dayText } from '../../src/cli/day.ts';
import { patchCommand } from '../../src/cli/patch.ts';
import { radioCommand } from '../../src/cli/radio.ts';
import { gearBook } from '../../src/gear/index.ts';
import { readPlan } from '../../src/plan/file.ts';
import { recordName } from '../../src/plan/names.ts';
import { planRecord, recordsOf } from '../../src/plan/plan.ts';
import { planChanges } from '../../src/report/changes.ts';
import { sizePlan } from '../../src/report/size.ts';
import { tryFault } from '../../src/report/whatif.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { tear, tornText } from '../support/torn-plan.ts';

const DEMOS = ['study', 'street', 'stage'] as const;
const textOf = (name: (typeof DEMOS)[number]): string =>
  readFileSync(new URL(`../../demo-sets/${name}.plan.json`, import.meta.url), 'utf8');

/** What no reader should ever meet. */
const SLIP = /.{0,60}(\bNaN\b|Infinity|\bundefined\b|\[object).{0,40}/;

describe('a plan file torn at random', () => {
  test.each(DEMOS)(
    'is read or refused with words, and all that is told of it is text: %s',
    (name) => {
      const whole = textOf(name);
      const before = demoPlan(name);
      fc.assert(
        fc.property(fc.array(tear, { minLength: 1, maxLength: 8 }), (tears) => {
          const read = readPlan(tornText(whole, tears), 'torn.plan.json');
          if (!read.ok) {
            expect(read.error.todo ?? '').not.toBe('');
            return;
          }
          const { plan } = read.value;
          const told = [
            ...read.value.notices,
            checkCommand(plan, { json: false }).text,
            dayText(plan),
            radioCommand(plan, { json: false, place: undefined }),
            JSON.stringify(sizePlan(plan, { headroomPct: 20, book: gearBook(planRecord(plan).practice) })),
            ...[...planChanges(before, plan), ...planChanges(plan, before)].map((c) => c.words),
            ...[...plan.records.values()].map((r) => recordName(plan, r)),
          ];
          const patched = patchCommand(plan, { json: false });
          told.push(patched.ok ? patched.value.text : patched.error.what);
          for (const s of recordsOf(plan, 'source'))
            for (const fault of [
              { loseNeutral: { recordId: s.id } },
              { loseLeg: { sourceId: s.id, leg: 0 } },
            ])
              tryFault(plan, fault);
          for (const text of told) expect(text.match(SLIP)?.[0]).toBeUndefined();
        }),
        { numRuns: 25 },
      );
    },
    300_000,
  );
});
