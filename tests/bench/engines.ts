import { createSession } from '../../src/editor/session.ts';
import { idMaker } from '../../src/kernel/ids.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { moveRecords } from '../../src/plan/edits/arrange.ts';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import type { Assessment } from '../../src/report/types.ts';
import { largePlan } from './large-plan.ts';
import { interleaved, line, ms, quantile, ROUNDS, timed, times } from './measure.ts';

const EDITS_PER_ROUND = 20;
const HEAP_EDITS = 5000;

const fresh = (text: string): Plan => {
  const read = readPlan(text);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};

/** Moves one fixture after the other and assesses after each; gives the milliseconds of each. */
const editsToMeter = (start: Plan): number[] => {
  let plan = start;
  let previous: Assessment = assess(plan, { revision: 0 });
  const ids = recordsOf(plan, 'fixture').map((f) => f.id);
  return Array.from({ length: EDITS_PER_ROUND }, (_, i) => {
    const id = ids[(i * 31) % ids.length] ?? '';
    return timed(() => {
      plan = applyChanges(plan, moveRecords(plan, new Set([id]), { xMm: 100, yMm: 50 }));
      previous = assess(plan, { revision: i + 1, previous });
    });
  });
};

const heapMb = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

const heap = (text: string): void => {
  if (!globalThis.gc) return line('heap after edits', '–', 'run with --expose-gc');
  const session = createSession(
    fresh(text),
    idMaker(() => 0.5),
  );
  const before = heapMb();
  const ids = recordsOf(session.getState().plan, 'fixture').map((f) => f.id);
  for (let i = 0; i < HEAP_EDITS; i++) {
    const id = ids[i % ids.length] ?? '';
    session.commit('Move', moveRecords(session.getState().plan, new Set([id]), { xMm: 1, yMm: 1 }));
  }
  const after = heapMb();
  line(
    `heap before and after ${HEAP_EDITS} edits`,
    `${after.toFixed(1)} MB`,
    `${before.toFixed(1)} MB before`,
  );
  line('  undo steps kept', String(session.getState().undoStack.length));
};

/** Assessment cold and after an edit, from 75 to 1,200 units. */
const scaling = (): void => {
  let before: { n: number; cold: number; edit: number } | undefined;
  for (const n of [75, 150, 300, 600, 1200]) {
    const text = serialisePlan(largePlan(n));
    const m = interleaved({
      cold: () => {
        const p = fresh(text);
        return timed(() => assess(p, { revision: 0 }));
      },
      edit: () => quantile(editsToMeter(fresh(text))),
    });
    const grew = before
      ? `, ${times(m.cold / before.cold)} and ${times(m.edit / before.edit)} those of ${before.n}`
      : '';
    line(`  ${n} units: cold, and after an edit`, ms(m.cold), `${ms(m.edit)}${grew}`);
    before = { n, ...m };
  }
};

/** Engines, reading and writing: no browser. */
export const benchEngines = (plan: Plan): void => {
  const text = serialisePlan(plan);
  const bare: unknown = JSON.parse(text);
  const edits: number[] = [];
  const m = interleaved({
    cold: () => {
      const p = fresh(text);
      return timed(() => assess(p, { revision: 0 }));
    },
    edit: () => {
      const seen = editsToMeter(fresh(text));
      edits.push(...seen);
      return quantile(seen);
    },
    load: () => timed(() => fresh(text)),
    parse: () => timed(() => JSON.parse(text)),
    save: () => {
      const p = fresh(text);
      return timed(() => serialisePlan(p));
    },
    stringify: () => timed(() => JSON.stringify(bare)),
  });
  line('assess, cold', ms(m.cold));
  line('edit to meter, one fixture moved, median', ms(m.edit), `${times(m.cold / m.edit)} faster than cold`);
  line(`  95th percentile of ${ROUNDS * EDITS_PER_ROUND}`, ms(quantile(edits, 0.95)));
  scaling();
  line('load a plan file', ms(m.load), `${times(m.load / m.parse)} JSON.parse alone`);
  line('save a plan file', ms(m.save), `${times(m.save / m.stringify)} JSON.stringify alone`);
  line('  its size', `${Math.round(text.length / 1024)} kB`);
  heap(text);
};
