import { describe, expect, test } from 'vitest';
import { cablesInCrossings, rampPieces } from '../../../src/derive/crossings.ts';
import { isWetSpot, stretchesOn } from '../../../src/derive/outdoors.ts';
import { overheadLimit } from '../../../src/derive/overhead.ts';
import { siteFindings } from '../../../src/engines/site/index.ts';
import { needKind } from '../../../src/gear/index.ts';
import { type Point, point } from '../../../src/kernel/geometry.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Crossing, Feature, FeatureWhat } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const NA = 'north-america';
const STAND = needKind(NA, 'stand-crank-heavy', 'stand');

const feature = (
  what: FeatureWhat,
  points: readonly (readonly [number, number])[],
  more: Partial<Feature> = {},
): Feature => ({
  id: `f-${what}`,
  type: 'feature',
  floorId: 'floor',
  what,
  points: points.map(([x, y]) => point(x, y)),
  closed: points.length > 2,
  heightMm: 0,
  label: '',
  ...more,
});

const square = (what: FeatureWhat, more: Partial<Feature> = {}): Feature =>
  feature(
    what,
    [
      [0, 0],
      [4000, 0],
      [4000, 4000],
      [0, 4000],
    ],
    more,
  );

const site = (practice: 'north-america' | 'europe' = NA): PlanBuilder => {
  const b = new PlanBuilder({ practice });
  b.put(STAND);
  return b;
};

const stand = (b: PlanBuilder, at: Point, heightMm = 2000, id = 'stand'): void => {
  b.put({ id, type: 'stand', floorId: 'floor', kindId: STAND.id, at, rotationDeg: 0, heightMm });
};

const rules = (plan: Plan): readonly string[] => siteFindings(plan).map((f) => f.rule);
const words = (plan: Plan, rule: string) => {
  const f = assess(plan, { revision: 0 }).findings.find((x) => x.rule === rule);
  if (!f) throw new Error(`no ${rule}`);
  return findingText(plan, f);
};

describe('where gear stands', () => {
  test('site-clear: a stand in a fire lane and in an exit stops; its legs count, and one outside does not', () => {
    const b = site();
    b.put(square('fire-lane', { label: 'North lane' }));
    b.put(feature('exit', [[20_000, 0]]));
    stand(b, point(2000, 2000), 2000, 'inside');
    stand(b, point(4000 + STAND.legCircleMm / 2 - 50, 2000), 2000, 'legs');
    stand(b, point(4000 + STAND.legCircleMm / 2 + 50, 2000), 2000, 'clear');
    stand(b, point(20_000 + 1200 + STAND.legCircleMm / 2 - 10, 0), 2000, 'at-exit');
    const found = siteFindings(b.plan());
    expect(found.map((f) => [f.rule, f.severity, f.params.count])).toEqual([
      ['site-clear', 'stop', 1],
      ['site-clear', 'stop', 2],
    ]);
    expect(found.flatMap((f) => f.recordIds)).not.toContain('clear');
    const t = words(b.plan(), 'site-clear');
    expect(t.head).toMatch(/is not clear/);
    expect(t.body).toMatch(/authority having jurisdiction/);
    expect(t.citation).toMatch(/NFPA 101.*from memory/);
  });

  test('site-clear: what hangs overhead is not in the way; nothing is said where nothing is drawn', () => {
    const b = site();
    stand(b, point(0, 0));
    expect(rules(b.plan())).toEqual([]);
    const kind = needKind(NA, 'led-panel-60x60', 'fixture');
    b.put(kind);
    b.put(square('fire-lane'));
    b.records.delete('stand');
    b.put({
      id: 'hung',
      type: 'fixture',
      floorId: 'floor',
      kindId: kind.id,
      at: point(2000, 2000),
      heightMm: 5000,
      aim: { at: 'facing', facingDeg: 0, tiltDeg: -90 },
      support: { on: 'rigged' },
      unit: '1',
      channel: '',
      use: '',
      gel: '',
      link: 'none',
      onPacks: false,
    });
    expect(rules(b.plan())).toEqual([]);
  });
});

