import { expect, it } from 'vitest';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { removeRecords } from '../../../src/plan/edits/arrange.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { textsOf } from '../../support/page-texts.ts';

const pagesOf = (plan: Plan, sheet: string) =>
  paperSet(plan, assess(plan, { revision: 0 }), {
    revision: '',
    date: '',
    programVersion: '0',
    sheets: [sheet],
  }).pages;

it.each(['study', 'street', 'stage'] as const)(
  '%s: the total mass of the truck is that of its departments',
  (name) => {
    const page = pagesOf(demoPlan(name), 'truck').find((p) =>
      textsOf(p).some((t) => t.text === 'Total mass'),
    );
    const texts = page ? textsOf(page) : [];
    const at = (text: string) => texts.find((t) => t.text === text);
    const [head, total] = [at('All together'), at('Total mass')];
    if (!head || !total) throw new Error('the truck list has no total');
    const kgAt = (yMm: number): number =>
      Number(
        texts
          .filter((t) => Math.abs(t.yMm - yMm) < 0.1 && t.xMm > total.xMm && /^[\d.]+$/.test(t.text))
          .sort((a, b) => a.xMm - b.xMm)
          .at(-1)?.text,
      );
    const rows = texts.filter(
      (t) => Math.abs(t.xMm - total.xMm) < 0.1 && t.yMm > head.yMm + 1 && t.yMm < total.yMm - 1,
    );
    expect(rows.length).toBeGreaterThan(2);
    const sum = rows.reduce((s, r) => s + kgAt(r.yMm), 0);
    expect(Math.abs(sum - kgAt(total.yMm))).toBeLessThanOrEqual(0.5 * rows.length);
  },
);

it('every unit that is plugged in nowhere has its row on the circuit schedule', () => {
  const plan = demoPlan('study');
  const bare = applyChanges(plan, removeRecords(plan, new Set(recordsOf(plan, 'cable').map((c) => c.id))));
  const said = pagesOf(bare, 'circuits').flatMap(textsOf);
  const lamps = recordsOf(bare, 'fixture').filter((f) => !f.onPacks);
  expect(lamps.length).toBeGreaterThan(5);
  // The column of unit numbers is that of the circle of the first of them; a leg or a way may have the same figure.
  for (const f of lamps)
    expect(
      said.filter((t) => t.text === f.unit && t.align === 'center'),
      f.unit,
    ).not.toEqual([]);
});
