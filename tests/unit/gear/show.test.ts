import { describe, expect, it } from 'vitest';
import { gearShow } from '../../../src/cli/gear.ts';
import { columnsText } from '../../../src/cli/gear-show.ts';
import { gearBook, needKind, sheetColumns } from '../../../src/gear/index.ts';

const show = (slug: string, practice: 'north-america' | 'europe' = 'europe') =>
  gearShow({ practices: [practice] }, slug, { json: false });

/** Lines of figures, each as [name, rest]. */
const figures = (text: string): readonly string[] =>
  text.split('\n').filter((l) => /^ {2}\S.*\[\d+\]$/.test(l));

describe('a kind shown for people', () => {
  it('has each figure with its unit and the number of its source, and lists those sources', () => {
    const { text, exitCode } = show('led-panel-60x60');
    expect(exitCode).toBe(0);
    expect(text).toMatch(/^LED panel 60×60, 300 W\nled-panel-60x60 · Fixtures · built-in, europe/);
    expect(text).toMatch(/^ {2}Input +300 W {2}\[1\]$/m);
    expect(text).toMatch(/^ {2}Mass +10 kg {2}\[1\]$/m);
    expect(text).toMatch(/^ {2}Leakage +0\.7 mA {2}assumed \[\d\]$/m);
    expect(text).toContain('[1] common practice, no published source');
    expect(text).toContain('All functions, fine: 16 slots');
  });

  it('follows the practice in its lengths and masses', () => {
    expect(show('stand-combo-2', 'europe').text).toMatch(/Rated load +36 kg {2}\[/);
    expect(show('stand-combo-2', 'north-america').text).toMatch(/Rated load +36 kg \(79 lb\)/);
    expect(show('stand-combo-2', 'north-america').text).toContain('1-1/8 in spigot');
  });

  it('gives every kind of the book figures, each with a source that is listed, and no bare words of the program', () => {
    for (const practice of ['north-america', 'europe'] as const)
      for (const k of gearBook(practice)) {
        const { text } = show(k.slug, practice);
        const lines = figures(text);
        expect(lines.length, k.slug).toBeGreaterThanOrEqual(1);
        for (const line of lines)
          expect(text, `${k.slug}: ${line}`).toContain(`\n  [${/\[(\d+)\]$/.exec(line)?.[1]}] `);
        expect(text, k.slug).not.toMatch(/undefined|NaN|\[object/);
      }
  });

  it('gives the same kind whole as JSON', () => {
    const { text } = gearShow({ practices: ['europe'] }, 'led-tube-120', { json: true });
    expect(JSON.parse(text)).toEqual(
      JSON.parse(JSON.stringify(needKind('europe', 'led-tube-120', 'fixture'))),
    );
  });

  it('shows a kind of one’s own before a built-in one of the same slug', () => {
    const own = { ...needKind('europe', 'stand-combo-2', 'stand'), massKg: 12.5 };
    const { text } = gearShow({ practices: ['europe'], own: [own] }, 'stand-combo-2', { json: false });
    expect(text).toMatch(/· own ·/);
    expect(text).toMatch(/Mass +13 kg|Mass +12\.5 kg/);
  });

  it('says what to do where there is no such kind', () => {
    expect(show('no-such')).toMatchObject({ exitCode: 2 });
    expect(show('no-such').text).toContain('gear list');
  });
});

describe('the columns of a list', () => {
  it('are told with every family, and what a row needs', () => {
    const text = columnsText();
    for (const { family, columns } of sheetColumns()) {
      expect(text).toContain(`\n${family}\n`);
      for (const c of columns) expect(text).toContain(`  ${c.heading} `);
    }
    expect(text).toMatch(/^ {2}rated load kg +needed +on its label$/m);
    expect(text).toMatch(/^ {2}name, slug, source, watts/m);
  });
});
