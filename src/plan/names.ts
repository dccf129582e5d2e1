import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from './plan.ts';
import { outletsOf, waysOf } from './ports.ts';
import type { AnyRecord, PortRef } from './records/index.ts';

/** What a record is called in the user's words: `Unit 7`, `box K1`, `wall outlet W1`. */
export const recordName = (plan: Plan, record: AnyRecord | Id): string => nameOf(plan, record, 0);

/** Names are made of the names of others this far: records of a torn plan may lead back to themselves. */
const DEEPEST = 4;

const nameOf = (plan: Plan, record: AnyRecord | Id, depth: number): string => {
  const r = typeof record === 'string' ? plan.records.get(record) : record;
  if (!r) return `something that is not in the plan (${String(record)})`;
  if (depth > DEEPEST) return 'something that leads back to itself';
  const of = (id: Id): string => nameOf(plan, id, depth + 1);
  switch (r.type) {
    case 'plan':
      return 'the plan';
    case 'floor':
      return `floor ${r.name}`;
    case 'fixture':
      return `unit ${r.unit}`;
    case 'ballast': {
      const head = recordOf(plan, 'fixture', r.fixtureId);
      return head ? `ballast of unit ${head.unit}` : 'a ballast without its unit';
    }
    case 'stand': {
      for (const f of plan.records.values()) {
        if (f.type === 'fixture' && f.support.on === 'stand' && f.support.standId === r.id) {
          return `stand of unit ${f.unit}`;
        }
      }
      for (const g of plan.records.values())
        if (g.type === 'grip' && g.supports.includes(r.id)) return `stand of ${of(g.id)}`;
      return 'an empty stand';
    }
    case 'grip':
      return recordOf(plan, 'kind', r.kindId)?.name ?? 'grip gear';
    case 'rigging':
      return `${recordOf(plan, 'kind', r.kindId)?.name ?? 'rigging'} ${r.label}`.trim();
    case 'source':
      return `source ${r.label}`;
    case 'box':
      return `box ${r.label}`;
    case 'outlet':
      return `wall outlet ${r.label}`;
    case 'cable':
      return `cable ${portAt(plan, r.from, depth + 1)} to ${portAt(plan, r.to, depth + 1)}`;
    case 'otherLoad':
      return `load of ${r.owner || 'someone else'}`;
    case 'measurement':
      return `measurement at ${of(r.on.recordId)}`;
    case 'mark':
      return `mark ${r.name}`;
    case 'dimension':
      return 'a dimension line';
    case 'wall':
      return 'a wall';
    case 'opening':
      return `a ${r.what}`;
    case 'setPiece':
      return r.label ? `set piece ${r.label}` : 'a set piece';
    case 'setup':
      return `setup ${r.name}`;
    case 'block':
      return `${r.what} of day ${r.day}${r.label ? `, ${r.label}` : ''}`;
    case 'stock':
      return `stock of ${recordOf(plan, 'kind', r.kindId)?.name ?? 'packs'}`;
    case 'charger':
      return `charger ${r.label}`;
    case 'pack':
      return `pack ${r.label}`;
    case 'device':
      return `${recordOf(plan, 'kind', r.kindId)?.name ?? 'control gear'} ${r.label}`.trim();
    case 'line':
      return r.label ? `data line ${r.label}` : 'a data line';
    case 'tick':
      return `tick on the card of ${of(r.fixtureId)}`;
    case 'underlay':
      return `underlay ${r.name}`;
    case 'photo':
      return r.label || r.caption ? `photo ${r.label || r.caption}` : 'a photo';
    case 'feature':
      return `${r.what.replace('-', ' ')} ${r.label}`.trim();
    case 'crossing':
      return r.how === 'ramp' ? 'a cable ramp' : 'a flown cable crossing';
    case 'blob':
      return 'a stored picture or part';
    case 'view':
      return `view ${r.name}`;
    case 'labelPlace':
      return `place of the label of ${of(r.recordId)}`;
    case 'move':
      return `place of ${of(r.recordId)} in ${of(r.setupId)}`;
    case 'level':
      return `level of ${of(r.fixtureId)} in ${of(r.setupId)}`;
    case 'universe':
      return `universe ${r.number}`;
    case 'kind':
      return `kind ${r.name}`;
    case 'acknowledgement':
      return `acknowledgement by ${r.who}`;
    case 'issue':
      return `issue ${r.revision}`;
  }
};

/** A port in the user's words: `K1 way 4`, `W1`, `unit 7`. */
export const portName = (plan: Plan, ref: PortRef): string => portAt(plan, ref, 0);

const portAt = (plan: Plan, ref: PortRef, depth: number): string => {
  const r = plan.records.get(ref.recordId);
  if (r?.type !== 'box' && r?.type !== 'source')
    return r?.type === 'outlet' ? r.label : nameOf(plan, ref.recordId, depth);
  const outlet = outletsOf(plan, r.id).find((o) => o.id === ref.portId);
  const way = outlet?.wayId === undefined ? undefined : waysOf(plan, r.id).find((w) => w.id === outlet.wayId);
  if (way) return `${r.label} way ${way.label}`;
  return outlet?.label ? `${r.label} ${outlet.label}` : r.label;
};
