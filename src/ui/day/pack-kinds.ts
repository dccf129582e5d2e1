import { useMemo } from 'react';
import type { ChargerKind, ConverterKind, Kind, PackKind } from '../../plan/kinds/kinds.ts';
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

/** Converters that packs can feed: those with plates or a direct-current input, inverters among them. */
const isPackConverter = (k: Kind): k is ConverterKind =>
  k.family === 'converter' &&
  (k.plates.length > 0 || k.dcIn.length > 0) &&
  ['dc-dc', 'inverter', 'plate-adapter'].includes(k.what);

export const useConverterKinds = (): readonly ConverterKind[] => useKinds(isPackConverter);
