import type { Fill, PathCommand, Primitive } from '../drawing/display-list.ts';
import { type SymbolLine, scaledSymbol } from '../drawing/symbols.ts';

/** Browser paths, made once per list of commands. */
const known = new WeakMap<readonly PathCommand[], Path2D>();

const toPath = (d: readonly PathCommand[]): Path2D => {
  const p = new Path2D();
  for (const c of d) {
    if (c[0] === 'M') p.moveTo(c[1], c[2]);
    else if (c[0] === 'L') p.lineTo(c[1], c[2]);
    else if (c[0] === 'C') p.bezierCurveTo(c[1], c[2], c[3], c[4], c[5], c[6]);
    else p.closePath();
  }
  return p;
};

export const pathOf = (d: readonly PathCommand[]): Path2D => {
  let p = known.get(d);
  if (!p) {
    p = toPath(d);
    known.set(d, p);
  }
  return p;
};

export interface SymbolPaths {
  readonly line: SymbolLine;
  readonly path: Path2D;
}

const symbols = new Map<string, readonly SymbolPaths[]>();

/** A symbol at one real size: few sizes exist per kind, so all of them are kept. */
export const symbolPaths = (id: string, lengthMm: number, widthMm: number): readonly SymbolPaths[] => {
  const key = `${id}|${lengthMm}|${widthMm}`;
  let paths = symbols.get(key);
  if (!paths) {
    paths = scaledSymbol(id, lengthMm, widthMm).map((p) => ({ line: p.line, path: toPath(p.d) }));
    symbols.set(key, paths);
  }
  return paths;
};

interface HatchLines {
  readonly spacingMm: number;
  readonly path: Path2D;
}

const hatches = new WeakMap<Primitive, HatchLines>();

/** Hatch lines over a path's box, on one net for the whole floor so that neighbours line up. */
export const hatchOf = (
  q: Extract<Primitive, { kind: 'path' }>,
  hatch: NonNullable<Fill['hatch']>,
  scale: number,
): Path2D => {
  const spacingMm = hatch.spacingMm * scale;
  const old = hatches.get(q);
  if (old?.spacingMm === spacingMm) return old.path;
  const rad = (hatch.angleDeg * Math.PI) / 180;
  const [ux, uy] = [Math.cos(rad), Math.sin(rad)];
  let [lo, hi, from, to] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const c of q.d) {
    for (let i = 1; i + 1 < c.length; i += 2) {
      const x = c[i] as number;
      const y = c[i + 1] as number;
      const off = -x * uy + y * ux;
      const run = x * ux + y * uy;
      lo = Math.min(lo, off);
      hi = Math.max(hi, off);
      from = Math.min(from, run);
      to = Math.max(to, run);
    }
  }
  const path = new Path2D();
  for (let off = Math.ceil(lo / spacingMm) * spacingMm; off <= hi; off += spacingMm) {
    path.moveTo(from * ux - off * uy, from * uy + off * ux);
    path.lineTo(to * ux - off * uy, to * uy + off * ux);
  }
  hatches.set(q, { spacingMm, path });
  return path;
};
