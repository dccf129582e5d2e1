import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf, limitsOf } from '../../../derive/limits.ts';
import { rootKind } from '../../../derive/supply-roots.ts';
import { NEUTRAL, type SupplyNode } from '../../../derive/supply-types.ts';
import { legName, legVoltsV, systemShape } from '../../../derive/systems.ts';
import { connector } from '../../../plan/connectors.ts';
import { planRecord } from '../../../plan/plan.ts';
import type { Judged } from '../types.ts';
import { figureAt, inSetups, leastOver, mostOver, passing, ROUNDING } from './context.ts';

/** A load whose kind does not take the nominal volts it is connected to. */
export const wrongVolts = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    const b = n.branches[0];
    if (!n.load || !b || fits(n) || onHighLeg(n)) return [];
    return [
      always('power-wrong-volts', 'stop', n.key, [n.recordId], {
        label: n.label,
        nominalV: b.nominalV,
        minV: n.load.voltsMinV,
        maxV: n.load.voltsMaxV,
      }),
    ];
  });

const fits = (n: SupplyNode): boolean =>
  n.load !== undefined &&
  n.branches.every(
    (b) =>
      b.nominalV >= (n.load?.voltsMinV ?? 0) * (1 - ROUNDING) &&
      b.nominalV <= (n.load?.voltsMaxV ?? Infinity) * (1 + ROUNDING),
  );

/** Whether a thing lies between the high leg of a tapped delta and the neutral. */
export const onHighLeg = (n: SupplyNode): boolean => {
  const high = n.system && systemShape(n.system)?.highLeg;
  if (high === undefined) return false;
  return n.load
    ? n.branches.some((b) => b.to === NEUTRAL && b.from === high)
    : n.what === 'outlet' && n.neutral && n.legs.length === 1 && n.legs[0] === high;
};

/**
 * Loads and wall outlets between the high leg and the neutral. A stop where the kind or the outlet is not made for so many
 * volts, else a warning: that connection is not meant to feed anything.
 */
export const highLeg = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (n.notComputed !== undefined || !onHighLeg(n)) return [];
    const shape = n.system && systemShape(n.system);
    if (!shape || shape.highLeg === undefined) return [];
    const nominalV = legVoltsV(shape, shape.highLeg);
    const ratings = n.connectors.map((id) => connector(id)?.voltsV ?? 0).filter((v) => v > 0);
    const maxV = n.load ? n.load.voltsMaxV : Math.min(...ratings);
    if (!n.load && maxV >= nominalV * (1 - ROUNDING)) return [];
    const severity = maxV < nominalV * (1 - ROUNDING) ? 'stop' : 'warn';
    return [
      always('power-high-leg', severity, n.key, [n.recordId], {
        label: n.label,
        nominalV,
        maxV,
        leg: legName(planRecord(c.plan).practice, n.system, shape.highLeg),
        othersV: shape.nominalV,
      }),
    ];
  });

/** A load that gets less or more than its kind takes. */
export const loadVolts = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (!n.load || n.branches.length === 0 || !fits(n)) return [];
    const { voltsMinV, voltsMaxV } = n.load;
    if (leastOver(c, n, 'voltsV') >= voltsMinV && mostOver(c, n, 'voltsV') <= voltsMaxV) return [];
    const volts = (s: number): number => figureAt(c, n, 'voltsV', s);
    const report = (
      rule: string,
      severity: 'warn' | 'stop',
      limitV: number,
      ratio: (s: number) => number,
    ): EngineFinding[] => {
      const hit = passing(c.setups.length, ratio, 1);
      if (!hit) return [];
      const params = { volts: volts(hit.worst), limitV };
      return [inSetups(c, rule, severity, n, hit, 'voltsV', hit.value, params)];
    };
    return [
      ...report('power-volts-low', 'warn', voltsMinV, (s) => voltsMinV / volts(s)),
      ...report('power-volts-high', 'stop', voltsMaxV, (s) => volts(s) / voltsMaxV),
    ];
  });

