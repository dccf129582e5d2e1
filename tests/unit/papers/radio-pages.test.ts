import { describe, expect, it } from 'vitest';
import { computeRadio, formatDb } from '../../../src/engines/radio/index.ts';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { allItems, textsOf, touchingTexts } from '../../support/page-texts.ts';
import { RadioRig } from '../../support/radio-rig.ts';

const pagesOf = (b: RadioRig): readonly Page[] => {
  const plan = b.plan();
  return paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2026-03-09',
    programVersion: '0',
    sheets: ['radio'],
  }).pages;
};

const words = (pages: readonly Page[]): string =>
  pages.flatMap((p) => textsOf(p).map((t) => t.text)).join(' ');

/** A room with a wall in the middle, a transmitter and so many units in a row on the other side. */
const rig = (units: number): RadioRig => {
  const b = new RadioRig();
  const corners = [
    [0, 0],
    [24, 0],
    [24, 12],
    [0, 12],
  ] as const;
  corners.forEach((c, i) => void b.wall(c, corners[(i + 1) % 4] ?? c, 'brick'));
  b.wall([12, 0], [12, 12], 'plasterboard');
  b.device(3, 6);
  for (let i = 0; i < units; i++) b.unit(14 + (i % 5) * 2, 1 + Math.floor(i / 5) * 1.5);
  return b;
};

describe('the radio sheet', () => {
  it('is left out where nothing sends', () => {
    const b = new RadioRig();
    b.unit(0, 0);
    expect(words(pagesOf(b))).not.toMatch(/Radio links/);
  });

  it('has the margin of every link in the picture and in the table, with what is in the way', () => {
    const b = rig(10);
    const text = words(pagesOf(b));
    for (const link of computeRadio(b.plan()).links.values())
      expect(text.split(formatDb(link.marginDb)).length - 1).toBeGreaterThanOrEqual(2);
    expect(text).toMatch(/wall, plasterboard/);
    expect(text).toMatch(/no people; no Wi-Fi/);
    expect(text).toMatch(/hint, not a guarantee: test every link on the day/);
    expect(text).toMatch(/local radio rules apply/);
    expect(text).not.toMatch(/NaN|undefined|\bsafe\b|compliant/);
  });

  it('paints the picture in solid tones and a legend of the same ones', () => {
    const items = pagesOf(rig(3)).flatMap((p) => allItems(p.items));
    const colors = items.flatMap((i) => (i.kind === 'path' && i.fill?.color ? [i.fill.color] : []));
    const legend = new Set(colors.slice(-7));
    expect(legend.size).toBe(7);
    expect(colors.length).toBeGreaterThan(9);
    expect(colors.every((c) => legend.has(c))).toBe(true);
  });

  it('breaks long tables over pages, and no texts of a table touch', () => {
    const pages = pagesOf(rig(120));
    expect(pages.length).toBeGreaterThan(2);
    expect(words(pages)).toMatch(/Radio links \(continued\)/);
    for (const p of pages.slice(1)) expect(touchingTexts(p), p.title).toEqual([]);
  });
});
