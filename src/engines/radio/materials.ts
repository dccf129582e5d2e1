import table from '../../../shared/radio.json' with { type: 'json' };
import type { Opening, WallMaterial } from '../../plan/records/index.ts';

/** Frequency the table of materials holds for, MHz. */
const TABLE_MHZ = 2440;

export interface P2040Row {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Row of a material of ITU-R P.2040: permittivity a · f^b, conductivity c · f^d, f in GHz. */
export const p2040Row = (id: string): P2040Row | undefined => table.p2040.rows.find((r) => r.id === id);

/** Conductivity in S/m at a frequency in MHz (ITU-R P.2040). */
export const conductivity = (row: P2040Row, fMhz: number): number => row.c * (fMhz / 1000) ** row.d;

/** dB that a metre of the material takes, for materials that conduct badly: 1636 · σ ÷ √ε (ITU-R P.2040). */
export const dbPerMetre = (row: P2040Row, fMhz: number): number =>
  (1636 * conductivity(row, fMhz)) / Math.sqrt(row.a * (fMhz / 1000) ** row.b);

/** 1 ÷ (2 π ε0 · 10⁹), which turns a conductivity into the imaginary part of a permittivity at 1 GHz. */
const TO_IMAGINARY = 17.98;

/**
 * Loss in dB of a slab of so many millimetres that a plane wave meets squarely, reflections inside it counted
 * (ITU-R P.2040, slab formula).
 */
export const slabDb = (row: P2040Row, thicknessMm: number, fMhz: number): number => {
  type C = readonly [number, number];
  const mul = (x: C, y: C): C => [x[0] * y[0] - x[1] * y[1], x[0] * y[1] + x[1] * y[0]];
  const div = (x: C, y: C): C => {
    const n = y[0] ** 2 + y[1] ** 2;
    return [(x[0] * y[0] + x[1] * y[1]) / n, (x[1] * y[0] - x[0] * y[1]) / n];
  };
  const exp = (x: C): C => [Math.exp(x[0]) * Math.cos(x[1]), Math.exp(x[0]) * Math.sin(x[1])];
  const f = fMhz / 1000;
  const e: C = [row.a * f ** row.b, (-TO_IMAGINARY * row.c * f ** row.d) / f];
  const size = Math.hypot(e[0], e[1]);
  const root: C = [Math.sqrt((size + e[0]) / 2), -Math.sqrt((size - e[0]) / 2)];
  const r = div([1 - root[0], -root[1]], [1 + root[0], root[1]]);
  const turns = (2 * Math.PI * (thicknessMm / 1000) * f * 1e9) / 299_792_458;
  // e^(−jq) with q = turns · √ε.
  const once = exp(mul([0, -1], [turns * root[0], turns * root[1]]));
  const r2 = mul(r, r);
  const back = mul(r2, mul(once, once));
  const t = div(mul([1 - r2[0], -r2[1]], once), [1 - back[0], -back[1]]);
  return -20 * Math.log10(Math.hypot(t[0], t[1]));
};

/** What a wall or a thing costs a wave that goes through it. */
export interface Through {
  readonly db: number;
  readonly name: string;
  readonly from: string;
}

/**
 * Loss of a wall of a material. The table gives it at 2.4 GHz and a usual thickness; solid materials cost more or less by
 * the dB per metre of ITU-R P.2040 at this thickness and frequency. A hollow wall keeps its value.
 */
export const materialLoss = (material: WallMaterial, thicknessMm: number, fMhz: number): Through => {
  const m = table.materials.find((x) => x.id === material);
  if (!m) return { db: 0, name: material, from: 'not in the table of materials' };
  const row = m.p2040 === null ? undefined : p2040Row(m.p2040);
  const by = (mm: number, mhz: number): number => (row ? (dbPerMetre(row, mhz) * mm) / 1000 : 0);
  const more = m.hollow
    ? 0
    : by(Math.max(0, Number.isFinite(thicknessMm) ? thicknessMm : m.thicknessMm), fMhz) -
      by(m.thicknessMm, TABLE_MHZ);
  return { db: Math.max(0, m.lossDb + more), name: m.name, from: m.source };
};

/** Loss of what fills an opening: a closed door, a window, nothing. */
export const openingLoss = (what: Opening['what']): Through => {
  const o = table.openings.find((x) => x.id === what);
  return { db: o?.lossDb ?? 0, name: o?.name ?? what, from: o?.source ?? '' };
};

/** Loss of so many floors between two levels, and where it is from. */
export const floorLoss = (floors: number, fMhz: number): Through => {
  const row = table.floorLoss.find((r) => fMhz <= r.toMhz);
  const db = floors < 1 || !row ? 0 : Math.min(row.mostDb, row.firstDb + (floors - 1) * row.furtherDb);
  return { db, name: floors === 1 ? 'one floor' : `${floors} floors`, from: row?.source ?? '' };
};

/** Beam of a class of aerials, across and up, and how far down it goes at most. */
export const aerialOf = (id: string) => table.aerials.find((a) => a.id === id);
export const patternSource: string = table.pattern.source;
