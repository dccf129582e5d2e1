import { fail, ok } from '../kernel/result.ts';
import type { FewestService } from '../ui/fewest-service.ts';
import { recordsForEngines } from './assess-messages.ts';
import type { FromFewest, ToFewest } from './fewest-messages.ts';

/** Searches in a worker of its own, which ends with the search or when that is stopped. */
export const fewestService: FewestService = {
  find: (plan, day, tell, signal) =>
    new Promise((resolve) => {
      const worker = new Worker(new URL('./fewest.worker.ts', import.meta.url), { type: 'module' });
      const end = (r: Parameters<typeof resolve>[0]): void => {
        worker.terminate();
        resolve(r);
      };
      const broken = (what: string): void => {
        console.error(what);
        end(fail({ what: 'The search stopped: a fault of the program. The plan is not affected.' }));
      };
      worker.addEventListener('message', ({ data: m }: MessageEvent<FromFewest>) => {
        if (m.kind === 'step') tell(m.step);
        else if (m.kind === 'found') end(ok(m.fewest));
        else broken(m.what);
      });
      worker.addEventListener('error', (e) => broken(e.message));
      signal.addEventListener('abort', () => end(fail({ what: 'The search was stopped.' })), { once: true });
      worker.postMessage({ records: recordsForEngines(plan.records.values()), day } satisfies ToFewest);
    }),
};
