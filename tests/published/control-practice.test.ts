import { describe, expect, it } from 'vitest';
import { controlFindings } from '../../src/engines/control/index.ts';
import { needKind } from '../../src/gear/index.ts';
import { footprintOf } from '../../src/plan/footprint.ts';
import { partGrid } from '../../src/plan/part-levels.ts';
import { dataPortsOf } from '../../src/plan/ports.ts';
import { setupSteps } from '../../src/report/setup-steps.ts';
import { LineRig } from '../support/line-rig.ts';

/** Common practice, no published source: what set crews do as a rule. */
describe('common practice in control', () => {
  it('a unit is reset to defaults before anything else is set', () => {
    const r = new LineRig();
    const f = r.unit(1, { link: 'radio' });
    expect(setupSteps(r.plan(), f)[0]?.id).toBe('reset');
  });

  it('an old radio link is cleared before a new one is made', () => {
    const r = new LineRig();
    const steps = setupSteps(r.plan(), r.unit(1, { link: 'radio' })).map((s) => s.id);
    expect(steps.indexOf('unlink')).toBeLessThan(steps.indexOf('link'));
    expect(steps.indexOf('wireless')).toBeLessThan(steps.indexOf('unlink'));
  });

  it('a transmitter may carry four universes, and one of them that gets no data is a finding', () => {
    const kind = needKind('europe', 'transmitter-4-network', 'transmitter');
    expect(kind.universes).toBe(4);
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'network-1': 1 });
    const t = r.device(
      'T1',
      'transmitter-4-network',
      {},
      {
        ports: [
          { portId: 'network', universeId: 'u1' },
          { portId: 'network', universeId: 'u2' },
        ],
      },
    );
    r.line('L1', 'd-D1', 'network-1', [t]);
    expect(dataPortsOf(r.plan(), t.id).dataIn).toHaveLength(1);
    const found = controlFindings(r.plan()).find((f) => f.rule === 'control-port-dead');
    expect(found?.params.universes).toBe('U2');
  });
});

it('common practice: an 8×8 ft soft mat may have 16 separately controlled parts, a field of four by four', () => {
  const kind = needKind('north-america', 'led-blanket-8x8', 'fixture');
  const mode = kind.modes.find((m) => m.parts === 16);
  expect(mode && footprintOf(mode)).toMatchObject({ slots: 32, partSlots: 2 });
  expect(partGrid(kind, 16)).toMatchObject({ rows: 4, columns: 4 });
});

/** Lines against the figures that pages on EIA-485 and DMX512 lines print. */
describe('data lines against published limits', () => {
  const line = (units: number, lengthM = 0): readonly string[] => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const all = Array.from({ length: units }, (_, i) => r.unit(i === 0 ? lengthM : lengthM + 0.01));
    r.line('L1', 'd-D1', 'out-1', all, { slackPct: 0 });
    return controlFindings(r.plan()).map((f) => `${f.severity} ${f.rule}`);
  };

  it.each([
    // 32 unit loads for each driver: a data-logger maker’s help page on EIA-485 and a course page agree.
    [32, 'stop control-line-loads', false],
    [33, 'stop control-line-loads', true],
    // About 16 on a run: a maker’s support page.
    [16, 'note control-line-many', false],
    [17, 'note control-line-many', true],
  ])('%d units on a segment: %s is %s', (units, rule, told) => {
    expect(line(units).includes(rule)).toBe(told);
  });

  it.each([
    // 300 m as design limit: two makers’ support pages. 500 m at most: oksid.ch on DMX512.
    [280, []],
    [320, ['warn control-line-length']],
    [520, ['stop control-line-length']],
  ])('a segment of %d m', (m, wanted) => {
    expect(line(1, m)).toEqual(wanted);
  });
});
