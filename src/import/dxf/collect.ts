import type { LineText } from '../../plan/line-work.ts';
import { MAX_LINE_POINTS } from '../../plan/line-work.ts';
import { type Entry, numberOf, textOf } from './pairs.ts';
import {
  arc,
  type Corner,
  circle,
  ellipse,
  type Flat,
  face,
  lightCorners,
  line,
  polyline,
  spline,
} from './shapes.ts';
import { plainLines } from './words.ts';

/** x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [number, number, number, number, number, number];
export const SAME: Matrix = [1, 0, 0, 1, 0, 0];

export const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

export interface Block {
  readonly base: readonly [number, number];
  readonly entries: readonly Entry[];
}

/** Blocks inside blocks no deeper than this. */
const MAX_DEPTH = 16;
/** Copies of blocks in all, so that blocks of blocks of blocks come to an end. */
const MAX_INSERTS = 200_000;
const MAX_TEXTS = 50_000;
const RAD = Math.PI / 180;

/** Gathers straight pieces and texts from entities, blocks unfolded. Coordinates as in the drawing, y up. */
export class Collector {
  readonly paths = new Map<string, Flat[]>();
  readonly texts: LineText[] = [];
  /** Sorts of entities that were left out, with their number. */
  readonly skipped = new Map<string, number>();
  /** Why gathering ended early. */
  limit: string | undefined;
  entities = 0;
  #points = 0;
  #inserts = 0;
  readonly #blocks: ReadonlyMap<string, Block>;
  readonly #off: ReadonlySet<string>;

  constructor(blocks: ReadonlyMap<string, Block>, offLayers: ReadonlySet<string>) {
    this.#blocks = blocks;
    this.#off = offLayers;
  }

  /** Takes a list of entities; those with parts of their own (polylines of vertices) use the entries after them. */
  take(entries: readonly Entry[], matrix: Matrix, ownLayer: string | undefined, depth: number): void {
    for (let i = 0; i < entries.length && this.limit === undefined; i++) {
      const e = entries[i];
      if (!e) continue;
      if (e.name === 'POLYLINE') {
        const vertices: Entry[] = [];
        while (entries[i + 1]?.name === 'VERTEX') vertices.push(entries[++i] ?? e);
        this.#vertices(e, vertices, matrix, ownLayer);
      } else this.#one(e, matrix, ownLayer, depth);
    }
  }

