import fc from 'fast-check';
import highsLoader from 'highs';
import { type BalanceProblem, worstLegBound } from '../../src/engines/power/index.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { onePoleWays, PlanBuilder } from './plan-builder.ts';

type Highs = Awaited<ReturnType<typeof highsLoader>>;
let loaded: Promise<Highs> | undefined;
const highs = (): Promise<Highs> => {
  loaded ??= highsLoader();
  return loaded;
};

const linear = (terms: readonly (readonly [number, string])[]): string =>
  terms
    .map(([k, name]) => `${k < 0 ? '-' : '+'} ${Math.abs(k).toPrecision(15)} ${name}`)
    .join(' ')
    .replace(/(.{200,}?) (?=[+-])/g, '$1\n ');

/**
 * The same problem for a mixed-integer solver: binary x for each plug and slot, binary z for each thing that may be over.
 * First the fewest overloads, then, with no more of them, the least worst leg.
 */
export const solveByMip = async (
  p: BalanceProblem,
  neutral = false,
): Promise<{ overloads: number; worstLegA: number; neutralA: number }> => {
  const solver = await highs();
  const x = (i: number, j: number): string => `x${i}_${j}`;
  const rows: string[] = [];
  p.plugs.forEach((plug, i) => {
    rows.push(`${linear(plug.slots.map((j) => [1, x(i, j)] as const))} = 1`);
  });
  p.slots.forEach((s, j) => {
    const terms = p.plugs.flatMap((plug, i) => (plug.slots.includes(j) ? [[1, x(i, j)] as const] : []));
    if (terms.length > 0) rows.push(`${linear(terms)} <= ${s.capacity}`);
  });
  const total = p.plugs.reduce((sum, plug) => sum + Math.max(0, ...plug.amps) * plug.positions, 0);
  const onThing = (t: number, l: number, s: number): (readonly [number, string])[] =>
    p.plugs.flatMap((plug, i) =>
      plug.slots.flatMap((j) => {
        const slot = p.slots[j];
        const k = slot?.legs.indexOf(l) ?? -1;
        if (!slot?.chain.includes(t) || k < 0) return [];
        const a = plug.amps[s * plug.positions + k] ?? 0;
        return a > 0 ? [[a, x(i, j)] as const] : [];
      }),
    );
  const judged: number[] = [];
  for (let t = 0; t < p.limitA.length; t++) {
    const limit = p.limitA[t] ?? Number.NaN;
    if (Number.isNaN(limit)) continue;
    judged.push(t);
    for (let l = 0; l < p.legs; l++)
      for (let s = 0; s < p.setups; s++) {
        const terms = onThing(t, l, s);
        const fixed = p.fixedA[(t * p.legs + l) * p.setups + s] ?? 0;
        if (terms.length > 0 || fixed > limit)
          rows.push(`${linear([...terms, [-(total + fixed), `z${t}`]])} <= ${limit - fixed}`);
      }
  }
  for (let l = 0; l < p.legs; l++)
    for (let s = 0; s < p.setups; s++) {
      const fixed = p.fixedA[l * p.setups + s] ?? 0;
      rows.push(`${linear([...onThing(0, l, s), [-1, 'w']])} <= ${-fixed}`);
    }
  const binaries = [
    ...p.plugs.flatMap((plug, i) => plug.slots.map((j) => x(i, j))),
    ...judged.map((t) => `z${t}`),
  ];
  const z = judged.map((t) => [1, `z${t}`] as const);
  // A neutral as long as its shadow in each of so many directions: from within 1 ÷ cos(π ÷ 24) of its true length.
  const shadows = (): string[] =>
    Array.from({ length: p.setups }, (_, s) => s).flatMap((s) =>
      Array.from({ length: DIRECTIONS }, (_, d) => {
        const [cx, sx] = [Math.cos((2 * Math.PI * d) / DIRECTIONS), Math.sin((2 * Math.PI * d) / DIRECTIONS)];
        const fixed = (p.fixedNeutral[s * 2] ?? 0) * cx + (p.fixedNeutral[s * 2 + 1] ?? 0) * sx;
        const terms = p.plugs.flatMap((plug, i) =>
          plug.slots.flatMap((j) => {
            const slot = p.slots[j];
            let k = 0;
            for (let at = 0; slot && at < plug.positions; at++) {
              const a = p.anglesRad[slot.legs[at] ?? 0] ?? 0;
              const n = (s * plug.positions + at) * 2;
              const [re, im] = [plug.neutral[n] ?? 0, plug.neutral[n + 1] ?? 0];
              const [x0, y0] = [re * Math.cos(a) - im * Math.sin(a), re * Math.sin(a) + im * Math.cos(a)];
              k += x0 * cx + y0 * sx;
            }
            return Math.abs(k) > 1e-9 ? [[k, x(i, j)] as const] : [];
          }),
        );
        return `${linear([...terms, [-1, 'n']])} <= ${-fixed}`;
      }),
    );
  const text = (objective: string, more: readonly string[]): string =>
    `Minimize\n obj: ${objective}\nSubject To\n${[...rows, ...more].map((r, i) => ` r${i}: ${r}`).join('\n')}\nBounds\n w >= ${worstLegBound(p)}\nBinary\n ${binaries.join('\n ')}\nEnd\n`;
  const solve = (lp: string): number => {
    const r = solver.solve(lp, {
      mip_rel_gap: 0,
      mip_abs_gap: 1e-9,
      mip_feasibility_tolerance: 1e-9,
      primal_feasibility_tolerance: 1e-9,
    });
    if (r.Status !== 'Optimal') throw new Error(`the solver says ${r.Status}`);
    return r.ObjectiveValue;
  };
  const overloads = z.length > 0 ? Math.round(solve(text(linear(z), []))) : 0;
  const worstLegA = solve(text('w', z.length > 0 ? [`${linear(z)} <= ${overloads}`] : []));
  if (!neutral) return { overloads, worstLegA, neutralA: Number.NaN };
  const held = [
    ...(z.length > 0 ? [`${linear(z)} <= ${overloads}`] : []),
    `w <= ${worstLegA + 1e-6}`,
    ...shadows(),
  ];
  return { overloads, worstLegA, neutralA: solve(text('n', held)) };
};

