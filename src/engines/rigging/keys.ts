import type { Id } from '../../kernel/ids.ts';

/** Figures of the stands engine that have a working. Their names end in their unit, or are a plain ratio. */
export const RIGGING_QUANTITIES = [
  'loadKg',
  'loadPct',
  'tipFactor',
  'tipPushN',
  'tipTiltDeg',
  'tipWindMps',
  'bags',
  'windN',
  'guyN',
  'counterKg',
  'cableUpMm',
] as const;

export type RiggingQuantity = (typeof RIGGING_QUANTITIES)[number];

/** Key of a figure for `explain`. These figures hold in every setup, which is written `-`. */
export const riggingKey = (quantity: RiggingQuantity, recordId: Id): string => `${quantity}@${recordId}@-`;

/** Takes a key of this engine apart; undefined for keys of others. */
export const parseRiggingKey = (
  key: string,
): { readonly quantity: RiggingQuantity; readonly recordId: Id } | undefined => {
  const at = key.indexOf('@');
  const quantity = RIGGING_QUANTITIES.find((q) => q === key.slice(0, at));
  return quantity && key.endsWith('@-') ? { quantity, recordId: key.slice(at + 1, -2) } : undefined;
};