  #layer(e: Entry, own: string | undefined): string {
    const layer = textOf(e, 8) ?? '0';
    // What is on layer 0 in a block shows on the layer of the block's copy.
    return layer === '0' && own !== undefined ? own : layer;
  }

  #seen(e: Entry, layer: string): boolean {
    return numberOf(e, 67) === 0 && numberOf(e, 60) === 0 && !this.#off.has(layer.toUpperCase());
  }

  #one(e: Entry, given: Matrix, own: string | undefined, depth: number): void {
    const layer = this.#layer(e, own);
    if (!this.#seen(e, layer)) return;
    // Drawn from behind: its own x runs the other way.
    const flat = e.name === 'LINE' || e.name === 'ELLIPSE' || e.name === 'SPLINE' || e.name === '3DFACE';
    const m: Matrix = !flat && numberOf(e, 230, 1) < 0 ? times(given, [-1, 0, 0, 1, 0, 0]) : given;
    this.entities++;
    switch (e.name) {
      case 'LINE':
        return this.#path(layer, line(e), m);
      case 'LWPOLYLINE':
        return this.#path(layer, polyline(lightCorners(e), (numberOf(e, 70) & 1) === 1), m);
      case 'ARC':
        return this.#path(layer, arc(e), m);
      case 'CIRCLE':
        return this.#path(layer, circle(e), m);
      case 'ELLIPSE':
        return this.#path(layer, ellipse(e), m);
      case 'SPLINE':
        return this.#path(layer, spline(e), m);
      case 'SOLID':
      case 'TRACE':
        return this.#path(layer, face(e, true), m);
      case '3DFACE':
        return this.#path(layer, face(e, false), m);
      case 'TEXT':
      case 'ATTRIB':
        return this.#text(e, layer, m, [textOf(e, 1) ?? '']);
      case 'MTEXT':
        return this.#text(e, layer, m, [
          e.pairs
            .filter((p) => p.code === 3 || p.code === 1)
            .map((p) => p.value)
            .join(''),
        ]);
      case 'INSERT':
        return this.#insert(e, layer, m, depth);
      case 'DIMENSION':
        // A dimension is drawn by a block of its own, in place already.
        return this.#unfold(textOf(e, 2), given, layer, depth);
      case 'ATTDEF':
      case 'SEQEND':
      case 'VERTEX':
      case 'VIEWPORT':
      case 'POINT':
        return;
      default:
        this.entities--;
        this.skipped.set(e.name, (this.skipped.get(e.name) ?? 0) + 1);
    }
  }

  #vertices(e: Entry, vertices: readonly Entry[], given: Matrix, own: string | undefined): void {
    const layer = this.#layer(e, own);
    const flags = numberOf(e, 70);
    if (!this.#seen(e, layer)) return;
    // Meshes are not line work.
    if (flags & (16 | 64)) {
      this.skipped.set('mesh', (this.skipped.get('mesh') ?? 0) + 1);
      return;
    }
    this.entities++;
    const m: Matrix = numberOf(e, 230, 1) < 0 ? times(given, [-1, 0, 0, 1, 0, 0]) : given;
    const corners: Corner[] = vertices
      // Points of a spline's frame are not on its line.
      .filter((v) => (numberOf(v, 70) & 16) === 0)
      .map((v) => ({ x: numberOf(v, 10), y: numberOf(v, 20), bulge: numberOf(v, 42) }));
    this.#path(layer, polyline(corners, (flags & 1) === 1), m);
  }

  #insert(e: Entry, layer: string, m: Matrix, depth: number): void {
    const columns = Math.max(1, Math.round(numberOf(e, 70, 1)));
    const rows = Math.max(1, Math.round(numberOf(e, 71, 1)));
    const [dx, dy] = [numberOf(e, 44), numberOf(e, 45)];
    const turn = numberOf(e, 50) * RAD;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const [kx, ky] = [numberOf(e, 41, 1), numberOf(e, 42, 1)];
    for (let row = 0; row < rows && this.limit === undefined; row++)
      for (let column = 0; column < columns && this.limit === undefined; column++) {
        const [ox, oy] = [column * dx, row * dy];
        const place: Matrix = [
          c * kx,
          s * kx,
          -s * ky,
          c * ky,
          numberOf(e, 10) + c * ox - s * oy,
          numberOf(e, 20) + s * ox + c * oy,
        ];
        this.#unfold(textOf(e, 2), times(m, place), layer, depth);
      }
  }

  #unfold(name: string | undefined, m: Matrix, layer: string, depth: number): void {
    const block = name === undefined ? undefined : this.#blocks.get(name.toUpperCase());
    if (!block) return;
    if (depth >= MAX_DEPTH) {
      this.limit = `blocks are inside one another more than ${MAX_DEPTH} deep (“${name}”)`;
      return;
    }
    if (++this.#inserts > MAX_INSERTS) {
      this.limit = `it has more than ${MAX_INSERTS.toLocaleString('en')} copies of blocks`;
      return;
    }
    this.take(block.entries, times(m, [1, 0, 0, 1, -block.base[0], -block.base[1]]), layer, depth + 1);
  }

  #path(layer: string, flat: Flat, m: Matrix): void {
    if (flat.length < 4) return;
    this.#points += flat.length / 2;
    if (this.#points > MAX_LINE_POINTS) {
      this.limit = `it has more than ${MAX_LINE_POINTS.toLocaleString('en')} points`;
      return;
    }
    const out: Flat = new Array(flat.length);
    for (let i = 0; i + 1 < flat.length; i += 2) {
      const [x, y] = [flat[i] ?? 0, flat[i + 1] ?? 0];
      out[i] = m[0] * x + m[2] * y + m[4];
      out[i + 1] = m[1] * x + m[3] * y + m[5];
    }
    if (!out.every((v) => Number.isFinite(v))) return;
    const list = this.paths.get(layer);
    if (list) list.push(out);
    else this.paths.set(layer, [out]);
  }

  #text(e: Entry, layer: string, m: Matrix, raw: readonly string[]): void {
    if (this.texts.length > MAX_TEXTS) return;
    const size = numberOf(e, 40, 1);
    const dir = e.name === 'MTEXT' && e.pairs.some((p) => p.code === 11);
    const turn = dir ? Math.atan2(numberOf(e, 21), numberOf(e, 11)) : numberOf(e, 50) * RAD;
    const aligned = e.name !== 'MTEXT' && (numberOf(e, 72) !== 0 || numberOf(e, 73) !== 0);
    const [x, y] = aligned ? [numberOf(e, 11), numberOf(e, 21)] : [numberOf(e, 10), numberOf(e, 20)];
    const k = Math.hypot(m[0], m[1]);
    raw.flatMap(plainLines).forEach((text, i) => {
      // Rough width of a letter: how far back a centred or right-aligned text begins.
      const wide = text.length * size * 0.62;
      const back = aligned ? (numberOf(e, 72) === 2 ? wide : numberOf(e, 72) === 0 ? 0 : wide / 2) : 0;
      const down = (e.name === 'MTEXT' ? 1 : 0) * size + i * size * 1.6;
      const lx = x - back * Math.cos(turn) + down * Math.sin(turn);
      const ly = y - back * Math.sin(turn) - down * Math.cos(turn);
      const own = Math.atan2(
        m[1] * Math.cos(turn) + m[3] * Math.sin(turn),
        m[0] * Math.cos(turn) + m[2] * Math.sin(turn),
      );
      this.texts.push({
        layer,
        x: m[0] * lx + m[2] * ly + m[4],
        y: m[1] * lx + m[3] * ly + m[5],
        cap: size * k,
        rotationDeg: -own / RAD,
        text,
      });
    });
  }
}
