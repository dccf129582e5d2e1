import { portName } from '../../plan/names.ts';
import type { Plan } from '../../plan/plan.ts';
import { feedOf, inletsOf, powerInletRecord } from '../../plan/ports.ts';
import type { Cable, Fixture, PortRef } from '../../plan/records/index.ts';

/** The inlet that takes the mains for a fixture: its own or its ballast's. */
export const powerInlet = (plan: Plan, fixture: Fixture): PortRef | undefined => {
  const recordId = powerInletRecord(plan, fixture);
  const inlet = inletsOf(plan, recordId)[0];
  return inlet ? { recordId, portId: inlet.id } : undefined;
};

export const feedCable = (plan: Plan, fixture: Fixture): Cable | undefined => {
  const inlet = powerInlet(plan, fixture);
  return inlet ? feedOf(plan, inlet) : undefined;
};

/** Where a fixture is plugged, in two or three words. */
export const feedLabel = (plan: Plan, fixture: Fixture): string => {
  if (fixture.onPacks) return 'cells';
  const cable = feedCable(plan, fixture);
  return cable ? portName(plan, cable.from) : 'not plugged';
};
