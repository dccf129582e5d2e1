import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { moveOnlyHere } from '../../../src/plan/edits/moves.ts';
import { moveOf } from '../../../src/plan/moves.ts';
import { recordOf, setupsOf } from '../../../src/plan/plan.ts';
import { PLACES } from '../../../src/ui/day/facets.ts';
import { elsewhereIn } from '../../../src/ui/day/places.ts';
import { demoPlan } from '../../support/demo-plan.ts';

/** The study with unit 4 half a metre to the right and as much up the sheet in its second setup. */
const moved = () => {
  const plan = demoPlan('study');
  const [a, b, c] = setupsOf(plan).map((s) => s.id);
  if (!a || !b || !c) throw new Error('three setups are needed');
  let next = applyChanges(plan, moveOnlyHere(plan, b, ['unit-4']));
  const stand = recordOf(next, 'fixture', 'unit-4')?.support;
  const ids = ['unit-4', stand?.on === 'stand' ? stand.standId : ''];
  for (const id of ids) {
    const m = moveOf(next, b, id);
    if (!m) throw new Error(`${id} has no place of its own`);
    const to = { ...m, at: { xMm: m.at.xMm + 500, yMm: m.at.yMm - 500 } };
    next = applyChanges(next, { added: [], updated: [{ from: m, to }], removed: [] });
  }
  return { plan: next, a, b, c };
};

describe('places in the grid of setups', () => {
  it('tells how far and where to a unit is moved, and of one that is not, nothing', () => {
    const { plan, a, b } = moved();
    expect(elsewhereIn(plan, b, 'unit-4')?.text).toMatch(/^(2|0\.71).*↗$/);
    expect(elsewhereIn(plan, a, 'unit-4')).toBeUndefined();
    expect(elsewhereIn(plan, b, 'unit-1')).toBeUndefined();
  });

  it('fills a place to another setup, and the usual one back', () => {
    const { plan, a, b, c } = moved();
    const here = PLACES.at(plan, b, 'unit-4');
    const filled = applyChanges(plan, PLACES.edit(plan, [{ fixtureId: 'unit-4', setupId: c, value: here }]));
    expect(moveOf(filled, c, 'unit-4')?.at).toEqual(moveOf(plan, b, 'unit-4')?.at);
    expect(moveOf(filled, a, 'unit-4')).toBeUndefined();
    const usual = PLACES.at(filled, a, 'unit-4');
    const back = applyChanges(
      filled,
      PLACES.edit(filled, [{ fixtureId: 'unit-4', setupId: b, value: usual }]),
    );
    expect(elsewhereIn(back, b, 'unit-4')).toBeUndefined();
    const cleared = PLACES.edit(filled, [{ fixtureId: 'unit-4', setupId: c, value: undefined }]);
    expect(elsewhereIn(applyChanges(filled, cleared), c, 'unit-4')).toBeUndefined();
  });

  it('gives a place to no other unit, and takes none by typing', () => {
    const { plan, b, c } = moved();
    const here = PLACES.at(plan, b, 'unit-4');
    const other = PLACES.edit(plan, [{ fixtureId: 'unit-1', setupId: c, value: here }]);
    expect(other.added).toEqual([]);
    expect(PLACES.read('2 m left').ok).toBe(false);
  });
});
