import { expect } from 'vitest';
import { chargeFrom } from '../../src/engines/battery/charge.ts';
import type { Rotation, RotationResult } from '../../src/engines/battery/rotation-types.ts';

const close = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** Laws that every day keeps, whoever planned it. */
export const keepsItsLaws = (r: Rotation, d: RotationResult, most: number): void => {
  const uses = new Map<string, { from: number; to: number; a: number; b: number; where: string }[]>();
  const use = (pack: string, u: { from: number; to: number; a: number; b: number; where: string }): void => {
    uses.set(pack, [...(uses.get(pack) ?? []), u]);
  };
  for (const s of d.spans) {
    const x = r.units[s.unit]?.stretches.find(
      (y) => y.startMin <= s.startMin + 1e-6 && y.endMin >= s.endMin - 1e-6,
    );
    expect(x, 'a unit is on only when it should be').toBeDefined();
    if (s.state === 'dark') continue;
    // What a unit drains is what its packs lose.
    expect(close(s.fromSoc - s.toSoc, (x?.drain ?? 0) * (s.endMin - s.startMin))).toBe(true);
    for (const p of s.packs)
      use(p, { from: s.startMin, to: s.endMin, a: s.fromSoc, b: s.toSoc, where: `unit ${s.unit}` });
  }
  const ends = Math.max(0, ...r.units.flatMap((u) => u.stretches.map((s) => s.endMin)));
  for (const b of d.bays) {
    expect(close(b.endMin - b.startMin, chargeFrom(r, b.fromSoc, r.pools[0]?.chargeMin ?? 0))).toBe(true);
    use(b.pack, { from: b.startMin, to: b.endMin, a: b.fromSoc, b: 1, where: `bay ${b.bay}` });
  }
  expect(uses.size).toBeLessThanOrEqual(most);
  for (const list of uses.values()) {
    list.sort((a, b) => a.from - b.from || a.to - b.to);
    let soc = 1;
    let until = 0;
    for (const u of list) {
      // One place at a time, and what it holds when it comes is what it held when it left.
      expect(u.from).toBeGreaterThanOrEqual(until - 1e-6);
      expect(close(u.a, soc), `${u.where} at ${u.from}`).toBe(true);
      expect(u.b).toBeGreaterThanOrEqual(-1e-6);
      soc = u.b;
      until = u.to;
    }
  }
  // A bay holds one pack at a time.
  r.bays.forEach((_, bay) => {
    const mine = d.bays.filter((b) => b.bay === bay).sort((a, b) => a.startMin - b.startMin);
    for (const [i, b] of mine.entries())
      expect(b.startMin).toBeGreaterThanOrEqual((mine[i - 1]?.endMin ?? 0) - 1e-6);
  });
  // All the light that was asked for is either burnt or told to be dark.
  for (const [i, u] of r.units.entries()) {
    const asked = u.stretches.reduce((sum, s) => sum + s.endMin - s.startMin, 0);
    const had = d.spans.filter((s) => s.unit === i).reduce((sum, s) => sum + s.endMin - s.startMin, 0);
    expect(close(asked, had)).toBe(true);
  }
  expect(d.firstDark === undefined).toBe(!d.spans.some((s) => s.state === 'dark'));
  expect(ends).toBeGreaterThan(0);
};
