import { findKind, gearBook, needKind } from '../../src/gear/index.ts';
import { type Point, point } from '../../src/kernel/geometry.ts';
import { readColorNote } from '../../src/plan/color-note.ts';
import { type Bridge, besideOutlet, bridges } from '../../src/plan/edits/adapters.ts';
import { moveOnlyHere } from '../../src/plan/edits/moves.ts';
import { gradientParts, type PartLook } from '../../src/plan/edits/parts.ts';
import type { AdapterKind } from '../../src/plan/kinds/adapter.ts';
import type { CableKind, FixtureKind, Kind } from '../../src/plan/kinds/kinds.ts';
import type { InletPort, OutletPort, Way } from '../../src/plan/kinds/ports.ts';
import { levelId, type Plan } from '../../src/plan/plan.ts';
import { inletsOf, outletsOf, placeOf } from '../../src/plan/ports.ts';
import {
  type AnyRecord,
  type Fixture,
  type PlanRecord,
  type Practice,
  recordSchemas,
  type WallMaterial,
} from '../../src/plan/records/index.ts';
import { readUnits } from './units.ts';

type XY = readonly [x: number, y: number];

/** A way between the two ends: by hand, or bent once or twice at a given line. */
export type Route =
  | readonly XY[]
  | 'straight'
  | 'across-first'
  | 'down-first'
  | { readonly along: number }
  | { readonly down: number };

export interface FixtureSpec {
  readonly unit: string;
  readonly kind: string;
  readonly at: XY;
  readonly h: number;
  /** A mark's id, a facing in degrees clockwise from +x, or a facing with a tilt. */
  readonly aim: string | number | readonly [facingDeg: number, tiltDeg: number];
  readonly stand?: string;
  /** How it is held up without a stand; rigged when nothing is said. */
  readonly on?: 'floor' | 'rigged' | 'held';
  readonly use: string;
  readonly gel?: string;
  readonly ch?: string;
  /** `K1:3a` is outlet 3a of K1; `12:through` the outlet of unit 12; a wall outlet goes by its label alone. */
  readonly feed?: string;
  readonly cable?: string;
  /** Stock lengths chosen by hand, in feet or metres. */
  readonly pieces?: readonly number[];
  readonly route?: Route;
  readonly ballast?: XY;
  readonly ballastKind?: string;
  /** Universe and mode; without an address it follows the last one in its universe. */
  readonly patch?: readonly [universe: number, modeId: string, address?: number];
  readonly radio?: boolean;
  /** Label of the transmitter or receiver its radio link is with. */
  readonly linkTo?: string;
  /** On its own cells, or on so many packs of a kind. */
  readonly packs?: boolean | readonly [slug: string, count: number];
  readonly ownCells?: 'recharge' | 'exchange';
  /** Label of a pack on the floor it is fed from, by a lead. */
  readonly from?: string;
}

/** Writes a demo plan in feet or metres, record by record, and gives it as a plan. */
export class Builder {
  readonly #records = new Map<string, AnyRecord>();
  readonly #labels = new Map<string, string>();
  readonly #practice: Practice;
  readonly #unitMm: number;
  readonly #floorId = 'floor-1';
  readonly #nextAddress = new Map<number, number>();
  #count = 0;
  #adapters = 0;

  constructor(
    plan: Pick<PlanRecord, 'practice' | 'lengthUnits'> & Record<string, unknown>,
    floor: Record<string, unknown>,
  ) {
    this.#practice = plan.practice;
    this.#unitMm = plan.lengthUnits === 'imperial' ? 304.8 : 1000;
    this.#put({ id: 'plan', type: 'plan', ...plan });
    this.#put({ id: this.#floorId, type: 'floor', ...floor });
  }

  #put(record: Record<string, unknown> & { type: keyof typeof recordSchemas }): AnyRecord {
    const made = recordSchemas[record.type].parse(record) as AnyRecord;
    if (this.#records.has(made.id)) throw new Error(`two records with the id ${made.id}`);
    this.#records.set(made.id, made);
    return made;
  }

  #mm = (n: number): number => Math.round(n * this.#unitMm);
  #point = ([x, y]: XY): Point => point(this.#mm(x), this.#mm(y));
  #next = (prefix: string): string => `${prefix}-${String(++this.#count).padStart(3, '0')}`;

  get #plan(): Plan {
    return { records: this.#records, setAside: [], extra: {} };
  }

  #kind(slug: string, family: Kind['family']): string {
    const kind = needKind(this.#practice, slug, family);
    this.#records.set(kind.id, kind);
    return kind.id;
  }

