import { describe, expect, it } from 'vitest';
import { computeRigging, riggingFindings } from '../../../src/engines/rigging/index.ts';
import type { RecordOf } from '../../../src/plan/records/index.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const found = (b: RiggingRig) => riggingFindings(b.plan()).map((f) => `${f.severity} ${f.rule}`);

const lift = (record: Partial<RecordOf<'rigging'>> = {}, massKg = 0, plan = {}) => {
  const b = new RiggingRig(plan);
  b.riggingKind('boom-lift', {
    what: 'lift',
    ratedLoadKg: 230,
    heightMinMm: 0,
    heightMaxMm: 12_000,
    reachMm: 6500,
    people: 2,
    windLimitMps: 12.5,
    operator: 'a trained person',
  });
  const r = b.hung('boom-lift', { heightMm: 9000, ...record });
  const kind = b.fixtureKind('lamp', {}, { massKg });
  const f =
    massKg > 0
      ? b.fixture(kind.id, { heightMm: 9000, support: { on: 'rigged', riggingId: r.id } })
      : undefined;
  return { b, r, f };
};

describe('tube, points, lifts and cranes', () => {
  it('rigging-hung-load: people count 80 kg each and 40 kg of tools', () => {
    const { b, r } = lift({ people: 2 }, 30);
    expect(computeRigging(b.plan()).rigging.get(r.id)).toMatchObject({
      gearKg: 30,
      peopleKg: 200,
      loadKg: 230,
    });
    expect(found(b)).toEqual([]);
    expect(found(lift({ people: 2 }, 30.5).b)).toEqual(['stop rigging-hung-load']);
  });

  it('rigging-hung-load: the plan’s own rating comes before the kind’s', () => {
    expect(found(lift({ ratedLoadKg: 25 }, 30).b)).toEqual(['stop rigging-hung-load']);
  });

  it('rigging-rating: without a rating nothing is compared, and a note asks for it once something hangs there', () => {
    const b = new RiggingRig();
    b.riggingKind('tube');
    const r = b.hung('tube');
    expect(found(b)).toEqual([]);
    b.fixtureKind('lamp', {}, { massKg: 9000 });
    b.fixture('lamp', { support: { on: 'rigged', riggingId: r.id } });
    expect(found(b)).toEqual(['note rigging-rating']);
  });

  it('rigging-people, rigging-reach, rigging-operator', () => {
    expect(found(lift({ people: 3, ratedLoadKg: 500 }).b)).toEqual(['stop rigging-people']);
    expect(found(lift({ heightMm: 12_500 }).b)).toEqual(['warn rigging-reach']);
    expect(found(lift({ reachMm: 6500 }).b)).toEqual([]);
    expect(found(lift({ reachMm: 7000 }).b)).toEqual(['warn rigging-reach']);
    expect(found(lift({ operator: ' ' }).b)).toEqual(['note rigging-operator']);
  });

  it('rigging-lift-wind: above its limit stops, unknown wind says nothing', () => {
    expect(found(lift({}, 0, { windMps: 12.5 }).b)).toEqual([]);
    expect(found(lift({}, 0, { windMps: 12.6 }).b)).toEqual(['stop rigging-lift-wind']);
    expect(found(lift({}, 0).b)).toEqual([]);
  });

  it('rigging-cable-up: the way along the arm, against the pieces of the run', () => {
    const { b, r, f } = lift({ reachMm: 6000, heightMm: 8000 }, 20);
    expect(computeRigging(b.plan()).rigging.get(r.id)?.cableUpMm).toBeCloseTo(10_000, 9);
    b.sourceKind('set', {
      outlets: [{ id: 'out', connector: 'stage-pin-20', legs: 1, neutral: true }],
      system: '120',
    });
    const s = b.source('set', { voltsV: 120 });
    b.cableKind('lead');
    const cable = b.cable('lead', [s.id, 'out'], [f?.id ?? '', 'in'], 10_900, { slackPct: 0 });
    // 9 m up the lamp, 2 m more along the arm than straight up.
    expect(found(b)).toEqual(['warn rigging-cable-up']);
    b.put({ ...cable, piecesMm: [11_000] });
    expect(found(b)).toEqual([]);
  });
});
