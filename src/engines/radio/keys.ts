import type { Id } from '../../kernel/ids.ts';

/** Figures of the radio engine that have a working. */
export const RADIO_QUANTITIES = ['radioMarginDb', 'radioBackupMin'] as const;
export type RadioQuantity = (typeof RADIO_QUANTITIES)[number];

/** Key of a figure for `explain`. A margin is of a listener and a sender, a back-up time of one device. */
export const radioKey = (quantity: RadioQuantity, id: Id, senderId?: Id): string =>
  `${quantity}@${senderId === undefined ? id : `${id}/${senderId}`}@-`;

/** Takes a key of this engine apart; undefined for keys of others. */
export const parseRadioKey = (
  key: string,
): { readonly quantity: RadioQuantity; readonly id: Id; readonly senderId: Id | undefined } | undefined => {
  const at = key.indexOf('@');
  const quantity = RADIO_QUANTITIES.find((q) => q === key.slice(0, at));
  if (!quantity || !key.endsWith('@-')) return undefined;
  const [id = '', senderId] = key.slice(at + 1, -2).split('/');
  return { quantity, id, senderId };
};
