import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { universeProblem } from '../address.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { recordName } from '../names.ts';
import { type Plan, recordOf } from '../plan.ts';
import { dataPortsOf } from '../ports.ts';
import { universeAt } from './universes.ts';

/**
 * Sets the universes one port of a device carries, by number; an empty list takes them away. A universe that is not in the
 * plan is added. Fails where a number is none, or the device has no such port. More than a port carries is allowed: a
 * finding shows it.
 */
export const setPortUniverses = (
  plan: Plan,
  deviceId: Id,
  portId: string,
  numbers: readonly number[],
): Result<ChangeSet> => {
  const d = recordOf(plan, 'device', deviceId);
  if (!d) return fail({ what: 'That device is not in the plan.' });
  if (d.locked) return fail({ what: `${recordName(plan, d)} is locked.`, todo: 'Unlock it first.' });
  const { dataIn, dataOut } = dataPortsOf(plan, deviceId);
  if (![...dataIn, ...dataOut].some((p) => p.id === portId))
    return fail({ what: `${recordName(plan, d)} has no port ${portId}.`, todo: 'Choose one of its ports.' });
  for (const n of numbers) {
    const problem = universeProblem(n);
    if (problem) return fail(problem);
  }
  const draft = new Draft(plan);
  const order = [...dataOut, ...dataIn].map((p) => p.id);
  const ports = [
    ...d.ports.filter((p) => p.portId !== portId),
    ...[...new Set(numbers)].map((n) => ({ portId, universeId: universeAt(plan, draft, n) })),
  ].sort((a, b) => order.indexOf(a.portId) - order.indexOf(b.portId));
  return ok(draft.put({ ...d, ports }).changes());
};

/** Reads universes as people write them: `3`, `U3`, `1, 2, 5-8`. Empty text is none. */
export const parseUniverses = (text: string): Result<readonly number[]> => {
  const out: number[] = [];
  for (const part of text.split(/[,;\s]+/).filter(Boolean)) {
    const m = /^u?(\d+)(?:\s*[-–]\s*u?(\d+))?$/i.exec(part);
    const from = m ? Number(m[1]) : Number.NaN;
    const to = m?.[2] === undefined ? from : Number(m[2]);
    const problem = Number.isNaN(from)
      ? { what: `“${part}” is not a universe.`, todo: 'Write numbers like 1, 2 or 5-8.' }
      : (universeProblem(from) ?? universeProblem(to));
    if (problem) return fail(problem);
    if (to < from || to - from > 511)
      return fail({ what: `“${part}” is not a range of universes.`, todo: 'Write the lower number first.' });
    for (let n = from; n <= to; n++) out.push(n);
  }
  return ok([...new Set(out)]);
};
