import './no-eval.ts';
import { coverageItems } from '../drawing/coverage.ts';
import { applyChanges, peekChanges } from '../plan/change-set.ts';
import { planInSetup } from '../plan/moves.ts';
import { emptyPlan, type Plan } from '../plan/plan.ts';
import { bestSpots, coverage } from '../report/radio.ts';
import type { FromRadio, ToRadio } from './radio-messages.ts';

/** How far an outline of the picture may lie beside the true one. */
const TOLERANCE_MM = 60;

let plan: Plan = emptyPlan;

const reply = (m: FromRadio): void => self.postMessage(m);

const answer = (m: Extract<ToRadio, { id: number }>): FromRadio => {
  if (m.kind === 'spots') return { kind: 'spots', id: m.id, spots: bestSpots(plan, m.ask) };
  const there = planInSetup(plan, m.setupId);
  const grid = coverage(m.preview ? peekChanges(there, m.preview) : there, m.ask);
  return {
    kind: 'coverage',
    id: m.id,
    picture: grid && {
      floorId: grid.floorId,
      items: coverageItems(grid, TOLERANCE_MM),
      senderIds: grid.senderIds,
      heightM: grid.heightM,
      sensitivityDbm: grid.sensitivityDbm,
    },
  };
};

self.addEventListener('message', (e: MessageEvent<ToRadio>) => {
  const m = e.data;
  if (m.kind === 'load') plan = { ...emptyPlan, records: new Map(m.records.map((r) => [r.id, r])) };
  else if (m.kind === 'changes') plan = applyChanges(plan, m.changes);
  else
    try {
      reply(answer(m));
    } catch (cause) {
      const what = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
      reply({ kind: 'failed', id: m.id, what });
    }
});
