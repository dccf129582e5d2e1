import { recordLabel } from '../../derive/labels.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import { computeRigging } from './figures.ts';
import { parseRiggingKey, type RiggingQuantity } from './keys.ts';
import { cableUp, counter, hungLoad, standLoad } from './working-loads.ts';
import type { Body, RiggingWorking, Subject } from './working-shared.ts';
import { bare, moments } from './working-tip.ts';
import { guys, wind } from './working-wind.ts';

/**
 * The arithmetic behind one figure of the stands engine, recomputed from the plan; `why` says in words why there is none.
 * Undefined for a key that is not this engine's.
 */
export const explainRigging = (
  plan: Plan,
  key: string,
): RiggingWorking | { readonly why: string } | undefined => {
  const asked = parseRiggingKey(key);
  if (!asked) return undefined;
  const record = plan.records.get(asked.recordId);
  const r = computeRigging(plan);
  if (!record) return { why: `There is nothing ${asked.recordId} in this plan.` };
  const s: Subject = { plan, r, units: planRecord(plan).lengthUnits, label: recordLabel(plan, record) };
  const body = bodyOf(s, asked.quantity, asked.recordId);
  return body ? { key, ...body } : { why: `${s.label} has no figure “${asked.quantity}”.` };
};

const bodyOf = (s: Subject, quantity: RiggingQuantity, id: string): Body | undefined => {
  const { r } = s;
  const use = r.stands.get(id);
  const rigging = r.rigging.get(id);
  const sail = r.sails.get(id);
  const tipping = r.tipping.get(id);
  switch (quantity) {
    case 'loadKg':
    case 'loadPct':
      return use ? standLoad(s, use, quantity) : rigging ? hungLoad(s, rigging, quantity) : undefined;
    case 'tipFactor':
    case 'bags':
      return tipping && moments(s, tipping, quantity);
    case 'tipPushN':
    case 'tipTiltDeg':
    case 'tipWindMps':
      return tipping && bare(s, tipping, quantity);
    case 'windN':
      return sail && wind(s, sail);
    case 'guyN':
      return sail && guys(s, sail);
    case 'counterKg':
      return use && counter(s, use);
    case 'cableUpMm':
      return rigging && cableUp(s, rigging);
  }
};
