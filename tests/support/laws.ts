import { expect } from 'vitest';
import { NEUTRAL } from '../../src/derive/supply-types.ts';
import type { PowerResult } from '../../src/engines/power/index.ts';
import type { SolvedSource } from '../../src/engines/power/types.ts';
import { abs, at, type C } from './circuit.ts';

const add = (a: C, b: C): C => [a[0] + b[0], a[1] + b[1]];
const times = (a: C, b: C): C => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const minus = (a: C, b: C): C => [a[0] - b[0], a[1] - b[1]];
const conj = (a: C): C => [a[0], -a[1]];
const over = (a: C, b: C): C => {
  const d = b[0] ** 2 + b[1] ** 2;
  const n = times(a, conj(b));
  return [n[0] / d, n[1] / d];
};

/** Within a share of the larger of the two, or of one unit. */
const near = (a: number, b: number, share: number, what: string): void => {
  const scale = Math.max(1, Math.abs(a), Math.abs(b));
  expect(Math.abs(a - b), what).toBeLessThanOrEqual(share * scale);
};

/**
 * Laws that hold for every solved network, whatever is in it: currents sum at each node, volts fall by Z × I along each
 * run, legs and neutral sum to nothing, the source's power is the loads' power plus the losses.
 */
export const checkLaws = (r: PowerResult): void => {
  checkNetworks([...r.sources.values()]);
  checkFigures(r);
};

/** The same of networks alone. */
export const checkNetworks = (sources: readonly SolvedSource[]): void => {
  for (const { model, setups } of sources) {
    for (const s of setups) {
      if (!s.sweep.settled) continue;
      const { volts, amps } = s.sweep;
      const own: C[][] = Array.from({ length: model.feeder.nodes }, () => [0, 1, 2, 3].map((): C => [0, 0]));
      let loadsW = 0;
      model.branches.node.forEach((k, b) => {
        const i = model.branches.from[b] ?? 0;
        const j = model.branches.to[b] ?? 0;
        const read = model.basis === 'unknown' ? 0 : k;
        const v = minus(at(volts, read, i), at(volts, read, j));
        const u = abs(v) / (model.branches.nominalV[b] ?? 1);
        const power: C = [
          (s.wattsW[b] ?? 0) * u ** (model.branches.expP[b] ?? 0),
          (s.varsVar[b] ?? 0) * u ** (model.branches.expQ[b] ?? 0),
        ];
        const current: C = abs(v) === 0 ? [0, 0] : conj(over(power, v));
        const row = own[k];
        if (row) {
          row[i] = add(row[i] ?? [0, 0], current);
          row[j] = minus(row[j] ?? [0, 0], current);
        }
        loadsW += power[0];
      });
      let lossW = 0;
      for (let k = 0; k < model.feeder.nodes; k++) {
        const sum = [0, 1, 2, 3].map((w) => own[k]?.[w] ?? ([0, 0] as C));
        for (let c = 1; c < model.feeder.nodes; c++)
          if (model.feeder.parent[c] === k)
            for (let w = 0; w < 4; w++) sum[w] = add(sum[w] ?? [0, 0], at(amps, c, w));
        let total: C = [0, 0];
        for (let w = 0; w < 4; w++) {
          near(abs(minus(at(amps, k, w), sum[w] ?? [0, 0])), 0, 1e-7, `current at node ${k} wire ${w}`);
          total = add(total, at(amps, k, w));
          if (k === 0) continue;
          const z: C = [
            model.feeder.impedance.ohms[k * 8 + w * 2] ?? 0,
            model.feeder.impedance.ohms[k * 8 + w * 2 + 1] ?? 0,
          ];
          const drop = minus(at(volts, model.feeder.parent[k] ?? 0, w), at(volts, k, w));
          near(abs(minus(drop, times(z, at(amps, k, w)))), 0, 1e-7, `volts at node ${k} wire ${w}`);
          lossW += z[0] * abs(at(amps, k, w)) ** 2;
        }
        near(abs(total), 0, 1e-7, `legs and neutral at node ${k}`);
      }
      if (model.basis === 'unknown') continue;
      let sourceW = 0;
      for (let w = 0; w < NEUTRAL; w++) sourceW += times(at(volts, 0, w), conj(at(amps, 0, w)))[0];
      near(sourceW, loadsW + lossW, 1e-9, 'source power is loads plus losses');
    }
  }
};

/** The figure table agrees with the tree: children's watts make the parent's, limits make the use, the worst is one of all. */
const checkFigures = (r: PowerResult): void => {
  r.setups.forEach((_, s) => {
    for (const n of r.tree.nodes) {
      const get = (q: Parameters<typeof r.figures.get>[1], key = n.key): number => r.figures.get(key, q, s);
      if (Number.isNaN(get('loadW'))) continue;
      const kids = (r.tree.children[n.index] ?? []).flatMap((c) => r.tree.nodes[c] ?? []);
      if (n.what !== 'load')
        near(
          get('loadW'),
          kids.reduce((sum, c) => sum + (get('loadW', c.key) || 0), 0),
          1e-9,
          `watts of ${n.key}`,
        );
      expect(get('loadVa') + 1e-6, `VA of ${n.key}`).toBeGreaterThanOrEqual(get('loadW'));
      const most = Math.max(...(['leg0A', 'leg1A', 'leg2A'] as const).map((q) => get(q)));
      const leg = r.limits[n.index]?.leg;
      if (leg)
        expect(get('usePct') + 1e-6, `use of ${n.key}`).toBeGreaterThanOrEqual((100 * most) / leg.limitA);
      for (const q of ['leg0A', 'usePct'] as const)
        if (!Number.isNaN(get(q))) expect(r.figures.worst(n.key, q).value).toBeGreaterThanOrEqual(get(q));
    }
  });
};
