import type { Point } from '../../kernel/geometry.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { feedOf, inletsOf, placeOf, powerInletRecord } from '../../plan/ports.ts';
import type { WhereAsked } from '../../report/where-to-plug.ts';

/** The unit that is chosen on the floor, as a load to plug in. */
export const chosenLoad = (
  plan: Plan,
  ids: ReadonlySet<string>,
):
  | { readonly recordId: string; readonly asked: Omit<WhereAsked, 'book'>; readonly fed: boolean }
  | undefined => {
  const fixture = [...ids].flatMap((id) => recordOf(plan, 'fixture', id) ?? [])[0];
  if (!fixture) return undefined;
  const recordId = powerInletRecord(plan, fixture);
  const inlet = inletsOf(plan, recordId)[0];
  const place = placeOf(plan, recordId);
  const record = plan.records.get(recordId);
  const kind =
    record?.type === 'fixture' || record?.type === 'ballast'
      ? kindOf(plan, record.kindId, 'fixture', 'ballast')
      : undefined;
  if (!inlet || !place || !kind?.load) return undefined;
  return {
    recordId,
    fed: feedOf(plan, { recordId, portId: inlet.id }) !== undefined,
    asked: {
      floorId: place.floorId,
      at: place.at,
      heightMm: place.heightMm,
      loadW: kind.load.wattsW,
      powerFactor: kind.load.powerFactor,
      connector: inlet.connector,
      legs: inlet.legs,
      neutral: inlet.neutral,
    },
  };
};

/** Connectors that units of this plan have, for a load that is typed. */
export const inletConnectors = (plan: Plan): readonly string[] => {
  const found = new Set<string>();
  for (const k of recordsOf(plan, 'kind'))
    if (k.family === 'fixture' || k.family === 'ballast') for (const i of k.inlets) found.add(i.connector);
  return [...found];
};

/** Things of a floor that say where: marks, stands and set pieces that have a name. */
export const spotsOn = (
  plan: Plan,
  floorId: string | undefined,
): readonly { readonly id: string; readonly name: string }[] =>
  [...recordsOf(plan, 'mark'), ...recordsOf(plan, 'setPiece')]
    .filter((r) => r.floorId === floorId && (r.type === 'mark' ? r.name : r.label) !== '')
    .map((r) => ({ id: r.id, name: r.type === 'mark' ? r.name : r.label }));

export const spotOf = (plan: Plan, id: string): Point | undefined => {
  const r = plan.records.get(id);
  return r?.type === 'mark' || r?.type === 'setPiece' ? r.at : undefined;
};
