import { describe, expect, it } from 'vitest';
import { computeRigging, guyAt, riggingFindings, windLine } from '../../../src/engines/rigging/index.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const found = (b: RiggingRig) => riggingFindings(b.plan()).map((f) => `${f.severity} ${f.rule}`);

/** A frame of 4 m² on two stands of 1.3 m. */
const frame = (plan = {}, grip = {}, kind = {}, bags = 0) => {
  const b = new RiggingRig(plan);
  b.standKind('roller', { massKg: 20, legCircleMm: 1300, ratedLoadKg: 40 });
  b.gripKind('frame', { what: 'frame', massKg: 10, areaM2: 4, windShare: 0.1, stands: 2, guys: 4, ...kind });
  b.gripKind('silk', { what: 'cloth', massKg: 1, areaM2: 4, windShare: 1, stands: 0 });
  b.gripKind('net', { what: 'cloth', massKg: 1, areaM2: 4, windShare: 0.5, stands: 0 });
  const supports = [-1, 1].map((k) => b.stand('roller', { bags, at: { xMm: 0, yMm: k * 1200 } }).id);
  const g = b.grip('frame', { supports, clothId: 'silk', ...grip });
  const r = computeRigging(b.plan());
  return { b, g, r, sail: r.sails.get(g.id), t: r.tipping.get(g.id) };
};

describe('frames', () => {
  it('rigging-wind-open: wind is never assumed; one note asks, 0 answers', () => {
    const open = frame();
    expect(found(open.b)).toEqual(['note rigging-wind-open']);
    expect(open.t?.pushes).toEqual([]);
    expect(open.t?.moments.factor).toBe(Infinity);
    expect(found(frame({ windMps: 0 }).b)).toEqual([]);
  });

  it('rigging-wind-open: a small flag does not ask', () => {
    const b = new RiggingRig();
    b.gripKind('flag', { areaM2: 0.5 });
    b.grip('flag');
    expect(found(b)).toEqual([]);
  });

  it('rigging-wind-force: a cloth has its share, a frame without one counts as solid and says so', () => {
    const at = (clothId: string) => {
      const { sail, r } = frame({}, { clothId });
      return { ...sail, n: sail && windLine(r, sail, 5).forceN };
    };
    const solidN = 0.613 * 25 * 1.8 * 4;
    expect(at('silk').n).toBeCloseTo(solidN, 9);
    expect(at('net').n).toBeCloseTo(solidN / 2, 9);
    const b = frame().b;
    const { clothId: _none, ...bare } = b.records.get(frame().g.id) as never as { clothId: string };
    b.put(bare as never);
    const sail = [...computeRigging(b.plan()).sails.values()][0];
    expect([sail?.share, sail?.shareAssumed]).toEqual([1, true]);
  });

  it('rigging-base: a frame joins its stands, which tip together and share the bags', () => {
    const { t, g, r } = frame({ windMps: 5 });
    expect(t?.base.uses).toHaveLength(2);
    for (const s of g.supports) expect(r.tipping.get(s)).toBe(t);
    expect(t?.moments.overturningNm).toBeCloseTo(0.613 * 25 * 1.8 * 4 * 2, 6);
    expect(t?.moments.restoringNm).toBeCloseTo(9.81 * (40 + 11) * 0.325, 6);
  });

  it('rigging-tip: with the lines its kind asks for, a factor below 1 warns and does not stop', () => {
    const severity = (guys: number) =>
      riggingFindings(frame({ windMps: 6 }, { guys }).b.plan()).find((f) => f.rule === 'rigging-tip')
        ?.severity;
    expect(severity(0)).toBe('stop');
    expect(severity(3)).toBe('stop');
    expect(severity(4)).toBe('warn');
  });

  it('rigging-tip-wind: at the speed that tips, the factor is 1', () => {
    const { t } = frame();
    const again = frame({ windMps: t?.windMps ?? Number.NaN });
    expect(again.t?.moments.factor).toBeCloseTo(1, 9);
  });

  it('rigging-guys: fewer lines than the kind asks for are told in wind only', () => {
    expect(found(frame({ windMps: 1 }, { guys: 3 }).b)).toContain('warn rigging-guys');
    expect(found(frame({ windMps: 1 }, { guys: 4 }).b)).not.toContain('warn rigging-guys');
    expect(found(frame({ windMps: 0 }, { guys: 0 }).b)).toEqual([]);
  });

  it('rigging-guys: pull = F·h ÷ (top · half the lines · cos 45°)', () => {
    const { r, sail } = frame({}, { guys: 4 });
    const forceN = 0.613 * 25 * 1.8 * 4;
    // Middle at 2 m, 1 m high itself, so its top is at 2.5 m; two of four lines are to windward.
    expect(sail && guyAt(r.model, sail, 5)).toBeCloseTo((forceN * 2) / (2.5 * 2 * Math.SQRT1_2), 6);
    const one = frame({}, { guys: 1 });
    expect(one.sail && guyAt(one.r.model, one.sail, 5)).toBe(Infinity);
  });

  it('rigging-frame-stands: fewer stands than it takes, unless it hangs', () => {
    const { b, g } = frame({ windMps: 0 });
    b.put({ ...g, supports: g.supports.slice(0, 1) });
    expect(found(b)).toContain('warn rigging-frame-stands');
    b.riggingKind('tube', { ratedLoadKg: 100 });
    const tube = b.hung('tube');
    b.put({ ...g, supports: [], riggingId: tube.id });
    expect(found(b)).toEqual([]);
  });

  it.each([
    [4.4, undefined],
    [4.5, 'note'],
    [6.7, 'warn'],
    [8.9, 'warn'],
  ])('rigging-wind: large frames in %d m/s', (windMps, severity) => {
    const f = riggingFindings(frame({ windMps }, { guys: 4 }, {}, 90).b.plan());
    expect(f.find((x) => x.rule === 'rigging-wind')?.severity).toBe(severity);
  });
});
