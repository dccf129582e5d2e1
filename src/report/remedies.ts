import type { EngineFinding } from '../derive/findings.ts';
import { recordLabel, wayLabel } from '../derive/labels.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import type { Quantity } from '../derive/types.ts';
import type { PowerResult } from '../engines/power/index.ts';
import { Draft } from '../plan/change-set.ts';
import { type Plan, planRecord, recordOf } from '../plan/plan.ts';
import { cablesAt, outletsOf, waysOf } from '../plan/ports.ts';
import type { Cable } from '../plan/records/index.ts';
import type { Remedy } from './types.ts';

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];
/** Remedies offered for one finding. */
const MOST = 2;

/**
 * Changes offered with a finding. A limit that nothing uses is taken out. For an overloaded breaker of a way: move one plug to a free outlet of another way on
 * the same box, with the same connector and legs, where both ways stay within their limits in every setup.
 * Amps are added as plain numbers, which is never too kind.
 */
export const remediesFor = (power: PowerResult, f: EngineFinding): readonly Remedy[] => {
  if (f.rule === 'plan-limit') {
    const head = planRecord(power.plan);
    const limits = head.limits.filter((l) => l.limit !== f.about);
    return [
      { label: 'Take it out of the plan', changes: new Draft(power.plan).put({ ...head, limits }).changes() },
    ];
  }
  if (f.rule !== 'power-breaker') return [];
  const way = power.tree.byKey.get(f.about);
  const limitA = way && power.limits[way.index]?.leg?.limitA;
  if (!way || limitA === undefined) return [];
  const plan = power.plan;
  const out: Remedy[] = [];
  const cables = (power.tree.children[way.index] ?? []).flatMap((i) => power.tree.nodes[i] ?? []);
  for (const node of cables) {
    const cable = node.what === 'cable' ? recordOf(plan, 'cable', node.recordId) : undefined;
    if (!cable || cable.locked || !relieves(power, way, node, limitA)) continue;
    const target = roomFor(power, way, node, cable);
    if (!target) continue;
    const moved: Cable = { ...cable, from: { ...cable.from, portId: target.portId } };
    const to = plan.records.get(cable.to.recordId);
    out.push({
      label: `Move ${to ? recordLabel(plan, to) : 'it'} to ${target.label}`,
      changes: new Draft(plan).put(moved).changes(),
    });
    if (out.length === MOST) break;
  }
  return out;
};

const mostA = (power: PowerResult, n: SupplyNode, setup: number): number =>
  Math.max(...n.legs.map((l) => power.figures.get(n.key, LEGS[l] ?? 'leg0A', setup)));

/** Whether a way is within its limit in every setup without this run. */
const relieves = (power: PowerResult, way: SupplyNode, run: SupplyNode, limitA: number): boolean =>
  power.setups.every((_, s) => {
    const rest = way.legs.map((l) => {
      const q = LEGS[l] ?? 'leg0A';
      return power.figures.get(way.key, q, s) - power.figures.get(run.key, q, s);
    });
    return Math.max(...rest) <= limitA;
  });

/** The way of the same box with most room for a run that has a free outlet for its plug. */
const roomFor = (
  power: PowerResult,
  from: SupplyNode,
  run: SupplyNode,
  cable: Cable,
): { readonly portId: string; readonly label: string } | undefined => {
  const plan = power.plan;
  const ports = outletsOf(plan, cable.from.recordId);
  const own = ports.find((p) => p.id === cable.from.portId);
  const free = freePorts(plan, cable.from.recordId);
  let best: { portId: string; label: string; room: number } | undefined;
  for (const p of ports) {
    if (!own || p.wayId === undefined || p.wayId === from.wayId || !free.has(p.id)) continue;
    if (p.connector !== own.connector || p.legs !== own.legs || p.neutral !== own.neutral) continue;
    const way = power.tree.byKey.get(`${cable.from.recordId}/${p.wayId}`);
    const limit = way && power.limits[way.index]?.leg;
    if (!way || !limit || way.notComputed !== undefined || way.legs.length !== from.legs.length) continue;
    const limitA = limit.planningA ?? limit.limitA;
    const room = Math.min(
      ...power.setups.map((_, s) => limitA - mostA(power, way, s) - mostA(power, run, s)),
    );
    if (!(room >= 0) || (best && room <= best.room)) continue;
    const record = waysOf(plan, cable.from.recordId).find((w) => w.id === p.wayId);
    const owner = recordLabel(plan, plan.records.get(cable.from.recordId));
    best = { portId: p.id, label: record ? wayLabel(owner, record) : owner, room };
  }
  return best;
};

const freePorts = (plan: Plan, recordId: string): ReadonlySet<string> => {
  const taken = new Set(
    cablesAt(plan, recordId)
      .filter((c) => c.from.recordId === recordId)
      .map((c) => c.from.portId),
  );
  return new Set(
    outletsOf(plan, recordId)
      .map((p) => p.id)
      .filter((id) => !taken.has(id)),
  );
};
