import { expect, it } from 'vitest';
import { gearList } from '../../../src/papers/lists.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

it('the gear list counts frames, cloths, accessories and the bags on stands', () => {
  const b = new RiggingRig();
  b.standKind('stand', { massKg: 6 });
  b.gripKind('frame', { massKg: 11 });
  b.gripKind('silk', { massKg: 1 });
  b.riggingKind('head', { massKg: 0.9 });
  const stands = [b.stand('stand', { bags: 2 }), b.stand('stand', { bags: 1 })];
  b.on(stands[0]?.id ?? '', 4, { accessories: ['head', 'head'] });
  b.grip('frame', { supports: stands.map((s) => s.id), clothId: 'silk' });
  const rows = gearList(b.plan()).rows.map((r) => r.slice(0, 3));
  expect(rows).toEqual([
    ['fixture', 'lamp-4', 1],
    ['stand', 'stand', 2],
    ['grip', 'Sand bag on a stand', 3],
    ['grip', 'frame', 1],
    ['grip', 'silk', 1],
    ['rigging', 'head', 2],
  ]);
});
