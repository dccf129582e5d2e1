import { describe, expect, test } from 'vitest';
import { limitOf } from '../../../src/derive/limits.ts';
import { applyChanges, isEmptyChange } from '../../../src/plan/change-set.ts';
import { settingsChange, withLimit, withPractice, withSetting } from '../../../src/plan/edits/settings.ts';
import { planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { settingsWords } from '../../../src/report/settings-words.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const street = demoPlan('street');

describe('settings of a plan', () => {
  test('another practice says in words that legs, colours and rules change, and that gear does not', () => {
    const europe = withPractice(street, 'europe');
    const words = settingsWords(street, europe).join('\n');
    expect(planRecord(europe)).toMatchObject({ practice: 'europe', frequencyHz: 50 });
    expect(planRecord(europe).country).toBeUndefined();
    expect(words).toContain('Legs of G1 are called L1 L2 L3 in place of A B C.');
    expect(words).toMatch(/Conductors of G1 .*L1 brown/);
    expect(words).toMatch(/Ib ≤ In\. Was 0\.8, is 1 share of rating/);
    expect(words).toContain('Gear stays as it is');
    expect(words).toMatch(/Inrush .* 50 Hz/);
    // The way with 23.5 A on 20 A is over either limit; the one with 15.7 A on 20 A is close to 16 A only.
    const ids = (p: typeof street) => assess(p, { revision: 0 }).findings.map((f) => f.id);
    expect(ids(street)).not.toEqual(ids(europe));
  });

  test('nothing changed says nothing', () => {
    expect(settingsWords(street, street)).toEqual([]);
    expect(isEmptyChange(settingsChange(street, street))).toBe(true);
  });

  test('a country tells its rules and colours, and nothing of legs', () => {
    const r = withSetting(street, 'plan', { country: 'canada' });
    if (!r.ok) throw new Error(r.error.what);
    const words = settingsWords(street, r.value);
    expect(words.join('\n')).toMatch(/up to 225 A that runs for more than one hour.* Was 3, is 1 h/);
    expect(words.some((w) => w.startsWith('Legs of'))).toBe(false);
  });

  test('a field emptied is taken out, and all changes together are one change-set', () => {
    const source = recordsOf(street, 'source')[0];
    if (!source) throw new Error('no source');
    const loop = withSetting(street, source.id, { loopOhm: 0.12, voltsV: 118.5 });
    if (!loop.ok) throw new Error(loop.error.what);
    const bare = withSetting(loop.value, source.id, { loopOhm: undefined });
    if (!bare.ok) throw new Error(bare.error.what);
    expect(Object.keys(recordsOf(bare.value, 'source')[0] ?? {})).not.toContain('loopOhm');
    const hot = withSetting(bare.value, 'plan', { ambientC: 45, altitudeM: 1600 });
    if (!hot.ok) throw new Error(hot.error.what);
    const changes = settingsChange(street, hot.value);
    expect(changes.updated.map((u) => u.to.id).sort()).toEqual(['plan', source.id].sort());
    expect(planRecord(applyChanges(street, changes)).altitudeM).toBe(1600);
  });

  test('a value that does not fit is a problem that names its field', () => {
    const r = withSetting(street, 'plan', { frequencyHz: 55 });
    expect(r.ok).toBe(false);
    if (!r.ok) expect(r.error.where).toBe('frequencyHz');
  });

  test('a limit of the plan’s own holds, tells, rests where its practice has none, and goes back', () => {
    const own = withLimit(street, 'drop-branch', 4, 'asked by the gaffer');
    expect(limitOf(own, 'drop-branch').value).toBe(4);
    expect(settingsWords(street, own)).toEqual([
      'Advice: no more than 3 % volts lost in the branch circuit, from its breaker to the load. Was 3, is 4 %.',
    ]);
    expect(settingsWords(own, withPractice(own, 'europe')).join('\n')).toContain(
      'own limit “drop-branch” has no place in this practice and rests',
    );
    expect(planRecord(withLimit(own, 'drop-branch', undefined, '')).limits).toEqual(
      planRecord(street).limits,
    );
  });
});
