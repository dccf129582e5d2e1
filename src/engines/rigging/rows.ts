import { recordLabel } from '../../derive/labels.ts';
import type { Id } from '../../kernel/ids.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { computeRigging, guyAt, windTable } from './figures.ts';
import { carriedLabel } from './findings/stands.ts';
import { isLift } from './lifts.ts';
import { sailForceN } from './tipping.ts';

/** One stand as a line of a list. Lengths in mm, masses in kg; NaN and undefined are not known. */
export interface StandRow {
  readonly id: Id;
  readonly floorId: Id;
  /** What it carries in words. */
  readonly label: string;
  readonly kind: string;
  readonly fixtureIds: readonly Id[];
  readonly gripIds: readonly Id[];
  readonly heightMm: number;
  readonly heightMinMm: number;
  readonly heightMaxMm: number;
  readonly loadKg: number;
  readonly ratedKg: number;
  readonly usePct: number;
  /** Longest arm out, 0 without one. */
  readonly armMm: number;
  /** What holds down over what tips, the plan's wind with its gusts included; infinite where nothing tips. */
  readonly tipFactor: number;
  /** The factor that is planned for. */
  readonly tipWanted: number;
  readonly tipPushN: number;
  readonly tipTiltDeg: number;
  /** Wind that tips it; NaN where nothing of it is in the wind. */
  readonly tipWindMps: number;
  readonly bags: number;
  /** Bags for the planning factor, those there included; infinite where none are enough. */
  readonly bagsWanted: number;
  readonly bagKg: number;
  readonly legCircleMm: number;
  readonly legs: number;
}

/** Tube, truss, a point, a lift, a crane or a roof position as a line of a list. */
export interface RiggingRow {
  readonly id: Id;
  readonly floorId: Id;
  readonly label: string;
  readonly kind: string;
  readonly what: string;
  readonly fixtureIds: readonly Id[];
  readonly gripIds: readonly Id[];
  readonly heightMm: number;
  readonly reachMm: number;
  readonly gearKg: number;
  readonly people: number;
  readonly peopleKg: number;
  readonly loadKg: number;
  readonly ratedKg: number | undefined;
  readonly ratedAssumed: boolean;
  readonly usePct: number | undefined;
  readonly windLimitMps: number | undefined;
  /** Along the arm from the ground, of lifts and cranes. */
  readonly cableUpMm: number | undefined;
  /** Who works it as the plan says; empty where it does not. */
  readonly operator: string;
  /** Who may work it. */
  readonly operatorAsked: string;
}

/** A frame, flag or bounce with what the wind does to it. */
export interface FrameRow {
  readonly id: Id;
  readonly floorId: Id;
  readonly label: string;
  readonly cloth: string;
  readonly massKg: number;
  readonly areaM2: number;
  readonly share: number;
  readonly shareAssumed: boolean;
  readonly tiltDeg: number;
  readonly heightMm: number;
  readonly standIds: readonly Id[];
  readonly guys: number;
  readonly guysWanted: number;
  /** Wind reckoned with, gusts included; undefined where the plan gives none. */
  readonly windMps: number | undefined;
  readonly windN: number | undefined;
  readonly guyN: number | undefined;
  /** Wind that tips what it stands on; NaN where it stands on nothing in the plan. */
  readonly tipWindMps: number;
  /** Force at the table of speeds. */
  readonly table: readonly { readonly speedMps: number; readonly forceN: number; readonly liftN: number }[];
}

const byLabel = <T extends { readonly label: string; readonly id: string }>(a: T, b: T): number =>
  compareNatural(a.label, b.label) || (a.id < b.id ? -1 : 1);

