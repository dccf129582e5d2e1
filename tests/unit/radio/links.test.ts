import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  computeRadio,
  explainRadio,
  hopsOf,
  radioFindings,
  radioKey,
} from '../../../src/engines/radio/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText, wordedRules } from '../../../src/report/text.ts';
import { RadioRig } from '../../support/radio-rig.ts';

const rules = (b: RadioRig): string[] => radioFindings(b.plan()).map((f) => `${f.severity} ${f.rule}`);
const found = (b: RadioRig, rule: string) => radioFindings(b.plan()).filter((f) => f.rule === rule);

describe('links', () => {
  it('radio-link-choice: without a choice a unit takes the best of those that carry its universe', () => {
    const b = new RadioRig();
    const far = b.device(0, 0);
    b.device(18, 0, { ports: [] });
    const u = b.unit(20, 0);
    expect(computeRadio(b.plan()).links.get(u.id)?.senderId).toBe(far.id);
    b.put({ ...u, linkId: 'd2' });
    expect(computeRadio(b.plan()).links.get(u.id)?.senderId).toBe('d2');
  });

  it('radio-link-choice: a receiver plugged into a unit is its ear', () => {
    const b = new RadioRig();
    b.device(0, 0);
    const u = b.unit(20, 0);
    const bare = computeRadio(b.plan()).links.get(u.id)?.marginDb ?? 0;
    expect(found(b, 'radio-receiver')).toHaveLength(1);
    b.receiverKind('plug', { sensitivityDbm: -85, antennaGainDbi: 3 });
    b.device(0, 0, { kindId: 'plug', fixtureId: u.id, listensToId: 'd1', ports: [] });
    const r = computeRadio(b.plan());
    expect(r.links.get(u.id)?.marginDb).toBeCloseTo(bare - 7 + 3, 9);
    expect(r.model.listeners.get(u.id)?.assumed).toBe(false);
    expect(found(b, 'radio-receiver')).toHaveLength(0);
  });

  it('radio-link-choice: what is built into the kind comes before the usual receiver', () => {
    const b = new RadioRig();
    b.device(0, 0);
    b.fixtureKind(
      'bulb',
      {},
      {
        modes: [{ id: 'm', name: 'm', slots: 4, parts: 1 }],
        radioIn: { sensitivityDbm: -80, antennaGainDbi: -2, fromMhz: 2390, toMhz: 2410 },
      },
    );
    const u = b.unit(20, 0);
    const bare = computeRadio(b.plan()).links.get(u.id)?.marginDb ?? 0;
    b.put({ ...u, kindId: 'bulb' });
    expect(computeRadio(b.plan()).links.get(u.id)?.marginDb).toBeCloseTo(bare - 14, 9);
  });

  it('radio-chain: over a repeater the margin is the least of both hops', () => {
    const b = new RadioRig();
    const tx = b.device(0, 0);
    const rp = b.device(60, 0, { kindId: 'rp', listensToId: tx.id });
    const u = b.unit(70, 0, { linkId: rp.id });
    const r = computeRadio(b.plan());
    const link = r.links.get(u.id);
    expect(link?.viaIds).toEqual([tx.id, rp.id]);
    expect(link?.marginDb).toBeCloseTo(r.links.get(rp.id)?.marginDb ?? 0, 9);
    expect(r.carried.get(rp.id)).toEqual(['u1']);
    expect(rules(b)).not.toContain('stop radio-universe');
  });

  it('radio-ring: repeaters that wait for one another are a stop, and nothing on them is computed', () => {
    const b = new RadioRig();
    b.device(0, 0);
    b.device(10, 0, { id: 'a', kindId: 'rp', listensToId: 'b' });
    b.device(20, 0, { id: 'b', kindId: 'rp', listensToId: 'a' });
    const u = b.unit(25, 0, { linkId: 'b' });
    expect(found(b, 'radio-ring')).toHaveLength(1);
    expect(computeRadio(b.plan()).links.get(u.id)?.notComputed).toBeDefined();
    expect(rules(b)).toContain('stop radio-ring');
  });

  it('radio-repeater: one that listens to nothing is a warning', () => {
    const b = new RadioRig();
    b.device(10, 0, { kindId: 'rp' });
    expect(rules(b)).toContain('warn radio-repeater');
  });

  it('radio-mesh: units pass on what they hear, no oftener than the limit', () => {
    const mesh = (hopsMax: number, unitsAt: readonly number[]) => {
      const b = new RadioRig();
      b.transmitterKind('mesh', {
        bands: [{ fromMhz: 2390, toMhz: 2410, eirpDbm: -20 }],
        mesh: { hopsMax, relayEirpDbm: -20 },
      });
      b.device(0, 0, { kindId: 'mesh', ports: [{ portId: 'in', universeId: 'u1' }] });
      return { b, units: unitsAt.map((x) => b.unit(x, 0)) };
    };
    // −20 dBm reaches about 28 m in the open.
    const { b, units } = mesh(3, [20, 40, 60, 80]);
    const r = computeRadio(b.plan());
    expect(units.slice(0, 3).map((u) => r.links.get(u.id)?.viaIds.length)).toEqual([1, 2, 3]);
    expect(units.map((u) => (r.links.get(u.id)?.marginDb ?? -1) >= 0)).toEqual([true, true, true, false]);
    expect(found(b, 'radio-hops').map((f) => f.recordIds[0])).toEqual([units[3]?.id]);
    expect(found(b, 'radio-margin').map((f) => f.recordIds[0])).not.toContain(units[3]?.id);
    const four = mesh(4, [20, 40, 60, 80]);
    expect(found(four.b, 'radio-hops')).toHaveLength(0);
  });
});

