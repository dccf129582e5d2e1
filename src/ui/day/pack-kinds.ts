import { useMemo } from 'react';
import type { ChargerKind, Kind, PackKind } from '../../plan/kinds/kinds.ts';
import { recordsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Kinds of one family: those of the plan first, then the book's that the plan does not hold. */
const useKinds = <K extends Kind>(is: (k: Kind) => k is K): readonly K[] => {
  const { book } = useServices();
  const list = useSessionSlice((s) => recordsOf(s.plan, 'kind'));
  return useMemo(() => {
    const own = list.filter(is);
    const ids = new Set(own.map((k) => k.id));
    return [
      ...own,
      ...book
        .kinds()
        .filter(is)
        .filter((k) => !ids.has(k.id)),
    ];
  }, [book, list, is]);
};

const isPack = (k: Kind): k is PackKind => k.family === 'pack';
const isCharger = (k: Kind): k is ChargerKind => k.family === 'charger';

export const usePackKinds = (): readonly PackKind[] => useKinds(isPack);
export const useChargerKinds = (): readonly ChargerKind[] => useKinds(isCharger);
