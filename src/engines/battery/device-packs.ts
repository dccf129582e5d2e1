import { kindOf, type Plan } from '../../plan/plan.ts';
import { deviceFamilies } from '../../plan/ports.ts';
import type { Device } from '../../plan/records/index.ts';
import { rateFactor, runtimeMinutes, temperatureFactor } from './calc.ts';
import { cellC, sohOf } from './model.ts';
import { chemistryOf, type Range } from './tables.ts';

/** How long packs carry a device when its plug is pulled, and why they do not suit it, in words. */
export interface DevicePacks {
  readonly minutes: Range;
  readonly packName: string;
  readonly count: number;
  readonly drawsW: number;
  readonly problem: string | undefined;
}

/**
 * A device on packs in place of its mains: E × usable × health × temperature × rate ÷ what it draws, as for units. Undefined
 * where no packs are on it. A pack whose volts or current do not suit it carries it for no time.
 */
export const devicePacks = (plan: Plan, d: Device): DevicePacks | undefined => {
  if (!d.packs) return undefined;
  const kind = kindOf(plan, d.kindId, ...deviceFamilies);
  const pack = kindOf(plan, d.packs.kindId, 'pack');
  const drawsW = kind?.supplyW ?? Number.NaN;
  const count = Math.max(1, d.packs.count);
  const none = (problem: string): DevicePacks => ({
    minutes: { low: 0, plan: 0, high: 0 },
    packName: pack?.name ?? '',
    count,
    drawsW,
    problem,
  });
  if (!pack || !(pack.voltsV > 0 && pack.capacityAh > 0)) return none('its kind of pack is not in the plan');
  if (!(drawsW > 0)) return none('what it draws is not known');
  const inRow = d.packs.joined === 'series' ? count : 1;
  const takes = kind?.family === 'video' ? kind.packIn : undefined;
  if (kind?.family === 'video' && !takes) return none('it has no plate for packs');
  if (takes && pack.fullV * inRow > takes.maxV)
    return none(`${(pack.fullV * inRow).toFixed(1)} V when full, and it takes ${takes.maxV} V at most`);
  if (takes && pack.voltsV * inRow < takes.minV)
    return none(`${(pack.voltsV * inRow).toFixed(1)} V, and it runs on ${takes.minV} V or more`);
  const amps = drawsW / count / pack.emptyV;
  if (amps > pack.continuousA)
    return none(
      `it draws ${amps.toFixed(1)} A when the pack is nearly empty, which gives ${pack.continuousA} A`,
    );
  const c = chemistryOf(pack.chemistry);
  const soh = sohOf(plan, pack.id);
  const cold = temperatureFactor(pack.chemistry, cellC(plan));
  const perPackA = drawsW / count / pack.voltsV;
  const minutes = (k: keyof Range): number =>
    runtimeMinutes(
      count *
        pack.energyWh *
        c.usable[k] *
        soh[k] *
        cold[k] *
        rateFactor(c.ratedHours, pack.capacityAh, perPackA, c.peukert[k]),
      drawsW,
    );
  return {
    minutes: { low: minutes('low'), plan: minutes('plan'), high: minutes('high') },
    packName: pack.name,
    count,
    drawsW,
    problem: undefined,
  };
};