describe('what is wrong with links', () => {
  it('radio-no-transmitter: units by radio without any transmitter are one warning', () => {
    const b = new RadioRig();
    b.unit(0, 0);
    b.unit(5, 0);
    expect(rules(b)).toEqual(['warn radio-no-transmitter', 'note radio-receiver']);
  });

  it('radio-universe: a transmitter that does not carry the universe of what is linked to it is a stop', () => {
    const b = new RadioRig();
    b.put({ ...b.records.get('u1'), id: 'u2', number: 2 } as never);
    b.device(0, 0);
    b.unit(10, 0, {
      linkId: 'd1',
      patch: { modeId: 'm', universeId: 'u2', address: 1, paired: false },
    });
    expect(rules(b)).toContain('stop radio-universe');
  });

  it('radio-carrier: a universe on no transmitter, or one that is not in the plan, is a stop', () => {
    const b = new RadioRig();
    b.device(0, 0);
    b.unit(10, 0, { patch: { modeId: 'm', universeId: 'gone', address: 1, paired: false } });
    expect(rules(b)).toContain('stop radio-carrier');
  });

  it('radio-link: a link to something that does not send is a stop', () => {
    const b = new RadioRig();
    b.device(0, 0);
    b.unit(10, 0, { linkId: 'gone' });
    expect(rules(b)).toContain('stop radio-link');
  });

  it('radio-unpatched: a unit by radio without a universe is a warning', () => {
    const b = new RadioRig();
    b.device(0, 0);
    const { patch, ...bare } = b.unit(10, 0);
    b.put(bare);
    expect(patch).toBeDefined();
    expect(rules(b)).toContain('warn radio-unpatched');
    expect(found(b, 'radio-unpatched')[0]?.params).toMatchObject({ count: 1 });
  });

  it('radio-band: a receiver that does not take the band of its transmitter is a stop', () => {
    const b = new RadioRig();
    b.receiverKind('sub', { bands: [{ fromMhz: 863, toMhz: 870, eirpDbm: 14 }] });
    b.device(0, 0);
    const u = b.unit(10, 0, { linkId: 'd1' });
    b.device(0, 0, { kindId: 'sub', fixtureId: u.id, ports: [] });
    expect(rules(b)).toContain('stop radio-band');
  });

  it('radio-margin: beyond reach is a warning, weak a note, both with what another one would give', () => {
    const b = new RadioRig();
    b.device(0, 0);
    b.unit(9000, 0, { linkId: 'd1' });
    b.unit(1100, 0, { linkId: 'd1' });
    b.device(1090, 0);
    const list = found(b, 'radio-margin');
    expect(list.map((f) => f.severity)).toEqual(['warn', 'note']);
    expect(list[1]?.params.better).toBe('D2');
    expect(list[0]?.figureKey).toBe('radioMarginDb@fixture-0001/d1@-');
  });
});

