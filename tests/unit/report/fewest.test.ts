import { expect, test } from 'vitest';
import { leastBaysOf, leastOf } from '../../../src/report/day.ts';
import { type FewestStep, findFewest } from '../../../src/report/fewest.ts';
import { batteryRig } from '../../support/battery-plan.ts';

/** Three units on bricks and one on another kind of pack for ten hours, with a charger for the bricks. */
const day = () => {
  const r = batteryRig();
  const big = r.pack('big', { energyWh: 190 });
  for (const id of ['1', '2', '3']) r.unit(id, { kindId: r.brick.id, count: 1, joined: 'parallel' });
  r.unit('4', { kindId: big.id, count: 1, joined: 'parallel' });
  r.block(480, 1080);
  r.stock(r.brick.id, 20);
  r.placeCharger('c1');
  return r.b.plan();
};

test('the search for the fewest tells each kind of pack and then the bays, and finds what they are', () => {
  const plan = day();
  const steps: FewestStep[] = [];
  const found = findFewest(plan, 1, (s) => steps.push(s));
  expect(found.least.map((l) => l.name).sort()).toEqual(['big', 'brick']);
  expect(steps.map((s) => s.now)).toEqual([1, 2, 3]);
  expect(steps.every((s) => s.of === 3)).toBe(true);
  expect(steps.map((s) => s.what).sort()).toEqual(['big', 'brick', 'charger bays']);
  expect(found).toEqual({ least: leastOf(day(), 1), bays: leastBaysOf(day(), 1) });
});

test('a day with nothing on packs is searched in no step', () => {
  const r = batteryRig();
  r.block(480, 600);
  const found = findFewest(r.b.plan(), 1, () => expect.unreachable());
  expect(found.least).toEqual([]);
});
