import { type Plan, planRecord } from '../plan/plan.ts';
import { type Limit, limitOf } from './limits.ts';

/** How near an overhead line anything may come before its owner was asked. */
export interface Overhead {
  readonly limit: Limit;
  readonly needMm: number;
  /** Measured to the side only, whatever the heights; else through space. */
  readonly toTheSide: boolean;
}

const rowOf = (practice: 'north-america' | 'europe', voltsV: number | undefined): string => {
  if (voltsV === undefined) return 'overhead-unknown';
  const kv = voltsV / 1000;
  if (practice === 'europe') return kv <= 33 ? 'overhead-33' : 'overhead-over';
  const step = [50, 200, 350, 500, 750].find((most) => kv <= most) ?? 1000;
  return `overhead-${step}`;
};

/** The distance to keep from an overhead line of these volts (undefined: not known) under the plan's practice. */
export const overheadLimit = (plan: Plan, voltsV: number | undefined): Overhead => {
  const { practice } = planRecord(plan);
  const limit = limitOf(plan, rowOf(practice, voltsV));
  return { limit, needMm: limit.value * 1000, toTheSide: practice === 'europe' };
};
