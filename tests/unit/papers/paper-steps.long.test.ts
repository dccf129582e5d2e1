import { describe, expect, it } from 'vitest';
import { paperFile, paperFileSteps } from '../../../src/output/paper-file.ts';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import { paperMetadata } from '../../../src/papers/metadata.ts';
import { paperPages, paperSet, progressOf } from '../../../src/papers/paper-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const options = { revision: 'B', date: '2026-03-09', programVersion: '0.1.0' };
const fonts = paperFonts();

describe('papers in steps', () => {
  it('give the same pages and the same file as at once', () => {
    const plan = samplePlan();
    const a = assess(plan, { revision: 1 });
    const set = paperSet(plan, a, options);
    const pages = [...paperPages(plan, a, options)].flatMap((s) => s.page ?? []);
    expect(pages).toEqual(set.pages);
    const file = paperFile(plan, a, options, fonts);
    expect(file.pages).toBe(set.pages.length);
    expect(file.notices).toEqual(set.notices);
    const whole = pagesToPdf(set.pages, fonts, paperMetadata(plan, options));
    expect(Buffer.compare(Buffer.from(file.bytes ?? []), Buffer.from(whole))).toBe(0);
  });

  it('stop for breath inside a plot and a one-line diagram, not only between pages', () => {
    const plan = samplePlan();
    const a = assess(plan, { revision: 1 });
    const plot = [...paperPages(plan, a, { ...options, sheets: ['plot'] })];
    const first = plot.findIndex((s) => s.page !== undefined);
    expect(plot.slice(0, first).filter((s) => s.sheet === undefined).length).toBeGreaterThan(20);
    const diagram = [...paperPages(plan, a, { ...options, sheets: ['one-line'] })];
    expect(diagram.filter((s) => s.sheet === 1).length).toBeGreaterThan(2);
  });

  it('tell how far they are, never further back, and keep no page', () => {
    const plan = samplePlan();
    const steps = [...paperFileSteps(plan, assess(plan, { revision: 1 }), options, fonts)];
    const shares = steps.map((s) => progressOf(s).share);
    expect(shares.every((s, i) => s >= (shares[i - 1] ?? 0) && s <= 1)).toBe(true);
    expect(shares.at(-1)).toBe(1);
    expect(steps.some((s) => s.page)).toBe(false);
    expect(progressOf(steps[0] ?? { done: 0, of: 1 }).text).toMatch(/^Laying out sheet 1 of \d+$/);
  });

  it('have no file where the chosen sheets say nothing', () => {
    const plan = samplePlan();
    const file = paperFile(plan, assess(plan, { revision: 1 }), { ...options, sheets: ['changes'] }, fonts);
    expect(file.bytes).toBeUndefined();
    expect(file.pages).toBe(0);
  });
});
