import { describe, expect, it } from 'vitest';
import type { PackKind } from '../../../src/plan/kinds/kinds.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const air = (
  packs: readonly (readonly [wh: number, count: number])[],
  settings: { readonly byAir?: boolean; readonly travellers?: number } = { byAir: true },
  kind: Partial<PackKind> = {},
) => {
  const r = batteryRig({ batteries: settings });
  for (const [wh, count] of packs) {
    r.pack(`pack-${wh}`, { energyWh: wh, ...kind });
    r.stock(`pack-${wh}`, count);
  }
  const plan = r.b.plan();
  return assess(plan, { revision: 0 })
    .findings.filter((f) => f.rule.startsWith('battery-air'))
    .map((f) => ({ rule: f.rule, severity: f.severity, text: findingText(plan, f) }));
};

describe('packs on passenger aircraft', () => {
  it('battery-air: 100 and 160 Wh belong to the lower class, above is cargo (49 CFR 175.10(a)(18), IATA DGR 2.3, 2026)', () => {
    expect(air([[100, 4]]).map((f) => f.rule)).toEqual(['battery-air-spares']);
    expect(air([[100.1, 4]]).map((f) => f.rule)).toEqual(['battery-air-ask']);
    expect(air([[160, 4]]).map((f) => f.rule)).toEqual(['battery-air-ask']);
    expect(air([[160.1, 4]]).map((f) => f.rule)).toEqual(['battery-air-cargo']);
  });

  it('battery-air: two spares a person between the limits, twenty below, and who travels is held against it', () => {
    expect(air([[150, 5]])[0]?.text.body).toContain('5 of them take 3 people');
    // Two a person whatever the kinds: three of one and four of another are seven.
    const two = air([
      [150, 3],
      [140, 4],
    ]);
    expect(two.map((f) => f.text.body.includes('7 packs between the limits in all, take 4 people'))).toEqual([
      true,
      true,
    ]);
    expect(air([[98, 20]])[0]).toMatchObject({ severity: 'note' });
    const [many] = air([[98, 41]], { byAir: true, travellers: 2 });
    expect(many?.severity).toBe('warn');
    expect(many?.text.body).toContain('41 of them take 3 people; 2 people travel');
    expect(air([[98, 40]], { byAir: true, travellers: 2 })[0]?.severity).toBe('note');
  });

  it('battery-air: every text names its source and the date it was looked at', () => {
    for (const f of air([
      [98, 4],
      [150, 4],
      [300, 1],
    ]))
      expect(f.text.citation).toMatch(/49 CFR 175\.10.*as of 2026-03/);
  });

  it('battery-air: nothing is said where packs do not fly, or hold no lithium; units with cells are told', () => {
    expect(air([[300, 4]], {})).toEqual([]);
    expect(air([[300, 4]], { byAir: true }, { chemistry: 'lead-acid' })).toEqual([]);
    const r = batteryRig({ batteries: { byAir: true } });
    r.b.fixtureKind('tube', { wattsW: 40 }, { ownCellsWh: 110 });
    r.b.fixture('tube', { id: '1', unit: '1' });
    const plan = r.b.plan();
    const f = assess(plan, { revision: 0 }).findings.find((x) => x.rule === 'battery-air-ask');
    expect(f?.recordIds).toEqual(['1']);
    expect(f && findingText(plan, f).body).not.toContain('spares');
  });
});
