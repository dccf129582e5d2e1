// A page with the browser's store and nothing else, driven by tests/browser/faults-storage.test.ts.
import { serialisePlan } from '../../../src/plan/file.ts';
import { browserStore } from '../../../src/storage/browser.ts';
import type { OpenPlan } from '../../../src/storage/port.ts';
import { edit, markRecord, smallPlan } from '../small-plan.ts';

const store = browserStore();
let open: OpenPlan | undefined;
const foreign: string[] = [];

const current = (): OpenPlan => {
  if (!open) throw new Error('no plan is open');
  return open;
};

const take = (r: Awaited<ReturnType<typeof store.open>>): string => {
  if (!r.ok) throw new Error(r.error.what);
  open = r.value;
  r.value.onForeign((t) => foreign.push(t.label));
  return r.value.planId;
};

/** Puts a mark whose name counts up, and a second one with the same name: together they show a mix. */
const step = (n: number): void => {
  const { transaction, after } = edit(current().plan, `Step ${n}`, (d) => {
    d.put(markRecord('mark-first', String(n)));
    d.put(markRecord('mark-second', String(n)));
  });
  current().append(transaction, after);
};

const nameOf = (id: string): number => {
  const mark = current().plan.records.get(id);
  return mark?.type === 'mark' ? Number(mark.name) : -1;
};

const harness = {
  create: async (marks = 3) => take(await store.create(smallPlan('Kitchen', marks))),
  open: async (planId: string) => take(await store.open(planId)),
  step,
  /** Steps on and on, and reports each number once it is shown as saved. */
  run: (report: (saved: number) => void) => {
    let n = Math.max(0, nameOf('mark-first'));
    current().onSaveState((s) => {
      if (s.state === 'saved') report(nameOf('mark-first'));
    });
    setInterval(() => step(++n), 17);
  },
  flush: () => current().flush(),
  close: () => current().close(),
  takeOver: async () => (await current().takeOver()).ok,
  state: () => current().saveState().state,
  notices: () => current().notices,
  names: () => [nameOf('mark-first'), nameOf('mark-second')] as const,
  text: () => serialisePlan(current().plan),
  foreign: () => foreign,
  list: async () => (await store.list()).map((p) => p.title),
};

export type Harness = typeof harness;
declare global {
  interface Window {
    harness: Harness;
    reportSaved(n: number): void;
  }
}
window.harness = harness;
