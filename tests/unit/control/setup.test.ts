import { describe, expect, it } from 'vitest';
import { byPosition, positionOf } from '../../../src/derive/positions.ts';
import { breakPlaces, placesOf } from '../../../src/engines/control/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { removeRecords } from '../../../src/plan/edits/arrange.ts';
import { setBreak } from '../../../src/plan/edits/patch.ts';
import { clearTicks, tickSteps, untickSteps } from '../../../src/plan/edits/ticks.ts';
import { kindOf, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { controlBy, withoutData } from '../../../src/report/control-by.ts';
import { cardProgress, cardUnits, settingsOf, setupSteps } from '../../../src/report/setup-steps.ts';
import { LineRig } from '../../support/line-rig.ts';

const ids = (r: LineRig, id: string): readonly string[] => {
  const f = recordOf(r.plan(), 'fixture', id);
  return f ? setupSteps(r.plan(), f).map((s) => s.id) : [];
};

describe('set-up steps', () => {
  it('come in the order of the work, and only those the unit has', () => {
    const r = new LineRig();
    const f = r.unit(1, { link: 'radio' });
    expect(ids(r, f.id)).toEqual([
      'reset',
      'mode',
      'address',
      'curve',
      'fan',
      'loss',
      'wireless',
      'unlink',
      'link',
      'identify',
    ]);
    const k = kindOf(r.plan(), 'f', 'fixture');
    expect(settingsOf(k && { ...k, source: 'discharge' })).toEqual(['loss']);
    expect(settingsOf(k && { ...k, settings: ['fan'] })).toEqual(['fan']);
  });

  it('name the transmitter and its port, and the receiver plugged in', () => {
    const r = new LineRig();
    const t = r.device('T1', 'transmitter-2', { 'in-1': 3, 'in-2': 1 });
    const f = r.unit(1, { link: 'radio', linkId: t.id });
    const text = (): string | undefined => setupSteps(r.plan(), f).find((s) => s.id === 'link')?.text;
    expect(text()).toBe('Link to T1, port line 2');
    r.device('R1', 'receiver-plug', {}, { fixtureId: f.id, listensToId: t.id });
    expect(text()).toBe('Link receiver R1 to T1, port line 2');
  });

  it('name the line, what it comes from, and the terminator in the last unit', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const [a, b] = [r.unit(1), r.unit(2)];
    r.line('L4', 'd-D1', 'out-1', [a, b]);
    const texts = (f: typeof a): readonly string[] => setupSteps(r.plan(), f).map((s) => s.text);
    expect(texts(a)).toContain('Line L4 in, from D1, line 1');
    expect(texts(b)).toContain('Line L4 in, from Unit 1');
    expect(texts(a)).not.toContain('Terminator in its through');
    expect(texts(b)).toContain('Terminator in its through');
  });
});

describe('ticks', () => {
  it('are kept by step with who did them, counted, and taken away again', () => {
    const r = new LineRig();
    const f = r.unit(1);
    let plan = r.plan();
    plan = applyChanges(
      plan,
      tickSteps(plan, f.id, ['reset', 'mode', 'gone'], 'J. P.', '2027-09-06T07:30:00Z'),
    );
    expect(cardProgress(plan, f)).toMatchObject({ done: 2, all: false, by: 'J. P.' });
    plan = applyChanges(plan, untickSteps(plan, f.id, ['mode']));
    expect(cardProgress(plan, f).done).toBe(1);
    const steps = setupSteps(plan, f).map((s) => s.id);
    plan = applyChanges(plan, tickSteps(plan, f.id, steps, '', '2027-09-06T08:00:00Z'));
    expect(cardProgress(plan, f)).toMatchObject({ all: true, done: steps.length });
    // A step ticked before keeps who ticked it.
    expect(cardProgress(plan, f).steps[0]?.tick?.by).toBe('J. P.');
    expect(recordsOf(applyChanges(plan, clearTicks(plan)), 'tick')).toEqual([]);
    const gone = applyChanges(plan, removeRecords(plan, new Set([f.id])));
    expect(recordsOf(gone, 'tick')).toEqual([]);
  });

  it('are for units with a mode', () => {
    const r = new LineRig();
    const f = r.unit(1);
    r.b.fixture('f', { id: 'bare', unit: '9' });
    expect(cardUnits(r.plan()).map((x) => x.id)).toEqual([f.id]);
  });
});

