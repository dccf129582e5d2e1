import { distanceMm, type Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft, noChanges } from '../change-set.ts';
import type { DataCableKind } from '../kinds/kinds.ts';
import { recordName } from '../names.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import { dataPortsOf, placeOf } from '../ports.ts';
import type { DataLine, PortRef } from '../records/index.ts';
import { ensureKind } from './shared.ts';

/** The next label no line has: `L1`, `L2` and so on. */
export const nextLineLabel = (plan: Plan): string => {
  const taken = new Set(recordsOf(plan, 'line').map((l) => l.label));
  for (let n = 1; ; n++) if (!taken.has(`L${n}`)) return `L${n}`;
};

/** Whether a thing can be a stop of a data line: a unit, control gear or a dimmer with a data input other than by radio. */
export const canStop = (plan: Plan, id: Id): boolean => {
  const r = plan.records.get(id);
  if (r?.type !== 'fixture' && r?.type !== 'device' && r?.type !== 'box') return false;
  return dataPortsOf(plan, id).dataIn.some((p) => p.connector !== 'radio');
};

const stopProblem = (plan: Plan, from: PortRef, stops: readonly Id[]) => {
  const seen = new Set<Id>([from.recordId]);
  for (const id of stops) {
    const name = recordName(plan, id);
    if (!plan.records.has(id)) return { what: 'A stop of the line is not in the plan.' };
    if (!canStop(plan, id))
      return { what: `${name} takes no data.`, todo: 'Choose a unit with control modes, or control gear.' };
    if (seen.has(id))
      return { what: `${name} is on the line already.`, todo: 'A line passes each thing once.' };
    seen.add(id);
  }
  return undefined;
};

/** Adds a data line from a port to one thing after another. Fails where one of them takes no data or comes twice. */
export const addLine = (
  plan: Plan,
  from: PortRef,
  stops: readonly Id[],
  newId: NewId,
  kind?: DataCableKind,
): Result<{ readonly changes: ChangeSet; readonly line: DataLine }> => {
  const { dataIn, dataOut } = dataPortsOf(plan, from.recordId);
  if (![...dataIn, ...dataOut].some((p) => p.id === from.portId))
    return fail({
      what: `${recordName(plan, from.recordId)} has no such data port.`,
      todo: 'Start from a desk, node, splitter, receiver or a unit’s through.',
    });
  if (stops.length === 0)
    return fail({ what: 'The line leads nowhere.', todo: 'Press on what it reaches, in order.' });
  const problem = stopProblem(plan, from, stops);
  if (problem) return fail(problem);
  const line: DataLine = {
    id: newId('ln'),
    type: 'line',
    label: nextLineLabel(plan),
    from,
    stops: [...stops],
    routes: [],
    terminated: false,
    ...(kind ? { kindId: kind.id } : {}),
  };
  const draft = new Draft(plan);
  if (kind) ensureKind(draft, kind);
  return ok({ changes: draft.put(line).changes(), line });
};

/** Ends of the hop that leads to a stop: what it starts from and what it reaches. */
const hopEnds = (l: DataLine, hop: number): string =>
  `${hop === 0 ? l.from.recordId : (l.stops[hop - 1] ?? '')}>${l.stops[hop] ?? ''}`;

/** A line with other stops; hops that still join the same two things keep the way they were laid by hand. */
export const withStops = (l: DataLine, stops: readonly Id[], from: PortRef = l.from): DataLine => {
  const own = new Map(l.routes.map((r) => [hopEnds(l, r.hop), r.points]));
  const next: DataLine = { ...l, from, stops: [...stops] };
  const routes = stops.flatMap((_, hop) => {
    const points = own.get(hopEnds(next, hop));
    return points ? [{ hop, points }] : [];
  });
  return { ...next, routes };
};

/** Sets the stops of a line in their order. A line without any goes. Fails where one takes no data or comes twice. */
export const setStops = (plan: Plan, lineId: Id, stops: readonly Id[]): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  if (!l) return fail({ what: 'That line is not in the plan.' });
  if (l.locked) return fail({ what: `${recordName(plan, l)} is locked.`, todo: 'Unlock it first.' });
  if (stops.length === 0) return ok(new Draft(plan).remove(lineId).changes());
  const problem = stopProblem(
    plan,
    l.from,
    stops.filter((s) => !l.stops.includes(s) || stops.filter((x) => x === s).length > 1),
  );
  return problem ? fail(problem) : ok(new Draft(plan).put(withStops(l, stops)).changes());
};

