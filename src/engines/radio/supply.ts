import { limitOf } from '../../derive/limits.ts';
import { supplyTree } from '../../derive/supply.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';
import type { Id } from '../../kernel/ids.ts';
import { wholePlan } from '../../plan/moves.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';
import { deviceFamilies, feedOf, inletsOf, powerInletRecord } from '../../plan/ports.ts';
import type { Device } from '../../plan/records/index.ts';

/** How long a piece of control gear goes on when its plug is pulled. */
export interface Backup {
  readonly minutes: number;
  /** What its cell holds and what it draws; absent where the plan gives the minutes. */
  readonly cellWh: number | undefined;
  readonly drawsW: number;
  readonly usable: number;
  readonly measured: boolean;
}

/** Minutes on its own cell: as measured, else cell × usable share ÷ what it draws; undefined where it has no cell. */
export const backupOf = (plan: Plan, d: Device): Backup | undefined => {
  const kind = kindOf(plan, d.kindId, ...deviceFamilies);
  const drawsW = kind?.supplyW ?? Number.NaN;
  const usable = limitOf(plan, 'radio-backup-usable').value;
  if (d.backupMin !== undefined)
    return d.backupMin > 0
      ? { minutes: d.backupMin, cellWh: undefined, drawsW, usable, measured: true }
      : undefined;
  const cellWh = kind?.backupWh;
  if (cellWh === undefined || !(drawsW > 0)) return undefined;
  return { minutes: (cellWh * usable * 60) / drawsW, cellWh, drawsW, usable, measured: false };
};

/** The breaker a record hangs on, with its words; undefined where it is not plugged in. */
const wayOf = (plan: Plan, recordId: Id): SupplyNode | undefined => {
  // What is plugged in where does not depend on where things stand in a setup.
  const tree = supplyTree(wholePlan(plan));
  let n = tree.byKey.get(recordId);
  while (n && n.what !== 'way') n = n.parent < 0 ? undefined : tree.nodes[n.parent];
  return n;
};

/** Power of a device: whether it has an inlet, a feed, and the breaker it hangs on. */
export const devicePower = (plan: Plan, d: Device) => {
  const inlet = inletsOf(plan, d.id)[0];
  return {
    takesMains: inlet !== undefined,
    fed: inlet !== undefined && feedOf(plan, { recordId: d.id, portId: inlet.id }) !== undefined,
    way: inlet === undefined ? undefined : wayOf(plan, d.id),
  };
};

/** The breaker a unit hangs on. */
export const fixtureWay = (plan: Plan, fixtureId: Id): SupplyNode | undefined => {
  const f = recordOf(plan, 'fixture', fixtureId);
  return f && !f.onPacks ? wayOf(plan, powerInletRecord(plan, f)) : undefined;
};
