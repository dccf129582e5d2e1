import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figureKey, QUANTITIES } from '../../src/derive/types.ts';
import { computePower } from '../../src/engines/power/index.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { AnyRecord } from '../../src/plan/records/index.ts';
import { assess } from '../../src/report/assess.ts';
import { explainOrWhy } from '../../src/report/explain.ts';
import { assessmentJson } from '../../src/report/json.ts';
import { supplySummary } from '../../src/report/summary.ts';
import { checkLaws } from '../support/laws.ts';
import { buildRig, randomRig } from '../support/random-rig.ts';

const fresh = (plan: Plan): Plan => ({ ...plan, records: new Map(plan.records) });

/** One edit of a plan: a level, a length, a kind's watts, a move, a removal, a swap of ends. */
const edit = (plan: Plan, pick: number, amount: number): Plan => {
  const ids = [...plan.records.keys()].filter((id) => id !== 'plan' && id !== 'floor');
  const id = ids[pick % ids.length] ?? '';
  const r = plan.records.get(id);
  const records = new Map(plan.records);
  const put = (next: AnyRecord): void => {
    records.set(next.id, next);
  };
  if (r?.type === 'level') put({ ...r, levelPct: amount % 101 });
  else if (r?.type === 'cable')
    put(
      amount % 3 === 0
        ? { ...r, from: { ...r.from, portId: `w${amount % 7}` } }
        : { ...r, piecesMm: [amount * 10] },
    );
  else if (r?.type === 'fixture')
    put(amount % 4 === 0 ? { ...r, onPacks: !r.onPacks } : { ...r, at: { xMm: amount * 50, yMm: 0 } });
  else if (r?.type === 'kind' && r.family === 'fixture' && r.load)
    put({
      ...r,
      load:
        amount % 2 === 0
          ? { ...r.load, wattsW: amount }
          : { ...r.load, powerFactor: 0.5 + (amount % 50) / 100 },
    });
  else if (r?.type === 'kind' && r.family === 'cable') put({ ...r, ampacityA: 5 + (amount % 40) });
  else if (r?.type === 'kind' && r.family === 'box')
    put({ ...r, ways: r.ways.map((w) => ({ ...w, breakerA: 5 + (amount % 60) })) });
  else if (r?.type === 'source') put({ ...r, voltsV: 100 + (amount % 150) });
  else if (r?.type === 'setup') records.delete(id);
  else if (r?.type === 'box') put({ ...r, label: `K${amount}` });
  return { ...plan, records };
};

describe('the power engine on random plans', () => {
  it('power-flow: the laws of circuits hold', () => {
    fc.assert(
      fc.property(randomRig, (rig) => {
        checkLaws(computePower(buildRig(rig).plan));
      }),
      { numRuns: 120 },
    );
  });

  it('power-incremental: after random edits the answer is that from scratch', () => {
    fc.assert(
      fc.property(
        randomRig,
        fc.array(fc.tuple(fc.nat(), fc.nat(2000)), { minLength: 1, maxLength: 8 }),
        (rig, edits) => {
          let plan = buildRig(rig).plan;
          let last = assess(plan, { revision: 0 });
          edits.forEach(([pick, amount], i) => {
            plan = edit(plan, pick, amount);
            last = assess(plan, { revision: i + 1, previous: last });
          });
          const scratch = assess(fresh(plan), { revision: edits.length });
          expect(assessmentJson(plan, last)).toBe(assessmentJson(plan, scratch));
          expect(
            Buffer.from(last.figures.values.buffer).equals(Buffer.from(scratch.figures.values.buffer)),
          ).toBe(true);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('power-defect: plans torn at random never crash it, and every finding has words', () => {
    fc.assert(
      fc.property(randomRig, fc.array(fc.tuple(fc.nat(), fc.nat(5)), { maxLength: 6 }), (rig, tears) => {
        const { plan } = buildRig(rig);
        const records = new Map(plan.records);
        for (const [pick, how] of tears) {
          const ids = [...records.keys()].filter((id) => id !== 'plan');
          const id = ids[pick % ids.length] ?? '';
          const r = records.get(id);
          if (how === 0 || !r) records.delete(id);
          else if (r.type === 'cable') {
            const boxes = ids.filter((x) => x.startsWith('box'));
            const other = boxes[pick % Math.max(1, boxes.length)] ?? 'none';
            if (how === 1) records.set(id, { ...r, to: { recordId: other, portId: 'in' } });
            else if (how === 2) records.set(id, { ...r, from: { recordId: other, portId: 'thru0' } });
            else if (how === 3) records.set(id, { ...r, kindId: other });
            else records.set(id, { ...r, piecesMm: [Number.NaN] });
          } else if (r.type === 'kind' && r.family === 'fixture' && r.load)
            records.set(id, { ...r, load: { ...r.load, wattsW: how === 1 ? -5 : Number.NaN } });
          else if (r.type === 'level') records.set(id, { ...r, levelPct: how === 1 ? -1 : 500 });
          else if (r.type === 'source') records.set(id, { ...r, voltsV: how === 1 ? 0 : Number.NaN });
        }
        const torn: Plan = { ...plan, records };
        const a = assess(torn, { revision: 1 });
        JSON.parse(assessmentJson(torn, a));
        supplySummary(torn, a);
        for (const e of a.entities.slice(0, 12))
          for (const q of QUANTITIES) {
            const w = explainOrWhy(torn, figureKey(q, e.key, a.setups[0]?.id ?? ''));
            if (w.ok)
              expect(`${w.value.title} ${w.value.result} ${w.value.steps.join(' ')}`).not.toMatch(
                /NaN|undefined|Infinity/,
              );
          }
        for (const n of a.entities)
          if (n.notComputed !== undefined) expect(a.figures.get(n.key, 'leg0A', 0)).toBeNaN();
      }),
      { numRuns: 150 },
    );
  });
});