/** Directions in which a neutral is measured by the solver, which knows no circles. */
const DIRECTIONS = 24;
/** How much longer a neutral may be than its longest shadow. */
export const SHADOW = 1 / Math.cos(Math.PI / DIRECTIONS);

/** A random rig for balancing: a box or two on three or two legs, up to so many plugs, setups with levels. */
export interface BalanceRig {
  readonly legs: 2 | 3;
  readonly boxes: number;
  readonly ways: number;
  readonly setups: number;
  /** Rated kVA of the set; 12 a leg when absent. */
  readonly kva?: number;
  readonly loads: readonly {
    readonly outlet: number;
    readonly wattsW: number;
    readonly powerFactor: number;
    readonly levels: readonly number[];
  }[];
}

export const balanceRig = (mostLoads: number, mostSetups: number): fc.Arbitrary<BalanceRig> =>
  fc.record({
    legs: fc.constantFrom<2 | 3>(2, 3),
    boxes: fc.integer({ min: 1, max: 2 }),
    ways: fc.integer({ min: 3, max: 9 }),
    setups: fc.integer({ min: 1, max: mostSetups }),
    loads: fc.array(
      fc.record({
        outlet: fc.nat(1000),
        wattsW: fc.integer({ min: 100, max: 2000 }),
        powerFactor: fc.constantFrom(1, 0.95, 0.6),
        levels: fc.array(fc.constantFrom(0, 0, 25, 50, 80, 100, 100), {
          minLength: mostSetups,
          maxLength: mostSetups,
        }),
      }),
      { minLength: 2, maxLength: mostLoads },
    ),
  });

