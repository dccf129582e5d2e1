import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { setupsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';

const folder = new URL('../../../demo-sets/', import.meta.url);
const plans = readdirSync(folder).filter((f) => f.endsWith('.plan.json'));

describe('the papers of every demo plan', () => {
  it.each(plans)('%s: no text touches another in any setup, and every unit is numbered', (file) => {
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
      expect(plot.join(' ')).not.toContain('without room for a number');
      expect(set.notices.filter((n) => n.includes('does not fit'))).toEqual([]);
    }
  });
});
