import './no-eval.ts';
import { applyChanges } from '../plan/change-set.ts';
import { emptyPlan, type Plan } from '../plan/plan.ts';
import { assess } from '../report/assess.ts';
import type { Assessment } from '../report/types.ts';
import { dehydrate, type FromWorker, type ToWorker } from './assess-messages.ts';

let plan: Plan = emptyPlan;
let revision = -1;
let previous: Assessment | undefined;
let waiting = false;

const reply = (m: FromWorker): void => self.postMessage(m);

/** Latest wins: whatever came in while a run was going is taken up in the next one. */
const run = (): void => {
  waiting = false;
  try {
    const assessment = assess(plan, previous ? { revision, previous } : { revision });
    previous = assessment;
    reply({ kind: 'assessment', data: dehydrate(assessment) });
  } catch (cause) {
    reply({
      kind: 'failed',
      revision,
      what: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause),
    });
  }
};

self.addEventListener('message', (e: MessageEvent<ToWorker>) => {
  const m = e.data;
  plan =
    m.kind === 'load'
      ? { ...emptyPlan, records: new Map(m.records.map((r) => [r.id, r])) }
      : applyChanges(plan, m.changes);
  revision = m.revision;
  if (!waiting) {
    waiting = true;
    setTimeout(run, 0);
  }
});
