import { describe, expect, it } from 'vitest';
import { assignAddresses, DEFAULT_ASSIGN } from '../../../src/engines/control/index.ts';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { setupSteps } from '../../../src/report/setup-steps.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';
import { patchRig, type RigUnit } from '../../support/patch-rig.ts';

const pagesOf = (plan: Plan, title: string): readonly Page[] =>
  paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2026-03-09',
    programVersion: '0',
  }).pages.filter((p) => p.title.endsWith(title));

const texts = (pages: readonly Page[]): string =>
  pages.flatMap((p) => textsOf(p).map((t) => t.text)).join('\n');

const patched = (units: readonly (number | RigUnit)[], part = false): Plan => {
  const { plan } = patchRig(units);
  const r = assignAddresses(plan, { ...DEFAULT_ASSIGN, part });
  if (!r.ok) throw new Error(r.error.what);
  return applyChanges(plan, r.value.changes);
};

describe('the papers of the control crew', () => {
  it('are left out where no unit has an address', () => {
    const { plan } = patchRig([10]);
    for (const title of ['Patch sheet', 'Universe maps', 'Setup cards'])
      expect(pagesOf(plan, title)).toEqual([]);
  });

  it('list every unit by address, and those without one, and those on no control data', () => {
    const { b } = patchRig([10]);
    b.fixtureKind('lamp', {}, { modes: [] });
    b.fixture('lamp', { unit: '77' });
    const r = assignAddresses(b.plan(), DEFAULT_ASSIGN);
    if (!r.ok) throw new Error(r.error.what);
    for (const f of applyChanges(b.plan(), r.value.changes).records.values()) b.put(f);
    b.fixture('k10-1-0', { unit: '88' });
    const words = texts(pagesOf(b.plan(), 'Patch sheet')).split('\n');
    const at = (w: string): number => words.indexOf(w);
    expect(at('U1 1')).toBeGreaterThan(0);
    expect(at('Without an address')).toBeLessThan(at('88'));
    expect(at('Not on control data')).toBeLessThan(at('77'));
  });

  it('say where a parted unit goes on', () => {
    const plan = patched([400, { slots: 300, parts: 100 }], true);
    expect(texts(pagesOf(plan, 'Patch sheet'))).toContain('goes on at U2 1');
    expect(texts(pagesOf(plan, 'Setup cards'))).toContain('from its slot 112 at U2 1');
  });

  it('give each patched unit one card with its address, cards counted through', () => {
    const plan = patched(new Array(23).fill(12));
    const cards = pagesOf(plan, 'Setup cards');
    const words = texts(cards);
    for (let n = 1; n <= 23; n++) expect(words).toContain(`card ${n} of 23`);
    expect(words.match(/Reset to defaults/g)).toHaveLength(23);
    expect(cards.length).toBeGreaterThan(1);
  });

  it('have texts that keep clear of one another, however long names and numbers are', () => {
    const long = 'a very long use that nobody would write on a card but somebody will';
    const plan = patched(
      [
        { slots: 512, more: { unit: '1234567', use: long, channel: long, link: 'radio' } },
        { slots: 1, more: { unit: 'Practical by the door', use: long, link: 'line' } },
        { slots: 900, parts: 300, more: { unit: '12A' } },
        ...new Array(60).fill(1),
      ],
      true,
    );
    for (const title of ['Patch sheet', 'Universe maps', 'Setup cards'])
      for (const page of pagesOf(plan, title)) expect(touchingTexts(page), page.title).toEqual([]);
  });

  it('show switches on cards only for kinds that have them', () => {
    const { b } = patchRig([]);
    b.fixtureKind('s', {}, { modes: [{ id: 'm', name: 'm', slots: 1, parts: 1 }], addressBy: 'switches' });
    b.put({ id: 'universe-1', type: 'universe', number: 1, name: '', colorIndex: 0 });
    b.fixture('s', { patch: { modeId: 'm', universeId: 'universe-1', address: 247, paired: false } });
    const words = texts(pagesOf(b.plan(), 'Setup cards'));
    expect(words).toContain('on 1 2 3 5 6 7 8');
    expect(words).toContain('Set the switches');
    expect(texts(pagesOf(patched([1]), 'Setup cards'))).not.toContain('Set the switches');
  });

  it('tell a radio unit to clear its old link before a new one is made', () => {
    const plan = patched([{ slots: 1, more: { link: 'radio' } }]);
    const [f] = recordsOf(plan, 'fixture');
    if (!f) throw new Error('no unit');
    const ids = setupSteps(plan, f).map((s) => s.id);
    expect(ids[0]).toBe('reset');
    expect(ids.indexOf('unlink')).toBe(ids.indexOf('link') - 1);
    expect(texts(pagesOf(plan, 'Setup cards'))).toContain('Clear the old link');
  });
});
