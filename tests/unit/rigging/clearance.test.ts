import { describe, expect, it } from 'vitest';
import { segmentGapMm } from '../../../src/engines/rigging/clearance.ts';
import { riggingFindings } from '../../../src/engines/rigging/index.ts';
import type { RecordOf } from '../../../src/plan/records/index.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const found = (b: RiggingRig) => riggingFindings(b.plan()).map((f) => `${f.severity} ${f.rule}`);

const wall = (b: RiggingRig, id: string, x1: number, y1: number, x2: number, y2: number) =>
  b.put({
    id,
    type: 'wall',
    floorId: 'floor',
    from: { xMm: x1, yMm: y1 },
    to: { xMm: x2, yMm: y2 },
    thicknessMm: 100,
    heightMm: 3000,
    material: 'wood',
  });

/** A stand of 1 m leg circle at a spot, beside a wall along y = 0 from x = −5 m to 5 m. */
const beside = (xMm: number, yMm: number, opening: Partial<RecordOf<'opening'>> | undefined = undefined) => {
  const b = new RiggingRig();
  b.standKind('stand');
  wall(b, 'wall', -5000, 0, 5000, 0);
  if (opening)
    b.put({
      id: 'door',
      type: 'opening',
      wallId: 'wall',
      what: 'door',
      offsetMm: 4500,
      widthMm: 1000,
      heightMm: 2000,
      sillMm: 0,
      ...opening,
    });
  b.stand('stand', { at: { xMm, yMm } });
  return b;
};

describe('room on the floor', () => {
  it('rigging-wall: two legs along the wall need half the circle’s radius and half the wall', () => {
    // 500 mm legs, two of them 250 mm towards the wall, wall face at 50 mm.
    expect(found(beside(0, 301))).toEqual([]);
    expect(found(beside(0, 290))).toEqual(['warn rigging-wall']);
    expect(found(beside(0, -290))).toEqual(['warn rigging-wall']);
  });

  it('rigging-wall: a corner needs more room than a wall', () => {
    const corner = (xMm: number, yMm: number) => {
      const b = beside(xMm, yMm);
      wall(b, 'side', 0, 0, 0, 5000);
      return found(b);
    };
    expect(corner(310, 310)).toEqual(['warn rigging-wall']);
    expect(corner(560, 560)).toEqual([]);
  });

  it('rigging-door: the way through counts, a window and a high sill do not', () => {
    expect(found(beside(0, 450, { what: 'archway' }))).toEqual(['warn rigging-door']);
    expect(found(beside(0, 550, { what: 'archway' }))).toEqual([]);
    expect(found(beside(0, 450, { what: 'window' }))).toEqual([]);
    expect(found(beside(0, 450, { sillMm: 300 }))).toEqual([]);
  });

  it('rigging-door: the sweep of the leaf counts on its own side only', () => {
    // The wall runs to the right, so its left side is up (negative y). The leaf sweeps 1 m.
    const left = { swing: 'left-start' as const };
    expect(found(beside(-200, -1300, left))).toEqual(['warn rigging-door']);
    expect(found(beside(-200, 1300, left))).toEqual([]);
    expect(found(beside(-200, 1300, { swing: 'right-start' }))).toEqual(['warn rigging-door']);
    // Hinged at the other end, the corner far from that hinge is free.
    expect(found(beside(-900, -1200, { swing: 'left-end' }))).toEqual([]);
    expect(found(beside(-500, -1200, left))).toEqual(['warn rigging-door']);
  });

  it('rigging-legs: stands that are too close, unless a frame joins them or the floor differs', () => {
    const pair = (gapMm: number, change: (b: RiggingRig, ids: string[]) => void = () => undefined) => {
      const b = new RiggingRig({ windMps: 0 });
      b.standKind('stand');
      const ids = [b.stand('stand').id, b.stand('stand', { at: { xMm: gapMm, yMm: 0 } }).id];
      change(b, ids);
      return found(b);
    };
    expect(pair(499)).toEqual(['note rigging-legs']);
    expect(pair(501)).toEqual([]);
    expect(
      pair(400, (b, supports) => {
        b.gripKind('frame', { massKg: 0.1, stands: 2 });
        b.grip('frame', { supports });
      }),
    ).toEqual([]);
    expect(
      pair(400, (b, [, second = '']) => {
        const s = b.records.get(second);
        if (s?.type === 'stand') b.put({ ...s, floorId: 'upstairs' });
      }),
    ).toEqual([]);
  });

  it('rigging-wall: the gap of two straight pieces', () => {
    const p = (xMm: number, yMm: number) => ({ xMm, yMm });
    expect(segmentGapMm(p(0, 0), p(10, 0), p(5, -5), p(5, 5))).toBe(0);
    expect(segmentGapMm(p(0, 0), p(10, 0), p(0, 3), p(10, 3))).toBe(3);
    expect(segmentGapMm(p(0, 0), p(10, 0), p(13, 4), p(20, 4))).toBe(5);
  });
});
