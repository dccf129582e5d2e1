import { cableCrossings } from '../../derive/crossings.ts';
import { always, type EngineFinding } from '../../derive/findings.ts';
import { distanceTo } from '../../derive/outdoors.ts';
import { overheadLimit } from '../../derive/overhead.ts';
import { distanceMm, nearestOnSegment, type Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import type { Feature, Opening } from '../../plan/records/index.ts';
import { whateverChangesIn } from '../../plan/remembered.ts';
import { type Standing, standingOf } from './standing.ts';

const NAMED = 3;

/** The first few by name, and how many more. */
const names = (list: readonly string[]): string => {
  const unique = [...new Set(list)];
  const more = unique.length - NAMED;
  return `${unique.slice(0, NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
};

const nameOf = (f: Feature): string =>
  f.label || (f.what === 'exit' ? 'an exit' : `a ${f.what.replace('-', ' ')}`);

/** Gear in exits and fire lanes. */
const clearFindings = (plan: Plan, all: readonly Standing[]): readonly EngineFinding[] =>
  recordsOf(plan, 'feature').flatMap((f) => {
    if (f.what !== 'exit' && f.what !== 'fire-lane') return [];
    const inIt = all.filter(
      (s) => s.onFloor && s.floorId === f.floorId && distanceTo(f, s.at) < s.radiusMm + 1e-6,
    );
    if (inIt.length === 0) return [];
    return [
      always('site-clear', 'stop', f.id, [f.id, ...inIt.map((s) => s.id)], {
        label: nameOf(f),
        what: f.what,
        count: inIt.length,
        names: names(inIt.map((s) => s.label)),
        figure: inIt.length,
      }),
    ];
  });

/** Cables across ways that stay open, with nothing that takes them there. */
const crossingFindings = (plan: Plan): readonly EngineFinding[] => {
  const open = new Map<Id, { readonly over: Feature | Opening; readonly cables: Set<Id> }>();
  for (const c of cableCrossings(plan)) {
    if (c.crossing) continue;
    const entry = open.get(c.over.id) ?? { over: c.over, cables: new Set<Id>() };
    entry.cables.add(c.cableId);
    open.set(c.over.id, entry);
  }
  return [...open.values()].map(({ over, cables }) => {
    const ids = [over.id, ...cables];
    const params = { count: cables.size, figure: cables.size };
    return over.type === 'opening'
      ? always('site-door', 'note', over.id, ids, { ...params, label: `a ${over.what}` })
      : always('site-crossing', 'warn', over.id, ids, { ...params, label: nameOf(over), what: over.what });
  });
};

const toLine = (f: Feature, p: Point): number => {
  const [only] = f.points;
  if (f.points.length === 1 && only) return distanceMm(only, p);
  return f.points
    .slice(1)
    .reduce((d, b, i) => Math.min(d, distanceMm(nearestOnSegment(p, f.points[i] ?? b, b).at, p)), Infinity);
};

/** Distance from the top of a thing to the lowest wire. Millimetres. */
const gap = (sideMm: number, wireMm: number, topMm: number): number =>
  topMm >= wireMm ? sideMm : Math.hypot(sideMm, wireMm - topMm);

/** Gear near overhead power lines. */
const overheadFindings = (plan: Plan, all: readonly Standing[]): readonly EngineFinding[] =>
  recordsOf(plan, 'feature').flatMap((f) => {
    if (f.what !== 'power-line') return [];
    const { needMm, toTheSide, limit } = overheadLimit(plan, f.voltsV);
    const here = all
      .filter((s) => s.floorId === f.floorId)
      .map((s) => ({ s, sideMm: Math.max(0, toLine(f, s.at) - s.radiusMm) }));
    const base = { label: nameOf(f), needMm, limit: limit.id, volts: f.voltsV ?? 0, wireMm: f.heightMm };
    const tell = (
      rule: string,
      severity: EngineFinding['severity'],
      near: readonly { readonly s: Standing; readonly gapMm: number }[],
    ): readonly EngineFinding[] => {
      const [worst] = [...near].sort((a, b) => a.gapMm - b.gapMm);
      if (!worst) return [];
      return [
        always(rule, severity, f.id, [f.id, ...near.map((n) => n.s.id)], {
          ...base,
          names: names(near.map((n) => n.s.label)),
          count: near.length,
          gapMm: worst.gapMm,
          worst: worst.s.label,
          topMm: rule === 'site-overhead-reach' ? worst.s.mostTopMm : worst.s.topMm,
          figure: Math.round(needMm - worst.gapMm),
        }),
      ];
    };
    if (!(f.heightMm > 0) && !toTheSide) {
      const near = here.filter((x) => x.sideMm < needMm).map((x) => ({ s: x.s, gapMm: x.sideMm }));
      return tell('site-overhead-unknown', 'warn', near);
    }
    const now = here.map((x) => ({
      s: x.s,
      gapMm: toTheSide ? x.sideMm : gap(x.sideMm, f.heightMm, x.s.topMm),
    }));
    const inside = now.filter((n) => n.gapMm < needMm);
    const could = toTheSide
      ? []
      : here
          .map((x) => ({ s: x.s, gapMm: gap(x.sideMm, f.heightMm, x.s.mostTopMm) }))
          .filter((n) => n.gapMm < needMm && !inside.some((i) => i.s.id === n.s.id));
    return [...tell('site-overhead', 'stop', inside), ...tell('site-overhead-reach', 'warn', could)];
  });

/** Types the findings do not look at. */
const NOT_LOOKED_AT = [
  'level',
  'setup',
  'block',
  'tick',
  'acknowledgement',
  'issue',
  'line',
  'universe',
] as const;

/** What is wrong or worth knowing with gear and cables where people pass and under overhead lines. */
export const siteFindings = whateverChangesIn(NOT_LOOKED_AT, (plan): readonly EngineFinding[] => {
  if (recordsOf(plan, 'feature').length === 0) return crossingFindings(plan);
  const all = standingOf(plan);
  return [...clearFindings(plan, all), ...overheadFindings(plan, all), ...crossingFindings(plan)];
});
