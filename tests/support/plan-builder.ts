import type { BallastKind, BoxKind, CableKind, FixtureKind, SourceKind } from '../../src/plan/kinds/kinds.ts';
import type { LoadSpec, Way } from '../../src/plan/kinds/ports.ts';
import { levelId, type Plan } from '../../src/plan/plan.ts';
import type { AnyRecord, RecordOf } from '../../src/plan/records/index.ts';

type Give<T> = Partial<T>;

const size = { lengthMm: 300, widthMm: 300 };
const common = (slug: string) => ({
  id: slug,
  type: 'kind' as const,
  slug,
  name: slug,
  also: [],
  sizeMm: size,
  massKg: 5,
  symbol: slug,
  basis: {},
  origin: { book: 'user' as const, version: '1' },
});

/** One-pole ways with the same breaker, laid over `legs` legs in turn: way `1` on leg 0, way `2` on leg 1 and so on. */
export const onePoleWays = (count: number, breakerA: number, legs: number): Way[] =>
  Array.from({ length: count }, (_, i) => ({
    id: String(i + 1),
    label: String(i + 1),
    breakerA,
    poles: 1,
    curve: 'na' as const,
    legs: [i % legs],
  }));

/**
 * Builds small plans for tests. Each method adds one record with sensible defaults and gives it back; `plan()` gives
 * the plan so far. `north-america` by default; everything stands at the origin, so that a run has no drawn length.
 */
export class PlanBuilder {
  readonly records = new Map<string, AnyRecord>();
  #next = 0;

  constructor(plan: Give<RecordOf<'plan'>> = {}) {
    this.put({
      id: 'plan',
      type: 'plan',
      title: 'Test plan',
      production: '',
      scene: '',
      location: '',
      drawingNumber: '',
      owner: '',
      dates: [],
      people: {},
      practice: 'north-america',
      lengthUnits: 'imperial',
      frequencyHz: 60,
      ambientC: 30,
      limits: [],
      paper: { sheet: 'ANSI B', landscape: true },
      ...plan,
    });
    this.put({ id: 'floor', type: 'floor', name: 'Stage', levelMm: 0, northDeg: 270 });
  }

  plan(): Plan {
    return { records: new Map(this.records), setAside: [], extra: {} };
  }

  put<T extends AnyRecord>(record: T): T {
    this.records.set(record.id, record);
    return record;
  }

