import { describe, expect, it } from 'vitest';
import {
  type AssignOptions,
  assignAddresses,
  DEFAULT_ASSIGN,
  orderFixtures,
} from '../../../src/engines/control/index.ts';
import { patchRig, placesBy, type RigUnit } from '../../support/patch-rig.ts';

const places = (units: readonly (number | RigUnit)[], o: Partial<AssignOptions> = {}): readonly string[] =>
  placesBy(patchRig(units).plan, { ...DEFAULT_ASSIGN, ...o });

const at = (xMm: number, yMm: number): RigUnit => ({ slots: 1, more: { at: { xMm, yMm } } });
const units = (list: readonly RigUnit[], order: AssignOptions['order']): string => {
  const { plan, fixtures } = patchRig(list);
  return orderFixtures(plan, fixtures, order)
    .map((f) => f.unit)
    .join(' ');
};

describe('assigning addresses', () => {
  it('assign-order: by place in bands, and along a path', () => {
    const grid = [at(0, 4000), at(100, 0), at(4000, 50), at(4050, 4000)];
    expect(units(grid, 'left-right')).toBe('2 1 3 4');
    expect(units(grid, 'top-bottom')).toBe('2 3 1 4');
    expect(units([at(0, 0), at(9000, 0), at(3000, 0), at(6000, 0)], 'path')).toBe('1 3 4 2');
  });

  it('assign-order: steps, gaps and spare slots are kept', () => {
    expect(places([5, 5, 5], { step: 10 })).toEqual(['U1 1', 'U1 11', 'U1 21']);
    expect(places([5, 5], { gapSlots: 3 })).toEqual(['U1 1', 'U1 9']);
    expect(places([256, 200, 56], { spareSlots: 51 })).toEqual(['U1 1', 'U1 257', 'U2 1']);
  });

  it('assign-law: parts fill a universe to its end and are never cut', () => {
    expect(places([509, { slots: 30, parts: 10 }], { part: true })).toEqual(['U1 1', 'U1 510 + U2 1']);
    expect(places([510, { slots: 30, parts: 10 }], { part: true })).toEqual(['U1 1', 'U2 1']);
    // 171 parts of three slots are more than a universe holds, asked for or not.
    expect(places([{ slots: 513, parts: 171 }])).toEqual(['U1 1 + U2 1']);
  });

  it('assign-law: a unit that fits no universe keeps its place, is told of, and the others keep clear of it', () => {
    const { b, fixtures } = patchRig([470, 30], 1);
    const [wide] = fixtures;
    if (!wide) throw new Error('no unit');
    b.put({ ...wide, patch: { modeId: 'm', universeId: 'universe-1', address: 1, paired: false } });
    const r = assignAddresses(b.plan(), { ...DEFAULT_ASSIGN, spareSlots: 51 });
    if (!r.ok) throw new Error(r.error.what);
    expect(r.value.notices.join()).toContain('470 slots fit no universe with 51 spare');
    expect(r.value.rows.map((x) => x.after[0])).toEqual([{ universe: 2, address: 1, fromSlot: 1 }]);
  });

  it('assign-together: a group that fits only without its steps is told of and parted', () => {
    const group = Array.from({ length: 6 }, (): RigUnit => ({ slots: 85, more: { groupId: 'g' } }));
    const o = { step: 100, together: 'group', fewest: true } as const;
    const { plan } = patchRig(group);
    const r = assignAddresses(plan, { ...DEFAULT_ASSIGN, ...o });
    expect(r.ok && r.value.notices).toHaveLength(1);
    expect(r.ok && r.value.universes).toEqual([1, 2]);
  });

  it('assign-paired: paired units on one address get one new address', () => {
    const patch = { modeId: 'm', universeId: 'universe-1', address: 100, paired: true };
    const { plan } = patchRig([{ slots: 10, more: { patch } }, { slots: 10, more: { patch } }, 10], 1);
    expect(placesBy(plan, DEFAULT_ASSIGN)).toEqual(['U1 1', 'U1 1', 'U1 11']);
  });

  it('channels are numbered along where that is asked for', () => {
    const { plan } = patchRig([1, 1, 1]);
    const r = assignAddresses(plan, { ...DEFAULT_ASSIGN, channelsFrom: 101 });
    expect(r.ok && r.value.rows.map((x) => x.channelAfter)).toEqual(['101', '102', '103']);
  });

  it.each([
    [{ start: { universe: 0, address: 1 } }],
    [{ start: { universe: 64_000, address: 1 } }],
    [{ start: { universe: 1, address: 513 } }],
    [{ step: 0 }],
    [{ gapSlots: -1 }],
    [{ spareSlots: 1.5 }],
  ])('refuses %j', (o) => {
    expect(assignAddresses(patchRig([1]).plan, { ...DEFAULT_ASSIGN, ...o }).ok).toBe(false);
  });
});