describe('positions', () => {
  it('are the pipe a unit hangs on, else the smallest named piece it is on', () => {
    const r = new LineRig();
    const piece = (id: string, label: string, lengthMm: number) =>
      r.b.put({
        id,
        type: 'setPiece',
        floorId: 'floor',
        at: { xMm: 0, yMm: 0 },
        rotationDeg: 30,
        outline: { shape: 'rect', lengthMm, widthMm: lengthMm },
        heightMm: 500,
        label,
        line: 'solid',
      });
    piece('p1', 'Stage', 20_000);
    piece('p2', 'Riser', 4000);
    const [on, off, out] = [r.unit(1), r.unit(5), r.unit(90)];
    const name = (f: typeof on): string => positionOf(r.plan(), f).name;
    expect([name(on), name(off), name(out)]).toEqual(['Riser', 'Stage', 'On stands and floor']);
    expect(byPosition(r.plan(), [off, on, out]).map((g) => g.fixtures.length)).toEqual([1, 1, 1]);
  });
});

describe('units without control data', () => {
  it('are all listed, with how they are controlled', () => {
    const r = new LineRig();
    r.unit(1);
    const kind = (slug: string, k: object) => r.b.fixtureKind(slug, {}, { modes: [], ...k });
    kind('lamp', { source: 'tungsten' });
    kind('hmi', { source: 'discharge' });
    kind('bulb', { source: 'led', controlBy: 'app' });
    const units = ['lamp', 'hmi', 'bulb'].map((k, i) => r.b.fixture(k, { id: `x-${k}`, unit: `1${i}` }));
    expect(withoutData(r.plan()).map((f) => f.id)).toEqual(['x-lamp', 'x-hmi', 'x-bulb']);
    expect(units.map((f) => controlBy(r.plan(), f).how)).toEqual(['manual', 'local', 'app']);
  });
});

describe('modes of several breaks', () => {
  it('control-footprint: each break has an address, moved on its own, undone by the first', () => {
    const r = new LineRig();
    r.b.fixtureKind(
      'two',
      {},
      {
        modes: [
          {
            id: 'm',
            name: 'two',
            slots: 10,
            parts: 1,
            breaks: [
              { number: 1, slots: 10 },
              { number: 2, slots: 30 },
            ],
          },
        ],
      },
    );
    const f = r.b.fixture('two', {
      id: 'two1',
      unit: '1',
      patch: { modeId: 'm', universeId: 'u1', address: 5, paired: false },
    });
    expect(breakPlaces(r.plan(), f)).toEqual([
      { universe: 1, address: 5, fromSlot: 1 },
      { universe: 1, address: 15, fromSlot: 11 },
    ]);
    const moved = setBreak(r.plan(), f.id, 11, 2, 100);
    if (!moved.ok) throw new Error(moved.error.what);
    const plan = applyChanges(r.plan(), moved.value);
    const after = recordOf(plan, 'fixture', f.id);
    expect(after && placesOf(plan, after)).toEqual([
      { universe: 1, address: 5, fromSlot: 1 },
      { universe: 2, address: 100, fromSlot: 11 },
    ]);
    expect(after && setupSteps(plan, after).find((s) => s.id === 'address')?.text).toBe(
      'Addresses U1 5 and U2 100',
    );
    expect(setBreak(plan, f.id, 12, 1, 1).ok).toBe(false);
    expect(setBreak(plan, f.id, 11, 1, 500).ok).toBe(false);
  });
});
