import './no-eval.ts';
import { emptyPlan } from '../plan/plan.ts';
import { findFewest } from '../report/fewest.ts';
import type { FromFewest, ToFewest } from './fewest-messages.ts';

const reply = (m: FromFewest): void => self.postMessage(m);

self.addEventListener('message', ({ data }: MessageEvent<ToFewest>) => {
  try {
    const plan = { ...emptyPlan, records: new Map(data.records.map((r) => [r.id, r])) };
    reply({ kind: 'found', fewest: findFewest(plan, data.day, (step) => reply({ kind: 'step', step })) });
  } catch (cause) {
    reply({
      kind: 'failed',
      what: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause),
    });
  }
});
