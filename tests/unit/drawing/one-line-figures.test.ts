import { describe, expect, it } from 'vitest';
import { ENDLESS, oneLineSheets } from '../../../src/drawing/one-line/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const screen = (name: 'street' | 'stage' | 'study') => {
  const plan = demoPlan(name);
  const a = assess(plan, { revision: 0 });
  const [sheet] = oneLineSheets(plan, a, a.setups[0]?.id, ENDLESS, { folded: new Set() });
  if (!sheet) throw new Error('no sheet');
  return { plan, a, sheet };
};

/** The first number of a text, kilo counted in. */
const numberIn = (text: string): number => {
  const m = /−?(\d[\d,]*\.?\d*)\s*(k?)/.exec(text);
  return Number(m?.[1]?.replaceAll(',', '')) * (m?.[2] === 'k' ? 1000 : 1);
};

describe.each(['street', 'stage', 'study'] as const)('figures of the one-line diagram of “%s”', (name) => {
  const { plan, a, sheet } = screen(name);

  it('are places that open a working which ends in the figure that is read there', () => {
    expect(sheet.figures.length).toBeGreaterThan(10);
    for (const f of sheet.figures) {
      const w = explainOrWhy(plan, f.key);
      if (!w.ok) throw new Error(`${f.text} (${f.key}): ${w.error.what}`);
      const [shown, worked] = [numberIn(f.text), numberIn(w.value.result)];
      // Both are rounded, to a tenth or to three digits.
      expect(Math.abs(shown - worked), `${f.text} is worked to ${w.value.result}`).toBeLessThanOrEqual(
        Math.max(0.56, 0.01 * Math.abs(worked)),
      );
    }
  });

  it('lie where their text is drawn, within the part they belong to', () => {
    for (const f of sheet.figures) {
      const texts = sheet.items
        .filter((i) => i.recordId === f.recordId || i.key.split('#')[0] === f.entityKey)
        .flatMap((i) => i.primitives.filter((p) => p.kind === 'text'));
      const [y, first] = [f.box.maxY - 0.8, f.text.split(' ')[0] ?? ''];
      expect(
        texts.some((t) => Math.abs(t.yMm - y) < 0.01 && t.text.includes(first)),
        f.text,
      ).toBe(true);
    }
  });

  it('are not told on paper', () => {
    const paper = oneLineSheets(plan, a, a.setups[0]?.id, { widthMm: 420, heightMm: 280 });
    expect(paper.flatMap((s) => s.figures)).toEqual([]);
  });
});
