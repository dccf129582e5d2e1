import { describe, expect, it } from 'vitest';
import { lineLength, lineLengths } from '../../../src/derive/data-lines.ts';
import { dataNet, reachOf } from '../../../src/derive/data-net.ts';
import { makeUp } from '../../../src/derive/stock.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText, wordedRules } from '../../../src/report/text.ts';
import { LineRig } from '../../support/line-rig.ts';

/** A desk of one universe with a line to so many units. */
const desk = (units: number, more: Parameters<LineRig['line']>[4] = {}) => {
  const r = new LineRig();
  r.device('D1', 'desk-2', { 'out-1': 1 });
  const all = Array.from({ length: units }, (_, i) => r.unit(i + 1));
  const line = r.line('L1', 'd-D1', 'out-1', all, more);
  return { r, all, line };
};

describe('data lines', () => {
  it('finds nothing about a patched, terminated line on its own universe', () => {
    expect(desk(4).r.found()).toEqual([]);
  });

  it('control-line-universe: a unit of another universe stops, also behind a splitter', () => {
    const { r } = desk(2);
    r.device('S1', 'split-data-4');
    r.line('L2', 'd-D1', 'out-2', [{ id: 'd-S1' }]);
    r.b.put({ ...r.device('D1', 'desk-2', { 'out-1': 1, 'out-2': 2 }) });
    const wrong = r.unit(9, { u: 1 });
    const right = r.unit(10, { u: 2 });
    r.line('L3', 'd-S1', 'out-1', [wrong, right]);
    expect(r.found()).toEqual([`stop control-line-universe ${wrong.id} l-L3`]);
  });

  it('control-line-universe: a parted unit is right on either of its universes', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 2 });
    const f = r.unit(1, {
      patch: {
        modeId: 'm',
        universeId: 'u1',
        address: 500,
        paired: false,
        spans: [{ fromSlot: 6, universeId: 'u2', address: 1 }],
      },
    });
    r.line('L1', 'd-D1', 'out-1', [f]);
    expect(r.found().filter((x) => x.includes('universe'))).toEqual([]);
  });

  it('control-line-split: a unit parted over two universes may have a line for each, and no more', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 1, 'out-2': 2, 'out-3': 1 });
    const f = r.unit(1, {
      patch: {
        modeId: 'm',
        universeId: 'u1',
        address: 500,
        paired: false,
        spans: [{ fromSlot: 6, universeId: 'u2', address: 1 }],
      },
    });
    r.line('L1', 'd-D1', 'out-1', [f]);
    const dry = () => r.found().filter((x) => x.includes('no-data'));
    expect(dry()).toEqual([`warn control-no-data ${f.id}`]);
    r.line('L2', 'd-D1', 'out-2', [f]);
    expect(dry()).toEqual([]);
    const splits = () => r.found().filter((x) => x.includes('split'));
    expect(splits()).toEqual([]);
    r.line('L3', 'd-D1', 'out-3', [f]);
    expect(splits().length).toBeGreaterThan(0);
  });

  it('control-line-unpatched: a unit without an address on a line warns', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const f = r.b.fixture('f', { id: 'x', unit: '9' });
    r.line('L1', 'd-D1', 'out-1', [f]);
    expect(r.found()).toEqual(['warn control-line-unpatched x l-L1']);
  });

  it('control-line-unset: a port without a universe warns once, and its units are not judged', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2');
    r.line('L1', 'd-D1', 'out-1', [r.unit(1), r.unit(2, { u: 2 })]);
    expect(r.found()).toEqual(['warn control-line-unset l-L1 d-D1']);
  });

  it('control-line-port: a port that is not there, and a stop without an input, stop', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const plain = r.b.fixture('plain', { id: 'p', unit: '9' });
    r.line('L1', 'd-D1', 'out-7', [r.unit(1)]);
    r.line('L2', 'd-D1', 'out-1', [plain]);
    expect(r.found()).toContain('stop control-line-port l-L1 d-D1');
    expect(r.found()).toContain('stop control-line-port l-L2 p');
  });

  it('control-line-port: a network does not go into a five-pin input', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const f = r.unit(1);
    r.line('N1', 'd-D1', 'network-1', [f]);
    expect(r.found()).toContain(`stop control-line-port l-N1 ${f.id}`);
  });

  it('control-line-dead, control-port-dead: a splitter and a transmitter without a line get nothing', () => {
    const r = new LineRig();
    r.device('S1', 'split-data-4');
    r.device('T1', 'transmitter-2', { 'in-1': 1, 'in-2': 2 });
    r.line('L1', 'd-S1', 'out-1', [r.unit(1)]);
    expect(r.found()).toEqual(['warn control-line-dead l-L1 d-S1', 'warn control-port-dead d-T1']);
  });

  it('control-port-dead: the port without a line of its universe is named', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const t = r.device('T1', 'transmitter-2', { 'in-1': 1, 'in-2': 2 });
    r.line('L1', 'd-D1', 'out-1', [t]);
    const plan = r.plan();
    const found = assess(plan, { revision: 0 }).findings.find((f) => f.rule === 'control-port-dead');
    expect(found && findingText(plan, found).head).toBe('T1 gets no data for U2');
  });

  it('control-port-dead: a node on a network that may carry all gets what it is set to', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8');
    const n = r.device('N1', 'node-2', { 'out-1': 1, 'out-2': 2 });
    const sw = r.device('SW', 'switch-5');
    r.line('N1', 'd-D1', 'network-1', [sw]);
    r.line('N2', 'd-SW', 'network-2', [n]);
    r.line('L1', 'd-N1', 'out-2', [r.unit(1, { u: 2 })]);
    expect(r.found()).toEqual([]);
  });

  it('control-line-split: two lines from one port, and a line from the middle of another, need a splitter', () => {
    const { r, all } = desk(3);
    r.line('L2', 'd-D1', 'out-1', [r.unit(8)]);
    r.line('L3', all[0]?.id ?? '', 'through', [r.unit(9)]);
    expect(r.found().filter((f) => f.includes('split'))).toEqual([
      'stop control-line-split l-L2 l-L1 d-D1',
      `stop control-line-split l-L3 l-L1 ${all[0]?.id}`,
    ]);
  });

  it('control-line-split: a line from the last unit goes on without one, and its segment is one', () => {
    const { r, all } = desk(3);
    r.line('L2', all[2]?.id ?? '', 'through', [r.unit(8)]);
    expect(r.found()).toEqual([]);
    expect(dataNet(r.plan()).segments.map((s) => [s.lineIds.length, s.stops.length])).toEqual([[2, 4]]);
  });

  it.each([
    [16, []],
    [17, ['note control-line-many']],
    [32, ['note control-line-many']],
    [33, ['stop control-line-loads']],
  ])('control-line-loads, control-line-many: %d units on a segment', (n, wanted) => {
    const found = desk(n)
      .r.found()
      .map((f) => f.split(' ').slice(0, 2).join(' '));
    expect(found.filter((f) => f.includes('line-'))).toEqual(wanted);
  });

  it('control-line-loads: receivers of an eighth of a unit load count as that', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const kind = r.b.records.get(r.device('S0', 'split-data-4').kindId);
    if (kind?.type !== 'kind' || kind.family !== 'dataSplitter') throw new Error('no splitter');
    r.b.put({ ...kind, unitLoads: 0.125 });
    const splitters = Array.from({ length: 40 }, (_, i) => r.device(`S${i}`, 'split-data-4'));
    r.b.put({ ...kind, unitLoads: 0.125 });
    r.line('L1', 'd-D1', 'out-1', splitters);
    expect(r.found().filter((f) => f.includes('loads'))).toEqual([]);
  });

  it('control-line-loads: each output of a splitter counts anew', () => {
    const { r } = desk(20);
    r.device('S1', 'split-data-4');
    r.line('L2', 'd-D1', 'out-2', [{ id: 'd-S1' }]);
    r.device('D1', 'desk-2', { 'out-1': 1, 'out-2': 1 });
    r.line(
      'L3',
      'd-S1',
      'out-1',
      Array.from({ length: 20 }, (_, i) => r.unit(i)),
    );
    expect(r.found().filter((f) => f.includes('loads'))).toEqual([]);
    expect(dataNet(r.plan()).segments.map((s) => s.stops.length)).toEqual([20, 1, 20]);
  });

  it.each([
    [250, []],
    [320, ['warn control-line-length']],
    [520, ['stop control-line-length']],
  ])('control-line-length: %d m of cable', (m, wanted) => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    r.line('L1', 'd-D1', 'out-1', [r.unit(m)], { slackPct: 0 });
    const found = r.found().map((f) => f.split(' ').slice(0, 2).join(' '));
    expect(found).toEqual(wanted);
  });

  it('control-line-end: an open end warns; a transmitter ends the line itself, a splitter does not', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 1, 'out-2': 1, 'out-3': 1 });
    const t = r.device('T1', 'transmitter-1', { 'in-1': 1 });
    const s = r.device('S1', 'split-data-4');
    const f = r.unit(1);
    r.line('L1', 'd-D1', 'out-1', [f], { terminated: false });
    r.line('L2', 'd-D1', 'out-2', [t], { terminated: false });
    r.line('L3', 'd-D1', 'out-3', [s], { terminated: false });
    expect(r.found().filter((x) => x.includes('end'))).toEqual([
      `warn control-line-end l-L1 ${f.id}`,
      'warn control-line-end l-L3 d-S1',
    ]);
  });

  it('control-line-remote: a one-way splitter on the way warns, one that works both ways does not', () => {
    for (const [slug, wanted] of [
      ['split-data-4', 1],
      ['split-data-4-rdm', 0],
    ] as const) {
      const r = new LineRig();
      r.device('D1', 'desk-8', { 'out-1': 1 });
      const s = r.device('S1', slug);
      r.line('L1', 'd-D1', 'out-1', [s]);
      r.line('L2', 'd-S1', 'out-1', [r.unit(1)], { remote: true });
      expect(r.found().filter((x) => x.includes('remote'))).toHaveLength(wanted);
    }
  });

  it('control-line-ring: a line back into its own start stops and does not hang', () => {
    const r = new LineRig();
    const s = r.device('S1', 'split-data-4');
    const s2 = r.device('S2', 'split-data-4');
    r.line('L1', 'd-S1', 'out-1', [s2]);
    r.line('L2', 'd-S2', 'out-1', [s]);
    expect(r.found().filter((x) => x.includes('ring')).length).toBeGreaterThan(0);
  });

  it('control-no-data: judged only where there is control gear or a line', () => {
    const r = new LineRig();
    const f = r.unit(1, { link: 'line' });
    expect(r.found()).toEqual([]);
    r.device('D1', 'desk-2', { 'out-1': 1 });
    expect(r.found()).toEqual([`warn control-no-data ${f.id}`]);
    r.line('L1', 'd-D1', 'out-1', [f]);
    expect(r.found()).toEqual([]);
  });

  it('control-no-data: a radio link counts where something sends the universe, or a receiver is plugged in', () => {
    const r = new LineRig();
    const d = r.device('D1', 'desk-2', { 'out-1': 1 });
    const byAir = r.unit(1, { link: 'radio' });
    const plugged = r.unit(2, { link: 'radio', u: 2 });
    expect(r.found().map((x) => x.split(' ')[2])).toEqual([byAir.id, plugged.id]);
    const t = r.device('T1', 'transmitter-1', { 'in-1': 1 });
    r.line('L1', d.id, 'out-1', [t]);
    expect(r.found().map((x) => x.split(' ')[2])).toEqual([plugged.id]);
    r.device('R1', 'receiver-plug', {}, { fixtureId: plugged.id, listensToId: t.id });
    expect(r.found()).toEqual([]);
    expect(reachOf(r.plan(), plugged.id).radioId).toBe('d-R1');
  });

  it('control-port-twice, control-port-full, control-device-full, control-port-missing', () => {
    const r = new LineRig();
    r.device('D1', 'desk-8', { 'out-1': 1, 'out-2': 1 });
    r.device('T1', 'transmitter-2', { 'in-1': 3, 'in-2': 3 });
    r.device(
      'N1',
      'desk-small',
      {},
      {
        ports: [
          { portId: 'out-1', universeId: 'u1' },
          { portId: 'out-1', universeId: 'u2' },
          { portId: 'gone', universeId: 'u3' },
        ],
      },
    );
    const found = r.found().map((f) => f.split(' ').slice(0, 3).join(' '));
    expect(found).toEqual([
      'note control-port-twice d-D1',
      'stop control-port-missing d-N1',
      'stop control-port-full d-N1',
      'stop control-device-full d-N1',
      'warn control-port-twice d-T1',
      'warn control-port-dead d-T1',
    ]);
  });

  it('control-line-chain: units that pass on power and data to the next are one note', () => {
    const { r, all } = desk(3);
    r.b.records.set('c', {
      id: 'c',
      type: 'cable',
      kindId: 'k',
      from: { recordId: all[0]?.id ?? '', portId: 'through' },
      to: { recordId: all[1]?.id ?? '', portId: 'in' },
      route: { auto: true, points: [] },
      label: '',
    });
    expect(r.found()).toEqual([`note control-line-chain ${all[0]?.id}`]);
  });

  it('has words for every rule of lines', () => {
    const rules = 'universe unpatched unset port dead split loads many length end remote chain ring'
      .split(' ')
      .map((x) => `control-line-${x}`);
    for (const rule of [
      ...rules,
      'control-no-data',
      'control-port-twice',
      'control-port-full',
      'control-port-missing',
      'control-device-full',
      'control-port-dead',
    ])
      expect(wordedRules.has(rule), rule).toBe(true);
  });
});