describe('overhead lines', () => {
  // OSHA 29 CFR 1926.1408 table A, from memory: 10, 15, 20, 25, 35 and 45 ft up to 50, 200, 350, 500, 750 and 1000 kV.
  test('site-overhead: distances to keep by volts are those of table A, in feet rounded as it prints them', () => {
    const plan = site().plan();
    const feet = [11, 50, 51, 200, 345, 500, 765, 1000].map((kv) =>
      Math.round(overheadLimit(plan, kv * 1000).needMm / 304.8),
    );
    expect(feet).toEqual([10, 10, 15, 15, 20, 25, 45, 45]);
    // 1926.1408(a)(2), from memory: 20 ft where the volts are not known.
    expect(Math.round(overheadLimit(plan, undefined).needMm / 304.8)).toBe(20);
    // HSE GS6, from memory: 9 m from poles, 15 m from towers, to the side.
    const europe = site('europe').plan();
    expect([11_000, 132_000, undefined].map((v) => overheadLimit(europe, v).needMm)).toEqual([
      9000, 15_000, 15_000,
    ]);
  });

  const line = (heightMm: number, voltsV?: number): Feature =>
    feature(
      'power-line',
      [
        [-50_000, 0],
        [50_000, 0],
      ],
      { heightMm, ...(voltsV === undefined ? {} : { voltsV }) },
    );

  test('site-overhead: the distance goes through space from the top of the stand to the lowest wire', () => {
    const half = STAND.legCircleMm / 2;
    const at = (side: number, top: number): readonly string[] => {
      const b = site();
      b.put(line(6000, 11_000));
      stand(b, point(0, side + half), top);
      return rules(b.plan());
    };
    // 3 m to the side and 4 m below: 5 m away; 10 ft to keep.
    expect(at(3000, 2000)).not.toContain('site-overhead');
    // 2 m to the side and 2 m below: 2.83 m.
    expect(at(2000, 4000)).toContain('site-overhead');
    // Above the wire only the side counts.
    expect(at(3100, 7000)).not.toContain('site-overhead');
    expect(at(3000, 7000)).toContain('site-overhead');
  });

  test('site-overhead-reach: a stand that could be run up to the line is told, as it stands or not at all', () => {
    const b = site();
    b.put(line(STAND.heightMaxMm + 1000, 11_000));
    stand(b, point(0, 0), STAND.heightMinMm);
    expect(siteFindings(b.plan()).map((f) => [f.rule, f.severity])).toEqual([
      ['site-overhead-reach', 'warn'],
    ]);
    expect(words(b.plan(), 'site-overhead-reach').todo).toMatch(/cannot reach/);
    const far = site();
    far.put(line(STAND.heightMaxMm + 4000, 11_000));
    stand(far, point(0, 0), STAND.heightMinMm);
    expect(rules(far.plan())).toEqual([]);
  });

  test('site-overhead-unknown: no height, nothing computed, and it is said who is asked', () => {
    const b = site();
    b.put(line(0));
    stand(b, point(0, 5000));
    expect(rules(b.plan())).toEqual(['site-overhead-unknown']);
    const t = words(b.plan(), 'site-overhead-unknown');
    expect(`${t.body} ${t.todo}`).toMatch(/not computed.*[Oo]wner/);
    // To the side only, whatever the heights.
    const e = site('europe');
    e.put(line(0));
    stand(e, point(0, 14_000));
    expect(rules(e.plan())).toEqual(['site-overhead']);
  });

  test('site-overhead: no text about a line says that anything is safe', () => {
    const b = site();
    b.put(line(3000, 11_000));
    stand(b, point(0, 0));
    const t = words(b.plan(), 'site-overhead');
    expect(`${t.head} ${t.body} ${t.todo}`).not.toMatch(/\bsafe|compliant/i);
    expect(t.body).toMatch(/owner and the authority having jurisdiction decide/);
    expect(t.citation).toMatch(/1926\.1408/);
  });
});

/** A cable from a box at (−2, 2) m to one at (6, 2) m, straight across the square. */
const crossed = (more: (b: PlanBuilder) => void = () => {}): Plan => {
  const b = site();
  const kind = needKind(NA, 'quad-box-20', 'box');
  b.put(kind);
  for (const [id, x] of [
    ['left', -2000],
    ['right', 6000],
  ] as const)
    b.put({
      id,
      type: 'box',
      floorId: 'floor',
      kindId: kind.id,
      at: point(x, 2000),
      rotationDeg: 0,
      label: id,
    });
  b.put({
    id: 'run',
    type: 'cable',
    kindId: 'none',
    from: { recordId: 'left', portId: 'o1' },
    to: { recordId: 'right', portId: 'in' },
    route: { auto: false, points: [] },
    label: '',
  });
  more(b);
  return b.plan();
};

const ramp = (more: Partial<Crossing> = {}): Crossing => ({
  id: 'ramp',
  type: 'crossing',
  floorId: 'floor',
  at: point(2000, 2000),
  rotationDeg: 0,
  lengthMm: 4600,
  how: 'ramp',
  heightMm: 0,
  channels: 5,
  ...more,
});

