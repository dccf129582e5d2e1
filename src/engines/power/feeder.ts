import { fail, ok, type Result } from '../../kernel/result.ts';
import { type Feeder, MAX_PASSES, type Sweep, type SweepOptions, sweep } from './solve.ts';

/** A complex number: real and imaginary part. */
export type Complex = readonly [re: number, im: number];

/** A square matrix by rows: 3×3 over the legs, or 4×4 with the neutral last. */
export type ComplexMatrix = readonly (readonly Complex[])[];

/** One stretch of line, or a transformer with what lies behind it. */
export interface FeederSegment {
  readonly from: string;
  readonly to: string;
  /**
   * Series impedance of the whole stretch in ohms, mutuals included. 4×4 keeps the neutral as a wire of its own; with 3×3
   * the neutral is folded in (earthed everywhere) and stays at 0 V. A leg that is not there has a row of noughts.
   */
  readonly ohm: ComplexMatrix;
  /** Charging of the whole stretch in siemens, 3×3, half of it at each end; only where the neutral is folded in. */
  readonly shuntS?: readonly (readonly number[])[];
  /** Like stretches side by side that share the current evenly; 1 when absent. */
  readonly parallel?: number;
  /** Real ratios of a transformer, wires of `to` × wires of `from`, at the head of the stretch; see `Coupling`. */
  readonly ratio?: readonly (readonly number[])[];
}

/**
 * What hangs between two wires of a node (0 1 2 the legs, 3 the neutral): watts and vars at `nominalV`, following the volts
 * with their exponents: 0 constant power, 1 constant current, 2 constant impedance. A capacitor has −vars and exponents 2.
 */
export interface FeederLoad {
  readonly node: string;
  readonly from: number;
  readonly to: number;
  readonly wattsW: number;
  readonly varsVar: number;
  readonly nominalV: number;
  readonly expP?: number;
  readonly expQ?: number;
}

export interface FeederSpec {
  readonly source: string;
  /** Volts to earth of the source's legs, and of its neutral where it is not at earth. */
  readonly sourceV: readonly Complex[];
  readonly segments: readonly FeederSegment[];
  readonly loads: readonly FeederLoad[];
}

/** The solved feeder. Amps are those into the segment that leads to a node, on the node's side of a transformer. */
export interface FeederAnswer {
  readonly settled: boolean;
  readonly passes: number;
  /** Largest change of any volt in the last pass. */
  readonly changeV: number;
  /** Where it did not settle: the stretch that would lose most of its volts at nominal currents, as `from` and `to`. */
  readonly blame: readonly [from: string, to: string] | undefined;
  readonly nodes: readonly string[];
  readonly volts: (node: string, wire: number) => Complex;
  readonly amps: (node: string, wire: number) => Complex;
  /** Power out of the source, into all loads, and lost between, in W and var. */
  readonly sourceVa: Complex;
  readonly loadVa: Complex;
  readonly lossVa: Complex;
}

const WIRES = 4;

/**
 * Load flow of a radial feeder given by names: full impedance matrices with mutuals, an explicit or folded-in neutral,
 * loads in wye and delta of any exponents, capacitors, line charging, parallel lines and transformers. Refuses a feeder
 * with a loop, with a node that nothing reaches, with matrices of another size or with numbers that are none. One that has no
 * answer is `settled: false` and names the stretch to blame.
 */
