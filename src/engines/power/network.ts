/**
 * A radial feeder as flat arrays. Node 0 is the source; a parent comes before its children.
 * Wires 0, 1, 2 are legs and 3 is the neutral. Complex values lie as (re, im) pairs.
 */
export interface Feeder {
  readonly nodes: number;
  /** Parent of each node; that of node 0 is not read. */
  readonly parent: Int32Array;
  /** `diagonal`: 8 numbers a node, the own impedance of each wire. `full`: 32, a 4×4 matrix by rows. In ohms. */
  readonly impedance: { readonly kind: 'diagonal' | 'full'; readonly ohms: Float64Array };
  /** Volts of the source's four wires to earth. */
  readonly sourceV: Float64Array;
  /** Transformers: one for each node that is fed through one. */
  readonly couplings?: readonly Coupling[];
  /** Volts put in series with the neutral at the head of the segment that leads to one node, not the source. */
  readonly lift?: { readonly node: number; readonly re: number; readonly im: number };
}

/**
 * An ideal transformer at the head of the segment that leads to `node`: its wires get `ratio` × the volts of the parent's
 * wires, and the parent gives the transposed `ratio` × the node's currents, so that it makes and loses nothing. The
 * segment's impedance lies behind it. `ratio` is a real 4×4 matrix by rows (wire of the node × wire of the parent); a row
 * of noughts holds its wire at earth, as an earthed star point does.
 */
export interface Coupling {
  readonly node: number;
  readonly ratio: Float64Array;
}