/** The plan of a rig for balancing. Each way has two outlets; loads take the next free one from the one they ask for. */
export const balancePlan = (rig: BalanceRig): Plan => {
  const b = new PlanBuilder();
  const feed = `single-pole-400-${rig.legs}`;
  const inlet = { id: 'in', connector: feed, legs: rig.legs, neutral: true };
  const boxes = Array.from({ length: rig.boxes }, (_, i) => `out${i}`);
  b.sourceKind('set', {
    system: rig.legs === 3 ? '120/208' : '120/240',
    ratedKva: rig.kva ?? 12 * rig.legs,
    outlets: boxes.map((id) => ({ ...inlet, id })),
  });
  b.cableKind('feeder', { legs: rig.legs, conductor: 'awg:2', ampacityA: 150, plug: feed, socket: feed });
  b.cableKind('lead');
  const ways = onePoleWays(rig.ways, 20, rig.legs);
  b.boxKind('box', {
    inlets: [inlet],
    ways,
    outlets: ways.flatMap((w) =>
      ['a', 'b'].map((x) => ({
        id: `${w.id}${x}`,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
        wayId: w.id,
      })),
    ),
  });
  const s = b.source('set');
  const free = boxes.flatMap((port) => {
    const box = b.box('box', { label: port });
    b.cable('feeder', [s.id, port], [box.id, 'in'], 0);
    return ways.flatMap((w) => ['a', 'b'].map((x) => [box.id, `${w.id}${x}`] as const));
  });
  const setups = Array.from({ length: rig.setups }, (_, i) => b.setup(`S${i}`, i));
  rig.loads.forEach((l, i) => {
    const [at] = free.splice(l.outlet % free.length, 1);
    if (!at) return;
    b.fixtureKind(`f${i}`, { wattsW: l.wattsW, powerFactor: l.powerFactor, model: 'constant-current' });
    const f = b.fixture(`f${i}`);
    b.cable('lead', at, [f.id, 'in'], 0);
    setups.forEach((setup, k) => {
      b.level(setup.id, f.id, l.levels[k] ?? 100);
    });
  });
  return b.plan();
};

/**
 * The worst leg by a mixed-integer solver that only chooses legs, ways left out: never above the true answer, and at most
 * `relGap` above its own bound. With the milliseconds it took.
 */
export const solveLegsByMip = async (
  p: BalanceProblem,
  relGap: number,
): Promise<{ worstLegA: number; ms: number }> => {
  const solver = await highs();
  const y = (i: number, pattern: string): string => `y${i}_${pattern}`;
  const patterns = p.plugs.map((plug) => [
    ...new Set(plug.slots.map((j) => p.slots[j]?.legs.join('') ?? '')),
  ]);
  const rows: string[] = [];
  patterns.forEach((own, i) => {
    rows.push(`${linear(own.map((k) => [1, y(i, k)] as const))} = 1`);
  });
  const room = new Map<string, number>();
  for (const s of p.slots) room.set(s.legs.join(''), (room.get(s.legs.join('')) ?? 0) + s.capacity);
  for (const [k, capacity] of room) {
    const terms = patterns.flatMap((own, i) => (own.includes(k) ? [[1, y(i, k)] as const] : []));
    if (terms.length > 0) rows.push(`${linear(terms)} <= ${capacity}`);
  }
  for (let l = 0; l < p.legs; l++)
    for (let s = 0; s < p.setups; s++) {
      const terms = p.plugs.flatMap((plug, i) =>
        (patterns[i] ?? []).flatMap((k) => {
          const at = k.indexOf(String(l));
          const a = at < 0 ? 0 : (plug.amps[s * plug.positions + at] ?? 0);
          return a > 0 ? [[a, y(i, k)] as const] : [];
        }),
      );
      rows.push(`${linear([...terms, [-1, 'w']])} <= ${-(p.fixedA[l * p.setups + s] ?? 0)}`);
    }
  const binaries = patterns.flatMap((own, i) => own.map((k) => y(i, k)));
  const lp = `Minimize\n obj: w\nSubject To\n${rows.map((r, i) => ` r${i}: ${r}`).join('\n')}\nBounds\n w >= ${worstLegBound(p)}\nBinary\n ${binaries.join('\n ')}\nEnd\n`;
  const start = performance.now();
  const r = solver.solve(lp, { mip_rel_gap: relGap, time_limit: 60 });
  const ms = performance.now() - start;
  if (r.Status !== 'Optimal') throw new Error(`the solver says ${r.Status}`);
  return { worstLegA: r.ObjectiveValue, ms };
};

/** A rig of so many loads and setups that fits its ways, the same for the same seed, all of it plugged in leg by leg. */
export const largeRig = (loads: number, setups: number, seed: number): BalanceRig => {
  let x = seed >>> 0;
  const roll = (n: number): number => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return Math.floor((x / 4294967296) * n);
  };
  const levels = [0, 0, 25, 50, 80, 100, 100];
  const ways = 12;
  return {
    legs: 3,
    boxes: Math.ceil(loads / (ways * 2 - 4)),
    ways,
    setups,
    kva: loads,
    loads: Array.from({ length: loads }, () => ({
      outlet: roll(1000),
      wattsW: 100 + roll(800),
      powerFactor: [1, 0.95, 0.9][roll(3)] ?? 1,
      levels: Array.from({ length: setups }, () => levels[roll(levels.length)] ?? 100),
    })),
  };
};
