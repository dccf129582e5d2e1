import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { limitOf } from '../../../derive/limits.ts';
import { kindOf, type Plan } from '../../../plan/plan.ts';
import { rememberedEach } from '../../../plan/remembered.ts';
import type { RiggingResult } from '../figures.ts';
import { fits, offeredBy } from '../fit.ts';
import { riggingKey } from '../keys.ts';
import { type Factors, onArmKg, type StandUse } from '../model.ts';

/** Shares of a limit are compared with this much room for the last digits of a sum. */
const EPS = 1e-9;

/** Load, receiver and height of every stand that carries something. */
export const standFindings = (r: RiggingResult): readonly EngineFinding[] =>
  ofStand(r.model.plan, [...r.stands.values()], r.model.factors).flat();

const ofStand = rememberedEach((plan, use: StandUse, factors: Factors): readonly EngineFinding[] =>
  use.carried.length === 0 && use.sails.length === 0
    ? []
    : [...loadFindings(plan, use, factors), ...fitFindings(plan, use), ...heightFindings(plan, use)],
);

const idsOf = (use: StandUse): readonly string[] => [
  use.stand.id,
  ...use.carried.map((c) => c.fixture.id),
  ...use.sails.map((s) => s.grip.id),
];

const loadFindings = (plan: Plan, use: StandUse, factors: Factors): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const allowed = use.kind.ratedLoadKg * factors.loadFactor;
  if (use.loadKg > allowed * (1 + EPS))
    out.push({
      ...always('rigging-load', 'stop', use.stand.id, idsOf(use), {
        label: carriedLabel(plan, use),
        kind: use.kind.name,
        loadKg: use.loadKg,
        ratedKg: allowed,
      }),
      figure: allowed > 0 ? (100 * use.loadKg) / allowed : 1e6,
      figureKey: riggingKey('loadPct', use.stand.id),
    });
  for (const c of use.carried) {
    const rated = c.arm?.ratedLoadKg;
    const kg = onArmKg(plan, c);
    if (!c.arm || rated === undefined || !(kg > rated * factors.loadFactor * (1 + EPS))) continue;
    out.push({
      ...always('rigging-arm-load', 'stop', c.fixture.id, [c.fixture.id, use.stand.id], {
        label: recordLabel(plan, c.fixture),
        arm: c.arm.name,
        loadKg: kg,
        ratedKg: rated * factors.loadFactor,
      }),
      figure: rated > 0 ? (100 * kg) / (rated * factors.loadFactor) : 1e6,
    });
  }
  return out;
};

const fitFindings = (plan: Plan, use: StandUse): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  for (const c of use.carried) {
    const kind = kindOf(plan, c.fixture.kindId, 'fixture');
    if (fits(kind, offeredBy(use, c.accessories)) !== false || !kind) continue;
    out.push(
      always('rigging-receiver', 'warn', c.fixture.id, [c.fixture.id, use.stand.id], {
        label: recordLabel(plan, c.fixture),
        kind: use.kind.name,
        has: kind.mount.fits.join(' '),
        receives: use.kind.receives.join(' '),
      }),
    );
  }
  for (const s of use.sails) {
    const offered: readonly string[] = use.kind.receives;
    if (s.kind.fits.length === 0 || s.kind.fits.some((f) => f === 'floor' || offered.includes(f))) continue;
    out.push(
      always('rigging-receiver', 'warn', `${s.grip.id}+${use.stand.id}`, [s.grip.id, use.stand.id], {
        label: s.kind.name,
        kind: use.kind.name,
        has: s.kind.fits.join(' '),
        receives: use.kind.receives.join(' '),
      }),
    );
  }
  return out;
};

const heightFindings = (plan: Plan, use: StandUse): readonly EngineFinding[] => {
  const { heightMm } = use.stand;
  const { heightMinMm, heightMaxMm } = use.kind;
  if (heightMm >= heightMinMm - 1 && heightMm <= heightMaxMm + 1) return [];
  return [
    always('rigging-height', 'warn', use.stand.id, idsOf(use), {
      label: carriedLabel(plan, use),
      kind: use.kind.name,
      heightMm,
      minMm: heightMinMm,
      maxMm: heightMaxMm,
    }),
  ];
};

/** What a stand carries in words: `Unit 7`, `Frame, 12×12 ft`, `Unit 7 and 1 more`. */
export const carriedLabel = (plan: Plan, use: StandUse): string => {
  const names = [
    ...use.carried.map((c) => recordLabel(plan, c.fixture)),
    ...use.sails.map((s) => s.kind.name),
  ];
  const [first = use.kind.name] = names;
  return names.length > 1 ? `${first} and ${names.length - 1} more` : first;
};

/** Tip-over factor, and the slope it tips on, of every base that carries something. */
export const tipFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan, factors, bases } = r.model;
  const out: EngineFinding[] = [];
  const leastTilt = limitOf(plan, 'rigging-tilt').value;
  const most = limitOf(plan, 'rigging-bags-most').value;
  for (const base of bases) {
    const t = r.tipping.get(base.id);
    const [first] = base.uses;
    if (!t || !first || base.uses.every((u) => u.carried.length === 0 && u.sails.length === 0)) continue;
    const ids = [...new Set(base.uses.flatMap(idsOf))];
    const label = carriedLabel(plan, base.uses.find((u) => u.carried.length + u.sails.length > 0) ?? first);
    const { factor } = t.moments;
    if (factor < factors.tipFactor) {
      const guyed = base.sails.some((s) => s.grip.guys >= Math.max(2, s.kind.guys));
      out.push({
        ...always('rigging-tip', factor < 1 && !guyed ? 'stop' : 'warn', base.id, ids, {
          label,
          factor,
          wanted: factors.tipFactor,
          restoringNm: t.moments.restoringNm,
          overturningNm: t.moments.overturningNm,
          bagsNow: t.bagsNow,
          bags: t.bagsWanted,
          bagKg: factors.bagKg,
          bagsMost: most,
          stands: base.uses.length,
          guyed: guyed ? 1 : 0,
          windMps: t.pushes.length > 0 ? (factors.windMps ?? 0) : 0,
        }),
        figure: 1 / Math.max(factor, 1e-6),
        figureKey: riggingKey('tipFactor', first.stand.id),
      });
    } else if (t.tiltDeg < leastTilt)
      out.push({
        ...always('rigging-tilt', 'warn', base.id, ids, { label, tiltDeg: t.tiltDeg, least: leastTilt }),
        figure: -t.tiltDeg,
        figureKey: riggingKey('tipTiltDeg', first.stand.id),
      });
  }
  return out;
};
