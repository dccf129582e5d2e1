import { describe, expect, it } from 'vitest';
import { controlFindings, universeUse } from '../../../src/engines/control/index.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const rig = () => {
  const b = new PlanBuilder();
  b.fixtureKind(
    'f',
    {},
    {
      modes: [
        { id: 'm', name: 'ten', slots: 10, parts: 1 },
        { id: 'all', name: 'all', slots: 512, parts: 1 },
      ],
    },
  );
  b.put({ id: 'u1', type: 'universe', number: 1, name: '', colorIndex: 0 });
  b.put({ id: 'u2', type: 'universe', number: 2, name: '', colorIndex: 1 });
  const patch = (address: number, more: { universeId?: string; modeId?: string; paired?: boolean } = {}) =>
    b.fixture('f', { patch: { modeId: 'm', universeId: 'u1', paired: false, ...more, address } });
  return {
    b,
    patch,
    found: () => controlFindings(b.plan()).map((f) => [f.rule, f.severity, ...f.recordIds]),
  };
};

describe('the control engine', () => {
  it.each([0, 504, 513, 1.5, -1, Number.NaN])(
    'control-address: address %s for ten slots stops',
    (address) => {
      const { patch, found } = rig();
      const f = patch(address);
      expect(found()).toEqual([['control-address', 'stop', f.id]]);
    },
  );

  it.each([1, 503])('control-address: address %s for ten slots fits', (address) => {
    const { patch, found } = rig();
    patch(address);
    expect(found()).toEqual([]);
  });

  it('control-address: a mode of 512 slots fits at 1 only', () => {
    const { b, patch } = rig();
    patch(1, { modeId: 'all' });
    patch(2, { modeId: 'all', universeId: 'u2' });
    expect(controlFindings(b.plan()).map((f) => f.params.highest)).toEqual([1]);
  });

  it('control-universe, control-mode: what is not there stops', () => {
    const { patch, found } = rig();
    const a = patch(1, { universeId: 'gone' });
    const c = patch(1, { modeId: 'gone' });
    expect(found()).toEqual([
      ['control-universe', 'stop', a.id],
      ['control-mode', 'stop', c.id],
    ]);
  });

  it('control-overlap: one shared slot stops, neighbours do not', () => {
    const { patch, found } = rig();
    const a = patch(1);
    const c = patch(10);
    patch(20);
    expect(found()).toEqual([['control-overlap', 'stop', a.id, c.id]]);
  });

  it('control-overlap: not across universes, and not where both are paired', () => {
    const { patch, found } = rig();
    patch(1);
    patch(1, { universeId: 'u2', paired: true });
    patch(1, { universeId: 'u2', paired: true });
    expect(found()).toEqual([]);
    patch(1, { universeId: 'u2' });
    expect(found()).toHaveLength(1);
  });

  it('control-overlap: a long fixture that covers several is told for each of them', () => {
    const { patch, found } = rig();
    patch(1, { modeId: 'all' });
    patch(100);
    patch(200);
    expect(found()).toHaveLength(2);
  });

  it('control-use: slots taken twice count once', () => {
    const { b, patch } = rig();
    patch(1, { paired: true });
    patch(6, { paired: true });
    patch(500, { universeId: 'u2' });
    expect(
      universeUse(b.plan()).map((u) => [u.usedSlots, u.freeSlots, u.highestSlot, u.rows.length]),
    ).toEqual([
      [15, 497, 15, 2],
      [10, 502, 509, 1],
    ]);
  });
});
