import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, Draft } from '../change-set.ts';
import type { SourceKind } from '../kinds/kinds.ts';
import type { Way } from '../kinds/ports.ts';
import { type Plan, planRecord, recordOf } from '../plan.ts';
import { waysOf } from '../ports.ts';
import type { WayDevice } from '../way-device.ts';
import { placeSource } from './place.ts';
import { changedWay } from './ways.ts';

/** A circuit as read off a panel: its name, its breaker and the leg it hangs on, by position. */
export interface NewCircuit {
  readonly label: string;
  readonly breakerA: number;
  readonly leg: number;
  /** Its curve and residual-current device; that of the practice's plain breaker when absent. */
  readonly device?: WayDevice;
}

export interface CircuitAt {
  readonly changes: ChangeSet;
  readonly sourceId: Id;
  readonly wayId: Id;
}

/** Adds a circuit to a source after its others. */
export const addCircuit = (plan: Plan, sourceId: Id, circuit: NewCircuit): CircuitAt => {
  const source = recordOf(plan, 'source', sourceId);
  if (!source) throw new Error(`no source ${sourceId}`);
  const ways = waysOf(plan, sourceId);
  const used = new Set(ways.map((w) => w.id));
  let n = ways.length + 1;
  while (used.has(`w${n}`)) n++;
  const way: Way = {
    id: `w${n}`,
    label: circuit.label,
    breakerA: circuit.breakerA,
    poles: 1,
    ...(circuit.device ?? { curve: planRecord(plan).practice === 'europe' ? 'B' : 'na' }),
    legs: [circuit.leg],
  };
  return {
    changes: new Draft(plan).put({ ...source, ways: [...ways, way] }).changes(),
    sourceId,
    wayId: way.id,
  };
};

/**
 * Adds a source with one circuit: a house panel with that circuit, or a wall circuit of its own. Where it stands is
 * where it is put; its volts stay unknown until someone measures them.
 */
export const addSourceWithCircuit = (
  plan: Plan,
  what: { readonly kind: SourceKind; readonly floorId: Id; readonly at: Point },
  circuit: NewCircuit,
  newId: NewId,
): CircuitAt => {
  const { changes, source } = placeSource(plan, what.kind, what.floorId, what.at, newId);
  const after = applyChanges(plan, changes);
  const [own] = what.kind.ways;
  if (own) {
    const { label, breakerA, device } = circuit;
    const ways = [changedWay(own, { label: label || own.label, breakerA, ...(device ? { device } : {}) })];
    return {
      changes: compose(changes, new Draft(after).put({ ...source, ways }).changes()),
      sourceId: source.id,
      wayId: own.id,
    };
  }
  const added = addCircuit(after, source.id, circuit);
  return { ...added, changes: compose(changes, added.changes) };
};
