import { recordLabel } from '../../derive/labels.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import type { PlanRecord } from '../../plan/records/index.ts';
import { type Ground, groundOf, hopsTo, verdictOf } from './budget.ts';
import { binOf, byDirection } from './directions.ts';
import { type RadioModel, radioModel } from './model.ts';
import type { Band, Link, Listener, Sender } from './types.ts';

/** All links of a plan: each listener with the sender it has or would take, and every other way it could have. */
export interface RadioResult {
  readonly model: RadioModel;
  /** The link of each listener; none where no sender could serve it. */
  readonly links: ReadonlyMap<Id, Link>;
  /** Every sender a listener can hear on its band, the best first, whatever its universe. */
  readonly choices: ReadonlyMap<Id, readonly Link[]>;
  /** Repeaters that wait for one another in a ring. */
  readonly rings: readonly (readonly Id[])[];
  /** Universes each sender has on the air, a repeater those of what it listens to. */
  readonly carried: ReadonlyMap<Id, readonly Id[]>;
  readonly grounds: (fMhz: number) => Ground;
}

const NOWHERE = 'they are on two floors at one level';

/** Whether a listener takes a band; one of which nothing is known takes any. */
export const takes = (l: Pick<Listener, 'bands'>, band: Band): boolean =>
  l.bands === undefined || l.bands.some((b) => b.fromMhz < band.toMhz && b.toMhz > band.fromMhz);

/** The chain from a transmitter to this sender, or the ring it is caught in; short of a transmitter where one is missing. */
const chainOf = (
  model: RadioModel,
  sender: Sender,
): { readonly ids: readonly Id[]; readonly ring: boolean; readonly whole: boolean } => {
  const ids: Id[] = [sender.id];
  let at: Sender = sender;
  while (at.role === 'repeater') {
    const next = at.listensToId === undefined ? undefined : model.senders.get(at.listensToId);
    if (!next) return { ids, ring: false, whole: false };
    if (ids.includes(next.id)) return { ids, ring: true, whole: false };
    ids.unshift(next.id);
    at = next;
  }
  return { ids, ring: false, whole: true };
};

/** A unit of a mesh as a sender, passing on what it hears. */
export const relayOf = (head: Sender, l: Listener): Sender => ({
  ...head,
  id: l.id,
  role: 'relay',
  label: l.label,
  floorId: l.floorId,
  spot: l.spot,
  heightM: l.heightM,
  eirpDbm: head.mesh?.relayEirpDbm ?? head.eirpDbm,
  eirpFrom: 'gear book: power of one unit of the mesh',
  eirpAssumed: true,
  antenna: 'inside',
});

/**
 * The ways of the units of a mesh: from its head over at most so many hops, each taking the way whose worst hop is best
 * (the widest path, by hops: Bellman–Ford). Gives the way and its margin by unit.
 */
export const meshWays = (
  head: Sender,
  units: readonly Listener[],
  marginDb: (s: Sender, l: Listener) => number,
): ReadonlyMap<Id, { readonly viaIds: readonly Id[]; readonly marginDb: number }> => {
  const best = new Map<Id, { viaIds: readonly Id[]; marginDb: number }>();
  for (const u of units) best.set(u.id, { viaIds: [head.id], marginDb: marginDb(head, u) });
  const hop = new Map<string, number>();
  for (let n = 1; n < (head.mesh?.hopsMax ?? 1); n++) {
    const before = new Map(best);
    let better = false;
    for (const via of units) {
      const up = before.get(via.id);
      if (!up || !(up.marginDb >= 0)) continue;
      for (const u of units) {
        const now = best.get(u.id);
        if (u.id === via.id || !now || up.viaIds.includes(u.id) || now.marginDb >= up.marginDb) continue;
        const key = `${via.id} ${u.id}`;
        let m = hop.get(key);
        if (m === undefined) {
          m = marginDb(relayOf(head, via), u);
          hop.set(key, m);
        }
        const worst = Math.min(up.marginDb, m);
        if (worst > now.marginDb) {
          best.set(u.id, { viaIds: [...up.viaIds, via.id], marginDb: worst });
          better = true;
        }
      }
    }
    if (!better) break;
  }
  return best;
};

/** From so many listeners on it pays to sort the barriers by direction. */
const MANY = 24;

/** What is known of one sender's hops among these barriers and in this air. */
interface Hops {
  readonly scene: Ground['scene'];
  readonly record: PlanRecord;
  readonly bins: ReturnType<typeof byDirection> | undefined;
  readonly db: WeakMap<Listener, number>;
}

const hopsOfSenders = new WeakMap<Sender, Hops>();

const hopsOf = (g: Ground, s: Sender, many: boolean): Hops => {
  const record = planRecord(g.plan);
  const known = hopsOfSenders.get(s);
  if (known?.scene === g.scene && known.record === record && (known.bins || !many)) return known;
  const bins = many ? byDirection(g.scene, s.spot.x, s.spot.y) : undefined;
  const made = { scene: g.scene, record, bins, db: new WeakMap<Listener, number>() };
  hopsOfSenders.set(s, made);
  return made;
};

/**
 * Margins of single hops; what is the same for all hops of a sender to a floor is reckoned once, and a hop stands from edit to
 * edit while its two ends, the barriers and the plan's own record are the same.
 */
