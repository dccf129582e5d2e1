import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { mates } from '../connectors.ts';
import type { CableKind } from '../kinds/kinds.ts';
import type { InletPort, OutletPort } from '../kinds/ports.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import { cablesAt, feedOf, placeOf } from '../ports.ts';
import type { Cable, PortRef } from '../records/index.ts';
import { routeBetween } from '../route.ts';
import { ensureKind } from './shared.ts';

/**
 * Runs a cable from an outlet to an inlet, in place of the feed the inlet had. Both ports must exist;
 * whether they mate is for the engines to say, so that a plan can be drawn as it is on the day.
 */
export const plug = (plan: Plan, from: PortRef, to: PortRef, kind: CableKind, newId: NewId): ChangeSet => {
  const a = placeOf(plan, from.recordId);
  const b = placeOf(plan, to.recordId);
  if (!a || !b) throw new Error('a cable needs two ends that are on a floor');
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  removeFeed(draft, feedOf(plan, to), from.recordId);
  draft.put({
    id: newId('cb'),
    type: 'cable',
    kindId: kind.id,
    from,
    to,
    route: { auto: true, points: [...routeBetween(plan, a, b)] },
    label: '',
  });
  return draft.changes();
};

/**
 * Takes a cable away for one from `nextId`, and the adapter it started from where that is one between two connectors and
 * nothing else hangs on it. The cable itself stays where it goes on as the new one.
 */
export const removeFeed = (draft: Draft, cable: Cable | undefined, nextId: Id, goesOn = false): void => {
  if (!cable) return;
  if (!goesOn) draft.remove(cable.id);
  const plan = draft.base;
  const box = recordOf(plan, 'box', cable.from.recordId);
  const what = box && kindOf(plan, box.kindId, 'adapter')?.what;
  if (!box?.plugsInto || box.locked || box.id === nextId || what !== 'adapter') return;
  if (!cablesAt(plan, box.id).every((c) => c.id === cable.id)) return;
  draft.remove(box.id);
  for (const r of plan.records.values())
    if ((r.type === 'labelPlace' || r.type === 'move') && r.recordId === box.id) draft.remove(r.id);
};

/** Takes the cable off an inlet. */
export const unplug = (plan: Plan, to: PortRef): ChangeSet => {
  const cable = feedOf(plan, to);
  return cable ? new Draft(plan).remove(cable.id).changes() : new Draft(plan).changes();
};

/**
 * The cable kinds that fit between two ports, the lightest that fits the outlet's rating first.
 * `book` gives the candidates, in its order.
 */
export const cablesThatFit = (
  outlet: Pick<OutletPort, 'connector' | 'legs'>,
  inlet: Pick<InletPort, 'connector' | 'legs'>,
  book: Iterable<CableKind>,
): readonly CableKind[] => {
  const fit: CableKind[] = [];
  for (const k of book) {
    if (mates(outlet.connector, k.plug) && mates(k.socket, inlet.connector) && k.legs >= inlet.legs)
      fit.push(k);
  }
  return fit;
};
