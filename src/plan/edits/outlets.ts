import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { connector } from '../connectors.ts';
import { type Plan, planRecord, recordOf } from '../plan.ts';
import { waysOf } from '../ports.ts';
import type { RecordOf, Wall } from '../records/index.ts';
import { nextLabel } from './place.ts';
import { tiedTo } from './wall-outlets.ts';
import { changedWay, type WayChange } from './ways.ts';

/** The connector a wall outlet on such a circuit usually has. Common practice, no published source. */
export const usualConnector = (practice: RecordOf<'plan'>['practice'], breakerA: number): string =>
  practice === 'europe' ? 'schuko-16' : breakerA >= 20 ? 'nema-5-20' : 'nema-5-15';

/** Puts a wall outlet of a source's circuit on the floor. */
export const addOutlet = (
  plan: Plan,
  what: {
    readonly sourceId: Id;
    readonly wayId: Id;
    readonly floorId: Id;
    readonly at: Point;
    /** The wall it is on, which it then follows. */
    readonly wall?: Wall | undefined;
  },
  newId: NewId,
): { readonly changes: ChangeSet; readonly outlet: RecordOf<'outlet'> } => {
  const way = waysOf(plan, what.sourceId).find((w) => w.id === what.wayId);
  const id = usualConnector(planRecord(plan).practice, way?.breakerA ?? 0);
  const bare: RecordOf<'outlet'> = {
    id: newId('ol'),
    type: 'outlet',
    floorId: what.floorId,
    at: what.at,
    rotationDeg: 0,
    heightMm: 300,
    sourceId: what.sourceId,
    wayId: what.wayId,
    connector: id,
    legs: connector(id)?.legs ?? 1,
    neutral: connector(id)?.neutral ?? true,
    label: nextLabel(plan, 'W'),
  };
  const outlet = what.wall ? tiedTo(bare, what.wall, what.at) : bare;
  return { changes: new Draft(plan).put(outlet).changes(), outlet };
};

/** Changes one circuit of a source as read off the panel: its name, its breaker or its device. */
export const changeCircuit = (plan: Plan, sourceId: Id, wayId: Id, patch: WayChange): ChangeSet => {
  const source = recordOf(plan, 'source', sourceId);
  if (!source) throw new Error(`no source ${sourceId}`);
  const ways = waysOf(plan, sourceId).map((w) => (w.id === wayId ? changedWay(w, patch) : w));
  return new Draft(plan).put({ ...source, ways }).changes();
};
