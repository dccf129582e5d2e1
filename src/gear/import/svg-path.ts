/** Absolute path commands, as the drawing uses them. */
export type OutlineCommand =
  | readonly ['M' | 'L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

const COUNT: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?/y;

/** Reads numbers one after another; flags of arcs are single digits that may stand without a gap. */
class Reader {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  #skip(): void {
    while (this.#at < this.#text.length && /[\s,]/.test(this.#text[this.#at] ?? '')) this.#at++;
  }

  get done(): boolean {
    this.#skip();
    return this.#at >= this.#text.length;
  }

  letter(): string | undefined {
    this.#skip();
    const c = this.#text[this.#at] ?? '';
    if (!/[A-Za-z]/.test(c)) return undefined;
    this.#at++;
    return c;
  }

  number(): number | undefined {
    this.#skip();
    NUMBER.lastIndex = this.#at;
    const m = NUMBER.exec(this.#text);
    if (!m) return undefined;
    this.#at = NUMBER.lastIndex;
    return Number(m[0]);
  }

  flag(): number | undefined {
    this.#skip();
    const c = this.#text[this.#at];
    if (c !== '0' && c !== '1') return undefined;
    this.#at++;
    return Number(c);
  }
}

/**
 * Path data of SVG 1.1 (all of its commands) as absolute M, L, C and Z. Reads up to the first fault and keeps what
 * came before it, as the standard asks.
 */
export const pathCommands = (text: string, most = 20_000): readonly OutlineCommand[] => {
  const r = new Reader(text);
  const out: OutlineCommand[] = [];
  let letter = '';
  let [x, y, sx, sy] = [0, 0, 0, 0];
  let control: readonly [string, number, number] = ['', 0, 0];
  while (!r.done && out.length < most) {
    const next = r.letter();
    if (next !== undefined) letter = next;
    else if (letter === 'M') letter = 'L';
    else if (letter === 'm') letter = 'l';
    const upper = letter.toUpperCase();
    const count = COUNT[upper];
    if (count === undefined || (next === undefined && count === 0)) break;
    if (out.length === 0 && upper !== 'M') break;
    const a: number[] = [];
    for (let i = 0; i < count; i++) {
      const n = upper === 'A' && (i === 3 || i === 4) ? r.flag() : r.number();
      if (n === undefined || !Number.isFinite(n)) return out;
      a.push(n);
    }
    const rel = letter !== upper;
    const [n0 = 0, n1 = 0, n2 = 0, n3 = 0, n4 = 0, n5 = 0, n6 = 0] = a;
    const px = (v: number): number => (rel ? x + v : v);
    const py = (v: number): number => (rel ? y + v : v);
    const mirrored = (of: string): readonly [number, number] =>
      of.includes(control[0]) && control[0] !== '' ? [2 * x - control[1], 2 * y - control[2]] : [x, y];
    let after: readonly [string, number, number] = ['', 0, 0];
    const curve = (c: readonly [number, number, number, number, number, number]): void => {
      out.push(['C', ...c]);
      after = [upper, c[2], c[3]];
      [x, y] = [c[4], c[5]];
    };
    const quad = (qx: number, qy: number, ex: number, ey: number): void => {
      curve([
        x + (2 / 3) * (qx - x),
        y + (2 / 3) * (qy - y),
        ex + (2 / 3) * (qx - ex),
        ey + (2 / 3) * (qy - ey),
        ex,
        ey,
      ]);
      after = [upper, qx, qy];
    };
    if (upper === 'Z') {
      out.push(['Z']);
      [x, y] = [sx, sy];
    } else if (upper === 'M' || upper === 'L') {
      [x, y] = [px(n0), py(n1)];
      if (upper === 'M') [sx, sy] = [x, y];
      out.push([upper, x, y]);
    } else if (upper === 'H' || upper === 'V') {
      if (upper === 'H') x = px(n0);
      else y = py(n0);
      out.push(['L', x, y]);
    } else if (upper === 'C') curve([px(n0), py(n1), px(n2), py(n3), px(n4), py(n5)]);
    else if (upper === 'S') curve([...mirrored('CS'), px(n0), py(n1), px(n2), py(n3)]);
    else if (upper === 'Q') quad(px(n0), py(n1), px(n2), py(n3));
    else if (upper === 'T') quad(...mirrored('QT'), px(n0), py(n1));
    else {
      const to: readonly [number, number] = [px(n5), py(n6)];
      for (const c of arcCurves(x, y, n0, n1, n2, n3 !== 0, n4 !== 0, ...to)) out.push(c);
      [x, y] = to;
    }
    control = after;
  }
  return out;
};

/** An elliptical arc as cubic curves. Source: SVG 1.1, implementation notes F.6. */
const arcCurves = (
  x1: number,
  y1: number,
  rx0: number,
  ry0: number,
  turnDeg: number,
  large: boolean,
  sweep: boolean,
  x2: number,
  y2: number,
): readonly OutlineCommand[] => {
  if (rx0 === 0 || ry0 === 0 || (x1 === x2 && y1 === y2)) return [['L', x2, y2]];
  const [c, s] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const [dx, dy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const [ux, uy] = [c * dx + s * dy, -s * dx + c * dy];
  const short = Math.sqrt(Math.max(1, (ux / rx0) ** 2 + (uy / ry0) ** 2));
  const [rx, ry] = [Math.abs(rx0) * short, Math.abs(ry0) * short];
  const den = rx * rx * uy * uy + ry * ry * ux * ux;
  const k = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (rx * rx * ry * ry - den) / den));
  const [qx, qy] = [(k * rx * uy) / ry, (-k * ry * ux) / rx];
  const [mx, my] = [c * qx - s * qy + (x1 + x2) / 2, s * qx + c * qy + (y1 + y2) / 2];
  const from = Math.atan2((uy - qy) / ry, (ux - qx) / rx);
  let by = Math.atan2((-uy - qy) / ry, (-ux - qx) / rx) - from;
  if (sweep && by < 0) by += 2 * Math.PI;
  if (!sweep && by > 0) by -= 2 * Math.PI;
  const n = Math.max(1, Math.ceil(Math.abs(by) / (Math.PI / 2) - 1e-9));
  const h = (4 / 3) * Math.tan(by / n / 4);
  const at = (p: number, q: number): readonly [number, number] => [
    mx + c * rx * p - s * ry * q,
    my + s * rx * p + c * ry * q,
  ];
  return Array.from({ length: n }, (_, i): OutlineCommand => {
    const [a, b] = [from + (by * i) / n, from + (by * (i + 1)) / n];
    return [
      'C',
      ...at(Math.cos(a) - h * Math.sin(a), Math.sin(a) + h * Math.cos(a)),
      ...at(Math.cos(b) + h * Math.sin(b), Math.sin(b) - h * Math.cos(b)),
      ...(i === n - 1 ? ([x2, y2] as const) : at(Math.cos(b), Math.sin(b))),
    ];
  });
};
