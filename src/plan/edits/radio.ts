import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft, peekChanges } from '../change-set.ts';
import type { TransmitterKind } from '../kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import type { Device, Fixture } from '../records/index.ts';
import { nextLabel } from './place.ts';
import { ensureKind, rerouteCables } from './shared.ts';

/** A place for a transmitter: on the floor at a height, or up on a stand that is there. */
export interface TransmitterPlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  readonly standId: Id | undefined;
  /** Where its aerial points, degrees clockwise from +x; absent: as it is. */
  readonly facingDeg?: number | undefined;
}

/** Moves a transmitter or repeater to a place. The stand it is on goes with it, unless it goes up on another one. */
export const moveTransmitter = (plan: Plan, deviceId: Id, to: TransmitterPlace): ChangeSet => {
  const draft = new Draft(plan);
  const d = recordOf(plan, 'device', deviceId);
  if (!d) return draft.changes();
  const at = { xMm: to.xMm, yMm: to.yMm };
  const turned = to.facingDeg === undefined ? {} : { rotationDeg: to.facingDeg };
  if (to.standId !== undefined)
    draft.put({ ...d, ...turned, at, heightMm: to.heightMm, standId: to.standId });
  else {
    const stand = d.standId === undefined ? undefined : recordOf(plan, 'stand', d.standId);
    if (stand) draft.put({ ...stand, at });
    draft.put({ ...d, ...turned, at });
  }
  rerouteCables(draft, peekChanges(plan, draft.changes()), new Set([d.id]));
  return draft.changes();
};

/** Universes on the wired ports of a transmitter, in order, as far as they go. */
const portsFor = (kind: TransmitterKind, universeIds: readonly Id[]): Device['ports'] => {
  const places = kind.dataIn.flatMap((p) => Array.from({ length: p.universes }, () => p.id));
  return universeIds
    .slice(0, places.length)
    .map((universeId, i) => ({ portId: places[i] ?? '', universeId }));
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
    /** What new ones carry, as far as their ports go, where none is moved. */
    readonly universeIds?: readonly Id[];
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
      rotationDeg: p.facingDeg ?? 0,
      heightMm: p.heightMm,
      ...(p.standId === undefined ? {} : { standId: p.standId }),
      label: nextLabel(peekChanges(plan, draft.changes()), 'TX'),
      ports: like?.ports ?? portsFor(kind, what.universeIds ?? []),
      band: like?.band ?? 0,
    });
  });
  return draft.changes();
};

/** How units get their data: by line, by radio, or neither. A unit that leaves the radio keeps no transmitter. */
export const setLinks = (plan: Plan, fixtureIds: Iterable<Id>, link: Fixture['link']): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked || f.link === link) continue;
    const { linkId, ...rest } = f;
    draft.put(link === 'radio' && linkId !== undefined ? { ...rest, linkId, link } : { ...rest, link });
  }
  return draft.changes();
};
