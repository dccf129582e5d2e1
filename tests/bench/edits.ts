import { applyChanges, type ChangeSet } from '../../src/plan/change-set.ts';
import { moveRecords } from '../../src/plan/edits/arrange.ts';
import { levelId, type Plan, recordsOf } from '../../src/plan/plan.ts';
import type { AnyRecord, Cable } from '../../src/plan/records/index.ts';
import { assess } from '../../src/report/assess.ts';
import type { Assessment } from '../../src/report/types.ts';
import { timed } from './measure.ts';

type Edit = (plan: Plan, i: number) => ChangeSet;

const changed = (from: AnyRecord, to: AnyRecord): ChangeSet => ({
  added: [],
  updated: [{ from, to }],
  removed: [],
});

const nothing: ChangeSet = { added: [], updated: [], removed: [] };

/** Every so many-th record of a type, another one each time. */
const pick = <T>(list: readonly T[], i: number, step: number): T | undefined =>
  list[(i * step) % list.length];

const moved =
  (type: 'fixture' | 'stand' | 'box'): Edit =>
  (plan, i) => {
    const r = pick(recordsOf(plan, type), i, 31);
    return r ? moveRecords(plan, new Set([r.id]), { xMm: 100, yMm: 50 }) : nothing;
  };

/** What people do to a plan all day, one change each. */
export const EDITS: Readonly<Record<string, Edit>> = {
  'a unit moved': moved('fixture'),
  'a stand moved with its unit': moved('stand'),
  'a box moved with its cables': moved('box'),
  'a level changed': (plan, i) => {
    const [s, f] = [pick(recordsOf(plan, 'setup'), i, 1), pick(recordsOf(plan, 'fixture'), i, 37)];
    const l = s && f && plan.records.get(levelId(s.id, f.id));
    return l?.type === 'level' ? changed(l, { ...l, levelPct: (l.levelPct + 13) % 101 }) : nothing;
  },
  'two plugs exchanged': (plan, i) => {
    const cables = recordsOf(plan, 'cable').filter(
      (c) => plan.records.get(c.to.recordId)?.type === 'fixture',
    );
    const beside = (a: Cable): Cable | undefined =>
      cables.find((c) => c.id !== a.id && c.from.recordId === a.from.recordId);
    const pairs = cables.filter((c) => beside(c));
    const a = pick(pairs, i, 29);
    const b = a && beside(a);
    if (!a || !b) return nothing;
    return {
      ...nothing,
      updated: [
        { from: a, to: { ...a, from: b.from } },
        { from: b, to: { ...b, from: a.from } },
      ],
    };
  },
  'a unit renamed': (plan, i) => {
    const f = pick(recordsOf(plan, 'fixture'), i, 41);
    return f ? changed(f, { ...f, unit: `9${i}` }) : nothing;
  },
  'a unit patched elsewhere': (plan, i) => {
    const f = pick(recordsOf(plan, 'fixture'), i, 43);
    return f?.patch ? changed(f, { ...f, patch: { ...f.patch, address: 1 + ((i * 17) % 400) } }) : nothing;
  },
  'a unit put down': (plan, i) => {
    const f = pick(recordsOf(plan, 'fixture'), i, 47);
    return f ? { ...nothing, added: [{ ...f, id: `${f.id}-new${i}`, unit: `8${i}` }] } : nothing;
  },
  'a cable taken away': (plan, i) => {
    const c = pick(recordsOf(plan, 'cable'), i, 53);
    return c ? { ...nothing, removed: [c] } : nothing;
  },
};

/** Makes so many edits of one kind, one after the other, and assesses after each; gives the milliseconds of each. */
export const editsToMeter = (start: Plan, edit: Edit, count: number): number[] => {
  let plan = start;
  let previous: Assessment = assess(plan, { revision: 0 });
  return Array.from({ length: count }, (_, i) => {
    const changes = edit(plan, i);
    return timed(() => {
      plan = applyChanges(plan, changes);
      previous = assess(plan, { revision: i + 1, previous });
    });
  });
};
