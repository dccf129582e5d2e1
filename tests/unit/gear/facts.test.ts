import { describe, expect, it } from 'vitest';
import { gearBook, needKind, readKindSheet } from '../../../src/gear/index.ts';
import type { Kind } from '../../../src/plan/kinds/kinds.ts';
import { kindFacts } from '../../../src/report/kind-facts.ts';
import { FAMILY_WORDS, filterKinds, noFilters, wattsOf } from '../../../src/ui/gear/filters.ts';

const fact = (kind: Kind, name: string): string | undefined =>
  kindFacts(kind, 'metric').find((f) => f.name === name)?.value;

describe('facts of a kind', () => {
  const panel = needKind('europe', 'led-panel-60x60', 'fixture');
  const unknown: Kind = {
    ...panel,
    ...(panel.load ? { load: { ...panel.load, wattsW: 0, unknown: true } } : {}),
  };

  it('say that watts are not known rather than none', () => {
    expect(fact(panel, 'Input')).toBe('300 W');
    expect(fact(unknown, 'Input')).toBe('watts not known');
    expect(wattsOf(unknown)).toBeUndefined();
    expect(filterKinds([panel, unknown], { ...noFilters, maxWattsW: 500 })).toEqual([panel]);
  });

  it('name every line once for every kind, and every family in words', () => {
    for (const practice of ['north-america', 'europe'] as const)
      for (const k of gearBook(practice)) {
        const names = kindFacts(k, 'imperial').map((f) => f.name);
        expect(new Set(names).size, k.slug).toBe(names.length);
        expect(FAMILY_WORDS[k.family], k.family).toBeTruthy();
      }
  });

  it('tell volts, watt-hours and what is assumed of a pack', () => {
    const pack = needKind('europe', 'pack-v-plate-14-4v-98wh', 'pack');
    expect(fact(pack, 'Holds')).toBe('98 Wh, 6.81 Ah');
    expect(fact(pack, 'Volts')).toBe('14.4 V, from 16.8 V full to 12 V empty');
    expect(kindFacts(pack, 'metric').find((f) => f.name === 'Gives')?.basis).toMatch(/assumed/);
    expect(fact(pack, 'By air')).toMatch(/^to 100 Wh: cabin.*March 2026/);
    expect(fact(needKind('europe', 'pack-belt-xlr4-30v-270wh', 'pack'), 'By air')).toBe('–');
    expect(fact(needKind('europe', 'pack-belt-xlr4-30v-270wh', 'pack'), 'Outlets for leads')).toContain('A');
  });

  it('say of a kind from a list which figures were in it, and which are assumed', () => {
    const read = readKindSheet('name,watts,width mm,mount\nOwn panel,300,600,28\n');
    const own = read.ok ? read.value.kinds[0] : undefined;
    if (!own) throw new Error('no kind was read');
    const basis = (name: string): string =>
      kindFacts(own, 'metric').find((f) => f.name === name)?.basis ?? '';
    for (const assumed of ['Size', 'Mass', 'Power factor', 'Volts', 'Third harmonic', 'Leakage', 'Inlet'])
      expect(basis(assumed), assumed).toMatch(/^assumed/);
    for (const given of ['Input', 'Mount']) expect(basis(given), given).not.toMatch(/assumed/);
  });

  it('tell how far a hot unit is kept from cloth and walls', () => {
    const hot = needKind('europe', 'tungsten-fresnel-5kw', 'fixture');
    expect(fact(hot, 'Keep clear')).toMatch(/cloth 1\b.*lit surfaces 2\b/);
    expect(fact(panel, 'Keep clear')).toBe('–');
  });
});
