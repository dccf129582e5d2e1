import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft, peekChanges } from '../change-set.ts';
import type { TransmitterKind } from '../kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import { nextLabel } from './place.ts';
import { ensureKind, rerouteCables } from './shared.ts';

/** A place for a transmitter: on the floor at a height, or up on a stand that is there. */
export interface TransmitterPlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  readonly standId: Id | undefined;
}

/** Moves a transmitter or repeater to a place. The stand it is on goes with it, unless it goes up on another one. */
export const moveTransmitter = (plan: Plan, deviceId: Id, to: TransmitterPlace): ChangeSet => {
  const draft = new Draft(plan);
  const d = recordOf(plan, 'device', deviceId);
  if (!d) return draft.changes();
  const at = { xMm: to.xMm, yMm: to.yMm };
  if (to.standId !== undefined) draft.put({ ...d, at, heightMm: to.heightMm, standId: to.standId });
  else {
    const stand = d.standId === undefined ? undefined : recordOf(plan, 'stand', d.standId);
    if (stand) draft.put({ ...stand, at });
    draft.put({ ...d, at });
  }
  rerouteCables(draft, peekChanges(plan, draft.changes()), new Set([d.id]));
  return draft.changes();
};

/**
 * Puts transmitters up at places found: the first is `deviceId` where there is one, which is moved; the others are new ones
 * of the same kind (else of `kind`) that carry the same universes.
 */
export const putTransmitters = (
  plan: Plan,
  what: {
    readonly floorId: Id;
    readonly places: readonly TransmitterPlace[];
    readonly deviceId: Id | undefined;
    readonly kind: TransmitterKind | undefined;
  },
  newId: NewId,
): ChangeSet => {
  const draft = new Draft(plan);
  const like = what.deviceId === undefined ? undefined : recordOf(plan, 'device', what.deviceId);
  const kind = (like && kindOf(plan, like.kindId, 'transmitter')) ?? what.kind;
  what.places.forEach((p, i) => {
    if (like && i === 0) {
      for (const { to } of moveTransmitter(plan, like.id, p).updated) draft.put(to);
      return;
    }
    if (!kind) return;
    if (!like) ensureKind(draft, kind);
    draft.put({
      id: newId('dv'),
      type: 'device',
      floorId: what.floorId,
      kindId: like?.kindId ?? kind.id,
      at: { xMm: p.xMm, yMm: p.yMm },
      rotationDeg: 0,
      heightMm: p.heightMm,
      ...(p.standId === undefined ? {} : { standId: p.standId }),
      label: nextLabel(peekChanges(plan, draft.changes()), 'TX'),
      ports: like?.ports ?? [],
      band: like?.band ?? 0,
    });
  });
  return draft.changes();
};

/** The universe of one port of a device; undefined takes it away. Other lines of the port go with it. */
export const setPortUniverse = (
  plan: Plan,
  deviceId: Id,
  portId: string,
  universeId: Id | undefined,
): ChangeSet => {
  const draft = new Draft(plan);
  const d = recordOf(plan, 'device', deviceId);
  if (!d) return draft.changes();
  const others = d.ports.filter((p) => p.portId !== portId);
  return draft
    .put({ ...d, ports: universeId === undefined ? others : [...others, { portId, universeId }] })
    .changes();
};

/** Universes of a port that carries several, such as a network: all of them at once. */
export const setPortUniverses = (
  plan: Plan,
  deviceId: Id,
  portId: string,
  universeIds: readonly Id[],
): ChangeSet => {
  const draft = new Draft(plan);
  const d = recordOf(plan, 'device', deviceId);
  if (!d) return draft.changes();
  const others = d.ports.filter((p) => p.portId !== portId);
  return draft
    .put({ ...d, ports: [...others, ...universeIds.map((universeId) => ({ portId, universeId }))] })
    .changes();
};