/** Every stand of a plan with its load, rating, use, tip-over figures, bags and legs, by what it carries. */
export const standRows = (plan: Plan): readonly StandRow[] => {
  const r = computeRigging(plan);
  return [...r.stands.values()]
    .flatMap((use): StandRow[] => {
      const t = r.tipping.get(use.stand.id);
      if (!t) return [];
      return [
        {
          id: use.stand.id,
          floorId: use.stand.floorId,
          label: carriedLabel(plan, use),
          kind: use.kind.name,
          fixtureIds: use.carried.map((c) => c.fixture.id),
          gripIds: use.sails.map((s) => s.grip.id),
          heightMm: use.stand.heightMm,
          heightMinMm: use.kind.heightMinMm,
          heightMaxMm: use.kind.heightMaxMm,
          loadKg: use.loadKg,
          ratedKg: use.kind.ratedLoadKg,
          usePct: (100 * use.loadKg) / use.kind.ratedLoadKg,
          armMm: Math.max(0, ...use.carried.map((c) => c.outMm)),
          tipFactor: t.moments.factor,
          tipWanted: r.model.factors.tipFactor,
          tipPushN: t.pushN,
          tipTiltDeg: t.tiltDeg,
          tipWindMps: t.windMps,
          bags: use.stand.bags ?? 0,
          bagsWanted: t.bagsWanted,
          bagKg: r.model.factors.bagKg,
          legCircleMm: use.kind.legCircleMm,
          legs: use.kind.legs ?? 3,
        },
      ];
    })
    .sort(byLabel);
};

/** Everything of the plan that carries gear besides stands, with load, rating, people, wind and who works it. */
export const riggingRows = (plan: Plan): readonly RiggingRow[] =>
  [...computeRigging(plan).rigging.values()]
    .map(
      (use): RiggingRow => ({
        id: use.rigging.id,
        floorId: use.rigging.floorId,
        label: recordLabel(plan, use.rigging),
        kind: use.kind.name,
        what: use.kind.what,
        fixtureIds: use.fixtures.map((f) => f.id),
        gripIds: use.grips.map((g) => g.id),
        heightMm: use.rigging.heightMm,
        reachMm: use.rigging.reachMm ?? 0,
        gearKg: use.gearKg,
        people: use.rigging.people,
        peopleKg: use.peopleKg,
        loadKg: use.loadKg,
        ratedKg: use.ratedKg,
        ratedAssumed: use.ratedAssumed,
        usePct: use.ratedKg === undefined ? undefined : (100 * use.loadKg) / use.ratedKg,
        windLimitMps: use.kind.windLimitMps,
        cableUpMm: isLift(use.kind) ? use.cableUpMm : undefined,
        operator: use.rigging.operator,
        operatorAsked: use.kind.operator ?? '',
      }),
    )
    .sort(byLabel);

/** Frames, flags and bounces that catch wind, with force, lines and the wind that tips them. */
export const frameRows = (plan: Plan): readonly FrameRow[] => {
  const r = computeRigging(plan);
  const { windMps } = r.model.factors;
  return [...r.sails.values()]
    .filter((s) => s.areaM2 > 0)
    .map((s): FrameRow => {
      const pull = windMps === undefined ? undefined : guyAt(r.model, s, windMps);
      return {
        id: s.grip.id,
        floorId: s.grip.floorId,
        label: recordLabel(plan, s.grip),
        cloth: s.cloth?.name ?? '',
        massKg: s.massKg,
        areaM2: s.areaM2,
        share: s.share,
        shareAssumed: s.shareAssumed,
        tiltDeg: s.tiltDeg,
        heightMm: s.grip.heightMm,
        standIds: s.grip.supports.filter((id) => recordOf(plan, 'stand', id)),
        guys: s.grip.guys,
        guysWanted: s.kind.guys,
        windMps,
        windN: windMps === undefined ? undefined : sailForceN(r.model.factors, s, windMps),
        guyN: pull !== undefined && Number.isFinite(pull) ? pull : undefined,
        tipWindMps: r.tipping.get(s.grip.id)?.windMps ?? Number.NaN,
        table: windTable(r, s).map(({ speedMps, forceN, liftN }) => ({ speedMps, forceN, liftN })),
      };
    })
    .sort(byLabel);
};
