import { compareIds, compareNatural, type Id } from '../kernel/ids.ts';
import type { ConverterKind } from '../plan/kinds/converter.ts';
import type { SourceKind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { Box, Source } from '../plan/records/index.ts';
import { recordLabel } from './labels.ts';

/** What the figures need to know of the kind of a thing that a supply begins at. */
export type RootKind = Pick<
  SourceKind,
  'name' | 'what' | 'system' | 'ratedKw' | 'ratedKva' | 'mainBreakerA' | 'surgeW' | 'inverterPct'
>;

/** A converter that makes mains out of direct current, and has no mains inlet of its own. */
export const isInverter = (kind: ConverterKind | undefined): boolean =>
  kind?.what === 'inverter' && kind.inlets.length === 0;

/**
 * The kind of a source, or of an inverter seen as one: a small power station without cells of its own, whose packs or battery
 * are not the plan's to know. Undefined for anything else.
 */
export const rootKind = (plan: Plan, id: Id): RootKind | undefined => {
  const source = recordOf(plan, 'source', id);
  if (source) return kindOf(plan, source.kindId, 'source');
  const box = recordOf(plan, 'box', id);
  const kind = box && kindOf(plan, box.kindId, 'converter');
  if (!kind || !isInverter(kind)) return undefined;
  return {
    name: kind.name,
    what: 'power-station',
    system: kind.outputSystem ?? ((kind.outputV ?? Number.NaN) < 175 ? '120' : '230'),
    ratedKw: kind.outputW / 1000,
    ratedKva: kind.ratedKva ?? kind.outputW / 1000,
    inverterPct: kind.efficiencyPct,
  };
};

/** All things a supply begins at, by label: the sources, then the inverters that stand by themselves. */
export const supplyRoots = (plan: Plan): readonly (Source | Box)[] => {
  const sorted = <T extends Source | Box>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => compareNatural(a.label, b.label) || compareIds(a.id, b.id));
  const inverters = recordsOf(plan, 'box').filter((b) => isInverter(kindOf(plan, b.kindId, 'converter')));
  return [...sorted(recordsOf(plan, 'source')), ...sorted(inverters)];
};

/** What people call a thing a supply begins at. */
export const rootLabel = (plan: Plan, id: Id): string => recordLabel(plan, plan.records.get(id));
