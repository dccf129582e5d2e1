import type { NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Plan } from '../plan.ts';
import type { Measurement } from '../records/index.ts';

/** Notes what was measured at a point. */
export const addMeasurement = (
  plan: Plan,
  measured: Omit<Measurement, 'id' | 'type'>,
  newId: NewId,
): ChangeSet =>
  new Draft(plan).put({ ...measured, id: newId('ms'), type: 'measurement' } as Measurement).changes();

/** Takes a measurement out of the log. */
export const removeMeasurement = (plan: Plan, id: string): ChangeSet => new Draft(plan).remove(id).changes();
