import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from './plan.ts';
import { outletsOf, waysOf } from './ports.ts';
import type { AnyRecord, PortRef } from './records/index.ts';

/** What a record is called in the user's words: `Unit 7`, `box K1`, `wall outlet W1`. */
export const recordName = (plan: Plan, record: AnyRecord | Id): string => {
  const r = typeof record === 'string' ? plan.records.get(record) : record;
  if (!r) return `something that is not in the plan (${String(record)})`;
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
        if (g.type === 'grip' && g.supports.includes(r.id)) return `stand of ${recordName(plan, g)}`;
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
      return `cable ${portName(plan, r.from)} to ${portName(plan, r.to)}`;
    case 'otherLoad':
      return `load of ${r.owner || 'someone else'}`;
    case 'measurement':
      return `measurement at ${recordName(plan, r.on.recordId)}`;
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
      return `tick on the card of ${recordName(plan, r.fixtureId)}`;
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
      return `place of the label of ${recordName(plan, r.recordId)}`;
    case 'move':
      return `place of ${recordName(plan, r.recordId)} in ${recordName(plan, r.setupId)}`;
    case 'level':
      return `level of ${recordName(plan, r.fixtureId)} in ${recordName(plan, r.setupId)}`;
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
export const portName = (plan: Plan, ref: PortRef): string => {
  const r = plan.records.get(ref.recordId);
  if (r?.type !== 'box' && r?.type !== 'source')
    return r?.type === 'outlet' ? r.label : recordName(plan, ref.recordId);
  const outlet = outletsOf(plan, r.id).find((o) => o.id === ref.portId);
  const way = outlet?.wayId === undefined ? undefined : waysOf(plan, r.id).find((w) => w.id === outlet.wayId);
  if (way) return `${r.label} way ${way.label}`;
  return outlet?.label ? `${r.label} ${outlet.label}` : r.label;
};
