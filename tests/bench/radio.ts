import { coverageItems } from '../../src/drawing/coverage.ts';
import { bestSpots, computeRadio, coverage } from '../../src/engines/radio/index.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { RadioRig } from '../support/radio-rig.ts';
import { interleaved, line, ms, timed } from './measure.ts';

/** A floor of 60 m by 40 m with 120 walls, doors in half of them, 40 units and a transmitter, with people and Wi-Fi. */
const floor = (): { plan: Plan; txId: string } => {
  const b = new RadioRig({ radio: { crowd: 'many', wifiChannels: [1, 6, 11] } });
  let seed = 7;
  const random = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  const corners = [
    [0, 0],
    [60, 0],
    [60, 40],
    [0, 40],
  ] as const;
  corners.forEach((c, i) => void b.wall(c, corners[(i + 1) % 4] ?? c, 'brick'));
  for (let i = 0; i < 116; i++) {
    const x = random() * 60;
    const y = random() * 40;
    const l = 2 + random() * 6;
    const w =
      random() < 0.5 ? b.wall([x, y], [Math.min(60, x + l), y]) : b.wall([x, y], [x, Math.min(40, y + l)]);
    if (i % 2 === 0) b.opening(w.id, { what: 'door', offsetMm: 500, heightMm: 2100 });
  }
  const tx = b.device(30, 20);
  for (let i = 0; i < 40; i++) b.unit(1 + random() * 58, 1 + random() * 38);
  return { plan: b.plan(), txId: tx.id };
};

/** Coverage of a large floor at a quarter of a metre, its contours, the links and the search for places. */
export const benchRadio = (): void => {
  const { plan, txId } = floor();
  const fresh = (): Plan => ({ ...plan });
  const ask = { floorId: 'floor', senderIds: [txId], stepM: 0.25 };
  const grid = coverage(plan, ask);
  const m = interleaved({
    coverage: () => timed(() => coverage(fresh(), ask)),
    picture: () =>
      timed(() => {
        const g = coverage(fresh(), ask);
        if (g) coverageItems(g, 60);
      }),
    links: () => timed(() => computeRadio(fresh())),
    one: () => timed(() => bestSpots(fresh(), { floorId: 'floor', count: 1, senderId: txId })),
    two: () => timed(() => bestSpots(fresh(), { floorId: 'floor', count: 2, senderId: txId })),
  });
  line(
    'coverage, 60 × 40 m, 120 walls, 0.25 m',
    ms(m.coverage),
    `${grid?.columns} × ${grid?.rows} places; aim: under 150 ms`,
  );
  line('  with its filled contours', ms(m.picture));
  line('  margins of 40 links', ms(m.links));
  line('  best place for one transmitter', ms(m.one));
  line('  best places for two', ms(m.two));
};
