import { describe, expect, it } from 'vitest';
import { figureOf, gearBook, ownFigures, ownKindFrom } from '../../../src/gear/index.ts';

describe('own kinds from a kind of the book', () => {
  it('offer figures of every family, and come out as they were where nothing is changed', () => {
    for (const k of gearBook('europe')) {
      expect(ownFigures(k).length, k.slug).toBeGreaterThan(0);
      const made = ownKindFrom(k, `${k.name}, own`, {});
      if (!made.ok) throw new Error(`${k.slug}: ${made.error[0]?.what}`);
      expect(made.value.origin.book).toBe('user');
      expect(made.value.slug).not.toBe(k.slug);
      expect(made.value.basis).toEqual(k.basis);
    }
  });

  it('carry what was typed, marked as entered by hand', () => {
    const stand = gearBook('europe').find((k) => k.slug === 'c-stand-40');
    if (!stand) throw new Error('not in the book');
    const made = ownKindFrom(stand, 'Tall stand, 12 kg load', {
      ratedLoadKg: '12',
      heightMaxMm: '4100,5',
      massKg: '6.2',
    });
    if (!made.ok) throw new Error(made.error[0]?.what);
    expect(made.value).toMatchObject({ slug: 'tall-stand-12-kg-load', ratedLoadKg: 12, heightMaxMm: 4100.5 });
    expect(made.value.basis.ratedLoadKg).toBe('entered by hand');
    expect(made.value.basis.massKg).toBe(stand.basis.massKg);
    const inside = ownKindFrom(stand, 'Wide', { 'sizeMm.lengthMm': '900' });
    expect(inside.ok && figureOf(inside.value, 'sizeMm.lengthMm')).toBe(900);
  });

  it('are refused in words where a figure is none or cannot be', () => {
    const stand = gearBook('europe').find((k) => k.slug === 'c-stand-40');
    if (!stand) throw new Error('not in the book');
    const bad = (name: string, figures: Record<string, string>) => {
      const made = ownKindFrom(stand, name, figures);
      return made.ok ? [] : made.error.map((p) => p.what);
    };
    expect(bad('A', { ratedLoadKg: 'ten' })).toEqual(['“ten” is not a number.']);
    expect(bad('A', { heightMinMm: '9000' })).toEqual(['Its least height is above its greatest.']);
    expect(bad(' ', {})).toEqual(['It has no name.']);
    expect(bad('A', { massKg: '-1' })).toEqual(['Its mass is -1 kg.']);
  });
});
