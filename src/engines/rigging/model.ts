import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { compareIds } from '../../kernel/ids.ts';
import type { GripKind, RiggingKind, StandKind } from '../../plan/kinds/kinds.ts';
import { armOf, kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Fixture, Grip, Stand } from '../../plan/records/index.ts';
import { rememberedEach } from '../../plan/remembered.ts';
import { counterweightKg, tipRadiusMm } from './calc.ts';

/** Figures of the table as they hold in one plan, read once. */
export interface Factors {
  readonly g: number;
  readonly loadFactor: number;
  readonly tipFactor: number;
  readonly pressure: number;
  readonly boardCf: number;
  readonly unitCf: number;
  readonly bagKg: number;
  readonly bagMm: number;
  readonly standShare: number;
  readonly upliftCf: number;
  /** Wind with its gusts; undefined where the plan gives none. */
  readonly windMps: number | undefined;
  /** The mean the gusts were reckoned from, where the plan gives that. */
  readonly meanMps: number | undefined;
}

const factors = new WeakMap<object, Factors>();

export const factorsOf = (plan: Plan): Factors => {
  const record = planRecord(plan);
  const known = factors.get(record) ?? factorsMade(plan);
  factors.set(record, known);
  return known;
};

const factorsMade = (plan: Plan): Factors => {
  const of = (id: string): number => limitOf(plan, `rigging-${id}`).value;
  const { windMps: wind, windIsMean } = planRecord(plan);
  const given = wind !== undefined && Number.isFinite(wind) && wind >= 0 ? wind : undefined;
  return {
    g: of('gravity'),
    loadFactor: of('load-factor'),
    tipFactor: of('tip-factor'),
    pressure: of('wind-pressure'),
    boardCf: of('wind-cf'),
    unitCf: of('wind-cf-unit'),
    bagKg: of('bag'),
    bagMm: of('bag-height'),
    standShare: of('stand-mass-height'),
    upliftCf: of('uplift'),
    windMps: given !== undefined && windIsMean ? given * of('gust') : given,
    meanMps: windIsMean ? given : undefined,
  };
};

/** A fixture with what is on it. `massKg` is all of it; NaN where its kind is not in the plan. */
export interface Carried {
  readonly fixture: Fixture;
  readonly massKg: number;
  readonly accessories: readonly (RiggingKind | GripKind)[];
  readonly arm: RiggingKind | undefined;
  /** Out from the column to the fixture, 0 without an arm. */
  readonly outMm: number;
}

export const carriedOf = (plan: Plan, fixture: Fixture): Carried => {
  const own = kindOf(plan, fixture.kindId)?.massKg ?? Number.NaN;
  const accessories = (fixture.accessories ?? []).flatMap((id) => kindOf(plan, id, 'rigging', 'grip') ?? []);
  const arm = armOf(plan, fixture);
  return {
    fixture,
    massKg: own + accessories.reduce((sum, k) => sum + k.massKg, 0),
    accessories,
    arm: arm?.kind,
    outMm: arm?.outMm ?? 0,
  };
};

/** Counterweight that balances a unit on its arm about the column, the arm’s own mass left out; NaN without a place for it. */
export const balanceKg = (plan: Plan, fixture: Fixture): number => {
  const c = carriedOf(plan, fixture);
  const back = fixture.arm?.counterMm ?? 0;
  return c.arm && back > 0 ? counterweightKg(c.massKg - c.arm.massKg, c.outMm, back) : Number.NaN;
};

/** What an arm itself carries: the fixture and its accessories without arms, heads and adapters. */
export const onArmKg = (plan: Plan, c: Carried): number =>
  (kindOf(plan, c.fixture.kindId)?.massKg ?? Number.NaN) +
  c.accessories
    .filter((k) => k.family === 'grip' || (k.what !== 'arm' && k.what !== 'head'))
    .reduce((sum, k) => sum + k.massKg, 0);

/** Grip gear with its cloth. The face counts whole, whichever way it stands. */
export interface Sail {
  readonly grip: Grip;
  readonly kind: GripKind;
  readonly cloth: GripKind | undefined;
  readonly massKg: number;
  readonly areaM2: number;
  /** Share of the force on a solid board. */
  readonly share: number;
  /** A frame without a cloth in the plan counts as if it had a solid. */
  readonly shareAssumed: boolean;
  /** How far it leans from upright, degrees; 90 lies flat. */
  readonly tiltDeg: number;
}

export const sailOf = (plan: Plan, grip: Grip): Sail | undefined => {
  const kind = kindOf(plan, grip.kindId, 'grip');
  if (!kind) return undefined;
  const cloth = grip.clothId === undefined ? undefined : kindOf(plan, grip.clothId, 'grip');
  const shareAssumed = kind.what === 'frame' && !cloth && (kind.windShare ?? 0) < 1;
  const areaM2 = Math.max(0, kind.areaM2 ?? 0, kind.what === 'frame' ? (cloth?.areaM2 ?? 0) : 0);
  const share = shareAssumed ? 1 : (cloth?.windShare ?? kind.windShare ?? 1);
  return {
    grip,
    kind,
    cloth,
    massKg: kind.massKg + (cloth?.massKg ?? 0),
    areaM2,
    share: Math.max(0, share),
    shareAssumed,
    tiltDeg: Math.min(90, Math.max(0, grip.tiltDeg ?? 0)),
  };
};

