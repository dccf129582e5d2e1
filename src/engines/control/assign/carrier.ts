import { deviceKind, isWire, startPort } from '../../../derive/data-lines.ts';
import { dataNet, portUniverses } from '../../../derive/data-net.ts';
import type { Id } from '../../../kernel/ids.ts';
import { type Plan, recordOf, recordsOf } from '../../../plan/plan.ts';
import type { Fixture } from '../../../plan/records/index.ts';

/** The line or transmitter that brings a unit its data, and the number of the first universe it carries. */
export interface Carrier {
  readonly id: Id;
  readonly home: number | undefined;
}

const lowest = (plan: Plan, ids: Iterable<Id>): number | undefined => {
  const numbers = [...ids]
    .map((id) => recordOf(plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined);
  return numbers.length > 0 ? Math.min(...numbers) : undefined;
};

/** What brings a unit its data, a line before a transmitter; undefined where neither is drawn. */
export const carrierOf = (plan: Plan, f: Fixture): Carrier | undefined => {
  const net = dataNet(plan);
  const line = (net.into.get(f.id) ?? []).find((l) => isWire(startPort(plan, l)?.connector ?? 'xlr-5'));
  if (line) return { id: line.id, home: lowest(plan, net.carried.get(line.id)?.universes ?? []) };
  const plugged = recordsOf(plan, 'device').find((d) => d.fixtureId === f.id);
  const linked = f.link === 'radio' && f.linkId !== undefined ? recordOf(plan, 'device', f.linkId) : plugged;
  const receiver = linked && deviceKind(plan, linked.id)?.family === 'receiver';
  const sender =
    receiver && linked.listensToId !== undefined ? recordOf(plan, 'device', linked.listensToId) : linked;
  return sender && { id: sender.id, home: lowest(plan, portUniverses(sender)) };
};