describe('what is wrong with transmitters', () => {
  it('radio-links: more links than the kind takes is a warning', () => {
    const b = new RadioRig();
    b.device(0, 0, { linksMax: 1 });
    b.unit(5, 0);
    b.unit(6, 0);
    expect(rules(b)).toContain('warn radio-links');
  });

  it('radio-near: two within 2 m on one band are a warning, on two bands they are not', () => {
    const b = new RadioRig();
    b.transmitterKind('sub', { bands: [{ fromMhz: 863, toMhz: 870, eirpDbm: 14 }] });
    b.device(0, 0);
    b.device(1.5, 0);
    b.device(1, 1, { kindId: 'sub', ports: [{ portId: 'in', universeId: 'u1' }] });
    expect(found(b, 'radio-near').map((f) => f.about)).toEqual(['d1/d2']);
  });

  it('radio-low, radio-empty: below head height a note, without a universe a warning', () => {
    const b = new RadioRig();
    b.device(0, 0, { heightMm: 1000, ports: [] });
    expect(rules(b)).toEqual(['warn radio-empty', 'note radio-low']);
  });

  it('radio-backup: minutes follow from cell and draw, and a short time is a note', () => {
    const b = new RadioRig();
    b.transmitterKind('cell', { backupWh: 4, supplyW: 4 });
    b.device(0, 0, { kindId: 'cell', ports: [{ portId: 'in', universeId: 'u1' }] });
    b.unit(5, 0);
    const f = found(b, 'radio-backup')[0];
    // 60 · 4 Wh · 0.9 ÷ 4 W.
    expect(f?.params.minutes).toBeCloseTo(54, 9);
    b.put({ ...b.records.get('d1'), backupMin: 90 } as never);
    expect(found(b, 'radio-backup')).toHaveLength(0);
    b.put({ ...b.records.get('d1'), backupMin: 0 } as never);
    expect(rules(b)).toContain('note radio-no-backup');
  });

  it('radio-wifi: fewer free hop channels than a link keeps is a note', () => {
    const b = new RadioRig({ radio: { crowd: 'none', wifiChannels: [1, 6, 11] } });
    b.device(0, 0);
    expect(found(b, 'radio-wifi')[0]?.params).toMatchObject({ free: 16, least: 20 });
    b.put({ ...b.records.get('plan'), radio: { wifiChannels: [1, 6] } } as never);
    expect(found(b, 'radio-wifi')).toHaveLength(0);
  });

  it('radio-same-circuit: on the breaker of what it controls it is a warning, on another it is not', () => {
    const b = new RadioRig();
    b.sourceKind('gen', {
      ways: [
        { id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] },
        { id: '2', label: '2', breakerA: 20, poles: 1, curve: 'na', legs: [1] },
      ],
      outlets: ['1', '2'].flatMap((w) =>
        ['a', 'b'].map((x) => ({
          id: `o${w}${x}`,
          connector: 'stage-pin-20',
          legs: 1,
          neutral: true,
          wayId: w,
          label: w,
        })),
      ),
    });
    b.cableKind('lead');
    const inlets = [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }];
    b.transmitterKind('mains', { inlets, load: b.load({ wattsW: 4 }) });
    const gen = b.source('gen');
    const tx = b.device(0, 0, { kindId: 'mains', ports: [{ portId: 'in', universeId: 'u1' }] });
    const u = b.unit(5, 0);
    b.cable('lead', [gen.id, 'o1a'], [tx.id, 'in'], 5000);
    b.cable('lead', [gen.id, 'o1b'], [u.id, 'in'], 5000);
    expect(found(b, 'radio-same-circuit')[0]?.recordIds).toEqual([tx.id, u.id]);
    b.cable('lead', [gen.id, 'o2a'], [tx.id, 'in'], 5000);
    for (const [id, r] of b.records) if (r.type === 'cable' && r.from.portId === 'o1a') b.records.delete(id);
    expect(found(b, 'radio-same-circuit')).toHaveLength(0);
  });
});

describe('many links', () => {
  it('radio-margin: have the same margins as each has alone', () => {
    const b = new RadioRig({ radio: { crowd: 'many' } });
    let seed = 11;
    const random = (): number => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    for (let i = 0; i < 60; i++) {
      const [x, y] = [random() * 30, random() * 20];
      b.wall([x, y], [x + random() * 4 - 2, y + random() * 4 - 2], 'brick');
    }
    for (let i = 0; i < 6; i++) b.piece(random() * 30, random() * 20, { heightMm: 2600 });
    b.device(15, 10);
    for (let i = 0; i < 60; i++) b.unit(random() * 30, random() * 20);
    const r = computeRadio(b.plan());
    expect(r.links.size).toBe(60);
    for (const link of r.links.values()) expect(hopsOf(r, link)[0]?.marginDb).toBeCloseTo(link.marginDb, 9);
  });
});

