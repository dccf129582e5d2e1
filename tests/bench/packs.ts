import { shootingDays } from '../../src/derive/schedule.ts';
import {
  dayOf,
  leastBays,
  leastPacks,
  type Rotation,
  rotationOf,
  supplyOf,
} from '../../src/engines/battery/index.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { batteryRig } from '../support/battery-plan.ts';
import { interleaved, line, ms, timed } from './measure.ts';

const UNITS = 60;
const PACKS = 200;
const CHARGERS = 20;
const FIRST_MIN = 360;
const HOURS = 16;

/** Sixty units of 60 W on bricks over sixteen hours in eight setups of their own levels, two hundred packs, forty bays. */
export const packDay = (): Plan => {
  const r = batteryRig();
  const use = { kindId: r.brick.id, count: 1, joined: 'parallel' as const };
  const setups = Array.from({ length: 8 }, (_, i) => r.b.setup(`Setup ${i + 1}`, i + 2));
  for (let u = 0; u < UNITS; u++) {
    r.unit(`u${u}`, use);
    setups.forEach((s, i) => {
      r.b.level(s.id, `u${u}`, (u * 7 + i * 3) % 4 === 0 ? 0 : 20 + ((u * 13 + i * 29) % 60));
    });
  }
  setups.forEach((s, i) => {
    r.block(FIRST_MIN + (i * HOURS * 60) / 8, FIRST_MIN + ((i + 1) * HOURS * 60) / 8, { setupId: s.id });
  });
  r.stock(r.brick.id, PACKS);
  for (let c = 0; c < CHARGERS; c++) r.placeCharger(`c${c}`);
  return r.b.plan();
};

/** A large day on packs, played through and searched for the fewest packs. */
export const benchPacks = (): void => {
  const plan = packDay();
  let runs = 0;
  /** The day of a fresh copy that is a little different every time, so that nothing is remembered. */
  const fresh = (): Rotation => {
    const copy: Plan = { ...plan, records: new Map(plan.records) };
    const day = shootingDays(copy)[0];
    if (!day) throw new Error('the day has no blocks');
    const r = rotationOf(copy, day);
    runs++;
    return { ...r, units: r.units.map((u) => ({ ...u, swapMin: u.swapMin + runs / 1e6 })) };
  };
  const m = interleaved({
    play: () => {
      const r = fresh();
      return timed(() => dayOf(r, supplyOf(r)));
    },
    least: () => {
      const r = fresh();
      return timed(() => leastPacks(r));
    },
    both: () =>
      timed(() => {
        const r = fresh();
        dayOf(r, supplyOf(r));
        leastPacks(r);
      }),
    bays: () => {
      const r = fresh();
      return timed(() => leastBays(r, supplyOf(r)));
    },
  });
  const r = fresh();
  const [least] = leastPacks(r);
  const swaps = dayOf(r, supplyOf(r)).swaps.length;
  line(
    `${UNITS} units, ${PACKS} packs, ${r.bays.length} bays, ${HOURS} h played through`,
    ms(m.play),
    `${swaps} changes`,
  );
  line('  the fewest packs', ms(m.least), `${least?.packs} packs, no fewer than ${least?.bound}`);
  line('  from the plan to the answer', ms(m.both));
  line('  the fewest bays for the packs at hand', ms(m.bays), `${leastBays(r, supplyOf(r))} bays`);
};
