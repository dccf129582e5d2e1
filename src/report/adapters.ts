import type { NewId } from '../kernel/ids.ts';
import { bridges, plugByBridge } from '../plan/edits/adapters.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { CableKind, Kind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import { inletsOf, outletsOf, placeOf } from '../plan/ports.ts';
import type { Finding, Remedy } from './types.ts';

/** Ways offered for one joint. */
const MOST = 3;

/**
 * What makes a joint fit that does not: another cable, or an adapter in the outlet and a cable, of the kinds given. Each is a
 * change that can be taken; none where the finding is about something else or the book has nothing that fits.
 */
export const mateRemedies = (
  plan: Plan,
  f: Pick<Finding, 'rule' | 'recordIds'>,
  book: readonly Kind[],
  newId: NewId,
): readonly Remedy[] => {
  const cable = f.rule === 'power-mate' ? recordOf(plan, 'cable', f.recordIds[0] ?? '') : undefined;
  if (!cable || cable.locked) return [];
  const outlet = outletsOf(plan, cable.from.recordId).find((o) => o.id === cable.from.portId);
  const inlet = inletsOf(plan, cable.to.recordId).find((i) => i.id === cable.to.portId);
  if (!outlet || !inlet || !placeOf(plan, cable.from.recordId) || !placeOf(plan, cable.to.recordId))
    return [];
  const cables = book.filter((k): k is CableKind => k.family === 'cable');
  const adapters = book.filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data');
  return bridges(outlet, inlet, cables, adapters, kindOf(plan, cable.kindId, 'cable'))
    .slice(0, MOST)
    .map((b) => ({
      label: b.adapter
        ? `Put in ${lower(b.adapter.name)}, and ${lower(b.cable.name)}`
        : `Use ${lower(b.cable.name)}`,
      changes: plugByBridge(plan, cable.from, cable.to, b, newId),
    }));
};

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
