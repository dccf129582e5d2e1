import { createSession } from '../../src/editor/session.ts';
import { idMaker } from '../../src/kernel/ids.ts';
import { moveRecords } from '../../src/plan/edits/arrange.ts';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import type { Assessment } from '../../src/report/types.ts';
import { EDITS, editsToMeter } from './edits.ts';
import { largePlan } from './large-plan.ts';
import { interleaved, line, ms, quantile, ROUNDS, timed, times } from './measure.ts';

const EDITS_PER_ROUND = 20;
const HEAP_EDITS = 5000;

const fresh = (text: string): Plan => {
  const read = readPlan(text);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
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
  let previous: Assessment = assess(session.getState().plan, { revision: 0 });
  const before = heapMb();
  const ids = recordsOf(session.getState().plan, 'fixture').map((f) => f.id);
  for (let i = 0; i < HEAP_EDITS; i++) {
    const id = ids[i % ids.length] ?? '';
    session.commit('Move', moveRecords(session.getState().plan, new Set([id]), { xMm: 1, yMm: 1 }));
    previous = assess(session.getState().plan, { revision: i + 1, previous });
  }
  const after = heapMb();
  line(
    `heap before and after ${previous.revision} edits, each assessed`,
    `${after.toFixed(1)} MB`,
    `${before.toFixed(1)} MB before`,
  );
  line('  undo steps kept', String(session.getState().undoStack.length));
};

/** Every kind of edit: the middle time and the one that 95 of 100 keep to. */
const kindsOfEdits = (text: string): void => {
  const seen = new Map<string, number[]>(Object.keys(EDITS).map((name) => [name, []]));
  for (let round = 0; round < ROUNDS; round++)
    for (const [name, edit] of Object.entries(EDITS))
      seen.get(name)?.push(...editsToMeter(fresh(text), edit, EDITS_PER_ROUND));
  for (const [name, times] of seen)
    line(`  ${name}: median`, ms(quantile(times)), `95th percentile ${ms(quantile(times, 0.95))}`);
};

/** Assessment cold and after a move and a change of level, from 75 to 1,200 units. */
const scaling = (): void => {
  let before: { cold: number; move: number; level: number; n: number } | undefined;
  const middle = (text: string, name: keyof typeof EDITS): number =>
    quantile(editsToMeter(fresh(text), EDITS[name] as (typeof EDITS)[string], EDITS_PER_ROUND));
  for (const n of [75, 150, 300, 600, 1200]) {
    const text = serialisePlan(largePlan(n));
    const m = interleaved({
      cold: () => {
        const p = fresh(text);
        return timed(() => assess(p, { revision: 0 }));
      },
      move: () => middle(text, 'a unit moved'),
      level: () => middle(text, 'a level changed'),
    });
    const grew = before
      ? `, ${times(m.cold / before.cold)}, ${times(m.move / before.move)}, ${times(m.level / before.level)} those of ${before.n}`
      : '';
    line(
      `  ${n} units: cold, a unit moved, a level changed`,
      ms(m.cold),
      `${ms(m.move)}, ${ms(m.level)}${grew}`,
    );
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
      const seen = editsToMeter(
        fresh(text),
        EDITS['a unit moved'] as (typeof EDITS)[string],
        EDITS_PER_ROUND,
      );
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
  kindsOfEdits(text);
  scaling();
  line('load a plan file', ms(m.load), `${times(m.load / m.parse)} JSON.parse alone`);
  line('save a plan file', ms(m.save), `${times(m.save / m.stringify)} JSON.stringify alone`);
  line('  its size', `${Math.round(text.length / 1024)} kB`);
  heap(text);
};