  #labelled(label: string): string {
    const id = this.#labels.get(label);
    if (!id) throw new Error(`nothing is called ${label}`);
    return id;
  }

  wall(from: XY, to: XY, thickness: number, height: number, material: WallMaterial = 'plasterboard'): string {
    const id = this.#next('wall');
    this.#put({
      id,
      type: 'wall',
      floorId: this.#floorId,
      from: this.#point(from),
      to: this.#point(to),
      thicknessMm: this.#mm(thickness),
      heightMm: this.#mm(height),
      material,
    });
    return id;
  }

  opening(
    wallId: string,
    what: 'door' | 'window' | 'archway',
    offset: number,
    width: number,
    height: number,
    more: { sill?: number; swing?: 'left-start' | 'left-end' | 'right-start' | 'right-end' } = {},
  ): void {
    this.#put({
      id: this.#next('opening'),
      type: 'opening',
      wallId,
      what,
      offsetMm: this.#mm(offset),
      widthMm: this.#mm(width),
      heightMm: this.#mm(height),
      sillMm: this.#mm(more.sill ?? 0),
      ...(more.swing ? { swing: more.swing } : {}),
    });
  }

  /** A rectangle (or ellipse) `length` along x and `width` along y before it is turned. */
  piece(
    label: string,
    at: XY,
    length: number,
    width: number,
    more: {
      rotationDeg?: number;
      shape?: 'rect' | 'ellipse';
      height?: number;
      line?: 'solid' | 'hidden' | 'ground';
    } = {},
  ): void {
    this.#put({
      id: this.#next('piece'),
      type: 'setPiece',
      floorId: this.#floorId,
      at: this.#point(at),
      rotationDeg: more.rotationDeg ?? 0,
      outline: { shape: more.shape ?? 'rect', lengthMm: this.#mm(length), widthMm: this.#mm(width) },
      heightMm: this.#mm(more.height ?? 2.5),
      label,
      line: more.line ?? 'solid',
    });
  }

  mark(
    id: string,
    what: 'camera' | 'talent' | 'note',
    name: string,
    at: XY,
    height: number,
    facingDeg: number,
    viewDeg?: number,
  ): void {
    this.#put({
      id,
      type: 'mark',
      floorId: this.#floorId,
      what,
      at: this.#point(at),
      heightMm: this.#mm(height),
      facingDeg,
      name,
      ...(viewDeg === undefined ? {} : { viewDeg }),
    });
  }

  source(
    label: string,
    kind: string,
    at: XY,
    more: { rotationDeg?: number; voltsV?: number; ways?: readonly Way[]; notes?: string } = {},
  ): void {
    const id = `source-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    this.#put({
      id,
      type: 'source',
      floorId: this.#floorId,
      kindId: this.#kind(kind, 'source'),
      at: this.#point(at),
      label,
      ...more,
    });
  }

  outlet(
    label: string,
    source: string,
    wayId: string,
    connector: string,
    at: XY,
    rotationDeg: number,
    height = 1,
  ): void {
    const id = `outlet-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    this.#put({
      id,
      type: 'outlet',
      floorId: this.#floorId,
      at: this.#point(at),
      rotationDeg,
      heightMm: this.#mm(height),
      sourceId: this.#labelled(source),
      wayId,
      connector,
      label,
    });
  }

  box(
    label: string,
    kind: string,
    at: XY,
    feed: string,
    more: { rotationDeg?: number; cable?: string; route?: Route } = {},
  ): void {
    const id = `box-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    this.#put({
      id,
      type: 'box',
      floorId: this.#floorId,
      kindId: this.#kind(kind, 'box'),
      at: this.#point(at),
      rotationDeg: more.rotationDeg ?? 0,
      label,
    });
    this.#plug(feed, id, more.cable, more.route);
  }

  universe(number: number, name: string): void {
    this.#put({ id: `universe-${number}`, type: 'universe', number, name, colorIndex: number - 1 });
  }

  fixture(f: FixtureSpec): void {
    const id = `unit-${f.unit}`;
    const kind = needKind(this.#practice, f.kind, 'fixture');
    this.#labels.set(f.unit, id);
    const at = this.#point(f.at);
    const heightMm = this.#mm(f.h);
    let support: Record<string, string> = { on: f.on ?? 'rigged' };
    if (f.stand) {
      const standId = `stand-${f.unit}`;
      support = { on: 'stand', standId };
      const kindId = this.#kind(f.stand, 'stand');
      this.#put({ id: standId, type: 'stand', floorId: this.#floorId, kindId, at, rotationDeg: 0, heightMm });
    }
    this.#put({
      id,
      type: 'fixture',
      floorId: this.#floorId,
      kindId: this.#kind(f.kind, 'fixture'),
      at,
      heightMm,
      aim: this.#aim(f.aim),
      support,
      unit: f.unit,
      channel: f.ch ?? f.unit,
      use: f.use,
      gel: f.gel ?? '',
      link: f.radio ? 'radio' : f.patch ? 'line' : 'none',
      ...(f.linkTo ? { linkId: `device-${f.linkTo.toLowerCase()}` } : {}),
      onPacks: f.from !== undefined || (f.packs !== undefined && f.packs !== false),
      ...(f.from ? { packFrom: { packId: this.#labelled(f.from) } } : {}),
      ...(Array.isArray(f.packs)
        ? { packs: { kindId: this.#kind(f.packs[0], 'pack'), count: f.packs[1], joined: 'parallel' } }
        : {}),
      ...(f.ownCells ? { ownCells: { when: f.ownCells } } : {}),
      ...(f.patch ? { patch: this.#patch(kind, ...f.patch) } : {}),
    });
    let load = id;
    if (kind.needsBallast) load = this.#ballast(f, kind.slug);
    if (f.feed) this.#plug(f.feed, load, f.cable, f.route, f.pieces);
  }

  #patch(kind: FixtureKind, universe: number, modeId: string, given?: number): Record<string, unknown> {
    const mode = kind.modes.find((m) => m.id === modeId);
    if (!mode) throw new Error(`${kind.slug} has no mode ${modeId}`);
    const address = given ?? this.#nextAddress.get(universe) ?? 1;
    this.#nextAddress.set(universe, address + mode.slots);
    return { universeId: `universe-${universe}`, modeId, address, paired: false };
  }

  #aim(aim: FixtureSpec['aim']): Fixture['aim'] {
    if (typeof aim === 'string') {
      if (!this.#records.has(aim)) throw new Error(`no mark ${aim}`);
      return { at: 'mark', markId: aim };
    }
    if (typeof aim === 'number') return { at: 'facing', facingDeg: aim, tiltDeg: -15 };
    return { at: 'facing', facingDeg: aim[0], tiltDeg: aim[1] };
  }

  #ballast(f: FixtureSpec, head: string): string {
    const slug =
      f.ballastKind ??
      gearBook(this.#practice).find((k) => k.family === 'ballast' && k.heads.includes(head))?.slug ??
      'none';
    const kind = needKind(this.#practice, slug, 'ballast');
    const id = `ballast-${f.unit}`;
    this.#put({
      id,
      type: 'ballast',
      floorId: this.#floorId,
      kindId: this.#kind(slug, 'ballast'),
      at: this.#point(f.ballast ?? [f.at[0], f.at[1] + 1]),
      fixtureId: `unit-${f.unit}`,
      headCableMm: kind.headCablesMm[0] ?? 7000,
    });
    return id;
  }

  #plug(
    feed: string,
    toId: string,
    cableSlug: string | undefined,
    route: Route | undefined,
    pieces?: readonly number[],
  ): void {
    const [label = '', port] = feed.split(':');
    const fromId = this.#labelled(label);
    const outlet = outletsOf(this.#plan, fromId).find((o) => o.id === (port ?? 'out'));
    const inlet = inletsOf(this.#plan, toId)[0];
    if (!outlet) throw new Error(`${feed}: no such outlet for ${toId}`);
    if (!inlet) throw new Error(`${toId} has no inlet`);
    for (const r of this.#records.values())
      if (r.type === 'cable' && r.from.recordId === fromId && r.from.portId === outlet.id)
        throw new Error(`${feed} is taken by ${r.to.recordId}, wanted for ${toId}`);
    const bridge = this.#bridge(outlet, inlet, cableSlug, `${feed} to ${toId}`);
    const kind = bridge.cable;
    this.#records.set(kind.id, kind);
    const from = placeOf(this.#plan, fromId);
    const to = placeOf(this.#plan, toId);
    if (!from || !to) throw new Error(`${feed} to ${toId}: an end has no place`);
    let start = { recordId: fromId, portId: outlet.id };
    if (bridge.adapter && bridge.port) {
      this.#records.set(bridge.adapter.id, bridge.adapter);
      const id = `adapter-${toId}`;
      this.#put({
        id,
        type: 'box',
        floorId: this.#floorId,
        kindId: bridge.adapter.id,
        at: besideOutlet(this.#plan, fromId, from.at),
        rotationDeg: 0,
        label: `A${++this.#adapters}`,
        plugsInto: start,
      });
      start = { recordId: id, portId: bridge.port.id };
    }
    this.#put({
      id: `cable-${toId}`,
      type: 'cable',
      kindId: kind.id,
      from: start,
      to: { recordId: toId, portId: inlet.id },
      route: { auto: false, points: this.#points(from.at, to.at, route ?? 'down-first') },
      ...(pieces ? { piecesMm: pieces.map(this.#mm) } : {}),
    });
  }

  #bridge(outlet: OutletPort, inlet: InletPort, slug: string | undefined, where: string): Bridge {
    const book = gearBook(this.#practice).filter((k) => !slug || k.family !== 'cable' || k.slug === slug);
    const cables = book.filter((k): k is CableKind => k.family === 'cable');
    const adapters = book.filter((k): k is AdapterKind => k.family === 'adapter' && k.what === 'adapter');
    const [bridge] = bridges(outlet, inlet, cables, adapters);
    if (!bridge)
      throw new Error(`${where}: no cable from ${outlet.connector} to ${inlet.connector} (${slug ?? 'any'})`);
    return bridge;
  }

  #points(from: Point, to: Point, route: Route): Point[] {
    if (route === 'straight') return [];
    if (route === 'across-first') return [point(to.xMm, from.yMm)];
    if (route === 'down-first') return [point(from.xMm, to.yMm)];
    if ('along' in route)
      return [point(from.xMm, this.#mm(route.along)), point(to.xMm, this.#mm(route.along))];
    if ('down' in route) return [point(this.#mm(route.down), from.yMm), point(this.#mm(route.down), to.yMm)];
    return route.map(this.#point);
  }

  /** A setup with the levels of all units: `{ '*': 0, '1-9': 80, '4': 50 }`. The narrower entry wins: one unit over a list, a list over all. */
  setup(order: number, scene: string, name: string, levels: Readonly<Record<string, number>>): void {
    const setupId = `setup-${order}`;
    this.#put({ id: setupId, type: 'setup', order, name, scene });
    const pct = new Map<string, number>();
    const breadth = (units: string): number => (units === '*' ? 2 : /^\d+$/.test(units) ? 0 : 1);
    const entries = Object.entries(levels).sort(([a], [b]) => breadth(b) - breadth(a));
    for (const [units, value] of entries)
      for (const unit of readUnits(units, this.#units())) pct.set(unit, value);
    for (const [unit, levelPct] of pct) {
      const fixtureId = `unit-${unit}`;
      this.#put({ id: levelId(setupId, fixtureId), type: 'level', setupId, fixtureId, levelPct });
    }
  }

  /** Colour of units in a setup that has their levels: a temperature, words, or both. */
  color(order: number, units: string, text: string): void {
    const note = readColorNote(text);
    if (!note.ok) throw new Error(note.error.what);
    for (const unit of readUnits(units, this.#units())) {
      const level = this.#records.get(levelId(`setup-${order}`, `unit-${unit}`));
      if (level?.type !== 'level') throw new Error(`unit ${unit} has no level in setup ${order}`);
      this.#records.set(level.id, { ...level, ...note.value });
    }
  }

  /** Puts a unit with its stand elsewhere in one setup, in the floor's own unit of length. */
  move(order: number, unit: string, at: XY): void {
    const setupId = `setup-${order}`;
    const fixtureId = `unit-${unit}`;
    const { added } = moveOnlyHere(this.#plan, setupId, [fixtureId]);
    for (const m of added) if (m.type === 'move') this.#put({ ...m, at: this.#point(at) });
  }

  /** Parts of units from a level and colour at one end to those at the other, in a setup that has their levels. */
  gradient(order: number, units: string, from: PartLook, to: PartLook): void {
    for (const unit of readUnits(units, this.#units())) {
      const made = gradientParts(this.#plan, `setup-${order}`, `unit-${unit}`, from, to);
      if (!made.ok) throw new Error(made.error.what);
      for (const level of [...made.value.added, ...made.value.updated.map((u) => u.to)])
        this.#records.set(level.id, level);
    }
  }

  /** Packs of a kind the crew has, or spare units that are exchanged, so many of them kept back. */
  stock(slug: string, count: number, reserve = 0, family: 'pack' | 'fixture' = 'pack'): void {
    this.#put({ id: `stock-${slug}`, type: 'stock', kindId: this.#kind(slug, family), count, reserve });
  }

  /** A pack on the floor that feeds units by leads. */
  pack(label: string, slug: string, at: XY): void {
    const id = `pack-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    const kindId = this.#kind(slug, 'pack');
    this.#put({ id, type: 'pack', floorId: this.#floorId, kindId, at: this.#point(at), label });
  }

  /** Plugs a power station that is there in, to be charged. */
  chargeFrom(label: string, feed: string, cable: string, route?: Route): void {
    this.#plug(feed, this.#labelled(label), cable, route);
  }

  charger(label: string, slug: string, at: XY, feed?: string, route?: Route): void {
    const id = `charger-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    const kindId = this.#kind(slug, 'charger');
    this.#put({
      id,
      type: 'charger',
      floorId: this.#floorId,
      kindId,
      at: this.#point(at),
      rotationDeg: 0,
      label,
    });
    if (feed) this.#plug(feed, id, undefined, route);
  }

  /** A piece of control gear; `ports` by port id, the number of the universe each carries. */
  device(
    label: string,
    slug: string,
    at: XY,
    more: {
      readonly h?: number;
      readonly stand?: string;
      readonly rotationDeg?: number;
      readonly feed?: string;
      readonly cable?: string;
      readonly route?: Route;
      readonly ports?: Readonly<Record<string, number>>;
      readonly listensTo?: string;
      /** The unit a receiver is plugged into. */
      readonly on?: string;
      /** A pack on it that takes over when its plug is pulled. */
      readonly pack?: string;
    } = {},
  ): void {
    const id = `device-${label.toLowerCase()}`;
    this.#labels.set(label, id);
    const kind = findKind(this.#practice, slug);
    if (!kind) throw new Error(`no kind ${slug}`);
    const heightMm = this.#mm(more.h ?? 0);
    const standId = more.stand ? `stand-${label.toLowerCase()}` : undefined;
    if (more.stand && standId)
      this.#put({
        id: standId,
        type: 'stand',
        floorId: this.#floorId,
        kindId: this.#kind(more.stand, 'stand'),
        at: this.#point(at),
        rotationDeg: 0,
        heightMm,
      });
    this.#put({
      id,
      type: 'device',
      floorId: this.#floorId,
      kindId: this.#kind(slug, kind.family),
      at: this.#point(at),
      rotationDeg: more.rotationDeg ?? 0,
      heightMm,
      ...(standId ? { standId } : {}),
      ...(more.on ? { fixtureId: this.#labelled(more.on) } : {}),
      label,
      ports: Object.entries(more.ports ?? {}).map(([portId, n]) => ({
        portId,
        universeId: `universe-${n}`,
      })),
      ...(more.listensTo ? { listensToId: this.#labelled(more.listensTo) } : {}),
      ...(more.pack
        ? { packs: { kindId: this.#kind(more.pack, 'pack'), count: 1, joined: 'parallel' } }
        : {}),
    });
    if (more.feed) this.#plug(more.feed, id, more.cable, more.route);
  }

  /** A data line from a port (`N1:out-1`) to units and gear in their order; hops by hand by their position. */
  line(
    label: string,
    from: string,
    stops: readonly string[],
    more: { readonly open?: boolean; readonly routes?: Readonly<Record<number, readonly XY[]>> } = {},
  ): void {
    const [start = '', portId = ''] = from.split(':');
    const cable = portId.startsWith('network') ? 'data-cable-network' : 'data-cable-5-pin';
    this.#put({
      id: `line-${label.toLowerCase()}`,
      type: 'line',
      label,
      from: { recordId: this.#labelled(start), portId },
      stops: stops.map((s) => this.#labelled(s)),
      routes: Object.entries(more.routes ?? {}).map(([hop, points]) => ({
        hop: Number(hop),
        points: points.map(this.#point),
      })),
      terminated: more.open !== true,
      kindId: this.#kind(cable, 'dataCable'),
    });
  }

  /** A stretch of day 1, `07:30` to `09:00`; `setup` by its order. */
  block(from: string, to: string, what: string, setup?: number, burnsThrough: readonly string[] = []): void {
    const minute = (t: string): number => {
      const [h = 0, m = 0] = t.split(':').map(Number);
      return h * 60 + m;
    };
    this.#put({
      id: this.#next('block'),
      type: 'block',
      day: 1,
      startMin: minute(from),
      endMin: minute(to),
      what,
      ...(setup === undefined ? {} : { setupId: `setup-${setup}` }),
      burnsThrough: burnsThrough.map((u) => this.#labelled(u)),
    });
  }

  #units(): string[] {
    return [...this.#records.values()].flatMap((r) => (r.type === 'fixture' ? [r.unit] : []));
  }

  build(): Plan {
    return this.#plan;
  }
}
