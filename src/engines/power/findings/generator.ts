import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { rootKind } from '../../../derive/supply-roots.ts';
import { legName } from '../../../derive/systems.ts';
import type { Quantity } from '../../../derive/types.ts';
import { formatAmps } from '../../../kernel/units.ts';
import { planRecord } from '../../../plan/plan.ts';
import { sourceRating } from '../rating.ts';
import { largestStep } from '../steps.ts';
import type { Judged } from '../types.ts';
import { figureAt, inSetups, passing } from './context.ts';

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

/** Kilowatts and kVA of sources with a rating, light running of sets, and legs far from even. */
export const sourceRatings = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (n.what !== 'source' || !c.sources.has(n.recordId)) return [];
    const out: EngineFinding[] = [];
    const setups = c.setups.length;
    const r = sourceRating(c.plan, n.recordId);
    const what = rootKind(c.plan, n.recordId)?.what;
    const known = c.sources.get(n.recordId)?.model.basis !== 'unknown';
    const watts = (s: number): number => figureAt(c, n, known ? 'inW' : 'loadW', s);
    const va = (s: number): number => figureAt(c, n, known ? 'inVa' : 'loadVa', s);
    if (r.kw !== undefined) {
      const ratedW = r.kw * 1000 * limitOf(c.plan, 'generator-kw-factor').value * r.share;
      const hit = passing(setups, watts, ratedW);
      if (hit)
        out.push(
          inSetups(
            c,
            'power-generator-kw',
            'stop',
            n,
            hit,
            known ? 'inW' : 'loadW',
            (100 * hit.value) / ratedW,
            {
              watts: hit.value,
              ratedW,
              plateW: r.kw * 1000,
              pct: (100 * hit.value) / ratedW,
              derived: r.derived ?? '',
              shareFrom: r.shareFrom,
            },
          ),
        );
      if (what === 'generator')
        out.push(
          ...lightRunning(c, n.index, watts, r.kw * 1000),
          ...stepLoad(c, n.index, watts, r.kw * 1000 * r.share),
        );
    }
    if (r.kva !== undefined) {
      const ratedVa = r.kva * 1000 * limitOf(c.plan, 'generator-kva-factor').value * r.share;
      const hit = passing(setups, va, ratedVa);
      if (hit)
        out.push(
          inSetups(
            c,
            'power-generator-kva',
            'stop',
            n,
            hit,
            known ? 'inVa' : 'loadVa',
            (100 * hit.value) / ratedVa,
            {
              va: hit.value,
              ratedVa,
              plateVa: r.kva * 1000,
              pct: (100 * hit.value) / ratedVa,
              derived: r.derived ?? '',
              shareFrom: r.shareFrom,
            },
          ),
        );
    }
    return [...out, ...unbalance(c, n.index, r.legA ?? n.mainBreakerA)];
  });

/** A large step for the engine: one unit, or the next setup, switched on at once. */
const stepLoad = (
  c: Judged,
  index: number,
  watts: (s: number) => number,
  ratedW: number,
): EngineFinding[] => {
  const n = c.tree.nodes[index];
  if (!n) return [];
  const limitPct = limitOf(c.plan, 'generator-step').value;
  const step = largestStep(c, n, watts);
  const pct = (100 * step.watts) / ratedW;
  if (!(pct > limitPct)) return [];
  return [
    {
      ...always('power-generator-step', 'note', n.key, [n.recordId], {
        label: n.label,
        watts: step.watts,
        what: step.what,
        ratedW,
        pct,
        limitPct,
      }),
      figure: pct,
    },
  ];
};

/** A diesel set that runs below its share of rating, in any setup where it runs at all. */
const lightRunning = (
  c: Judged,
  index: number,
  watts: (s: number) => number,
  ratedW: number,
): EngineFinding[] => {
  const n = c.tree.nodes[index];
  if (!n) return [];
  const limitPct = limitOf(c.plan, 'generator-light-load').value;
  // How far below the limit it is, so that the worst setup is the lightest one. A set that feeds nothing is not running.
  const below = (s: number): number => (watts(s) > 0 ? 100 - (100 * watts(s)) / ratedW : 0);
  const hit = passing(c.setups.length, below, 100 - limitPct);
  if (!hit) return [];
  return [
    inSetups(c, 'power-generator-light', 'warn', n, hit, 'inW', hit.value, {
      watts: watts(hit.worst),
      ratedW,
      pct: (100 * watts(hit.worst)) / ratedW,
      limitPct,
    }),
  ];
};

/** The leg furthest from the mean of the legs, against the rating of a leg: small currents raise nothing. */
const unbalance = (c: Judged, index: number, ratedA: number | undefined): EngineFinding[] => {
  const n = c.tree.nodes[index];
  if (!n || ratedA === undefined || n.legs.length < 2) return [];
  const amps = (s: number): number[] => n.legs.map((l) => figureAt(c, n, LEGS[l] ?? 'leg0A', s));
  const off = (s: number): { leg: number; deviationA: number; meanA: number } => {
    const a = amps(s);
    const meanA = a.reduce((x, y) => x + y, 0) / a.length;
    const i = a.reduce(
      (best, x, k) => (Math.abs(x - meanA) > Math.abs((a[best] ?? 0) - meanA) ? k : best),
      0,
    );
    return { leg: n.legs[i] ?? 0, deviationA: Math.abs((a[i] ?? 0) - meanA), meanA };
  };
  const hit = passing(
    c.setups.length,
    (s) => (100 * off(s).deviationA) / ratedA,
    limitOf(c.plan, 'leg-balance').value,
  );
  if (!hit) return [];
  const { leg, deviationA, meanA } = off(hit.worst);
  const practice = planRecord(c.plan).practice;
  return [
    inSetups(c, 'power-unbalance', 'note', n, hit, LEGS[leg], hit.value, {
      leg: legName(practice, n.system, leg),
      deviationA,
      meanA,
      ratingA: ratedA,
      pct: hit.value,
      legsText: amps(hit.worst)
        .map((a, i) => `${legName(practice, n.system, n.legs[i] ?? 0)} ${formatAmps(a)}`)
        .join(', '),
    }),
  ];
};
