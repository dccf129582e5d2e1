import { expect, test } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { recordName } from '../../../src/plan/names.ts';
import { type AnyRecord, recordSchemas } from '../../../src/plan/records/index.ts';
import { floorRig } from '../../support/floor.ts';

test('things that lead back to themselves have a name all the same', () => {
  const records = [
    { id: 'm-1', type: 'move', setupId: 'm-1', recordId: 'm-2', at: { xMm: 0, yMm: 0 }, rotationDeg: 0 },
    { id: 'm-2', type: 'move', setupId: 'm-1', recordId: 'm-1', at: { xMm: 0, yMm: 0 }, rotationDeg: 0 },
    { id: 'l-1', type: 'level', setupId: 'l-1', fixtureId: 'l-1', levelPct: 50 },
    {
      id: 'c-1',
      type: 'cable',
      kindId: 'none',
      from: { recordId: 'c-1', portId: 'out' },
      to: { recordId: 'c-1', portId: 'in' },
      route: { auto: true, points: [] },
    },
  ].map((r) => recordSchemas[r.type as 'move' | 'level' | 'cable'].parse(r) as AnyRecord);
  const plan = applyChanges(floorRig().session.getState().plan, { added: records, updated: [], removed: [] });
  for (const r of records) expect(recordName(plan, r)).toMatch(/leads back to itself/);
});
