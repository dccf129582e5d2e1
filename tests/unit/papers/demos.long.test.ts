import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { setupsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { struckTexts } from '../../support/page-strokes.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';

const folder = new URL('../../../demo-sets/', import.meta.url);
const plans = readdirSync(folder).filter((f) => f.endsWith('.plan.json'));

describe('the papers of every demo plan', () => {
  it.each(plans)(
    '%s: no text touches another, nor a stroke on the plots, in any setup, and every unit is numbered',
    (file) => {
      const read = readPlan(readFileSync(new URL(file, folder), 'utf8'), file);
      if (!read.ok) throw new Error(read.error.what);
      const { plan } = read.value;
      const assessment = assess(plan, { revision: 0 });
      for (const setup of setupsOf(plan)) {
        const set = paperSet(plan, assessment, {
          setupId: setup.id,
          revision: 'A',
          date: '2026-03-09',
          programVersion: '0',
        });
        for (const page of set.pages) expect(touchingTexts(page), `${setup.name}, ${page.title}`).toEqual([]);
        const plot = set.pages
          .filter((p) => p.title.includes('plot'))
          .flatMap(textsOf)
          .map((t) => t.text);
        expect(plot.length).toBeGreaterThan(0);
        for (const page of set.pages)
          if (page.title.includes('plot'))
            expect(struckTexts(page), `${setup.name}, ${page.title}`).toEqual([]);
        expect(plot.join(' ')).not.toContain('without room for a number');
        expect(set.notices.filter((n) => n.includes('does not fit'))).toEqual([]);
      }
    },
  );

  it('study: the plot measures a breaker by all that hangs on it, not outlet by outlet', () => {
    const read = readPlan(readFileSync(new URL('study.plan.json', folder), 'utf8'), 'study');
    if (!read.ok) throw new Error(read.error.what);
    const a = assess(read.value.plan, { revision: 0 });
    const set = paperSet(read.value.plan, a, { revision: 'A', date: '', programVersion: '0' });
    const texts = set.pages.filter((p) => p.title.includes('plot')).flatMap(textsOf);
    const row = texts.find((t) => t.text === 'P1 way 7');
    const way = a.entities.find((e) => e.label === 'P1 way 7');
    if (!row || !way) throw new Error('the study has lost circuit 7');
    const q = (['leg0A', 'leg1A', 'leg2A'] as const)[way.legs[0] ?? 0] ?? 'leg0A';
    const onRow = texts.filter((t) => Math.abs(t.yMm - row.yMm) < 0.5).map((t) => t.text);
    expect(onRow).toContain(a.figures.worst(way.key, q).value.toFixed(1));
  });
});
