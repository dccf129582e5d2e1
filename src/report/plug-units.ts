import { loadSpecOf } from '../derive/loads.ts';
import type { Place } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import type { InletPort, LoadSpec } from '../plan/kinds/ports.ts';
import { kindOf, levelOf, type Plan, recordsOf } from '../plan/plan.ts';
import { deviceFamilies, feedOf, inletsOf } from '../plan/ports.ts';
import type { Ballast, Box, Charger, Device, Fixture } from '../plan/records/index.ts';

/** Something that draws mains and has no feed. */
export interface Unit {
  readonly r: Fixture | Ballast | Charger | Device | Box;
  readonly inlet: InletPort;
  readonly spec: LoadSpec;
  readonly watts: (setupId: Id) => number;
  readonly powerFactor: number;
}

const specOf = (plan: Plan, r: Unit['r']): LoadSpec | undefined =>
  r.type === 'fixture' || r.type === 'ballast'
    ? loadSpecOf(plan, r)
    : kindOf(plan, r.kindId, 'charger', 'converter', ...deviceFamilies)?.load;

/** Units, ballasts, chargers, control gear and mains supplies that draw mains and have no feed, the largest first. Locked ones are left alone. */
export const unpluggedUnits = (plan: Plan): readonly Unit[] => {
  const records = (['fixture', 'ballast', 'charger', 'device', 'box'] as const).flatMap((t) => [
    ...recordsOf(plan, t),
  ]);
  const all = records.flatMap((r): Unit[] => {
    const spec = specOf(plan, r);
    const inlet = inletsOf(plan, r.id)[0];
    if (!spec || !inlet || r.locked || spec.unknown === true) return [];
    if (r.type === 'box' && r.plugsInto) return [];
    if (inletsOf(plan, r.id).some((i) => feedOf(plan, { recordId: r.id, portId: i.id }))) return [];
    const head = r.type === 'ballast' ? r.fixtureId : r.type === 'fixture' ? r.id : undefined;
    const share = (s: Id): number => (head === undefined ? 1 : levelOf(plan, s, head).levelPct / 100);
    return [
      {
        r,
        inlet,
        spec,
        watts: (s) => spec.standbyW + (spec.wattsW - spec.standbyW) * share(s),
        powerFactor: spec.powerFactor,
      },
    ];
  });
  const va = (u: Unit): number => u.spec.wattsW / u.powerFactor;
  return all
    .map((u, i) => ({ u, i }))
    .sort((a, b) => va(b.u) - va(a.u) || a.i - b.i)
    .map((x) => x.u);
};

/** The same units with those of a group one after another, where its largest stands. */
export const inGroups = (units: readonly Unit[]): readonly Unit[] => {
  const done = new Set<Id>();
  return units.flatMap((u) => {
    const { groupId } = u.r;
    if (groupId === undefined) return [u];
    if (done.has(groupId)) return [];
    done.add(groupId);
    return units.filter((x) => x.r.groupId === groupId);
  });
};

/** Which boxes the members of each group are plugged into, so that the others go there as well. */
export class Groups {
  readonly #owners = new Map<Id, Set<Id>>();
  readonly #missing = new Map<Id, number>();

  constructor(plan: Plan) {
    for (const t of ['fixture', 'ballast', 'charger', 'device', 'box'] as const)
      for (const r of recordsOf(plan, t)) {
        if (r.groupId === undefined) continue;
        const [inlet] = inletsOf(plan, r.id);
        if (!inlet) continue;
        const feed = feedOf(plan, { recordId: r.id, portId: inlet.id });
        if (feed) this.#owner(r.groupId).add(feed.from.recordId);
        else this.#missing.set(r.groupId, (this.#missing.get(r.groupId) ?? 0) + 1);
      }
  }

  #owner(groupId: Id): Set<Id> {
    const known = this.#owners.get(groupId);
    if (known) return known;
    const made = new Set<Id>();
    this.#owners.set(groupId, made);
    return made;
  }

  plugged(r: Unit['r'], ownerId: Id): void {
    if (r.groupId !== undefined) this.#owner(r.groupId).add(ownerId);
  }

  /**
   * Of the places that fit a unit, those where its group is; for the first of a group those of boxes with a free outlet for
   * each member. All of them where there are none such.
   */
  narrow<C extends { readonly p: Place }>(
    r: Unit['r'],
    fit: readonly C[],
    open: readonly { readonly p: Place; readonly left: number }[],
  ): readonly C[] {
    if (r.groupId === undefined) return fit;
    const owners = this.#owners.get(r.groupId);
    if (owners && owners.size > 0) {
      const there = fit.filter((c) => owners.has(c.p.ref.recordId));
      return there.length > 0 ? there : fit;
    }
    const wanted = this.#missing.get(r.groupId) ?? 1;
    const free = new Map<Id, number>();
    const connectors = new Set(fit.map((c) => c.p.port.connector));
    for (const o of open)
      if (connectors.has(o.p.port.connector))
        free.set(o.p.ref.recordId, (free.get(o.p.ref.recordId) ?? 0) + o.left);
    const roomy = fit.filter((c) => (free.get(c.p.ref.recordId) ?? 0) >= wanted);
    return roomy.length > 0 ? roomy : fit;
  }
}