export const solveFeeder = (spec: FeederSpec, options: SweepOptions = {}): Result<FeederAnswer> => {
  const order = [spec.source];
  const at = new Map([[spec.source, 0]]);
  const into: FeederSegment[] = [];
  const open = [...spec.segments];
  while (open.length > 0) {
    const next = open.findIndex((s) => at.has(s.from));
    const s = next < 0 ? undefined : open.splice(next, 1)[0];
    if (!s)
      return wrong(`nothing reaches ${open[0]?.from ?? 'a node'}`, 'Begin at the source and leave no gap.');
    if (at.has(s.to)) return wrong(`${s.to} is fed twice`, 'Give every node one feed: the feeder is radial.');
    if (![3, 4].includes(s.ohm.length) || s.ohm.some((r) => r.length !== s.ohm.length))
      return wrong(`the impedance to ${s.to} is not 3×3 or 4×4`, 'Give a square matrix by rows.');
    if (s.shuntS && s.ohm.length !== 3)
      return wrong(
        `the charging to ${s.to} needs a folded-in neutral`,
        'Leave it out, or fold the neutral in.',
      );
    const odd = oddSegment(s);
    if (odd) return wrong(`${odd} to ${s.to}`, 'Give a number.');
    at.set(s.to, order.length);
    order.push(s.to);
    into.push(s);
  }
  if (spec.sourceV.length < 3 || spec.sourceV.length > WIRES || !spec.sourceV.flat().every(Number.isFinite))
    return wrong('its source needs the volts of three legs', 'Give three or four complex numbers.');
  const loads = [...spec.loads, ...into.flatMap(charging)];
  const lost = loads.find((l) => !at.has(l.node));
  if (lost) return wrong(`a load hangs on ${lost.node}, which is not there`, 'Name a node of the feeder.');
  const bad = spec.loads.find((l) => oddLoad(l));
  if (bad) return wrong(`a load on ${bad.node} ${oddLoad(bad) ?? ''}`, 'Set that value right.');
  const feeder = feederOf(spec, into, at);
  const watts = Float64Array.from(loads, (l) => l.wattsW);
  const vars = Float64Array.from(loads, (l) => l.varsVar);
  const run = sweep(
    feeder,
    {
      node: Int32Array.from(loads, (l) => at.get(l.node) ?? 0),
      from: Uint8Array.from(loads, (l) => l.from),
      to: Uint8Array.from(loads, (l) => l.to),
      nominalV: Float64Array.from(loads, (l) => l.nominalV),
      expP: Float64Array.from(loads, (l) => l.expP ?? 0),
      expQ: Float64Array.from(loads, (l) => l.expQ ?? 0),
    },
    watts,
    vars,
    { maxPasses: MAX_PASSES * 4, ...options },
  );
  return ok(answer(order, at, run, loads, run.settled ? undefined : toBlame(spec, into, loads)));
};

/** What is no number in a stretch. */
const oddSegment = (s: FeederSegment): string | undefined => {
  if (!s.ohm.flat(2).every(Number.isFinite)) return 'there is no number in the impedance';
  if (s.shuntS && !s.shuntS.flat().every(Number.isFinite)) return 'there is no number in the charging';
  if (s.ratio && (s.ratio.length > WIRES || s.ratio.some((r) => r.length > WIRES)))
    return 'the ratios have more than four wires';
  if (s.ratio && !s.ratio.flat().every(Number.isFinite)) return 'there is no number in the ratios';
  if (s.parallel !== undefined && !(s.parallel > 0)) return `${s.parallel} lines side by side lead`;
  return undefined;
};

/** What is wrong with a load, in words. */
const oddLoad = (l: FeederLoad): string | undefined => {
  if (![l.from, l.to].every((w) => Number.isInteger(w) && w >= 0 && w < WIRES) || l.from === l.to)
    return `lies between wires ${l.from} and ${l.to}`;
  if (![l.wattsW, l.varsVar, l.expP ?? 0, l.expQ ?? 0].every(Number.isFinite)) return 'has no number';
  if (!(l.nominalV > 0)) return `is rated ${l.nominalV} V`;
  return undefined;
};

/** The stretch with the most volts lost at the plain sum of nominal amps, over its share of the volts that are left. */
const toBlame = (
  spec: FeederSpec,
  into: readonly FeederSegment[],
  loads: readonly FeederLoad[],
): readonly [string, string] | undefined => {
  const amps = new Map<string, number>();
  for (const l of loads)
    amps.set(l.node, (amps.get(l.node) ?? 0) + Math.hypot(l.wattsW, l.varsVar) / l.nominalV);
  let worst: { share: number; s: FeederSegment } | undefined;
  // From the last to the first: a stretch is listed after what feeds it.
  const volts = new Map([[spec.source, Math.hypot(...(spec.sourceV[0] ?? [0, 0]))]]);
  for (const s of into) {
    const turns = s.ratio ? Math.max(...s.ratio.flat().map(Math.abs)) : 1;
    volts.set(s.to, (volts.get(s.from) ?? 0) * turns);
  }
  for (const s of [...into].reverse()) {
    const a = amps.get(s.to) ?? 0;
    const base = volts.get(s.to) ?? 0;
    const z = Math.max(...s.ohm.map((row, i) => Math.hypot(...(row[i] ?? [0, 0])))) / (s.parallel ?? 1);
    const share = base > 0 ? (a * z) / base : 0;
    if (!worst || share > worst.share) worst = { share, s };
    const turns = base > 0 && (volts.get(s.from) ?? 0) > 0 ? base / (volts.get(s.from) ?? base) : 1;
    amps.set(s.from, (amps.get(s.from) ?? 0) + a * turns);
  }
  return worst && [worst.s.from, worst.s.to];
};