describe('cables across ways', () => {
  test('site-crossing: counted per way, and gone with a ramp or a flown crossing over it', () => {
    const open = crossed((b) => b.put(square('road')));
    expect(siteFindings(open).map((f) => [f.rule, f.severity, f.params.count])).toEqual([
      ['site-crossing', 'warn', 1],
    ]);
    expect(words(open, 'site-crossing').head).toBe('One cable across a road without a ramp');
    for (const how of ['ramp', 'flown'] as const)
      expect(rules(crossed((b) => b.put(square('road')) && b.put(ramp({ how }))))).toEqual([]);
    // A ramp somewhere else does not take it.
    expect(rules(crossed((b) => b.put(square('road')) && b.put(ramp({ at: point(2000, 3500) }))))).toEqual([
      'site-crossing',
    ]);
    // Water and trees are no ways that stay open.
    expect(rules(crossed((b) => b.put(square('water'))))).toEqual([]);
  });

  test('site-door: a cable through a door on the floor is a note; one past it, or through a window, is none', () => {
    const wall = (b: PlanBuilder, offsetMm: number, what: 'door' | 'window' = 'door'): void => {
      b.put({
        id: 'w',
        type: 'wall',
        floorId: 'floor',
        from: point(2000, 0),
        to: point(2000, 6000),
        thicknessMm: 150,
        heightMm: 2700,
        material: 'brick',
      });
      b.put({
        id: 'o',
        type: 'opening',
        wallId: 'w',
        what,
        offsetMm,
        widthMm: 900,
        heightMm: 2000,
        sillMm: what === 'window' ? 900 : 0,
      });
    };
    expect(siteFindings(crossed((b) => wall(b, 1600))).map((f) => [f.rule, f.severity])).toEqual([
      ['site-door', 'note'],
    ]);
    expect(rules(crossed((b) => wall(b, 3000)))).toEqual([]);
    expect(rules(crossed((b) => wall(b, 1600, 'window')))).toEqual([]);
    const ramped = crossed((b) => {
      wall(b, 1600);
      b.put(ramp({ lengthMm: 1100 }));
    });
    expect(rules(ramped)).toEqual([]);
  });

  test('site-crossing: the stretch on a way is as long as the way is wide there', () => {
    const [s] = stretchesOn(square('road'), [point(-1000, 2000), point(9000, 2000)]);
    expect(s).toMatchObject({ lengthMm: 4000, middle: point(2000, 2000) });
    const [round] = stretchesOn(feature('exit', [[0, 0]], { radiusMm: 1000 }), [
      point(-5000, 600),
      point(5000, 600),
    ]);
    // A chord 0.6 m off the middle of a circle of 1 m: 1.6 m.
    expect(round?.lengthMm).toBeCloseTo(1600, 6);
    expect(stretchesOn(square('road'), [point(1000, 1000), point(3000, 1000)])[0]?.lengthMm).toBeCloseTo(
      2000,
      6,
    );
  });

  test('site-crossing: pieces of ramp are counted by length and by channels', () => {
    const plan = crossed((b) => b.put(ramp()));
    expect(cablesInCrossings(plan).get('ramp')).toEqual(new Set(['run']));
    expect(rampPieces(ramp({ lengthMm: 2700 }), 1)).toBe(3);
    expect(rampPieces(ramp({ lengthMm: 2700 }), 5)).toBe(3);
    expect(rampPieces(ramp({ lengthMm: 2700 }), 6)).toBe(6);
    expect(rampPieces(ramp({ how: 'flown' }), 6)).toBe(0);
  });
});

describe('wet ground', () => {
  test('power-wet: a wall outlet in a drawn wet area counts as wet, unless the plan says otherwise of it', () => {
    const plan = (wet?: boolean): Plan => {
      const b = site();
      b.put(square('wet-area'));
      const kind = needKind(NA, 'house-panel-120-240', 'source');
      b.put(kind);
      b.put({
        id: 'p',
        type: 'source',
        floorId: 'floor',
        kindId: kind.id,
        at: point(-9000, 0),
        rotationDeg: 0,
        label: 'P1',
        voltsV: 120,
        ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
      });
      b.put({
        id: 'o',
        type: 'outlet',
        floorId: 'floor',
        at: point(2000, 2000),
        rotationDeg: 0,
        heightMm: 300,
        sourceId: 'p',
        wayId: '1',
        connector: 'nema-5-20',
        legs: 1,
        neutral: true,
        label: 'W1',
        ...(wet === undefined ? {} : { wet }),
      });
      return b.plan();
    };
    const found = (p: Plan): boolean =>
      assess(p, { revision: 0 }).findings.some((f) => f.rule === 'power-wet');
    expect(isWetSpot(plan(), 'floor', point(2000, 2000))).toBe(true);
    expect(isWetSpot(plan(), 'floor', point(5000, 2000))).toBe(false);
    expect(found(plan())).toBe(true);
    expect(found(plan(false))).toBe(false);
  });
});
