import { cutsPhase, isResistive } from '../../derive/dimmers.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';

/** Whether a load's current is cut out of the wave by a dimmer ahead of it. */
export const isPhaseCut = (n: SupplyNode): boolean =>
  n.load !== undefined && cutsPhase(n.dimmedBy) && isResistive(n.load);
