import type { PathCommand } from './display-list.ts';
import type { CompiledSymbol, SymbolLine } from './symbol-types.ts';
import { COMPILED_SYMBOLS } from './symbols.generated.ts';

export type { CompiledSymbol, SymbolLine } from './symbol-types.ts';

export interface SymbolShape extends CompiledSymbol {
  readonly commands: readonly { readonly line: SymbolLine; readonly d: readonly PathCommand[] }[];
}

const compiled: ReadonlyMap<string, CompiledSymbol> = new Map(COMPILED_SYMBOLS.map((s) => [s.id, s]));
const shapes = new Map<string, SymbolShape>();

/** Drawn for a symbol id this program does not know. */
export const PLAIN_SYMBOL = 'unit-plain';

export const symbolIds: readonly string[] = COMPILED_SYMBOLS.map((s) => s.id);

/** Path data in absolute M, L, C and Z as commands. */
export const parsePath = (d: string): readonly PathCommand[] => {
  const out: PathCommand[] = [];
  for (const m of d.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const n = (m[2] ?? '')
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    const [a = 0, b = 0, c = 0, e = 0, f = 0, g = 0] = n;
    if (m[1] === 'M') out.push(['M', a, b]);
    else if (m[1] === 'L') out.push(['L', a, b]);
    else if (m[1] === 'C') out.push(['C', a, b, c, e, f, g]);
    else out.push(['Z']);
  }
  return out;
};

/** The symbol with this id, or the plain one. */
export const symbolShape = (id: string): SymbolShape => {
  const key = compiled.has(id) ? id : PLAIN_SYMBOL;
  const known = shapes.get(key);
  if (known) return known;
  const base = compiled.get(key);
  if (!base) throw new Error(`no symbol ${key}`);
  const made = { ...base, commands: base.paths.map((p) => ({ line: p.line, d: parsePath(p.d) })) };
  shapes.set(key, made);
  return made;
};

/** Slender symbols are drawn broader in lists, where their true outline would leave no room for the mark inside. */
const ICON_MOST_SLENDER = 3;

const pathText = (d: readonly PathCommand[]): string =>
  d.map(([letter, ...n]) => letter + n.map((v) => Number(v.toFixed(2))).join(' ')).join('');

/**
 * A symbol for icons in lists: path data per line class and the view box around it, in symbol millimetres. Its outline
 * is the true one up to three times as long as broad; tubes, pipes and the like are broadened to that.
 */
export const symbolPath = (
  id: string,
): {
  readonly viewBox: readonly [number, number, number, number];
  readonly paths: CompiledSymbol['paths'];
} => {
  const s = symbolShape(id);
  const least = Math.max(s.lengthMm, s.widthMm) / ICON_MOST_SLENDER;
  const kx = Math.max(1, least / s.lengthMm);
  const ky = Math.max(1, least / s.widthMm);
  const [minX, maxX] = [s.box[0] * kx, s.box[2] * kx];
  const [minY, maxY] = [s.box[1] * ky, s.box[3] * ky];
  const m = Math.max(maxX - minX, maxY - minY) * 0.06;
  const paths =
    kx === 1 && ky === 1
      ? s.paths
      : scaledSymbol(id, s.lengthMm * kx, s.widthMm * ky).map((p) => ({ line: p.line, d: pathText(p.d) }));
  return { viewBox: [minX - m, minY - m, maxX - minX + 2 * m, maxY - minY + 2 * m], paths };
};

/** The symbol's commands stretched to a real size, still about its mounting point. Dots stay round. */
export const scaledSymbol = (id: string, lengthMm: number, widthMm: number): SymbolShape['commands'] => {
  const s = symbolShape(id);
  const kx = lengthMm / s.lengthMm;
  const ky = widthMm / s.widthMm;
  return s.commands.map((p) => ({
    line: p.line,
    d: p.line === 'solid' ? scaleDots(p.d, kx, ky) : p.d.map((c) => scaleCommand(c, kx, ky)),
  }));
};

const scaleDots = (d: readonly PathCommand[], kx: number, ky: number): PathCommand[] => {
  const out: PathCommand[] = [];
  for (const part of subpaths(d)) {
    const start = part[0];
    const half = part[2];
    const round = part.length === 6 && part.slice(1, 5).every((c) => c[0] === 'C');
    if (round && start?.[0] === 'M' && half?.[0] === 'C') {
      const cx = (start[1] + half[5]) / 2;
      const cy = (start[2] + half[6]) / 2;
      const k = Math.min(Math.sqrt(kx * ky), 1.3 * Math.min(kx, ky));
      out.push(...part.map((c) => shiftCommand(scaleCommand(c, k, k), cx * (kx - k), cy * (ky - k))));
    } else out.push(...part.map((c) => scaleCommand(c, kx, ky)));
  }
  return out;
};

const subpaths = (d: readonly PathCommand[]): PathCommand[][] => {
  const out: PathCommand[][] = [];
  for (const c of d) {
    if (c[0] === 'M') out.push([c]);
    else out.at(-1)?.push(c);
  }
  return out;
};

const scaleCommand = (c: PathCommand, kx: number, ky: number): PathCommand => {
  if (c[0] === 'C') return ['C', c[1] * kx, c[2] * ky, c[3] * kx, c[4] * ky, c[5] * kx, c[6] * ky];
  return c[0] === 'Z' ? c : [c[0], c[1] * kx, c[2] * ky];
};

const shiftCommand = (c: PathCommand, x: number, y: number): PathCommand => {
  if (c[0] === 'C') return ['C', c[1] + x, c[2] + y, c[3] + x, c[4] + y, c[5] + x, c[6] + y];
  return c[0] === 'Z' ? c : [c[0], c[1] + x, c[2] + y];
};
