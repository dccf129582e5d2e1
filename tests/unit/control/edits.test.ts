import { describe, expect, it } from 'vitest';
import { controlFindings } from '../../../src/engines/control/index.ts';
import { parseAddress, printAddress } from '../../../src/plan/address.ts';
import { applyChanges, invert } from '../../../src/plan/change-set.ts';
import {
  clearPatch,
  moveStretch,
  renumberChannels,
  setMode,
  setPaired,
  setPatch,
} from '../../../src/plan/edits/patch.ts';
import { addUniverse, changeUniverse, removeUniverse } from '../../../src/plan/edits/universes.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addressOf, patchRig } from '../../support/patch-rig.ts';

const done = (plan: Plan, r: ReturnType<typeof setPatch>): Plan => {
  if (!r.ok) throw new Error(r.error.what);
  return applyChanges(plan, r.value);
};

describe('addresses as people write them', () => {
  it.each(['U3 418', 'u3 418', 'U3/418', '3/418', '3.418', '3:418', ' 3 418 ', '1442'])('%s', (typed) => {
    const r = parseAddress(typed);
    expect(r.ok && printAddress(r.value)).toBe('U3 418');
  });

  it('a bare number is a slot of the universe at hand, or absolute past its end', () => {
    expect(parseAddress('418', 3)).toEqual({ ok: true, value: { universe: 3, address: 418 } });
    expect(parseAddress('513', 3)).toEqual({ ok: true, value: { universe: 2, address: 1 } });
  });

  it.each(['', '0', '3/0', '3/513', '0/5', '64000/1', '-4', '1,5', 'x', '3/4/5'])('refuses “%s”', (typed) => {
    const r = parseAddress(typed);
    expect(r.ok).toBe(false);
    if (!r.ok) expect(r.error.todo).not.toBe('');
  });
});

describe('edits of the patch', () => {
  it('patch a unit, in a universe that is made for it, and undo it whole', () => {
    const { plan } = patchRig([20]);
    const r = setPatch(plan, 'f0001', { universe: 4, address: 493 });
    const after = done(plan, r);
    expect(addressOf(after, 'f0001')).toBe('U4 493');
    expect(recordsOf(after, 'universe').map((u) => u.number)).toEqual([4]);
    if (r.ok) expect(applyChanges(after, invert(r.value)).records).toEqual(plan.records);
  });

  it.each([0, 494, 513, 1.5, Number.NaN])(
    'address %s for twenty slots is refused with the highest',
    (address) => {
      const r = setPatch(patchRig([20]).plan, 'f0001', { universe: 1, address });
      expect(r.ok).toBe(false);
      if (!r.ok) expect(r.error.todo).toContain('1 to 493');
    },
  );

  it('a universe nobody has and a mode the kind has not are refused', () => {
    const { plan } = patchRig([20]);
    expect(setPatch(plan, 'f0001', { universe: 64_000, address: 1 }).ok).toBe(false);
    expect(setPatch(plan, 'f0001', { modeId: 'gone' }).ok).toBe(false);
  });

  it('a parted unit moves stretch by stretch and is cut between parts only', () => {
    const { plan } = patchRig([{ slots: 600, parts: 200 }], 2);
    const spans = [{ fromSlot: 301, universe: 2, address: 1 }];
    const parted = done(plan, setPatch(plan, 'f0001', { universe: 1, address: 1, spans }));
    expect(controlFindings(parted)).toEqual([]);
    const moved = done(parted, moveStretch(parted, 'f0001', 301, 2, 100));
    expect(recordOf(moved, 'fixture', 'f0001')?.patch?.spans?.[0]?.address).toBe(100);
    expect(moveStretch(parted, 'f0001', 301, 2, 300).ok).toBe(false);
    expect(setPatch(plan, 'f0001', { spans: [{ fromSlot: 300, universe: 2, address: 1 }] }).ok).toBe(false);
    expect(setPatch(plan, 'f0001', { address: 1 }).ok).toBe(false);
  });

  it('mode, pairing and clearing leave locked and unpatched ones alone', () => {
    const { b, fixtures } = patchRig([10, 10, 10], 1);
    const [a, c] = fixtures;
    if (!a || !c) throw new Error('no units');
    for (const f of [a, c])
      b.put({
        ...f,
        locked: f === c,
        patch: { modeId: 'm', universeId: 'universe-1', address: 1, paired: false },
      });
    const plan = b.plan();
    expect(controlFindings(plan).map((f) => f.rule)).toEqual(['control-overlap']);
    const paired = applyChanges(plan, setPaired(plan, [a.id, c.id], true));
    expect(controlFindings(paired)).toEqual([]);
    const cleared = applyChanges(
      paired,
      clearPatch(
        paired,
        fixtures.map((f) => f.id),
      ),
    );
    expect([addressOf(cleared, a.id), addressOf(cleared, c.id)]).toEqual(['', 'U1 1']);
    expect(setMode(plan, [a.id], 'gone')).toEqual({
      ok: true,
      value: { added: [], updated: [], removed: [] },
    });
  });

  it('control-paired: paired ones that start apart are warned about', () => {
    const { b, fixtures } = patchRig([10, 10], 1);
    fixtures.forEach((f, i) => {
      b.put({ ...f, patch: { modeId: 'm', universeId: 'universe-1', address: 1 + 5 * i, paired: true } });
    });
    expect(controlFindings(b.plan()).map((f) => [f.rule, f.severity])).toEqual([['control-paired', 'warn']]);
  });

  it('universes: added, numbered, named and removed with their patches', () => {
    const { plan } = patchRig([10], 1);
    expect(addUniverse(plan, 1).ok).toBe(false);
    expect(addUniverse(plan, 64_000).ok).toBe(false);
    const two = done(plan, addUniverse(plan, 2, 'Grid'));
    expect(recordOf(two, 'universe', 'universe-2')?.name).toBe('Grid');
    expect(changeUniverse(two, 'universe-2', { number: 1 }).ok).toBe(false);
    const patched = done(two, setPatch(two, 'f0001', { universe: 2, address: 1 }));
    const gone = applyChanges(patched, removeUniverse(patched, 'universe-2'));
    expect(recordOf(gone, 'fixture', 'f0001')?.patch).toBeUndefined();
    expect(controlFindings(gone)).toEqual([]);
  });

  it('control-twice, control-number: numbers nobody can send to are stopped', () => {
    const { b } = patchRig([], 1);
    b.put({ id: 'again', type: 'universe', number: 1, name: '', colorIndex: 0 });
    b.put({ id: 'far', type: 'universe', number: 64_000, name: '', colorIndex: 0 });
    expect(
      controlFindings(b.plan())
        .map((f) => f.rule)
        .sort(),
    ).toEqual(['control-number', 'control-twice']);
  });

  it('channels are numbered in order and pass over those that stay', () => {
    const { b, fixtures } = patchRig([1, 1, { slots: 1, more: { locked: true, channel: '12' } }, 1]);
    const plan = b.plan();
    const ids = fixtures.map((f) => f.id);
    const after = applyChanges(plan, renumberChannels(plan, ids, { from: 11, step: 1, prefix: '' }));
    expect(ids.map((id) => recordOf(after, 'fixture', id)?.channel)).toEqual(['11', '13', '12', '14']);
  });
});
