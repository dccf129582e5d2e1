import { describe, expect, it } from 'vitest';
import { radioCommand } from '../../../src/cli/radio.ts';
import { bestSpots, computeRadio, coverage } from '../../../src/engines/radio/index.ts';
import { applyChanges, invert } from '../../../src/plan/change-set.ts';
import { moveRecords } from '../../../src/plan/edits/arrange.ts';
import { moveTransmitter, putTransmitters, setLinks } from '../../../src/plan/edits/radio.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { placeOf } from '../../../src/plan/ports.ts';
import { RadioRig } from '../../support/radio-rig.ts';

/** Two rooms with a concrete wall between, two units in each, a transmitter in the left one. */
const rooms = () => {
  const b = new RadioRig();
  b.put({ ...b.records.get('floor'), ceilingMm: 3000 } as never);
  for (const [a, c] of [
    [
      [0, 0],
      [20, 0],
    ],
    [
      [20, 0],
      [20, 10],
    ],
    [
      [20, 10],
      [0, 10],
    ],
    [
      [0, 10],
      [0, 0],
    ],
    [
      [10, 0],
      [10, 10],
    ],
  ] as const)
    b.wall(a, c, 'concrete', { thicknessMm: 200 });
  const tx = b.device(1, 1);
  b.unit(3, 3);
  b.unit(3, 7);
  b.unit(17, 3);
  b.unit(17, 7);
  return { b, tx };
};

describe('places', () => {
  it('radio-spots: are inside the rooms, away from walls and gear, and better than where it stands', () => {
    const { b, tx } = rooms();
    const s = bestSpots(b.plan(), { floorId: 'floor', count: 1, senderId: tx.id });
    expect(s.choices.length).toBe(3);
    for (const c of s.choices)
      for (const p of c.places) {
        expect(p.xMm).toBeGreaterThan(390);
        expect(p.xMm).toBeLessThan(19_610);
        expect(Math.abs(p.xMm - 10_000)).toBeGreaterThanOrEqual(400);
      }
    expect(s.choices[0]?.worstDb).toBeGreaterThan(s.nowDb ?? Number.POSITIVE_INFINITY);
  });

  it('radio-spots: two transmitters go one to each room', () => {
    const { b, tx } = rooms();
    const one = bestSpots(b.plan(), { floorId: 'floor', count: 1, senderId: tx.id }).choices[0];
    const two = bestSpots(b.plan(), { floorId: 'floor', count: 2, senderId: tx.id }).choices[0];
    const sides = two?.places.map((p) => p.xMm < 10_000).sort();
    expect(sides).toEqual([false, true]);
    expect(two?.worstDb).toBeGreaterThan((one?.worstDb ?? 0) + 10);
  });

  it('radio-spots: a stand with nothing on it is a place, one with something on it is not', () => {
    const { b, tx } = rooms();
    const stand = (id: string, xMm: number) =>
      b.put({
        id,
        type: 'stand',
        floorId: 'floor',
        kindId: 'none',
        at: { xMm, yMm: 5000 },
        rotationDeg: 0,
        heightMm: 2900,
      });
    stand('free', 9000);
    stand('taken', 11_000);
    b.unit(11, 5, { support: { on: 'stand', standId: 'taken' } });
    const s = bestSpots(b.plan(), { floorId: 'floor', count: 1, senderId: tx.id, runnersUp: 200 });
    const stands = s.choices.flatMap((c) => c.places.flatMap((p) => p.standId ?? []));
    expect(stands).not.toContain('taken');
    const tried = bestSpots(b.plan(), { floorId: 'floor', count: 1, senderId: tx.id }).placesTried;
    b.records.delete('free');
    expect(
      bestSpots(b.plan(), { floorId: 'floor', count: 1, senderId: tx.id }).placesTried,
    ).toBeLessThanOrEqual(tried + 10);
  });

  it('radio-spots: a panel is tried and put up pointing at the middle of the units', () => {
    const { b, tx } = rooms();
    b.transmitterKind('panel', { antenna: 'panel' });
    b.put({ ...tx, kindId: 'panel', rotationDeg: 270 });
    const plan = b.plan();
    const best = bestSpots(plan, { floorId: 'floor', count: 1, senderId: tx.id }).choices[0];
    const at = best?.places[0];
    if (!best || !at) throw new Error('no place');
    const towards = (Math.atan2(5000 - at.yMm, 10_000 - at.xMm) * 180) / Math.PI;
    expect(Math.abs((((best.facingDeg?.[0] ?? 0) - towards + 540) % 360) - 180)).toBeLessThanOrEqual(0.51);
    const after = applyChanges(plan, moveTransmitter(plan, tx.id, { ...at, facingDeg: best.facingDeg?.[0] }));
    const worst = Math.min(...[...computeRadio(after).links.values()].map((l) => l.marginDb));
    expect(worst).toBeCloseTo(best.worstDb, 3);
  });

  it('radio-spots: say why there are none', () => {
    const b = new RadioRig();
    b.device(0, 0);
    expect(bestSpots(b.plan(), { floorId: 'floor', count: 1 }).why).toBe('No unit is linked by radio.');
    expect(coverage(b.plan(), { floorId: 'floor', senderIds: [], stepM: 1 })).toBeUndefined();
    expect(coverage(b.plan(), { floorId: 'no such floor', senderIds: ['d1'], stepM: 1 })).toBeUndefined();
  });

  it('taking a place is one change that can be taken back, and a second transmitter is like the first', () => {
    const { b, tx } = rooms();
    const plan = b.plan();
    const c = bestSpots(plan, { floorId: 'floor', count: 2, senderId: tx.id }).choices[0];
    let n = 0;
    const changes = putTransmitters(
      plan,
      { floorId: 'floor', places: c?.places ?? [], deviceId: tx.id, kind: undefined },
      () => `new-${++n}`,
    );
    const after = applyChanges(plan, changes);
    expect(recordsOf(after, 'device')).toHaveLength(2);
    expect(recordOf(after, 'device', 'new-1')).toMatchObject({ kindId: 'tx', ports: tx.ports, label: 'TX1' });
    const worst = Math.min(...[...computeRadio(after).links.values()].map((l) => l.marginDb));
    expect(worst).toBeCloseTo(c?.worstDb ?? Number.NaN, 3);
    expect(applyChanges(after, invert(changes)).records).toEqual(plan.records);
  });

  it('a new transmitter carries the universes asked for, as far as its ports go', () => {
    const b = new RadioRig();
    const line = (id: string) => ({ id, connector: 'xlr-5' as const, universes: 1 });
    const kind = b.transmitterKind('two', { dataIn: [line('in-1'), line('in-2')] });
    const place = { xMm: 0, yMm: 0, heightMm: 2500, standId: undefined };
    const plan = b.plan();
    const changes = putTransmitters(
      plan,
      { floorId: 'floor', places: [place], deviceId: undefined, kind, universeIds: ['u1', 'u2', 'u3'] },
      () => 'new',
    );
    expect(recordOf(applyChanges(plan, changes), 'device', 'new')?.ports).toEqual([
      { portId: 'in-1', universeId: 'u1' },
      { portId: 'in-2', universeId: 'u2' },
    ]);
  });

  it('a transmitter on a stand takes its stand along, unless it goes up on another', () => {
    const b = new RadioRig();
    const stand = (id: string) =>
      b.put({
        id,
        type: 'stand',
        floorId: 'floor',
        kindId: 'none',
        at: { xMm: 0, yMm: 0 },
        rotationDeg: 0,
        heightMm: 3100,
      });
    stand('own');
    stand('other');
    const tx = b.device(0, 0, { standId: 'own' });
    const place = { xMm: 4000, yMm: 5000, heightMm: 2500, standId: undefined };
    const moved = applyChanges(b.plan(), moveTransmitter(b.plan(), tx.id, place));
    expect(recordOf(moved, 'stand', 'own')?.at).toEqual({ xMm: 4000, yMm: 5000 });
    const up = applyChanges(b.plan(), moveTransmitter(b.plan(), tx.id, { ...place, standId: 'other' }));
    expect(recordOf(up, 'device', tx.id)?.standId).toBe('other');
    expect(recordOf(up, 'stand', 'own')?.at).toEqual({ xMm: 0, yMm: 0 });
  });

  it('a unit that leaves the radio keeps no transmitter, a locked one stays', () => {
    const b = new RadioRig();
    const u = b.unit(0, 0, { linkId: 'd1' });
    const locked = b.unit(1, 0, { locked: true });
    const after = applyChanges(b.plan(), setLinks(b.plan(), [u.id, locked.id], 'line'));
    expect(recordOf(after, 'fixture', u.id)).not.toHaveProperty('linkId');
    expect(recordOf(after, 'fixture', locked.id)?.link).toBe('radio');
  });
});

