import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastPacksBound } from '../../src/engines/battery/bound.ts';
import { chargeFrom } from '../../src/engines/battery/charge.ts';
import { leastPacks } from '../../src/engines/battery/least.ts';
import type { Rotation } from '../../src/engines/battery/rotation-types.ts';
import { rotation, smallDays } from '../support/rotation-rig.ts';

/**
 * Every schedule of a small day, by plain recursion: at each edge of a stretch, each time a pack on a unit reaches the change
 * point and each end of a charge, every unit that burns takes any pack that is in no bay, and any set of the others goes into
 * bays. Nothing is pruned but states seen before. Written apart from the engine; only how long a charge takes is shared.
 */
const anySchedule = (r: Rotation, packs: number, mostStates: number): boolean | undefined => {
  const edges = [...new Set(r.units.flatMap((u) => u.stretches.flatMap((s) => [s.startMin, s.endMin])))].sort(
    (a, b) => a - b,
  );
  const end = edges.at(-1) ?? 0;
  const full = r.pools[0]?.chargeMin ?? 0;
  const tiny = 1e-7;
  const seen = new Set<string>();
  const go = (t: number, idle: readonly number[], busy: readonly number[]): boolean | undefined => {
    if (t >= end - tiny) return true;
    const key = [t, '|', ...[...idle].sort(), '|', ...[...busy].sort()]
      .map((x) => (typeof x === 'number' ? x.toFixed(6) : x))
      .join();
    if (seen.has(key)) return false;
    seen.add(key);
    if (seen.size > mostStates) return undefined;
    const rates = r.units.flatMap((u) =>
      u.stretches.filter((s) => s.startMin <= t + tiny && s.endMin > t + tiny).map((s) => s.drain),
    );
    let unknown = false;
    const chooseCharges = (
      on: readonly number[],
      rest: readonly number[],
      at: number,
      going: readonly number[],
    ): boolean => {
      if (at === rest.length) {
        const ends = [...busy, ...going.map((k) => t + chargeFrom(r, rest[k] ?? 0, full))];
        if (ends.length > r.bays.length) return false;
        const next = Math.min(
          edges.find((e) => e > t + tiny) ?? end,
          ...ends,
          ...on.map((soc, i) => t + (soc - r.swapAt) / (rates[i] ?? 1)),
        );
        const answer = go(
          next,
          [
            ...on.map((soc, i) => soc - (rates[i] ?? 0) * (next - t)),
            ...rest.filter((_, k) => !going.includes(k)),
            ...ends.filter((e) => e <= next + tiny).map(() => 1),
          ],
          ends.filter((e) => e > next + tiny),
        );
        if (answer === undefined) unknown = true;
        return answer === true;
      }
      return (
        chooseCharges(on, rest, at + 1, going) ||
        ((rest[at] ?? 1) < 1 - tiny && chooseCharges(on, rest, at + 1, [...going, at]))
      );
    };
    const choosePacks = (on: readonly number[], rest: readonly number[]): boolean => {
      if (on.length === rates.length) return chooseCharges(on, rest, 0, []);
      return rest.some(
        (soc, k) =>
          soc > r.swapAt + tiny &&
          choosePacks(
            [...on, soc],
            rest.filter((_, j) => j !== k),
          ),
      );
    };
    const found = choosePacks([], idle);
    return found ? true : unknown ? undefined : false;
  };
  return go(
    edges[0] ?? 0,
    Array.from({ length: packs }, () => 1),
    [],
  );
};

const STATES = 4000;

describe('the fewest packs against every schedule', () => {
  it('battery-least: the oracle finds what can be seen by hand', () => {
    // Two hours on packs of one hour: two packs without a bay; one pack never, for the last one is empty when it is due.
    const two = rotation([[[0, 120, 60]]]);
    expect([1, 2].map((n) => anySchedule(two, n, STATES))).toEqual([false, true]);
    // A pack that lies empty at 60 is charged by 120 and carries the third hour.
    const three = rotation([[[0, 180, 60]]], { bays: 1, chargeMin: 60 });
    expect([1, 2].map((n) => anySchedule(three, n, STATES))).toEqual([false, true]);
  });

  it('battery-bound: no schedule does with fewer packs than the bound', () => {
    let judged = 0;
    fc.assert(
      fc.property(smallDays, (r) => {
        const [pool] = r.pools;
        const bound = pool ? leastPacksBound(r, pool) : 0;
        if (bound < 2 || bound > 7) return;
        const fewer = anySchedule(r, bound - 1, STATES);
        if (fewer !== undefined) judged++;
        expect(fewer ?? false).toBe(false);
      }),
      { numRuns: 250 },
    );
    expect(judged).toBeGreaterThan(150);
  }, 120_000);

  it('battery-least: no schedule of up to 4 units, 6 packs and 2 bays does with fewer', () => {
    let judged = 0;
    fc.assert(
      fc.property(smallDays, (r) => {
        const least = leastPacks(r)[0];
        if (!least || least.packs > 6 || least.bound < least.packs) return;
        const enough = least.by === 'rule' && least.packs > 4 ? true : anySchedule(r, least.packs, STATES);
        const fewer = anySchedule(r, least.packs - 1, STATES);
        if (fewer !== undefined) judged++;
        expect(enough ?? true).toBe(true);
        expect(fewer ?? false).toBe(false);
      }),
      { numRuns: 150 },
    );
    expect(judged).toBeGreaterThan(60);
  }, 120_000);
});
