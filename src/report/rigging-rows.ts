import { limitOf } from '../derive/limits.ts';
import { computeRigging, windTable } from '../engines/rigging/index.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { recordName } from '../plan/names.ts';
import { kindOf, type Plan, planRecord } from '../plan/plan.ts';

/** One stand with what it carries and how it stands up. NaN: not computed. */
export interface StandRow {
  readonly standId: Id;
  readonly label: string;
  readonly kindName: string;
  readonly carries: string;
  readonly heightMm: number;
  readonly loadKg: number;
  readonly ratedKg: number;
  readonly loadPct: number;
  /** Holding-down over tipping moment with the plan's wind; infinite where nothing tips it. */
  readonly tipFactor: number;
  /** Wind that tips it without more bags, m/s; NaN where it has no face in the wind. */
  readonly tipWindMps: number;
  readonly bags: number;
  /** Bags for the planning factor; infinite where none help. */
  readonly bagsWanted: number;
}

/** Something that hangs or lifts, with its load. */
export interface HungRow {
  readonly recordId: Id;
  readonly label: string;
  readonly kindName: string;
  readonly carries: string;
  readonly heightMm: number;
  readonly loadKg: number;
  readonly peopleKg: number;
  readonly ratedKg: number | undefined;
  readonly ratedAssumed: boolean;
  readonly operator: string;
}

/** A frame or flag at the speeds of wind of the table. */
export interface SailRow {
  readonly gripId: Id;
  readonly label: string;
  readonly areaM2: number;
  readonly shareAssumed: boolean;
  readonly guys: number;
  readonly speeds: readonly {
    readonly speedMps: number;
    readonly forceN: number;
    readonly tipFactor: number;
    readonly guyN: number;
  }[];
}

export interface RiggingRows {
  readonly stands: readonly StandRow[];
  readonly hung: readonly HungRow[];
  readonly sails: readonly SailRow[];
  /** Factor the bags are reckoned for, with where it is from. */
  readonly planningFactor: number;
  readonly factorSource: string;
  readonly windMps: number | undefined;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Stands, tube, points, lifts and frames of a plan as rows for a list, with the engine's figures. */
export const riggingRows = (plan: Plan): RiggingRows => {
  const r = computeRigging(plan);
  const name = (id: Id): string => capital(recordName(plan, id));
  const units = (list: readonly { readonly unit: string }[]): string =>
    list.length === 0
      ? ''
      : `${list.length === 1 ? 'unit' : 'units'} ${list
          .map((f) => f.unit)
          .sort(compareNatural)
          .join(', ')}`;
  const join = (parts: readonly string[]): string => parts.filter(Boolean).join('; ') || 'nothing';
  const stands = [...r.stands.values()].map((u): StandRow => {
    const t = r.tipping.get(u.stand.id);
    return {
      standId: u.stand.id,
      label: name(u.stand.id),
      kindName: u.kind.name,
      carries: join([
        units(u.carried.map((c) => c.fixture)),
        ...u.sails.map((s) => s.kind.name + (s.cloth ? ` with ${s.cloth.name}` : '')),
      ]),
      heightMm: u.stand.heightMm,
      loadKg: u.loadKg,
      ratedKg: u.kind.ratedLoadKg,
      loadPct: u.kind.ratedLoadKg > 0 ? (u.loadKg / u.kind.ratedLoadKg) * 100 : Number.NaN,
      tipFactor: t?.moments.factor ?? Number.NaN,
      tipWindMps: t?.windMps ?? Number.NaN,
      bags: Math.max(0, u.stand.bags ?? 0),
      bagsWanted: t?.bagsWanted ?? Number.NaN,
    };
  });
  const hung = [...r.rigging.values()].map(
    (u): HungRow => ({
      recordId: u.rigging.id,
      label: name(u.rigging.id),
      kindName: u.kind.name,
      carries: join([units(u.fixtures), ...u.grips.map((g) => kindOf(plan, g.kindId)?.name ?? '')]),
      heightMm: u.rigging.heightMm,
      loadKg: u.gearKg,
      peopleKg: u.peopleKg,
      ratedKg: u.ratedKg,
      ratedAssumed: u.ratedAssumed,
      operator: u.rigging.operator || u.kind.operator || '',
    }),
  );
  const sails = [...r.sails.values()]
    .filter((s) => s.areaM2 > 0)
    .map(
      (s): SailRow => ({
        gripId: s.grip.id,
        label: s.kind.name + (s.cloth ? ` with ${s.cloth.name}` : ''),
        areaM2: s.areaM2,
        shareAssumed: s.shareAssumed,
        guys: s.grip.guys,
        speeds: windTable(r, s),
      }),
    );
  const factor = limitOf(plan, 'rigging-tip-factor');
  const byLabel = <T extends { readonly label: string }>(a: T, b: T): number =>
    compareNatural(a.label, b.label);
  return {
    stands: stands.sort(byLabel),
    hung: hung.sort(byLabel),
    sails: sails.sort(byLabel),
    planningFactor: factor.value,
    factorSource: factor.source,
    windMps: planRecord(plan).windMps,
  };
};
