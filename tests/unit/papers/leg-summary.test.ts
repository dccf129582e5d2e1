import { expect, it } from 'vitest';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { textsOf } from '../../support/page-texts.ts';

it('prints the powers of a source in kW and kVA, with as many digits as they are worth', () => {
  const plan = demoPlan('street');
  const a = assess(plan, { revision: 0 });
  const texts = paperSet(plan, a, { revision: 'A', date: '2026-03-09', programVersion: '0.1.0' })
    .pages.filter((p) => p.title.includes('Leg summary'))
    .flatMap(textsOf)
    .map((t) => t.text);
  expect(texts).toContain('kW');
  expect(texts).toContain('kVA');
  expect(texts).not.toContain('W');
  expect(texts).not.toContain('VA');
  const sources = a.entities.filter((e) => e.what === 'source' && e.legs.length > 0);
  expect(sources.length).toBeGreaterThan(0);
  for (const e of sources) {
    const worst = a.figures.worst(e.key, 'loadW').value;
    expect(texts).toContain((worst / 1000).toFixed(worst < 9950 ? 2 : 1));
    expect(texts).not.toContain(worst.toFixed(0));
  }
});