/** One stand with what hangs on it. */
export interface StandUse {
  readonly stand: Stand;
  readonly kind: StandKind;
  readonly radiusMm: number;
  readonly carried: readonly Carried[];
  readonly sails: readonly Sail[];
  /** Fixtures, accessories, and its share of frames. */
  readonly loadKg: number;
  readonly bagsKg: number;
}

/** Stands that hold one another through a frame, or one stand alone. They tip together. */
export interface Base {
  readonly id: Id;
  readonly uses: readonly StandUse[];
  readonly sails: readonly Sail[];
}

export interface Model {
  readonly plan: Plan;
  readonly factors: Factors;
  readonly uses: ReadonlyMap<Id, StandUse>;
  readonly baseOf: ReadonlyMap<Id, Base>;
  readonly bases: readonly Base[];
  readonly sails: ReadonlyMap<Id, Sail>;
}

/** Fixtures with what is on them, and grip gear, from edit to edit: the same objects while nothing of them changes. */
const carriedEach = rememberedEach((plan, f: Fixture) => carriedOf(plan, f));
const sailEach = rememberedEach((plan, g: Grip) => sailOf(plan, g));

/** The last use made for each stand, and base made for its first use: given again while made of the very same things. */
const lastUses = new WeakMap<Stand, StandUse>();
const lastBases = new WeakMap<StandUse, Base>();

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((x, i) => x === b[i]);

const standOnce = (made: StandUse): StandUse => {
  const last = lastUses.get(made.stand);
  const holds =
    last?.kind === made.kind &&
    Object.is(last.loadKg, made.loadKg) &&
    last.bagsKg === made.bagsKg &&
    same(last.carried, made.carried) &&
    same(last.sails, made.sails);
  if (holds) return last;
  lastUses.set(made.stand, made);
  return made;
};

const baseOnce = (made: Base): Base => {
  const [first] = made.uses;
  if (!first) return made;
  const last = lastBases.get(first);
  if (last && same(last.uses, made.uses) && same(last.sails, made.sails)) return last;
  lastBases.set(first, made);
  return made;
};

/** Stands with their loads, joined where a frame joins them. Stands whose kind is not in the plan are left out. */
export const modelOf = (plan: Plan): Model => {
  const factors = factorsOf(plan);
  const carried = new Map<Id, Carried[]>();
  const standing = recordsOf(plan, 'fixture').filter((f) => f.support.on === 'stand');
  for (const c of carriedEach(plan, standing))
    if (c.fixture.support.on === 'stand') push(carried, c.fixture.support.standId, c);
  const sails = new Map<Id, Sail>();
  const sailsOn = new Map<Id, Sail[]>();
  for (const sail of sailEach(plan, recordsOf(plan, 'grip'))) {
    if (!sail) continue;
    sails.set(sail.grip.id, sail);
    for (const s of new Set(sail.grip.supports)) push(sailsOn, s, sail);
  }
  const uses = new Map<Id, StandUse>();
  for (const stand of recordsOf(plan, 'stand')) {
    const kind = kindOf(plan, stand.kindId, 'stand');
    if (!kind) continue;
    const on = carried.get(stand.id) ?? [];
    const frames = sailsOn.get(stand.id) ?? [];
    const use = standOnce({
      stand,
      kind,
      radiusMm: tipRadiusMm(kind.legCircleMm, kind.legs ?? 3),
      carried: on,
      sails: frames,
      loadKg:
        on.reduce((sum, c) => sum + c.massKg, 0) +
        frames.reduce((sum, s) => sum + s.massKg / standsUnder(plan, s.grip).length, 0),
      bagsKg: Math.max(0, stand.bags ?? 0) * factors.bagKg,
    });
    uses.set(stand.id, use);
  }
  const bases = joined(plan, uses);
  const baseOf = new Map(bases.flatMap((b) => b.uses.map((u) => [u.stand.id, b] as const)));
  return { plan, factors, uses, baseOf, bases, sails };
};

const push = <T>(map: Map<Id, T[]>, id: Id, value: T): void => {
  const list = map.get(id);
  if (list) list.push(value);
  else map.set(id, [value]);
};

/** Stands of the plan that carry this grip, each once. */
export const standsUnder = (plan: Plan, grip: Grip): readonly Id[] =>
  [...new Set(grip.supports)].filter((s) => recordOf(plan, 'stand', s));

const joined = (plan: Plan, uses: ReadonlyMap<Id, StandUse>): readonly Base[] => {
  const first = new Map<Id, Id>([...uses.keys()].map((id) => [id, id]));
  const root = (id: Id): Id => {
    let at = id;
    for (let up = first.get(at) ?? at; up !== at; up = first.get(at) ?? at) at = up;
    return at;
  };
  for (const g of recordsOf(plan, 'grip')) {
    const under = g.supports.filter((s) => uses.has(s));
    const [a] = under;
    if (a !== undefined) for (const b of under) first.set(root(b), root(a));
  }
  const groups = new Map<Id, StandUse[]>();
  for (const use of uses.values()) push(groups, root(use.stand.id), use);
  return [...groups.values()].map((list) => {
    const own = [...list].sort((x, y) => compareIds(x.stand.id, y.stand.id));
    const sails = new Map(own.flatMap((u) => u.sails.map((s) => [s.grip.id, s] as const)));
    return baseOnce({ id: own[0]?.stand.id ?? '', uses: own, sails: [...sails.values()] });
  });
};
