import type { Id } from '../kernel/ids.ts';
import type { OutletPort, Way } from '../plan/kinds/ports.ts';
import { outletSockets } from '../plan/outlet-sockets.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { outletsOf, waysOf } from '../plan/ports.ts';
import type {
  AnyRecord,
  Ballast,
  Box,
  Cable,
  Fixture,
  OtherLoad,
  Outlet,
  Source,
} from '../plan/records/index.ts';
import { always, type EngineFinding } from './findings.ts';
import { recordLabel } from './labels.ts';
import { loadSpecOf } from './loads.ts';
import type { RootKind } from './supply-roots.ts';
import type { SystemShape } from './systems.ts';

/** Cables by their ends, and the defects found so far. Each check gives words where the thing cannot be computed. */
export class SupplyIndex {
  readonly defects: EngineFinding[] = [];
  readonly #plan: Plan;
  readonly #from = new Map<string, Cable[]>();
  readonly #into = new Map<Id, Cable[]>();
  readonly #walls = new Map<Id, Outlet[]>();
  readonly #straight = new Map<string, Box[]>();
  readonly #others = new Map<string, OtherLoad[]>();
  readonly #told = new Set<string>();

  constructor(plan: Plan) {
    this.#plan = plan;
    for (const c of recordsOf(plan, 'cable')) {
      put(this.#from, `${c.from.recordId}/${c.from.portId}`, c);
      put(this.#into, c.to.recordId, c);
    }
    for (const b of recordsOf(plan, 'box'))
      if (b.plugsInto) put(this.#straight, `${b.plugsInto.recordId}/${b.plugsInto.portId}`, b);
    for (const w of recordsOf(plan, 'outlet')) put(this.#walls, w.sourceId, w);
    for (const o of recordsOf(plan, 'otherLoad')) put(this.#others, placeOfOther(o), o);
  }

  cablesAt = (recordId: Id, portId: string): readonly Cable[] =>
    this.#from.get(`${recordId}/${portId}`) ?? [];
  /** Boxes plugged straight into an outlet, without a cable. */
  pluggedInto = (recordId: Id, portId: string): readonly Box[] =>
    this.#straight.get(`${recordId}/${portId}`) ?? [];
  feeds = (recordId: Id): readonly Cable[] => this.#into.get(recordId) ?? [];
  wallOutlets = (sourceId: Id): readonly Outlet[] => this.#walls.get(sourceId) ?? [];

  /** Other people's loads at a place: a record, `record/way` or `record:port`. */
  othersAt = (place: string): readonly OtherLoad[] => this.#others.get(place) ?? [];

  stop(rule: string, about: string, ids: readonly Id[], params: EngineFinding['params']): void {
    // A thing met once for each of its circuits is told of once.
    if (this.#told.has(`${rule}:${about}`)) return;
    this.#told.add(`${rule}:${about}`);
    this.defects.push(always(rule, 'stop', about, ids, params));
  }

  otherFault(o: AnyRecord, problem: string): string {
    this.stop('power-value', o.id, [o.id], { label: recordLabel(this.#plan, o), problem });
    return problem;
  }

  /** A load that the legs at its inlet cannot be connected to. */
  legsFault(r: AnyRecord, problem: string): string {
    this.stop('power-load-legs', r.id, [r.id], { label: recordLabel(this.#plan, r), problem });
    return problem;
  }

  /** What hangs at the end of a chain too long to be walked. */
  tooDeep(r: AnyRecord | undefined): void {
    if (!r) return;
    const problem = 'hundreds of things ahead of it hang one on another';
    this.stop('power-value', r.id, [r.id], { label: recordLabel(this.#plan, r), problem });
  }

  kindFault(r: AnyRecord, kindId: Id): string {
    this.stop('power-kind', r.id, [r.id], { label: recordLabel(this.#plan, r), kindId });
    return 'its kind is not in the plan';
  }

  sourceFault(
    s: Source | Box,
    kind: RootKind | undefined,
    shape: SystemShape | undefined,
  ): string | undefined {
    if (!kind) return this.kindFault(s, s.kindId);
    const label = recordLabel(this.#plan, s);
    if (!shape) {
      this.stop('power-value', s.id, [s.id], { label, problem: `its system is ${kind.system}` });
      return `its system ${kind.system} is not known`;
    }
    if (s.type === 'source' && s.loopOhm !== undefined && !(s.loopOhm >= 0 && Number.isFinite(s.loopOhm))) {
      this.stop('power-value', s.id, [s.id], { label, problem: `its loop impedance is ${s.loopOhm} Ω` });
      return `its loop impedance is ${s.loopOhm} Ω`;
    }
    if (s.type === 'source' && s.voltsV !== undefined && !(s.voltsV > 0 && Number.isFinite(s.voltsV))) {
      this.stop('power-value', s.id, [s.id], { label, problem: `its volts are ${s.voltsV}` });
      return `its volts are ${s.voltsV}`;
    }
    return undefined;
  }

  wayFault(
    owner: Source | Box,
    way: Way,
    label: string,
    reach: { readonly legs: readonly number[]; readonly notComputed: string | undefined },
    there: boolean,
  ): string | undefined {
    if (reach.notComputed !== undefined) return undefined;
    if (!(way.breakerA > 0) || !Number.isFinite(way.breakerA)) {
      this.stop('power-value', `${owner.id}/${way.id}`, [owner.id], {
        label,
        problem: `its breaker is ${way.breakerA} A`,
      });
      return `its breaker is ${way.breakerA} A`;
    }
    if (there) return undefined;
    this.stop('power-way-legs', `${owner.id}/${way.id}`, [owner.id], {
      label,
      wants: Math.max(...way.legs) + 1,
      has: reach.legs.length,
    });
    return `it sits on leg ${Math.max(...way.legs) + 1} and ${reach.legs.length} reach its box`;
  }

  portFault(owner: AnyRecord, port: OutletPort, legs: number, already: boolean): string | undefined {
    if (already) return undefined;
    const label = recordLabel(this.#plan, owner);
    if (port.legs > legs) {
      this.stop('power-outlet-legs', `${owner.id}/${port.id}`, [owner.id], {
        label,
        port: port.label ?? port.id,
        wants: port.legs,
        has: legs,
      });
      return `the outlet has ${port.legs} legs and ${legs} reach it`;
    }
    return undefined;
  }

  /** A wall outlet takes as many plugs as it has sockets, what others have plugged in counted; any other outlet takes one. */
  checkShared(recordId: Id, port: OutletPort, cables: readonly Cable[], straight: readonly Box[]): void {
    const r = this.#plan.records.get(recordId);
    if (!r) return;
    const others = this.othersAt(`${recordId}:${port.id}`).length;
    const own = r.type === 'outlet' ? others + this.othersAt(recordId).length : others;
    const plugs = cables.length + straight.length + own;
    const sockets = r.type === 'outlet' ? outletSockets(r) : { count: 1, assumed: false };
    if (plugs <= sockets.count || cables.length + straight.length === 0) return;
    this.defects.push(
      always(
        'power-outlet-shared',
        'warn',
        `${recordId}/${port.id}`,
        [recordId, ...[...cables, ...straight].map((c) => c.id)],
        {
          label: recordLabel(this.#plan, r),
          port: port.label ?? port.id,
          plugs,
          sockets: sockets.count,
          assumed: sockets.assumed ? 1 : 0,
        },
      ),
    );
  }

  outletFault(w: Outlet): string {
    const label = recordLabel(this.#plan, w);
    const source = recordOf(this.#plan, 'source', w.sourceId);
    this.stop('power-outlet-way', w.id, [w.id], {
      label,
      source: source ? recordLabel(this.#plan, source) : 'a source that is not in the plan',
      wayId: w.wayId,
    });
    return 'the circuit it belongs to is not there';
  }

  unfedFault(b: Box): string {
    const ports = outletsOf(this.#plan, b.id);
    const used = ports.some((p) => this.cablesAt(b.id, p.id).length > 0);
    this.defects.push(
      always('power-box-unfed', used ? 'warn' : 'note', b.id, [b.id], { label: recordLabel(this.#plan, b) }),
    );
    return 'nothing feeds it';
  }

  /** Words where a load should be plugged in and is not; undefined where it takes no mains. */
  unpluggedFault(r: Fixture | Ballast): string | undefined {
    const label = recordLabel(this.#plan, r);
    if (r.type === 'fixture' && !r.onPacks) {
      const kind = kindOf(this.#plan, r.kindId, 'fixture');
      if (!kind) return this.kindFault(r, r.kindId);
      if (kind.needsBallast && !recordsOf(this.#plan, 'ballast').some((b) => b.fixtureId === r.id))
        this.defects.push(always('power-no-ballast', 'warn', r.id, [r.id], { label }));
    }
    const powered = r.type === 'ballast' || loadSpecOf(this.#plan, r) !== undefined;
    const feeding = outletsOf(this.#plan, r.id).some((p) => this.cablesAt(r.id, p.id).length > 0);
    if (!powered && !feeding) return undefined;
    this.defects.push(always('power-unplugged', 'warn', r.id, [r.id], { label }));
    return 'it is not plugged in';
  }

  /** Words where the outlet a cable comes from is not there; undefined where it is, and only no source reaches it. */
  fromFault(c: Cable): string | undefined {
    const from = this.#plan.records.get(c.from.recordId);
    const port = outletsOf(this.#plan, c.from.recordId).find((o) => o.id === c.from.portId);
    if (from && port) return port.wayId === undefined ? undefined : this.#wayGone(c, from, port.wayId);
    this.stop('power-cable-end', `${c.id}/from`, [c.id], {
      label: recordLabel(this.#plan, c),
      end: from
        ? `an outlet ${c.from.portId} that ${recordLabel(this.#plan, from)} does not have`
        : 'something that is not in the plan',
      which: 'comes from',
    });
    return 'it comes from an outlet that is not there';
  }

  #wayGone(c: Cable, from: AnyRecord, wayId: string): string | undefined {
    const ways = from.type === 'source' || from.type === 'box' ? waysOf(this.#plan, from.id) : undefined;
    if (!ways || ways.some((w) => w.id === wayId)) return undefined;
    this.stop('power-cable-end', `${c.id}/from`, [c.id, from.id], {
      label: recordLabel(this.#plan, c),
      end: `way ${wayId} that ${recordLabel(this.#plan, from)} does not have`,
      which: 'comes from',
    });
    return 'it comes from a way that is not there';
  }

  /** A cable out of something that is walked through and passes nothing on there. */
  deadEndFault(c: Cable): string {
    const from = this.#plan.records.get(c.from.recordId);
    this.stop('power-cable-end', `${c.id}/from`, [c.id, c.from.recordId], {
      label: recordLabel(this.#plan, c),
      end: `an outlet of ${recordLabel(this.#plan, from)} that gives no mains`,
      which: 'comes from',
    });
    return 'it comes from an outlet that gives no mains';
  }

  /** A box that no source reaches though it is plugged straight into an outlet: a circle of such boxes. */
  straightLoopFault(b: Box): string {
    const ids: Id[] = [];
    let at: Box | undefined = b;
    while (at && !ids.includes(at.id)) {
      ids.push(at.id);
      at = recordOf(this.#plan, 'box', at.plugsInto?.recordId ?? '');
    }
    const loop = [...ids].sort();
    this.stop('power-loop', loop.join('+'), loop, {
      label: loop.map((id) => recordLabel(this.#plan, this.#plan.records.get(id))).join(', '),
    });
    return 'it is fed in a circle';
  }

  /** Names the loop a cable is in or hangs on. Reported once per loop. */
  loopFault(c: Cable): string {
    const path: Id[] = [];
    let at: Cable | undefined = c;
    while (at && !path.includes(at.to.recordId)) {
      path.push(at.to.recordId);
      at = this.feeds(at.from.recordId)[0];
    }
    const start = at ? path.indexOf(at.to.recordId) : -1;
    if (start < 0) return 'no source reaches it';
    const loop = path.slice(start).sort();
    const about = loop.join('+');
    if (!this.defects.some((d) => d.rule === 'power-loop' && d.about === about))
      this.stop('power-loop', about, loop, {
        label: loop.map((id) => recordLabel(this.#plan, this.#plan.records.get(id))).join(', '),
      });
    return 'it is fed in a circle';
  }
}

const placeOfOther = (o: OtherLoad): string => {
  const { recordId, wayId, portId } = o.on;
  return wayId !== undefined
    ? `${recordId}/${wayId}`
    : portId !== undefined
      ? `${recordId}:${portId}`
      : recordId;
};

const put = <K, V>(map: Map<K, V[]>, key: K, value: V): void => {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
};
