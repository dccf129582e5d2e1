import { describe, expect, it } from 'vitest';
import { computeRigging, riggingFindings, riggingKey } from '../../../src/engines/rigging/index.ts';
import { explain, explainOrWhy } from '../../../src/report/explain.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const found = (b: RiggingRig) => riggingFindings(b.plan()).map((f) => `${f.severity} ${f.rule}`);
const only = (b: RiggingRig, rule: string) => riggingFindings(b.plan()).filter((f) => f.rule === rule);

/** A stand of 20 kg rated load and a circle of 1 m, with one fixture on it. */
const rig = (massKg: number, stand = {}, kind = {}, fixture = {}, plan = {}) => {
  const b = new RiggingRig(plan);
  b.standKind('stand', kind);
  const s = b.stand('stand', stand);
  const f = b.on(s.id, massKg, fixture);
  return { b, s, f };
};

describe('the stands engine', () => {
  it('rigging-load: up to the rated load nothing is said, above it stops', () => {
    expect(found(rig(20, { bags: 8 }).b)).toEqual([]);
    const { b, s, f } = rig(20.1, { bags: 8 });
    const [finding] = only(b, 'rigging-load');
    expect(finding).toMatchObject({ severity: 'stop', recordIds: [s.id, f.id], params: { ratedKg: 20 } });
    expect(finding?.params.loadKg).toBeCloseTo(20.1, 9);
  });

  it('rigging-load: an override of the factor counts', () => {
    const limits = [{ limit: 'rigging-load-factor', value: 0.8, reason: 'house rule' }];
    const { b } = rig(17, { bags: 8 }, {}, {}, { limits });
    expect(only(b, 'rigging-load')[0]?.params.ratedKg).toBeCloseTo(16, 9);
  });

  it('rigging-mass: accessories and the share of a frame are in the load, sand bags are not', () => {
    const { b, s } = rig(10, { bags: 3 }, {}, { accessories: ['head', 'head'] });
    b.riggingKind('head', { what: 'head', massKg: 0.9 });
    b.gripKind('frame', { what: 'frame', massKg: 8, stands: 2 });
    b.gripKind('silk', { what: 'cloth', massKg: 2 });
    const other = b.stand('stand', { at: { xMm: 3000, yMm: 0 } });
    b.grip('frame', { supports: [s.id, other.id], clothId: 'silk' });
    const r = computeRigging(b.plan());
    expect(r.stands.get(s.id)?.loadKg).toBeCloseTo(10 + 1.8 + 5, 9);
    expect(r.stands.get(other.id)?.loadKg).toBeCloseTo(5, 9);
  });

  it('rigging-mass: a fixture whose kind is not there makes the load unknown, and no load is judged', () => {
    const { b, s, f } = rig(10);
    b.records.delete(f.kindId);
    expect(computeRigging(b.plan()).stands.get(s.id)?.loadKg).toBeNaN();
    expect(only(b, 'rigging-load')).toEqual([]);
  });

  it('rigging-receiver: a spigot does not fit a pin until an adapter is among the accessories', () => {
    const pin = { receives: ['pin-16' as const] };
    expect(found(rig(3, { bags: 3 }, pin).b)).toEqual(['warn rigging-receiver']);
    const { b } = rig(3, { bags: 3 }, pin, { accessories: ['adapter'] });
    b.riggingKind('adapter', { what: 'head', fits: ['pin-16'], receives: ['spigot-28'] });
    expect(found(b)).toEqual([]);
  });

  it('rigging-receiver: an accessory that does not go on the stand helps nothing', () => {
    const { b } = rig(3, { bags: 3 }, { receives: ['pin-16'] }, { accessories: ['coupler'] });
    b.riggingKind('coupler', { what: 'clamp', fits: ['clamp'], receives: ['spigot-28'] });
    expect(found(b)).toEqual(['warn rigging-receiver']);
  });

  it('rigging-receiver: accessories join in any order, one on the other', () => {
    const { b } = rig(3, { bags: 5 }, { receives: ['pin-16'] }, { accessories: ['last', 'first'] });
    b.riggingKind('first', { what: 'head', fits: ['pin-16'], receives: ['grip-head'] });
    b.riggingKind('last', { what: 'clamp', fits: ['grip-head'], receives: ['spigot-28'] });
    expect(found(b)).toEqual([]);
  });

  it('rigging-receiver: a flag needs a grip head, a hung unit says nothing', () => {
    const b = new RiggingRig({ windMps: 0 });
    b.standKind('plain', { receives: ['pin-16'] });
    b.gripKind('flag');
    const s = b.stand('plain', { bags: 1 });
    b.grip('flag', { supports: [s.id] });
    expect(found(b)).toEqual(['warn rigging-receiver']);
    const hung = rig(3, { bags: 3 }, { receives: ['pin-16'] });
    const kind = hung.b.records.get(hung.f.kindId);
    if (kind?.type === 'kind') hung.b.put({ ...kind, mount: { fits: ['hung'] } } as typeof kind);
    expect(found(hung.b)).toEqual([]);
  });

  it.each([
    [998, 1],
    [1000, 0],
    [4000, 0],
    [4002, 1],
  ])('rigging-height: a stand from 1 to 4 m at %i mm', (heightMm, count) => {
    expect(only(rig(3, { heightMm, bags: 3 }).b, 'rigging-height')).toHaveLength(count);
  });

  it('rigging-arm-load: the arm is held to what is at its end', () => {
    const make = (massKg: number) => {
      const { b } = rig(massKg, { bags: 9 }, {}, { accessories: ['arm', 'flag'] });
      b.riggingKind('arm', { what: 'arm', ratedLoadKg: 5, reachMm: 400 });
      b.gripKind('flag', { massKg: 1 });
      return found(b);
    };
    expect(make(4)).toEqual([]);
    expect(make(4.1)).toEqual(['stop rigging-arm-load']);
  });

  it('rigging-arm: the plan’s distance comes before the reach, and a counterweight holds', () => {
    const factor = (arm: object, bags = 0) => {
      const { b, s } = rig(6, { bags }, {}, { accessories: ['arm'], arm: { overLeg: false, ...arm } });
      b.riggingKind('arm', { what: 'arm', massKg: 0, reachMm: 2000 });
      return computeRigging(b.plan()).tipping.get(s.id)?.moments.factor ?? Number.NaN;
    };
    // 6 kg of stand hold with 6 × 0.25, 6 kg at 2 m tip with 6 × 1.75.
    expect(factor({})).toBeCloseTo(0.25 / 1.75, 9);
    expect(factor({ outMm: 500 })).toBeCloseTo(1, 9);
    expect(factor({ outMm: 250 })).toBe(Infinity);
    // The balanced arm holds with 6 × (0.25 + 0.5) besides; seen from behind the counterweight is 0.25 m out.
    expect(factor({ outMm: 500, counterKg: 6, counterMm: 500 })).toBeCloseTo(
      (6 * 0.25 + 6 * 0.75) / (6 * 0.25),
      9,
    );
  });

  it('rigging-arm: a counterweight that is too heavy tips the other way', () => {
    const { b, s } = rig(
      1,
      {},
      {},
      { accessories: ['arm'], arm: { overLeg: false, outMm: 300, counterKg: 30, counterMm: 1000 } },
    );
    b.riggingKind('arm', { what: 'arm', massKg: 0, reachMm: 2000 });
    expect(computeRigging(b.plan()).tipping.get(s.id)?.moments.factor).toBeLessThan(1);
    expect(only(b, 'rigging-tip')[0]?.severity).toBe('stop');
  });

  it('rigging-tip: between 1 and 1.5 warns, from 1.5 on nothing; the bags asked for are enough and not too many', () => {
    const at = (outMm: number, bags = 0) => {
      const { b, s } = rig(
        6,
        { bags, heightMm: 1000 },
        {},
        { accessories: ['arm'], arm: { overLeg: false, outMm } },
      );
      b.riggingKind('arm', { what: 'arm', massKg: 0, reachMm: 2000 });
      return { b, t: computeRigging(b.plan()).tipping.get(s.id) };
    };
    // Factor 0.25 / (out − 0.25).
    expect(only(at(510).b, 'rigging-tip')[0]?.severity).toBe('stop');
    expect(only(at(490).b, 'rigging-tip')[0]?.severity).toBe('warn');
    expect(only(at(416).b, 'rigging-tip')).toEqual([]);
    const wanted = at(1000).t?.bagsWanted ?? 0;
    expect(wanted).toBeGreaterThan(0);
    expect(only(at(1000, wanted).b, 'rigging-tip')).toEqual([]);
    expect(only(at(1000, wanted - 1).b, 'rigging-tip')).toHaveLength(1);
    // Once they hang, no more are asked for.
    expect(at(1000, wanted).t?.bagsWanted).toBe(wanted);
  });

  it('rigging-tilt: a heavy lamp high on a small stand is told, a bag cures it', () => {
    const kind = { massKg: 3, legCircleMm: 900 };
    expect(found(rig(12, { heightMm: 3900 }, kind).b)).toEqual(['warn rigging-tilt']);
    expect(found(rig(12, { heightMm: 3900, bags: 2 }, kind).b)).toEqual([]);
  });

  it('rigging-tilt: tan θ = Σ m r ÷ Σ m h', () => {
    const { b, s } = rig(10, { heightMm: 2000 });
    const t = computeRigging(b.plan()).tipping.get(s.id);
    const want = Math.atan2(16 * 250, 10 * 2000 + 6 * 0.35 * 2000);
    expect(t?.tiltDeg).toBeCloseTo((want * 180) / Math.PI, 9);
  });

  it('rigging-base: an empty stand says nothing, however it stands', () => {
    const b = new RiggingRig({ windMps: 30 });
    b.standKind('stand');
    b.stand('stand', { heightMm: 9000 });
    expect(found(b)).toEqual([]);
  });

  it('rigging-kind: grip gear and rigging without a kind are told', () => {
    const b = new RiggingRig();
    b.grip('gone');
    b.hung('gone');
    expect(found(b)).toEqual(['warn rigging-kind', 'warn rigging-kind']);
  });

  it('rigging-tip: a figure is explained from its key, with its inputs and the result', () => {
    const { b, s } = rig(10, { bags: 1 }, {}, { accessories: ['arm'], arm: { overLeg: false, outMm: 600 } });
    b.riggingKind('arm', { what: 'arm', massKg: 0, reachMm: 2000 });
    const w = explain(b.plan(), riggingKey('tipFactor', s.id));
    // Stand 6 kg and a bag of 11.3 kg hold with 0.25 m, 10 kg tip with 0.35 m.
    expect(w?.result).toBe(((17.3 * 0.25) / (10 * 0.35)).toFixed(2));
    expect(w?.inputs.map((i) => i.name)).toEqual(
      expect.arrayContaining(['1 sand bag', 'arm', 'wind', 'tip factor']),
    );
    const why = explainOrWhy(b.plan(), riggingKey('windN', s.id));
    expect(!why.ok && why.error.what).toMatch(/has no figure/);
    expect(explain(b.plan(), riggingKey('tipFactor', 'gone'))).toBeUndefined();
  });
});