describe('the command', () => {
  it('prints margins, findings and places, and says that it is a hint', () => {
    const { b } = rooms();
    const text = radioCommand(b.plan(), { json: false, place: 1 });
    expect(text).toMatch(/receiver\s+universe\s+over\s+margin/);
    expect(text).toMatch(/Unit \d+\s+U1\s+D6\s+[−\d.]+ dB/);
    expect(text).toMatch(/best: .* across/);
    expect(text.trimEnd().endsWith('Hint, not a guarantee; test on the day.')).toBe(true);
  });

  it('gives as JSON every link with terms that add up to its margin', () => {
    const { b } = rooms();
    const out = JSON.parse(radioCommand(b.plan(), { json: true, place: 2 })) as {
      links: { link: { marginDb: number; hops: { terms: { db: number }[] }[] } | null }[];
      places: { choices: unknown[] };
    };
    expect(out.links).toHaveLength(4);
    for (const l of out.links) {
      const sum = l.link?.hops[0]?.terms.reduce((s, t) => s + t.db, 0) ?? Number.NaN;
      expect(Math.abs(sum - (l.link?.marginDb ?? 0))).toBeLessThan(0.1);
    }
    expect(out.places.choices.length).toBeGreaterThan(0);
    expect(radioCommand(b.plan(), { json: true, place: 2 })).toBe(
      radioCommand(b.plan(), { json: true, place: 2 }),
    );
  });
});

describe('on the floor', () => {
  it('a transmitter and the stand it is on move together, whichever is taken', () => {
    const b = new RadioRig();
    b.put({
      id: 'st',
      type: 'stand',
      floorId: 'floor',
      kindId: 'none',
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      heightMm: 3000,
    });
    const tx = b.device(0, 0, { standId: 'st' });
    for (const id of [tx.id, 'st']) {
      const after = applyChanges(b.plan(), moveRecords(b.plan(), new Set([id]), { xMm: 700, yMm: 300 }));
      expect(placeOf(after, tx.id)?.at, id).toEqual({ xMm: 700, yMm: 300 });
      expect(recordOf(after, 'stand', 'st')?.at, id).toEqual({ xMm: 700, yMm: 300 });
    }
  });
});
