import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignAddresses, controlFindings, DEFAULT_ASSIGN } from '../../../src/engines/control/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, recordOf } from '../../../src/plan/plan.ts';
import { LineRig } from '../../support/line-rig.ts';

const BY_LINE = { ...DEFAULT_ASSIGN, order: 'line', ownUniverse: 'line' } as const;

const assigned = (plan: Plan, more: Partial<typeof DEFAULT_ASSIGN> = {}): Plan => {
  const r = assignAddresses(plan, { ...BY_LINE, ...more });
  if (!r.ok) throw new Error(r.error.what);
  return applyChanges(plan, r.value.changes);
};

const at = (plan: Plan, id: string): string => {
  const f = recordOf(plan, 'fixture', id);
  return `${f?.patch?.universeId} ${f?.patch?.address}`;
};

describe('addresses by data line', () => {
  it('assign-order: line by line and stop by stop, what no line reaches last', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 1, 'out-2': 1 });
    const [a, b, c, d] = [r.unit(1), r.unit(2), r.unit(3), r.unit(4)];
    if (!a || !b || !c || !d) throw new Error('no units');
    r.line('L10', 'd-D1', 'out-2', [a]);
    r.line('L2', 'd-D1', 'out-1', [d, b]);
    const result = assignAddresses(r.plan(), { ...DEFAULT_ASSIGN, order: 'line' });
    expect(result.ok && result.value.rows.map((x) => x.fixtureId)).toEqual([d.id, b.id, a.id, c.id]);
  });

  it('assign-order: units of a line go into the universe its port carries, two lines on one share it', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 3, 'out-2': 1, 'out-3': 3 });
    const u = [r.unit(1), r.unit(2), r.unit(3)];
    r.line('L1', 'd-D1', 'out-1', [u[0] ?? r.unit()]);
    r.line('L2', 'd-D1', 'out-2', [u[1] ?? r.unit()]);
    r.line('L3', 'd-D1', 'out-3', [u[2] ?? r.unit()]);
    const plan = assigned(r.plan());
    expect(u.map((f) => at(plan, f.id))).toEqual(['u3 1', 'u1 1', 'u3 11']);
    expect(controlFindings(plan).map((f) => f.rule)).toEqual(['control-port-twice']);
  });

  it('assign-order: radio units go where their transmitter sends; units on neither get a universe of their own', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 2 });
    const t = r.device('T1', 'transmitter-1', { 'in-1': 2 });
    r.line('L1', 'd-D1', 'out-1', [t]);
    const byAir = r.unit(1, { link: 'radio', linkId: t.id });
    const loose = r.unit(2, { link: 'none' });
    const plan = assigned(r.plan());
    expect(at(plan, byAir.id)).toBe('u2 1');
    expect(at(plan, loose.id)).toBe('u3 1');
  });

  it('assign-order: what a universe does not hold is told of', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 1 });
    r.line(
      'L1',
      'd-D1',
      'out-1',
      Array.from({ length: 53 }, (_, i) => r.unit(i)),
    );
    const result = assignAddresses(r.plan(), BY_LINE);
    expect(result.ok && result.value.notices.join()).toContain('2 go on in another');
  });

  it('assign-law: by line nothing overlaps and no unit is on the wrong line, fewest or in order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }),
        fc.boolean(),
        (counts, fewest) => {
          const r = new LineRig();
          const carries = [2, 1, 2, 3];
          r.device(
            'D1',
            'desk-64',
            Object.fromEntries(counts.map((_, i) => [`out-${i + 1}`, carries[i] ?? 1])),
          );
          counts.forEach((n, i) => {
            r.line(
              `L${i}`,
              'd-D1',
              `out-${i + 1}`,
              Array.from({ length: n }, () => r.unit(i)),
            );
          });
          const found = controlFindings(assigned(r.plan(), { fewest })).map((f) => f.rule);
          // Two of the desk's ports may carry one universe.
          expect(found.filter((x) => x !== 'control-port-twice')).toEqual([]);
        },
      ),
    );
  });
});
