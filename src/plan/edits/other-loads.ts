import type { NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Plan } from '../plan.ts';
import type { OtherLoad } from '../records/index.ts';

/** Notes someone else's load on a way, port or outlet. Amps or watts must be given. */
export const addOtherLoad = (
  plan: Plan,
  load: Pick<OtherLoad, 'owner' | 'on'> &
    Partial<Pick<OtherLoad, 'what' | 'amps' | 'wattsW' | 'powerFactor'>>,
  newId: NewId,
): ChangeSet =>
  new Draft(plan).put({ id: newId('ot'), type: 'otherLoad', what: '', powerFactor: 1, ...load }).changes();
