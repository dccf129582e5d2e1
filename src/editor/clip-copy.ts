import type { Id } from '../kernel/ids.ts';
import { movedWith } from '../plan/edits/arrange.ts';
import { COPIED as COPIED_ASIDE } from '../plan/edits/duplicate.ts';
import { otherKindIds } from '../plan/edits/kind-refs.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';

export const FORMAT = 'lampwright-clip';

/** What can be taken from one floor to another. */
export const COPIED: readonly AnyRecord['type'][] = [
  ...COPIED_ASIDE,
  ...([
    'outlet',
    'opening',
    'dimension',
    'cable',
    'line',
    'feature',
    'crossing',
    'underlay',
    'photo',
  ] as const),
];

/** Text of pictures up to here goes along; more would choke the clipboard of some systems. */
const MOST_PICTURES = 20_000_000;

/** A selection as text that another plan, in this tab or another, can take in. */
export const clipText = (plan: Plan, ids: ReadonlySet<Id>): string => clipOf(plan, ids).text;

/** A selection as text, and how many of the selected things it leaves behind: pictures too large, what has no place. */
export const clipOf = (
  plan: Plan,
  ids: ReadonlySet<Id>,
): { readonly text: string; readonly left: readonly Id[] } => {
  const all = new Set(movedWith(plan, ids));
  for (const b of recordsOf(plan, 'ballast')) if (all.has(b.fixtureId)) all.add(b.id);
  for (const o of recordsOf(plan, 'opening')) if (all.has(o.wallId)) all.add(o.id);
  for (const c of recordsOf(plan, 'cable'))
    if (all.has(c.from.recordId) && all.has(c.to.recordId)) all.add(c.id);
  for (const l of recordsOf(plan, 'line'))
    if (all.has(l.from.recordId) && l.stops.every((s) => all.has(s))) all.add(l.id);
  const blobs = new Map<Id, AnyRecord>();
  let room = MOST_PICTURES;
  const records = [...all].flatMap((id): readonly AnyRecord[] => {
    const r = plan.records.get(id);
    if (!r || !COPIED.includes(r.type)) return [];
    if (r.type !== 'underlay' && r.type !== 'photo') return [r];
    const blob = recordOf(plan, 'blob', r.blobId);
    if (!blob) return [];
    if (!blobs.has(blob.id)) {
      if (blob.base64.length > room) return [];
      room -= blob.base64.length;
      blobs.set(blob.id, blob);
    }
    return [r];
  });
  const kindIds = new Set<string>();
  for (const r of records) {
    if ('kindId' in r && typeof r.kindId === 'string') kindIds.add(r.kindId);
    for (const id of otherKindIds(r)) kindIds.add(id);
  }
  const kinds = [...kindIds].flatMap((id) => plan.records.get(id) ?? []);
  const kept = new Set(records.map((r) => r.id));
  return {
    text: JSON.stringify({ format: FORMAT, version: 1, records: [...blobs.values(), ...kinds, ...records] }),
    left: [...ids].filter((id) => plan.records.has(id) && !kept.has(id)),
  };
};
