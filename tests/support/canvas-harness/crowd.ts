import { gearBook } from '../../../src/gear/index.ts';
import { idMaker } from '../../../src/kernel/ids.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { newPlan } from '../../../src/plan/edits/new-plan.ts';
import { placeFixture } from '../../../src/plan/edits/place.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { recordsOf } from '../../../src/plan/plan.ts';

/** A plan with many units in rows, for looking at speed. */
export const crowd = (count: number): Plan => {
  let seed = 7;
  const newId = idMaker(() => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  });
  let plan = newPlan(
    {
      title: 'Crowd',
      production: 'Crowd',
      practice: 'north-america',
      lengthUnits: 'imperial',
      roomMm: { lengthMm: 40_000, widthMm: 30_000 },
    },
    newId,
  );
  const floorId = recordsOf(plan, 'floor')[0]?.id ?? '';
  const kinds = gearBook('north-america').filter((k) => k.family === 'fixture');
  for (let i = 0; i < count; i++) {
    const kind = kinds[i % kinds.length];
    if (kind?.family !== 'fixture') continue;
    const at = { xMm: 1000 + (i % 30) * 1300, yMm: 1000 + Math.floor(i / 30) * 1400 };
    const placed = placeFixture(
      plan,
      { kind, floorId, at, heightMm: 2000, facingDeg: (i * 37) % 360 },
      newId,
    );
    plan = applyChanges(plan, placed.changes);
  }
  return plan;
};
