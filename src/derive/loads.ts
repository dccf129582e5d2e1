import type { Id } from '../kernel/ids.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import { kindOf, levelOf, type Plan, recordsOf } from '../plan/plan.ts';
import type { Ballast, Fixture, Level } from '../plan/records/index.ts';

/** What a fixture's or ballast's kind draws at its inlet; undefined where it draws nothing of its own. */
export const loadSpecOf = (plan: Plan, r: Fixture | Ballast): LoadSpec | undefined =>
  r.type === 'ballast'
    ? kindOf(plan, r.kindId, 'ballast')?.load
    : r.onPacks
      ? undefined
      : kindOf(plan, r.kindId, 'fixture')?.load;

/** The fixture whose level counts for a load: the fixture itself, or the ballast's head. */
export const levelFixtureId = (r: Fixture | Ballast): Id => (r.type === 'ballast' ? r.fixtureId : r.id);

/** Real and reactive power at nominal volts. Reactive power is positive where the current lags. */
export interface LoadPower {
  readonly wattsW: number;
  readonly varsVar: number;
}

/**
 * Power of a load at a level in per cent: watts = standby + (rated − standby) × level, assumed linear.
 * At 0 % a plugged load still draws its standby watts. Vars keep the rated power factor: Q = P × √(1 − pf²) / pf.
 */
export const powerAtLevel = (spec: LoadSpec, levelPct: number): LoadPower => {
  const wattsW = spec.standbyW + ((spec.wattsW - spec.standbyW) * levelPct) / 100;
  const tan = Math.sqrt(Math.max(0, 1 - spec.powerFactor ** 2)) / spec.powerFactor;
  return { wattsW, varsVar: wattsW * tan * (spec.leading ? -1 : 1) };
};

/** Power of a fixture or ballast in a setup, with the level it was reckoned at. */
export const loadPower = (
  plan: Plan,
  r: Fixture | Ballast,
  setupId: Id,
): (LoadPower & { readonly levelPct: number; readonly levelAssumed: boolean }) | undefined => {
  const spec = loadSpecOf(plan, r);
  if (!spec) return undefined;
  const { levelPct, assumed } = levelOf(plan, setupId, levelFixtureId(r));
  return { ...powerAtLevel(spec, levelPct), levelPct, levelAssumed: assumed };
};

/** What makes a load impossible to compute, in words; undefined when it can be. */
export const loadProblem = (spec: LoadSpec): string | undefined => {
  if (spec.unknown === true) return 'its watts are not known: enter them from its rating plate';
  if (!Number.isFinite(spec.wattsW) || spec.wattsW < 0) return `its watts are ${spec.wattsW}`;
  if (!Number.isFinite(spec.standbyW) || spec.standbyW < 0) return `its standby watts are ${spec.standbyW}`;
  if (!(spec.powerFactor > 0 && spec.powerFactor <= 1)) return `its power factor is ${spec.powerFactor}`;
  if (
    spec.model === 'exponential' &&
    ![spec.expP, spec.expQ].every((e) => e !== undefined && Math.abs(e) <= 10)
  )
    return 'its load model needs two exponents between −10 and 10';
  if (!(spec.voltsMaxV > 0) || !(spec.voltsMinV >= 0) || spec.voltsMinV > spec.voltsMaxV)
    return `it takes ${spec.voltsMinV} V to ${spec.voltsMaxV} V`;
  if (!notBelow(spec.thirdHarmonicPct)) return `its third harmonic is ${spec.thirdHarmonicPct} %`;
  if (!notBelow(spec.leakageMa)) return `its leakage is ${spec.leakageMa} mA`;
  if (!notBelow(spec.inrushMultiple ?? 0) || (spec.inrushMultiple ?? 0) > MOST_INRUSH)
    return `its switch-on current is ${spec.inrushMultiple} times`;
  if (!notBelow(spec.inrushMs ?? 0)) return `its switch-on current lasts ${spec.inrushMs} ms`;
  return undefined;
};

/** No load draws so many times its running current for a moment; more is a slipped figure. */
const MOST_INRUSH = 10_000;
const notBelow = (n: number): boolean => Number.isFinite(n) && n >= 0;

const badLevels = new WeakMap<
  readonly Level[],
  ReadonlyMap<Id, { readonly setupId: Id; readonly levelPct: number }>
>();

/** Fixtures with a level, or that of a part, outside 0 to 100 %, with one such level each. */
export const badLevelsOf = (
  plan: Plan,
): ReadonlyMap<Id, { readonly setupId: Id; readonly levelPct: number }> => {
  const list = recordsOf(plan, 'level');
  const known = badLevels.get(list);
  if (known) return known;
  const map = new Map<Id, { setupId: Id; levelPct: number }>();
  for (const l of list) {
    const levels = l.parts && l.parts.length > 0 ? l.parts.map((p) => p.levelPct) : [l.levelPct];
    const bad = levels.find((pct) => !(pct >= 0 && pct <= 100));
    if (bad !== undefined && !map.has(l.fixtureId))
      map.set(l.fixtureId, { setupId: l.setupId, levelPct: bad });
  }
  badLevels.set(list, map);
  return map;
};
