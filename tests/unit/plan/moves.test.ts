import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { always } from '../../../src/derive/findings.ts';
import { cableLength } from '../../../src/derive/lengths.ts';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { applyChanges, invert } from '../../../src/plan/change-set.ts';
import {
  aimAtMark,
  moveRecords,
  removeRecords,
  rotateRecords,
  setHeight,
} from '../../../src/plan/edits/arrange.ts';
import { duplicateSetup } from '../../../src/plan/edits/day.ts';
import {
  fromSetup,
  moveOnlyHere,
  movesFreely,
  placeEverywhere,
  setupsItMovesIn,
  stayHere,
} from '../../../src/plan/edits/moves.ts';
import { planInSetup, wholePlan } from '../../../src/plan/moves.ts';
import { fixturePlace, type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { findingsInSetups } from '../../../src/report/in-setups.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

/** A box and two units in front of it, unit 1 on a stand and plugged in; two setups. */
const rig = (): Plan => {
  const b = new PlanBuilder();
  b.box(b.boxKind('box').id, { id: 'box' });
  const kind = b.fixtureKind('spot');
  b.put({
    id: 'st',
    type: 'stand',
    floorId: 'floor',
    kindId: 'no-stand',
    at: { xMm: 4000, yMm: 0 },
    rotationDeg: 0,
    heightMm: 2000,
  });
  b.fixture(kind.id, {
    id: 'u1',
    unit: '1',
    at: { xMm: 4000, yMm: 0 },
    support: { on: 'stand', standId: 'st' },
  });
  b.fixture(kind.id, { id: 'u2', unit: '2', at: { xMm: 4000, yMm: 3000 } });
  const { piecesMm: _pieces, ...cable } = b.cable(b.cableKind('cord').id, ['box', 'o1'], ['u1', 'in'], 1, {
    id: 'c1',
  });
  b.put(cable);
  b.put({ id: 's1', type: 'setup', order: 1, name: 'One', scene: '1' });
  b.put({ id: 's2', type: 'setup', order: 2, name: 'Two', scene: '2' });
  b.put({
    id: 'm1',
    type: 'mark',
    floorId: 'floor',
    what: 'talent',
    at: { xMm: 0, yMm: 5000 },
    name: 'Ada',
    facingDeg: 0,
    heightMm: 1600,
  });
  return b.plan();
};

const at = (plan: Plan, id: string): number => {
  const f = recordOf(plan, 'fixture', id);
  if (!f) throw new Error(`no ${id}`);
  return fixturePlace(plan, f).at.xMm;
};

/** An edit made on the floor while `setupId` is shown. */
const onFloor = (plan: Plan, setupId: string, edit: (p: Plan) => ReturnType<typeof moveRecords>): Plan =>
  applyChanges(plan, fromSetup(plan, setupId, edit(planInSetup(plan, setupId))));

const moved = (): Plan => {
  const plan = applyChanges(rig(), moveOnlyHere(rig(), 's2', ['u1']));
  return onFloor(plan, 's2', (p) => moveRecords(p, new Set(['u1']), { xMm: 6000, yMm: 0 }));
};

describe('places by setup', () => {
  it('is the very same plan where nothing moves', () => {
    const plan = rig();
    expect(planInSetup(plan, 's1')).toBe(plan);
    expect(planInSetup(moved(), 's1').records.get('u1')).toEqual(plan.records.get('u1'));
  });

  it('moves a unit with its stand in one setup and leaves it in the others', () => {
    const plan = moved();
    expect(at(plan, 'u1')).toBe(4000);
    expect(at(planInSetup(plan, 's2'), 'u1')).toBe(10_000);
    expect(recordOf(planInSetup(plan, 's2'), 'stand', 'st')?.at.xMm).toBe(10_000);
    expect(setupsItMovesIn(plan, 'st')).toEqual(['s2']);
    // Asked again, the plan of a setup gives itself, and knows where it came from.
    const there = planInSetup(plan, 's2');
    expect(planInSetup(there, 's2')).toBe(there);
    expect(wholePlan(there)).toBe(plan);
  });

  it('puts heights and facings that are changed on the floor into the move, and nothing else', () => {
    let plan = onFloor(moved(), 's2', (p) => setHeight(p, 'u1', 3200));
    plan = onFloor(plan, 's2', (p) => rotateRecords(p, new Set(['u1']), 30));
    const whole = recordOf(plan, 'fixture', 'u1');
    const there = recordOf(planInSetup(plan, 's2'), 'fixture', 'u1');
    expect(recordOf(plan, 'stand', 'st')?.heightMm).toBe(2000);
    expect(whole?.aim).toEqual({ at: 'facing', facingDeg: 0, tiltDeg: 0 });
    expect(there?.aim).toMatchObject({ facingDeg: 30 });
    expect(recordOf(planInSetup(plan, 's2'), 'stand', 'st')?.heightMm).toBe(3200);
    plan = onFloor(plan, 's2', (p) => aimAtMark(p, ['u1'], 'm1'));
    expect(recordOf(planInSetup(plan, 's2'), 'fixture', 'u1')?.aim).toEqual({ at: 'mark', markId: 'm1' });
    // What is not about the place goes to the unit itself, in every setup.
    plan = onFloor(plan, 's2', (p) => {
      const f = recordOf(p, 'fixture', 'u1');
      if (!f) throw new Error('no unit');
      return { added: [], removed: [], updated: [{ from: f, to: { ...f, gel: '½ CTO' } }] };
    });
    expect(recordOf(plan, 'fixture', 'u1')).toMatchObject({ gel: '½ CTO', at: { xMm: 4000 } });
  });

  it('moves what has no own place in every setup, though something else moves in this one', () => {
    const plan = onFloor(moved(), 's2', (p) => moveRecords(p, new Set(['u2']), { xMm: 500, yMm: 0 }));
    expect(at(plan, 'u2')).toBe(4500);
    expect(at(planInSetup(plan, 's2'), 'u2')).toBe(4500);
  });

  it('offers a free move for one setup only, with the cable left as it was', () => {
    const plan = rig();
    const changes = moveRecords(plan, new Set(['u1']), { xMm: 0, yMm: 2500 });
    expect(movesFreely(plan, 's2', changes)).toBe(true);
    const after = applyChanges(plan, fromSetup(plan, 's2', changes, true));
    expect(after.records.get('u1')).toBe(plan.records.get('u1'));
    expect(after.records.get('c1')).toBe(plan.records.get('c1'));
    expect(recordOf(planInSetup(after, 's2'), 'fixture', 'u1')?.at.yMm).toBe(2500);
    expect(movesFreely(after, 's2', fromSetup(after, 's2', changes))).toBe(false);
  });

  it('goes back to the usual place, or makes the place that of every setup', () => {
    const plan = moved();
    const back = applyChanges(plan, stayHere(plan, 's2', ['u1']));
    expect(recordsOf(back, 'move')).toEqual([]);
    expect(at(planInSetup(back, 's2'), 'u1')).toBe(4000);
    const every = applyChanges(plan, placeEverywhere(plan, 's2', ['u1']));
    expect(recordsOf(every, 'move')).toEqual([]);
    expect(at(every, 'u1')).toBe(10_000);
  });

  it('goes with the setup that is copied and with the unit that is removed', () => {
    const plan = moved();
    const twice = applyChanges(
      plan,
      duplicateSetup(plan, 's2', 'Three', () => 's3'),
    );
    expect(at(planInSetup(twice, 's3'), 'u1')).toBe(10_000);
    const gone = onFloor(plan, 's2', (p) => removeRecords(p, new Set(['u1'])));
    expect(gone.records.has('u1')).toBe(false);
    expect(recordsOf(gone, 'move')).toEqual([]);
    expect(recordsOf(applyChanges(plan, removeRecords(plan, new Set(['s2']))), 'move')).toEqual([]);
  });

  it('cuts a cable for the longest place of all setups', () => {
    const plan = moved();
    const cable = recordOf(plan, 'cable', 'c1');
    if (!cable) throw new Error('no cable');
    const l = cableLength(plan, cable);
    expect(l?.drawnMm).toBe(10_000);
    expect(l?.longestIn).toBe('s2');
    expect(cableLength(planInSetup(plan, 's2'), cable)?.totalMm).toBe(l?.totalMm);
    // Nearer in one setup, it is still as long as the usual place needs.
    const near = onFloor(moved(), 's2', (p) => moveRecords(p, new Set(['u1']), { xMm: -8000, yMm: 0 }));
    expect(cableLength(near, cable)?.drawnMm).toBe(4000);
  });

  it('draws the chosen setup, and the other places faintly where asked', () => {
    const plan = moved();
    const xs = (setupId: string, ghosts: boolean): readonly number[] =>
      drawFloor(plan, { floorId: 'floor', setupId, nominalScale: 50, options: { ghosts, labels: false } })
        .items.filter(
          (i) => i.key.includes('u1') && (i.key.startsWith('fixture') || i.key.startsWith('ghost')),
        )
        .flatMap((i) => i.primitives.flatMap((p) => (p.kind === 'symbol' ? [p.xMm] : [])));
    expect(xs('s1', false)).toEqual([4000]);
    expect(xs('s2', false)).toEqual([10_000]);
    expect([...xs('s2', true)].sort((a, b) => a - b)).toEqual([4000, 10_000]);
  });

  it('looks at every setup for what depends on where things stand, and names the worst', () => {
    const far = (p: Plan) =>
      at(p, 'u1') > 4000 ? [{ ...always('far', 'warn', 'u1', ['u1']), figure: at(p, 'u1') }] : [];
    expect(findingsInSetups(moved(), ['s1', 's2'], far)).toMatchObject([
      { rule: 'far', setups: [1], worstSetup: 1, figure: 10_000 },
    ]);
    expect(findingsInSetups(rig(), ['s1', 's2'], far)).toEqual([]);
  });

  it('gives the whole plan back as it was when an edit on the floor is undone', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom('u1', 'u2', 'st', 'm1', 'box'),
            fc.constantFrom('s1', 's2'),
            fc.constantFrom('move', 'turn', 'own', 'back', 'everywhere'),
            fc.integer({ min: -3000, max: 3000 }),
          ),
          { maxLength: 8 },
        ),
        (steps) => {
          let plan = rig();
          for (const [id, setupId, what, by] of steps) {
            const shown = planInSetup(plan, setupId);
            const raw =
              what === 'own'
                ? moveOnlyHere(plan, setupId, [id])
                : what === 'back'
                  ? stayHere(plan, setupId, [id])
                  : what === 'everywhere'
                    ? placeEverywhere(plan, setupId, [id])
                    : fromSetup(
                        plan,
                        setupId,
                        what === 'move'
                          ? moveRecords(shown, new Set([id]), { xMm: by, yMm: by / 2 })
                          : rotateRecords(shown, new Set([id]), by / 10),
                      );
            const after = applyChanges(plan, raw);
            expect([...applyChanges(after, invert(raw)).records.values()].length).toBe(plan.records.size);
            expect(new Map(applyChanges(after, invert(raw)).records)).toEqual(new Map(plan.records));
            if (what === 'move' || what === 'turn') {
              // What is seen after the edit is what the edit made of what was seen before.
              const wanted = applyChanges(
                shown,
                what === 'move'
                  ? moveRecords(shown, new Set([id]), { xMm: by, yMm: by / 2 })
                  : rotateRecords(shown, new Set([id]), by / 10),
              );
              for (const k of ['u1', 'u2', 'st', 'm1', 'box'])
                expect(planInSetup(after, setupId).records.get(k)).toEqual(wanted.records.get(k));
              const other = setupId === 's1' ? 's2' : 's1';
              for (const m of recordsOf(plan, 'move'))
                if (m.setupId === other)
                  expect(planInSetup(after, other).records.get(m.recordId)).toMatchObject({ at: m.at });
            }
            plan = after;
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});
