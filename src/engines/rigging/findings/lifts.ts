import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { cableLength } from '../../../derive/lengths.ts';
import { recordsOf } from '../../../plan/plan.ts';
import type { RiggingResult } from '../figures.ts';
import { riggingKey } from '../keys.ts';
import { isLift, type RiggingUse } from '../lifts.ts';

/** Tube, points, lifts and cranes against their load, people, reach, wind and operator. */
export const liftFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  for (const use of r.rigging.values()) {
    out.push(...loads(r, use));
    if (isLift(use.kind)) out.push(...places(r, use), ...cables(r, use));
  }
  return out;
};

const loads = (r: RiggingResult, use: RiggingUse): readonly EngineFinding[] => {
  const { plan, factors } = r.model;
  const { rigging, kind } = use;
  const label = recordLabel(plan, rigging);
  const ids = [rigging.id, ...use.fixtures.map((f) => f.id), ...use.grips.map((g) => g.id)];
  const params = {
    label,
    loadKg: use.loadKg,
    gearKg: use.gearKg,
    peopleKg: use.peopleKg,
    people: rigging.people,
  };
  const out: EngineFinding[] = [];
  if (use.ratedKg === undefined) {
    if (ids.length > 1) out.push(always('rigging-rating', 'note', rigging.id, ids, params));
  } else if (use.loadKg > use.ratedKg * factors.loadFactor * (1 + 1e-9))
    out.push({
      ...always('rigging-hung-load', 'stop', rigging.id, ids, {
        ...params,
        ratedKg: use.ratedKg * factors.loadFactor,
      }),
      figure: use.ratedKg > 0 ? (100 * use.loadKg) / use.ratedKg : 1e6,
      figureKey: riggingKey('loadPct', rigging.id),
    });
  if (kind.people !== undefined && rigging.people > kind.people)
    out.push({
      ...always('rigging-people', 'stop', rigging.id, [rigging.id], {
        label,
        people: rigging.people,
        most: kind.people,
      }),
      figure: rigging.people,
    });
  return out;
};

const places = (r: RiggingResult, { rigging, kind }: RiggingUse): readonly EngineFinding[] => {
  const { plan, factors } = r.model;
  const label = recordLabel(plan, rigging);
  const out: EngineFinding[] = [];
  const tooHigh = kind.heightMaxMm !== undefined && rigging.heightMm > kind.heightMaxMm + 1;
  const tooFar = (rigging.reachMm ?? 0) > (kind.reachMm ?? 0) + 1;
  if (tooHigh || tooFar)
    out.push(
      always('rigging-reach', 'warn', rigging.id, [rigging.id], {
        label,
        heightMm: rigging.heightMm,
        reachMm: rigging.reachMm ?? 0,
        maxHeightMm: kind.heightMaxMm ?? Number.NaN,
        maxReachMm: kind.reachMm ?? 0,
      }),
    );
  if (kind.windLimitMps !== undefined && factors.windMps !== undefined && factors.windMps > kind.windLimitMps)
    out.push({
      ...always('rigging-lift-wind', 'stop', rigging.id, [rigging.id], {
        label,
        windMps: factors.windMps,
        limitMps: kind.windLimitMps,
      }),
      figure: factors.windMps,
    });
  if (rigging.operator.trim() === '')
    out.push(
      always('rigging-operator', 'note', rigging.id, [rigging.id], { label, operator: kind.operator ?? '' }),
    );
  return out;
};

/** Cables to gear up a lift: the plan counts the plain height, the arm is longer where it leans out. */
const cables = (r: RiggingResult, use: RiggingUse): readonly EngineFinding[] => {
  const { plan } = r.model;
  const moreMm = use.cableUpMm - Math.max(0, use.rigging.heightMm);
  if (!(moreMm > 1)) return [];
  const up = new Map(use.fixtures.map((f) => [f.id, f]));
  return recordsOf(plan, 'cable').flatMap((c) => {
    const fixture = up.get(c.to.recordId);
    const length = fixture && cableLength(plan, c);
    if (!fixture || !length || length.piecesMm.length === 0) return [];
    const needMm = length.neededMm + moreMm;
    if (length.totalMm >= needMm) return [];
    return [
      {
        ...always('rigging-cable-up', 'warn', c.id, [c.id, fixture.id, use.rigging.id], {
          label: recordLabel(plan, fixture),
          rigging: recordLabel(plan, use.rigging),
          totalMm: length.totalMm,
          needMm,
          upMm: use.cableUpMm,
        }),
        figure: needMm - length.totalMm,
        figureKey: riggingKey('cableUpMm', use.rigging.id),
      },
    ];
  });
};
