import type { Feeder } from './network.ts';

export type { Coupling } from './network.ts';

/** Ratios by node; undefined where a feeder has no transformer, so that the common case costs nothing. */
export type Ratios = readonly (Float64Array | undefined)[] | undefined;

export const ratiosOf = (f: Feeder): Ratios => {
  if (!f.couplings || f.couplings.length === 0) return undefined;
  const out: (Float64Array | undefined)[] = new Array(f.nodes);
  for (const c of f.couplings) out[c.node] = c.ratio;
  return out;
};

/** What a transformer makes of the four complex values at `at`, into `into`; with `back` the other way round. */
export const through = (
  ratio: Float64Array,
  values: Float64Array,
  at: number,
  into: Float64Array,
  back: boolean,
): void => {
  for (let i = 0; i < 4; i++) {
    let re = 0;
    let im = 0;
    for (let j = 0; j < 4; j++) {
      const k = ratio[back ? j * 4 + i : i * 4 + j] as number;
      if (k === 0) continue;
      re += k * (values[at + 2 * j] as number);
      im += k * (values[at + 2 * j + 1] as number);
    }
    into[2 * i] = re;
    into[2 * i + 1] = im;
  }
};

/** Room for what `through` gives, read before it is used again. */
export const scratch = new Float64Array(8);

/** Volts of every node with nothing switched on. */
export const startVolts = (f: Feeder, ratios: Ratios, volts: Float64Array): void => {
  if (!ratios) {
    for (let n = 0; n < f.nodes; n++) volts.set(f.sourceV, n * 8);
    return;
  }
  volts.set(f.sourceV, 0);
  for (let n = 1; n < f.nodes; n++) {
    const up = (f.parent[n] as number) * 8;
    const ratio = ratios[n];
    if (ratio) {
      through(ratio, volts, up, scratch, false);
      volts.set(scratch, n * 8);
    } else volts.copyWithin(n * 8, up, up + 8);
  }
};

/** Volts of every node with nothing switched on, by node: the source's own, or what transformers make of them. */
export const openVolts = (f: Feeder): Float64Array => {
  const volts = new Float64Array(f.nodes * 8);
  startVolts(f, ratiosOf(f), volts);
  return volts;
};
