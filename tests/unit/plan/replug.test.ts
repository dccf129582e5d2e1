import { describe, expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { unplug } from '../../../src/plan/edits/plug.ts';
import { outletOnWay, replug } from '../../../src/plan/edits/replug.ts';
import type { CableKind } from '../../../src/plan/kinds/kinds.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { feedOf, inletsOf } from '../../../src/plan/ports.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { chosenChanges } from '../../../src/ui/power/chosen-steps.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const cables = gearBook('north-america').filter((k): k is CableKind => k.family === 'cable');
const inletOf = (recordId: string) => ({ recordId, portId: inletsOf(plan, recordId)[0]?.id ?? '' });

describe('moving a plug to another way', () => {
  it('keeps the run where its plug goes in, with its length made up anew', () => {
    const inlet = inletOf('fx-09');
    const old = feedOf(plan, inlet);
    const way = ['w3', 'w6', '3', '6'].find((wayId) =>
      outletOnWay(plan, inlet, { ownerId: 'bx-1', wayId }, cables),
    );
    const to = way && outletOnWay(plan, inlet, { ownerId: 'bx-1', wayId: way }, cables);
    if (!old || !to) throw new Error('the sample has unit 9 on a box with free ways');
    const changes = replug(plan, inlet, to, () => 'new');
    expect(changes.added).toEqual([]);
    expect(changes.updated).toHaveLength(1);
    const moved = feedOf(applyChanges(plan, changes), inlet);
    expect(moved).toMatchObject({ id: old.id, kindId: old.kindId, from: to.ref });
    expect(moved?.piecesMm).toBeUndefined();
  });

  it('finds no outlet on a way that is not there or is full', () => {
    expect(outletOnWay(plan, inletOf('fx-09'), { ownerId: 'bx-1', wayId: 'none' }, cables)).toBeUndefined();
  });
});

describe('part of an offer', () => {
  it('is one change the plan takes, whichever steps are left out', () => {
    // Everything with a feed of its own from the box is pulled, so that the offer has steps that share a new kind.
    const bare = recordsOf(plan, 'cable')
      .filter((c) => c.from.recordId === 'bx-1')
      .reduce((p, c) => applyChanges(p, unplug(p, c.to)), plan);
    let n = 0;
    const { steps } = plugEverything(bare, { newId: () => `n${n++}`, book: cables });
    expect(steps.length).toBeGreaterThan(2);
    for (let mask = 0; mask < 2 ** Math.min(6, steps.length); mask++) {
      const chosen = new Set(steps.map((_, i) => i).filter((i) => mask & (1 << i)));
      const after = applyChanges(bare, chosenChanges(bare, steps, chosen));
      steps.forEach((s, i) => {
        const fed = recordsOf(after, 'cable').find((c) => c.to.recordId === s.recordId);
        expect(fed !== undefined, s.label).toBe(chosen.has(i));
        if (fed) expect(after.records.get(fed.kindId)?.type).toBe('kind');
      });
    }
  });
});
