import { recordLabel } from '../derive/labels.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import type { DcPort } from '../plan/kinds/pack.ts';
import { kindOf, type Plan, recordsOf } from '../plan/plan.ts';
import type { Fixture, FloorPack } from '../plan/records/index.ts';

/** A pack on the floor with what hangs on it and what could still be plugged in. */
export interface FloorPackRow {
  readonly record: FloorPack;
  /** `P1`. */
  readonly label: string;
  readonly kindName: string;
  /** Its outlets, one of each joined pack; empty where its kind names none. */
  readonly outlets: readonly DcPort[];
  readonly fed: readonly { readonly id: Id; readonly label: string; readonly outletId: string | undefined }[];
  /** Outlets without a lead; undefined where its kind names none. Less than 0: more leads than outlets. */
  readonly left: number | undefined;
}

/** Packs on the floor by label, those that feed nothing yet among them. Packs in a row have their outlets once, side by side each its own. */
export const floorPackRows = (plan: Plan): readonly FloorPackRow[] =>
  recordsOf(plan, 'pack')
    .map((record): FloorPackRow => {
      const kind = kindOf(plan, record.kindId, 'pack');
      const each = record.joined === 'series' ? 1 : Math.max(1, record.count);
      const outlets = Array.from({ length: each }, () => kind?.dcOut ?? []).flat();
      const fed = recordsOf(plan, 'fixture')
        .filter((f) => f.onPacks && f.packFrom?.packId === record.id)
        .map((f) => ({ id: f.id, label: recordLabel(plan, f), outletId: f.packFrom?.outletId }))
        .sort((a, b) => compareNatural(a.label, b.label));
      return {
        record,
        label: recordLabel(plan, record),
        kindName: kind?.name ?? 'kind not in the plan',
        outlets,
        fed,
        left: outlets.length > 0 ? outlets.length - fed.length : undefined,
      };
    })
    .sort((a, b) => compareNatural(a.label, b.label));

/** How many outlets remain, in words: `2 outlets left`, `1 lead too many`. */
export const outletsLeft = (p: Pick<FloorPackRow, 'left'>): string => {
  if (p.left === undefined) return 'outlets not known';
  if (p.left < 0) return `${-p.left} ${p.left === -1 ? 'lead' : 'leads'} too many`;
  if (p.left === 0) return 'no outlet left';
  return `${p.left} ${p.left === 1 ? 'outlet' : 'outlets'} left`;
};

/** What a unit off the mains runs on, in words: `P1, Pack, block, 750 Wh`, `2 × Pack …`, `own cells`. */
export const runsOnWords = (plan: Plan, f: Fixture): string => {
  const shared = f.packFrom && floorPackRows(plan).find((p) => p.record.id === f.packFrom?.packId);
  if (f.packFrom) return shared ? `${shared.label}, ${shared.kindName}` : 'a pack that is gone';
  const pack = f.packs && kindOf(plan, f.packs.kindId, 'pack');
  if (f.packs && pack) return `${f.packs.count} × ${pack.name}`;
  return kindOf(plan, f.kindId, 'fixture')?.ownCellsWh
    ? 'own cells'
    : 'packs, not chosen yet: see Day, Packs';
};
