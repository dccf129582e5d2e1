import { conductor, resistanceOhmPerKm } from '../../derive/conductors.ts';
import { planInSetup, wholePlan } from '../../plan/moves.ts';
import { type Plan, setupsOf } from '../../plan/plan.ts';
import { placeOf } from '../../plan/ports.ts';
import type { Fixture, PackLead } from '../../plan/records/index.ts';

/** Conductors of a lead outdoors in summer: resistance is taken at 40 °C. */
const LEAD_C = 40;

/** Resistance of a lead out and back in ohms; 0 where its conductor is not in the table. */
export const leadOhm = (lead: PackLead | undefined): number => {
  const c = lead && conductor(lead.conductor);
  return lead && c ? (2 * Math.max(0, lead.lengthMm) * resistanceOhmPerKm(c, LEAD_C)) / 1e6 : 0;
};

/** Conductor of a lead from a pack on the floor where the plan does not say. */
const LEAD_CONDUCTOR = 'mm2:2.5';

/** The plan as it stands in each setup; as it is where there is none. */
const everyPlace = (plan: Plan): readonly Plan[] => {
  const whole = wholePlan(plan);
  const setups = setupsOf(whole);
  return setups.length === 0 ? [whole] : [...new Set(setups.map((s) => planInSetup(whole, s.id)))];
};

/** The way from a pack to a unit along the walls of a square and up to it. */
const wayMm = (plan: Plan, packId: string, fixtureId: string): number | undefined => {
  const [from, to] = [placeOf(plan, packId), placeOf(plan, fixtureId)];
  if (!from || !to) return undefined;
  const flat = Math.abs(from.at.xMm - to.at.xMm) + Math.abs(from.at.yMm - to.at.yMm);
  return flat + Math.abs(to.heightMm);
};

/**
 * The lead of a unit: its own; from a pack on the floor without one, as long as the way there and up to the unit, the longest of
 * all setups, for a lead is taken along once.
 */
export const leadOf = (plan: Plan, f: Fixture): (PackLead & { readonly assumed: boolean }) | undefined => {
  if (!f.packFrom) return f.packs?.lead && { ...f.packs.lead, assumed: false };
  if (f.packFrom.lead) return { ...f.packFrom.lead, assumed: false };
  const ways = everyPlace(plan).flatMap((there) => wayMm(there, f.packFrom?.packId ?? '', f.id) ?? []);
  if (ways.length === 0) return undefined;
  return { lengthMm: Math.max(...ways), conductor: LEAD_CONDUCTOR, assumed: true };
};