describe('length of a data line', () => {
  it('line-length-law: way, rises and slack of each hop, made up of stock lengths', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 }, { heightMm: 800 });
    const line = r.line('L1', 'd-D1', 'out-1', [
      r.unit(10, { heightMm: 2000 }),
      r.unit(14, { heightMm: 2000 }),
    ]);
    const l = lineLength(r.plan(), line);
    // 10 m + 0.8 m down + 2 m up, a tenth of slack: 14.08 m; then 4 m + 4 m, slack 0.8 m.
    expect(l.hops.map((h) => [h.drawnMm, h.risesMm, Math.round(h.neededMm)])).toEqual([
      [10000, 2800, 14080],
      [4000, 4000, 8800],
    ]);
    expect(l.hops.map((h) => h.piecesMm)).toEqual([[15000], [10000]]);
    expect(l.totalMm).toBeGreaterThanOrEqual(l.neededMm);
    expect(l.slackAssumed && l.stockAssumed).toBe(true);
  });

  it.each([
    [1000, [1500]],
    [15000, [15000]],
    [20001, [30000]],
    [50000, [50000]],
    [62000, [50000, 15000]],
    [130000, [50000, 50000, 30000]],
  ])('line-length-law: %d mm come in the fewest pieces', (mm, wanted) => {
    expect(makeUp(mm, [30000, 1500, 3000, 5000, 50000, 10000, 15000]).piecesMm).toEqual(wanted);
  });

  it('line-length-law: units rigged side by side are joined up there', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const up = { heightMm: 6000, support: { on: 'rigged' as const } };
    const line = r.line('L1', 'd-D1', 'out-1', [r.unit(0, up), r.unit(3, { ...up, heightMm: 6200 })], {
      slackPct: 0,
    });
    expect(lineLength(r.plan(), line).hops.map((h) => h.risesMm)).toEqual([6000, 200]);
  });

  it('line-length-law: a hop laid by hand is as long as its corners say', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const line = r.line('L1', 'd-D1', 'out-1', [r.unit(10)], {
      slackPct: 0,
      routes: [
        {
          hop: 0,
          points: [
            { xMm: 0, yMm: 3000 },
            { xMm: 10000, yMm: 3000 },
          ],
        },
      ],
    });
    expect(lineLength(r.plan(), line).hops[0]).toMatchObject({ drawnMm: 16000, byHand: true });
  });

  it('line-length-law: a stop that is not on the drawing is told, and kept once per plan', () => {
    const { r } = desk(2);
    r.line('L2', 'd-D1', 'out-2', [{ id: 'gone' }]);
    const plan = r.plan();
    expect(lineLengths(plan).map((l) => l.lost)).toEqual([[], ['gone']]);
    expect(lineLengths(plan)).toBe(lineLengths(plan));
  });
});