/** Moves a stop of a line so many places on (or back). */
export const moveStop = (plan: Plan, lineId: Id, index: number, by: number): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  const id = l?.stops[index];
  if (!l || id === undefined) return fail({ what: 'That stop is not on the line.' });
  const to = Math.max(0, Math.min(l.stops.length - 1, index + by));
  const rest = l.stops.filter((_, i) => i !== index);
  return setStops(plan, lineId, [...rest.slice(0, to), id, ...rest.slice(to)]);
};

/** Puts a thing into a line before the stop at `index`; at the end where that is past the last. */
export const insertStop = (plan: Plan, lineId: Id, index: number, id: Id): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  if (!l) return fail({ what: 'That line is not in the plan.' });
  return setStops(plan, lineId, [...l.stops.slice(0, index), id, ...l.stops.slice(index)]);
};

/** Starts a line from another port; the way of its first hop is found anew where it starts elsewhere. */
export const setStart = (plan: Plan, lineId: Id, from: PortRef): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  if (!l) return fail({ what: 'That line is not in the plan.' });
  const stops = l.stops.filter((s) => s !== from.recordId);
  if (stops.length === 0) return fail({ what: 'A line cannot lead back to where it starts.' });
  return ok(new Draft(plan).put(withStops(l, stops, from)).changes());
};

/** Lays the hop to a stop by hand along corners; those in a straight line are left out. */
export const setHopRoute = (plan: Plan, lineId: Id, hop: number, points: readonly Point[]): ChangeSet => {
  const l = recordOf(plan, 'line', lineId);
  const from = l && placeOf(plan, hop === 0 ? l.from.recordId : (l.stops[hop - 1] ?? ''))?.at;
  const to = l && placeOf(plan, l.stops[hop] ?? '')?.at;
  if (!l || l.locked || !from || !to) return noChanges;
  const all = [from, ...points, to];
  const kept = points.filter((p, i) => {
    const [a, c] = [all[i], all[i + 2]];
    if (!a || !c) return true;
    const bend = Math.abs((p.xMm - a.xMm) * (c.yMm - a.yMm) - (p.yMm - a.yMm) * (c.xMm - a.xMm));
    return distanceMm(a, p) > 1 && bend / Math.max(1, distanceMm(a, c)) > 5;
  });
  const others = l.routes.filter((r) => r.hop !== hop);
  const routes = [...others, { hop, points: [...kept] }].sort((a, b) => a.hop - b.hop);
  return new Draft(plan).put({ ...l, routes }).changes();
};

/** Lets hops of a line find their own way again: one of them, or all. */
export const letHop = (plan: Plan, lineId: Id, hop?: number): ChangeSet => {
  const l = recordOf(plan, 'line', lineId);
  if (!l || l.locked || l.routes.length === 0) return noChanges;
  const routes = hop === undefined ? [] : l.routes.filter((r) => r.hop !== hop);
  return new Draft(plan).put({ ...l, routes }).changes();
};

/** Lays a line in a kind of data cable, or in none said. Fails where its ends are not those of the port. */
export const setLineKind = (plan: Plan, lineId: Id, kind: DataCableKind | undefined): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  if (!l) return fail({ what: 'That line is not in the plan.' });
  const { kindId: _, ...rest } = l;
  const draft = new Draft(plan);
  if (!kind) return ok(draft.put(rest).changes());
  const { dataIn, dataOut } = dataPortsOf(plan, l.from.recordId);
  const port = [...dataOut, ...dataIn].find((p) => p.id === l.from.portId);
  if (port && port.connector !== kind.connector)
    return fail({ what: `${kind.name} does not fit the port the line starts from.` });
  ensureKind(draft, kind);
  return ok(draft.put({ ...l, kindId: kind.id }).changes());
};

/** What of a line can be changed besides its way. `undefined` takes a value away. */
export interface LineChange {
  readonly label?: string;
  readonly terminated?: boolean;
  readonly remote?: boolean;
  readonly slackPct?: number | undefined;
}

/** Changes a line. Fails where slack is below nothing. */
export const changeLine = (plan: Plan, lineId: Id, change: LineChange): Result<ChangeSet> => {
  const l = recordOf(plan, 'line', lineId);
  if (!l) return fail({ what: 'That line is not in the plan.' });
  if (change.slackPct !== undefined && !(change.slackPct >= 0 && change.slackPct <= 200))
    return fail({ what: `${change.slackPct} % is no slack.`, todo: 'Write 0 to 200 %.' });
  const next: Record<string, unknown> = { ...l };
  for (const [key, value] of Object.entries(change))
    if (value === undefined) delete next[key];
    else next[key] = value;
  return ok(new Draft(plan).put(next as DataLine).changes());
};
