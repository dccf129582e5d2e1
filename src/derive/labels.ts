import type { Way } from '../plan/kinds/ports.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { AnyRecord, Cable, Fixture } from '../plan/records/index.ts';

/** What people call a record: `Unit 7`, `K1`, `ballast of Unit 7`. */
export const recordLabel = (plan: Plan, r: AnyRecord | undefined): string => {
  switch (r?.type) {
    case 'fixture':
      return r.unit ? `Unit ${r.unit}` : (kindOf(plan, r.kindId)?.name ?? 'fixture');
    case 'ballast': {
      const f = recordOf(plan, 'fixture', r.fixtureId);
      return f ? `ballast of ${recordLabel(plan, f)}` : (kindOf(plan, r.kindId)?.name ?? 'ballast');
    }
    case 'source':
    case 'box':
    case 'outlet':
    case 'charger':
    case 'pack':
    case 'device':
      return r.label || (r.type === 'outlet' ? 'wall outlet' : (kindOf(plan, r.kindId)?.name ?? r.type));
    case 'cable':
      return cableLabel(plan, r);
    case 'otherLoad':
      return [r.owner || 'someone else', r.what].filter(Boolean).join(', ');
    case 'setup':
    case 'floor':
    case 'mark':
      return r.name;
    case 'universe':
      return r.name ? `universe ${r.number} (${r.name})` : `universe ${r.number}`;
    case 'kind':
      return r.name;
    case 'rigging':
      return `${kindOf(plan, r.kindId)?.name ?? 'rigging'} ${r.label}`.trim();
    case 'stand':
    case 'grip': {
      const kind = kindOf(plan, r.kindId);
      return kind ? kind.name : r.type;
    }
    default:
      return r ? r.type : 'nothing';
  }
};

/** What a unit without mains runs on, in a word: the label of its pack on the floor, `packs`, `own cells`; undefined where it takes mains. */
export const cellsWord = (plan: Plan, f: Fixture): string | undefined => {
  if (!f.onPacks) return undefined;
  if (f.packFrom) return recordOf(plan, 'pack', f.packFrom.packId)?.label || 'packs';
  return f.packs ? 'packs' : 'own cells';
};

/** A cable by its own label, else by where it goes. */
export const cableLabel = (plan: Plan, c: Cable): string => {
  if (c.label) return c.label;
  const to = plan.records.get(c.to.recordId);
  return to && to.type !== 'cable' ? `cable to ${recordLabel(plan, to)}` : 'cable';
};

/** A way by its owner: `K1 way 4`. A way that has a name keeps it: `Panel kitchen`. */
export const wayLabel = (owner: string, way: Way): string =>
  /^\d+[a-z]?$/i.test(way.label) ? `${owner} way ${way.label}` : `${owner} ${way.label || way.id}`;