const wrong = (what: string, todo: string) => fail({ what: `The feeder cannot be solved: ${what}.`, todo });

const feederOf = (
  spec: FeederSpec,
  into: readonly FeederSegment[],
  at: ReadonlyMap<string, number>,
): Feeder => {
  const nodes = into.length + 1;
  const ohms = new Float64Array(nodes * WIRES * WIRES * 2);
  into.forEach((s, i) => {
    const share = 1 / (s.parallel ?? 1);
    s.ohm.forEach((row, r) => {
      row.forEach((z, c) => {
        const k = (i + 1) * WIRES * WIRES * 2 + (r * WIRES + c) * 2;
        ohms[k] = z[0] * share;
        ohms[k + 1] = z[1] * share;
      });
    });
  });
  const sourceV = new Float64Array(WIRES * 2);
  spec.sourceV.forEach((v, w) => {
    sourceV.set(v, w * 2);
  });
  const couplings = into.flatMap((s, i) => {
    if (!s.ratio) return [];
    const ratio = new Float64Array(WIRES * WIRES);
    s.ratio.forEach((row, r) => {
      row.forEach((k, c) => {
        ratio[r * WIRES + c] = k;
      });
    });
    return [{ node: i + 1, ratio }];
  });
  return {
    nodes,
    parent: Int32Array.from([0, ...into.map((s) => at.get(s.from) ?? 0)]),
    impedance: { kind: 'full', ohms },
    sourceV,
    couplings,
  };
};

/** Half of a line's charging at each of its ends: to earth what its row sums to, the rest between the legs. */
const charging = (s: FeederSegment): FeederLoad[] =>
  (s.shuntS ?? []).flatMap((row, i) =>
    [s.from, s.to].flatMap((node) => {
      const capacitor = (to: number, siemens: number): FeederLoad[] =>
        siemens === 0
          ? []
          : [{ node, from: i, to, wattsW: 0, varsVar: -siemens / 2, nominalV: 1, expP: 2, expQ: 2 }];
      const toEarth = row.reduce((sum, b) => sum + b, 0);
      return [...capacitor(3, toEarth), ...row.flatMap((b, j) => (j > i ? capacitor(j, -b) : []))];
    }),
  );

const answer = (
  nodes: readonly string[],
  at: ReadonlyMap<string, number>,
  run: Sweep,
  loads: readonly FeederLoad[],
  blame: FeederAnswer['blame'],
): FeederAnswer => {
  const pick = (a: Float64Array, node: string, wire: number): Complex => {
    const k = at.get(node);
    if (k === undefined) throw new Error(`no node ${node} in this feeder`);
    return [a[(k * WIRES + wire) * 2] ?? Number.NaN, a[(k * WIRES + wire) * 2 + 1] ?? Number.NaN];
  };
  const power = (v: Complex, i: Complex): Complex => [v[0] * i[0] + v[1] * i[1], v[1] * i[0] - v[0] * i[1]];
  const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
  const source = nodes[0] ?? '';
  const sourceVa = [0, 1, 2, 3].reduce<Complex>(
    (sum, w) => plus(sum, power(pick(run.volts, source, w), pick(run.amps, source, w))),
    [0, 0],
  );
  const loadVa = loads.reduce<Complex>(
    (sum, l) => {
      const [a, b] = [pick(run.volts, l.node, l.from), pick(run.volts, l.node, l.to)];
      const u = Math.hypot(a[0] - b[0], a[1] - b[1]) / l.nominalV;
      return plus(sum, [l.wattsW * u ** (l.expP ?? 0), l.varsVar * u ** (l.expQ ?? 0)]);
    },
    [0, 0],
  );
  return {
    settled: run.settled,
    passes: run.passes,
    changeV: run.changeV,
    blame,
    nodes,
    volts: (node, wire) => pick(run.volts, node, wire),
    amps: (node, wire) => pick(run.amps, node, wire),
    sourceVa,
    loadVa,
    lossVa: [sourceVa[0] - loadVa[0], sourceVa[1] - loadVa[1]],
  };
};