/** Volts lost to the loads of one circuit against the practice's advice: one finding for a circuit, on its worst load. */
export const dropAdvice = (c: Judged): readonly EngineFinding[] => {
  const worst = new Map<
    number,
    {
      n: SupplyNode;
      pct: number;
      part: number;
      limitRow: string;
      branch: boolean;
      hit: { setups: readonly number[]; worst: number };
    }
  >();
  const least = Math.min(
    ...['drop-total', 'drop-total-private', 'drop-branch'].map(
      (row) => limitsOf(c.plan).get(row)?.value ?? Number.POSITIVE_INFINITY,
    ),
  );
  for (const n of c.part) {
    if (n.branches.length === 0 || n.load === undefined || n.sourceId === undefined) continue;
    // A branch may lose more than the whole way where the feeder's leg rises.
    const circuit = circuitOf(c, n);
    if (circuit && quiet(c, n, circuit, least)) continue;
    const base = n.branches[0]?.nominalV ?? Number.NaN;
    const source = c.sources.get(n.sourceId);
    if (!source || !circuit) continue;
    const toPct = (s: number): number => {
      const p = figureAt(c, n, 'dropPct', s);
      return Number.isNaN(p) ? (100 * figureAt(c, n, 'dropV', s)) / base : p;
    };
    const kind = rootKind(c.plan, n.sourceId);
    const privateSupply = kind?.what === 'generator' || kind?.what === 'power-station';
    const totalRow =
      privateSupply && limitsOf(c.plan).has('drop-total-private') ? 'drop-total-private' : 'drop-total';
    const tries: { row: string; branch: boolean; value: (s: number) => number }[] = [
      { row: totalRow, branch: false, value: toPct },
    ];
    if (limitsOf(c.plan).has('drop-branch'))
      tries.push({
        row: 'drop-branch',
        branch: true,
        value: (s) => toPct(s) - (100 * figureAt(c, circuit, 'dropV', s)) / base,
      });
    for (const t of tries) {
      const limit = limitOf(c.plan, t.row).value;
      const hit = passing(c.setups.length, t.value, limit);
      if (!hit) continue;
      const known = worst.get(circuit.index);
      const part = hit.value / limit;
      // The advice on the whole way outweighs the one on the branch.
      if (!known || (known.branch && !t.branch) || (known.branch === t.branch && part > known.part))
        worst.set(circuit.index, { n, pct: hit.value, part, limitRow: t.row, branch: t.branch, hit });
      break;
    }
  }
  return [...worst.entries()].map(([index, w]) => {
    const circuit = c.tree.nodes[index] ?? w.n;
    const basis = c.sources.get(w.n.sourceId ?? '')?.model.basis ?? 'unknown';
    const found = inSetups(
      c,
      'power-drop',
      w.branch ? 'note' : 'warn',
      w.n,
      w.hit,
      'dropPct',
      w.pct,
      {
        label: circuit.label,
        load: w.n.label,
        pct: w.pct,
        dropV: figureAt(c, w.n, 'dropV', w.hit.worst),
        baseV: w.n.branches[0]?.nominalV ?? Number.NaN,
        limitPct: limitOf(c.plan, w.limitRow).value,
        limitRow: w.limitRow,
        part: w.branch ? 'branch' : 'total',
        basis,
      },
      circuit.key,
    );
    return { ...found, recordIds: [w.n.recordId, circuit.recordId] };
  });
};

/** Whether no advice on volts lost can be passed: the most lost to the load, less the least lost to its circuit, is below it. */
const quiet = (c: Judged, n: SupplyNode, circuit: SupplyNode, leastPct: number): boolean => {
  const base = n.branches[0]?.nominalV ?? Number.NaN;
  const pct = Math.max(mostOver(c, n, 'dropPct'), (100 * mostOver(c, n, 'dropV')) / base);
  const ahead = (100 * leastOver(c, circuit, 'dropV')) / base;
  return Math.max(pct, pct - ahead) < leastPct;
};

const circuitOf = (c: Judged, n: SupplyNode): SupplyNode | undefined => {
  let at = c.tree.nodes[n.parent];
  while (at && at.what !== 'way' && at.what !== 'source') at = c.tree.nodes[at.parent];
  return at;
};