describe('setups', () => {
  it('radio-margin: a unit that stands elsewhere in one setup has its own margin there, and the worst one is reported', () => {
    const b = new RadioRig();
    b.device(0, 0);
    const u = b.unit(20, 0);
    b.put({ id: 's1', type: 'setup', name: 'Here', order: 1 } as never);
    b.put({ id: 's2', type: 'setup', name: 'Far', order: 2 } as never);
    b.put({
      id: `move:s2:${u.id}`,
      type: 'move',
      setupId: 's2',
      recordId: u.id,
      at: { xMm: 2_000_000, yMm: 0 },
    } as never);
    const plan = b.plan();
    const margin = (setupId?: string): string => {
      const w = explainRadio(plan, radioKey('radioMarginDb', u.id, 'd1', setupId));
      return w && 'result' in w ? w.result : '';
    };
    expect(margin('s1')).toBe(margin());
    expect(margin('s2')).not.toBe(margin());
    const f = assess(plan, { revision: 0 }).findings.find((x) => x.rule === 'radio-margin');
    expect(f?.setupIds).toEqual(['s2']);
  });
});

describe('words', () => {
  it('radio: every rule that is found has words', () => {
    const source = ['findings', 'findings-senders']
      .map((f) => readFileSync(new URL(`../../../src/engines/radio/${f}.ts`, import.meta.url), 'utf8'))
      .join();
    const found = [...source.matchAll(/always\(\s*'(radio-[a-z-]+)'/g)].map((m) => m[1] ?? '');
    expect(new Set(found).size).toBeGreaterThan(18);
    expect(found.filter((rule) => !wordedRules.has(rule))).toEqual([]);
    const spec = readFileSync(new URL('../../../src/engines/radio/SPEC.md', import.meta.url), 'utf8');
    expect(found.filter((rule) => !spec.includes(`\`${rule}\``))).toEqual([]);
  });

  it('radio: what the plan does not say is listed as assumed, and only where something sends', () => {
    const b = new RadioRig({ radio: {} });
    b.unit(5, 0);
    const ids = (): string[] =>
      assess(b.plan(), { revision: 0 })
        .assumptions.map((a) => a.id)
        .filter((id) => id.startsWith('radio-'));
    expect(ids()).toEqual([]);
    b.device(0, 0);
    expect(ids()).toEqual(['radio-law', 'radio-distance', 'radio-crowd', 'radio-wifi', 'radio-receiver']);
    b.put({
      ...b.records.get('plan'),
      radio: { crowd: 'none', wifiChannels: [1], distanceCoefficient: 23 },
    } as never);
    expect(ids()).toEqual(['radio-law', 'radio-receiver']);
  });

  it('radio: every finding has words without holes, and none promises', () => {
    const plans: RadioRig[] = [];
    const with1 = (make: (b: RadioRig) => void): void => {
      const b = new RadioRig({ radio: { crowd: 'many', wifiChannels: [1, 6, 11] } });
      make(b);
      plans.push(b);
    };
    with1((b) => void b.unit(0, 0));
    with1((b) => {
      b.device(0, 0, { heightMm: 500, ports: [], linksMax: 1 });
      b.device(1, 0, { kindId: 'rp', listensToId: 'd3' });
      b.device(1, 1, { id: 'd3', kindId: 'rp', listensToId: 'd2' });
      b.device(3, 9, { kindId: 'gone' });
      b.unit(900, 0, { linkId: 'd1' });
      b.unit(5, 0, { linkId: 'x' });
      b.unit(5, 0, { linkId: 'd3' });
    });
    const seen = new Set<string>();
    for (const b of plans) {
      const plan = b.plan();
      for (const f of assess(plan, { revision: 1 }).findings.filter((x) => x.rule.startsWith('radio-'))) {
        const t = findingText(plan, f);
        seen.add(f.rule);
        expect(`${t.head} ${t.body} ${t.todo}`, f.rule).not.toMatch(/undefined|NaN|–\s|\bsafe\b|guarantees/);
        expect(t.head.length * t.body.length, f.rule).toBeGreaterThan(0);
      }
    }
    expect(seen.size).toBeGreaterThan(9);
  });
});