  #id(prefix: string): string {
    this.#next++;
    return `${prefix}-${String(this.#next).padStart(4, '0')}`;
  }

  #placed(at?: { xMm: number; yMm: number }) {
    return { floorId: 'floor', at: at ?? { xMm: 0, yMm: 0 }, rotationDeg: 0 };
  }

  sourceKind(slug: string, k: Give<SourceKind> = {}): SourceKind {
    return this.put({
      ...common(slug),
      family: 'source',
      what: 'generator',
      system: '120/208',
      ways: [],
      outlets: [],
      ...k,
    });
  }

  boxKind(slug: string, k: Give<BoxKind> = {}): BoxKind {
    return this.put({ ...common(slug), family: 'box', inlets: [], outlets: [], ways: [], ...k });
  }

  cableKind(slug: string, k: Give<CableKind> = {}): CableKind {
    return this.put({
      ...common(slug),
      family: 'cable',
      construction: 'multicore',
      legs: 1,
      neutral: true,
      conductor: 'awg:12',
      parallel: 1,
      ampacityA: 25,
      plug: 'stage-pin-20',
      socket: 'stage-pin-20',
      stockLengthsMm: [7620, 15240, 30480],
      ...k,
    });
  }

  load(l: Give<LoadSpec> = {}): LoadSpec {
    return {
      wattsW: 1000,
      standbyW: 0,
      powerFactor: 1,
      leading: false,
      model: 'constant-power',
      thirdHarmonicPct: 0,
      leakageMa: 0,
      voltsMinV: 100,
      voltsMaxV: 250,
      ...l,
    };
  }

  fixtureKind(slug: string, load: Give<LoadSpec> | null = {}, k: Give<FixtureKind> = {}): FixtureKind {
    return this.put({
      ...common(slug),
      family: 'fixture',
      source: 'led',
      style: 'panel',
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      outlets: [],
      needsBallast: false,
      mount: { fits: ['spigot-28'] },
      modes: [],
      ...(load ? { load: this.load(load) } : {}),
      ...k,
    });
  }

  ballastKind(slug: string, load: Give<LoadSpec> = {}, k: Give<BallastKind> = {}): BallastKind {
    return this.put({
      ...common(slug),
      family: 'ballast',
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      outlets: [],
      load: this.load(load),
      heads: [],
      headCablesMm: [],
      ...k,
    });
  }

  source(kindId: string, s: Give<RecordOf<'source'>> = {}): RecordOf<'source'> {
    return this.put({
      id: this.#id('source'),
      type: 'source',
      ...this.#placed(s.at),
      kindId,
      label: 'Source',
      ...s,
    });
  }

  outlet(sourceId: string, wayId: string, o: Give<RecordOf<'outlet'>> = {}): RecordOf<'outlet'> {
    return this.put({
      id: this.#id('outlet'),
      type: 'outlet',
      ...this.#placed(o.at),
      heightMm: 0,
      sourceId,
      wayId,
      connector: 'nema-5-15',
      legs: 1,
      neutral: true,
      label: 'Outlet',
      ...o,
    });
  }

  box(kindId: string, b: Give<RecordOf<'box'>> = {}): RecordOf<'box'> {
    return this.put({ id: this.#id('box'), type: 'box', ...this.#placed(b.at), kindId, label: 'K1', ...b });
  }

  fixture(kindId: string, f: Give<RecordOf<'fixture'>> = {}): RecordOf<'fixture'> {
    const id = f.id ?? this.#id('fixture');
    return this.put({
      type: 'fixture',
      ...this.#placed(f.at),
      kindId,
      heightMm: 0,
      aim: { at: 'facing', facingDeg: 0, tiltDeg: 0 },
      support: { on: 'floor' },
      unit: String(this.#next),
      channel: '',
      use: '',
      gel: '',
      link: 'none',
      onPacks: false,
      ...f,
      id,
    });
  }

  ballast(kindId: string, fixtureId: string, b: Give<RecordOf<'ballast'>> = {}): RecordOf<'ballast'> {
    return this.put({
      id: this.#id('ballast'),
      type: 'ballast',
      ...this.#placed(b.at),
      kindId,
      fixtureId,
      headCableMm: 7000,
      ...b,
    });
  }

  /** A cable of exactly `lengthMm`, given as one piece, so that tests can state the arithmetic. */
  cable(
    kindId: string,
    from: readonly [string, string],
    to: readonly [string, string],
    lengthMm = 7620,
    c: Give<RecordOf<'cable'>> = {},
  ): RecordOf<'cable'> {
    return this.put({
      id: this.#id('cable'),
      type: 'cable',
      kindId,
      from: { recordId: from[0], portId: from[1] },
      to: { recordId: to[0], portId: to[1] },
      route: { auto: true, points: [] },
      piecesMm: [lengthMm],
      label: '',
      ...c,
    });
  }

  setup(name: string, order: number): RecordOf<'setup'> {
    return this.put({ id: this.#id('setup'), type: 'setup', order, name, scene: '' });
  }

  level(setupId: string, fixtureId: string, levelPct: number): RecordOf<'level'> {
    return this.put({ id: levelId(setupId, fixtureId), type: 'level', setupId, fixtureId, levelPct });
  }
}

/** A three-phase set with one box of 24 one-pole 20 A ways, fed by 4/0 single conductors; loads plug into its ways. */
export const generatorRig = (plan: Give<RecordOf<'plan'>> = {}, kva = 120) => {
  const b = new PlanBuilder(plan);
  const europe = plan.practice === 'europe';
  const feed = europe ? 'single-pole-400-eu-3' : 'single-pole-400-3';
  const out = europe ? 'iec-16-1' : 'stage-pin-20';
  b.sourceKind('set', {
    system: europe ? '230/400' : '120/208',
    ratedKva: kva,
    ratedKw: kva * 0.8,
    mainBreakerA: 300,
    outlets: [{ id: 'out', connector: feed, legs: 3, neutral: true }],
  });
  b.cableKind('feeder', {
    construction: 'single-conductors',
    legs: 3,
    conductor: europe ? 'mm2:120' : 'awg:4/0',
    ampacityA: 316,
    plug: feed,
    socket: feed,
  });
  b.cableKind('lead', { plug: out, socket: out, ...(europe ? { conductor: 'mm2:2.5', ampacityA: 25 } : {}) });
  const ways = onePoleWays(24, europe ? 16 : 20, 3).map((w) => ({
    ...w,
    curve: europe ? ('C' as const) : w.curve,
  }));
  b.boxKind('box', {
    inlets: [{ id: 'in', connector: feed, legs: 3, neutral: true }],
    ways,
    outlets: ways.map((w) => ({ id: `o${w.id}`, connector: out, legs: 1, neutral: true, wayId: w.id })),
  });
  const source = b.source('set', { label: 'Generator' });
  const box = b.box('box');
  const feeder = b.cable('feeder', [source.id, 'out'], [box.id, 'in'], 30480);
  const inlets = [{ id: 'in', connector: out, legs: 1, neutral: true }];
  /** Adds a fixture of a kind on a way of the box. */
  const plug = (kindId: string, way: number, lengthMm = 15240) => {
    const f = b.fixture(kindId);
    const cable = b.cable('lead', [box.id, `o${way}`], [f.id, 'in'], lengthMm);
    return { fixture: f, cable };
  };
  return { b, source, box, feeder, inlets, plug };
};