const marginsOf = (
  grounds: (fMhz: number) => Ground,
  count: number,
): ((s: Sender, l: Listener) => number) => {
  const known = new Map<Sender, { readonly hops: Hops; readonly to: Map<Id, ReturnType<typeof hopsTo>> }>();
  return (s, l) => {
    const g = grounds(s.fMhz);
    let own = known.get(s);
    if (!own) {
      own = { hops: hopsOf(g, s, s.role !== 'relay' && count >= MANY), to: new Map() };
      known.set(s, own);
    }
    const { bins, db } = own.hops;
    const last = db.get(l);
    if (last !== undefined) return last;
    let hop = own.to.get(l.floorId);
    if (!hop) {
      hop = hopsTo(g, s, l.floorId);
      own.to.set(l.floorId, hop);
    }
    const made = hop(l, bins?.[binOf(l.spot.x - s.spot.x, l.spot.y - s.spot.y)]);
    db.set(l, made);
    return made;
  };
};

const compute = (plan: Plan): RadioResult => {
  const model = radioModel(plan);
  const known = new Map<number, Ground>();
  const grounds = (fMhz: number): Ground => {
    let g = known.get(fMhz);
    if (!g) {
      g = groundOf(plan, model.air, fMhz);
      known.set(fMhz, g);
    }
    return g;
  };
  const margin = marginsOf(grounds, model.listeners.size);

  const chains = new Map([...model.senders.values()].map((s) => [s.id, chainOf(model, s)]));
  const rings = new Map<string, readonly Id[]>();
  for (const c of chains.values()) if (c.ring) rings.set([...c.ids].sort().join(' '), c.ids);
  const carried = new Map<Id, readonly Id[]>();
  for (const s of model.senders.values()) {
    const head = chains.get(s.id)?.ids[0];
    const own = s.universeIds.length > 0 || s.role === 'transmitter' ? s : model.senders.get(head ?? s.id);
    carried.set(s.id, own?.universeIds ?? []);
  }

  /** The margin from the transmitter to this sender over the repeaters between. */
  const upstream = new Map<Id, number>();
  for (const s of model.senders.values()) {
    const c = chains.get(s.id);
    let least = c?.whole ? Number.POSITIVE_INFINITY : Number.NaN;
    for (let i = 1; c && i < c.ids.length; i++) {
      const from = model.senders.get(c.ids[i - 1] ?? '');
      const to = model.listeners.get(c.ids[i] ?? '');
      if (from && to) least = Math.min(least, margin(from, to));
    }
    upstream.set(s.id, least);
  }

  const linkOver = (s: Sender, l: Listener, viaIds: readonly Id[], marginDb: number): Link => ({
    listenerId: l.id,
    senderId: s.id,
    viaIds,
    marginDb,
    verdict: verdictOf(plan, marginDb),
    notComputed: Number.isFinite(marginDb)
      ? undefined
      : chains.get(s.id)?.whole
        ? NOWHERE
        : `${recordLabel(plan, plan.records.get(s.id))} does not hear a transmitter`,
  });

  const listeners = [...model.listeners.values()];
  const meshes = new Map<Id, ReturnType<typeof meshWays>>();
  const units = listeners.filter((l) => l.what === 'fixture');
  for (const s of model.senders.values()) {
    if (!s.mesh || s.role !== 'transmitter') continue;
    const mine = units.filter((l) => (l.linkId === undefined || l.linkId === s.id) && takes(l, s.band));
    meshes.set(s.id, meshWays(s, mine, margin));
  }

  const links = new Map<Id, Link>();
  const choices = new Map<Id, readonly Link[]>();
  for (const l of listeners) {
    const list: Link[] = [];
    for (const s of model.senders.values()) {
      if (s.id === l.id || !takes(l, s.band)) continue;
      // A repeater never listens to itself by way of others.
      if (l.what === 'repeater' && chains.get(s.id)?.ids.includes(l.id)) continue;
      const mesh = meshes.get(s.id)?.get(l.id);
      if (mesh) list.push(linkOver(s, l, mesh.viaIds, mesh.marginDb));
      else {
        const own = margin(s, l);
        list.push(linkOver(s, l, chains.get(s.id)?.ids ?? [s.id], Math.min(own, upstream.get(s.id) ?? own)));
      }
    }
    const worth = (k: Link): number => (Number.isFinite(k.marginDb) ? k.marginDb : Number.NEGATIVE_INFINITY);
    list.sort((a, b) => worth(b) - worth(a));
    choices.set(l.id, list);
    const wanted = l.universeIds;
    const link =
      l.linkId !== undefined
        ? list.find((k) => k.senderId === l.linkId)
        : l.what === 'repeater'
          ? undefined
          : list.find((k) => wanted.length > 0 && wanted.every((u) => carried.get(k.senderId)?.includes(u)));
    if (link) links.set(l.id, link);
  }
  return { model, links, choices, rings: [...rings.values()], carried, grounds };
};

const results = new WeakMap<Plan, RadioResult>();

/** All radio links of a plan with their margins. Remembered for the plan. */
export const computeRadio = (plan: Plan): RadioResult => {
  let r = results.get(plan);
  if (!r) {
    r = compute(plan);
    results.set(plan, r);
  }
  return r;
};
