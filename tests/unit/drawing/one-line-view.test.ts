import { describe, expect, test } from 'vitest';
import { ENDLESS, oneLineSheets } from '../../../src/drawing/one-line/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { crossings, touching } from '../../support/one-line-laws.ts';

const plan = demoPlan('street');
const assessment = assess(plan, { revision: 0 });
const sheet = (topId: string | undefined, folded: readonly string[]) => {
  const [s] = oneLineSheets(plan, assessment, undefined, ENDLESS, { topId, folded: new Set(folded) });
  if (!s) throw new Error('no diagram');
  return s;
};
const has = (s: ReturnType<typeof sheet>, recordId: string): boolean =>
  s.items.some((i) => i.recordId === recordId);
const textOf = (s: ReturnType<typeof sheet>): string =>
  s.items.flatMap((i) => i.primitives.flatMap((p) => (p.kind === 'text' ? [p.text] : []))).join('\n');

describe('the one-line diagram on a screen', () => {
  test('a folded box keeps its figures, counts what it hides, and makes the diagram narrower', () => {
    const whole = sheet(undefined, []);
    const folded = sheet(undefined, ['box-k4', 'box-k5']);
    expect(has(whole, 'unit-15')).toBe(true);
    expect(has(folded, 'unit-15')).toBe(false);
    expect(has(folded, 'box-k4')).toBe(true);
    expect(has(folded, 'unit-45') || has(folded, 'unit-9')).toBe(true);
    expect(textOf(folded)).toMatch(/folded: \d+ loads/);
    expect(folded.widthMm).toBeLessThan(whole.widthMm);
    expect(whole.items.some((i) => i.key === 'box-k4#fold')).toBe(true);
  });

  test('paper has no signs to fold', () => {
    const [paper] = oneLineSheets(plan, assessment, undefined, { widthMm: 400, heightMm: 260 });
    expect(paper?.items.some((i) => i.key.endsWith('#fold'))).toBe(false);
  });

  test('one box alone says where it is fed from and leaves the others out', () => {
    const k5 = sheet('box-k5', []);
    expect(has(k5, 'box-k5')).toBe(true);
    expect(has(k5, 'box-k4')).toBe(false);
    expect(textOf(k5)).toContain('from K1 way 2');
  });

  test('nothing crosses, folded or not', () => {
    for (const s of [
      sheet(undefined, []),
      sheet(undefined, ['box-k2', 'box-k4']),
      sheet('box-k2', ['box-k6']),
    ])
      expect([...touching(s), ...crossings(s)]).toEqual([]);
  });
});
