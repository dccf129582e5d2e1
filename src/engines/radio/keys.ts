import type { Id } from '../../kernel/ids.ts';

/** Figures of the radio engine that have a working. */
export const RADIO_QUANTITIES = ['radioMarginDb', 'radioBackupMin'] as const;
export type RadioQuantity = (typeof RADIO_QUANTITIES)[number];

/** What stands for every setup in a key. */
const EVERY = '-';

/**
 * Key of a figure for `explain`. A margin is of a listener and a sender, in one setup where things stand elsewhere in it;
 * a back-up time is of one device.
 */
export const radioKey = (quantity: RadioQuantity, id: Id, senderId?: Id, setupId?: Id): string =>
  `${quantity}@${senderId === undefined ? id : `${id}/${senderId}`}@${setupId ?? EVERY}`;

/** Takes a key of this engine apart; undefined for keys of others. */
export const parseRadioKey = (
  key: string,
):
  | {
      readonly quantity: RadioQuantity;
      readonly id: Id;
      readonly senderId: Id | undefined;
      readonly setupId: Id | undefined;
    }
  | undefined => {
  const [name, thing = '', setup] = key.split('@');
  const quantity = RADIO_QUANTITIES.find((q) => q === name);
  if (!quantity || setup === undefined) return undefined;
  const [id = '', senderId] = thing.split('/');
  return { quantity, id, senderId, setupId: setup === EVERY ? undefined : setup };
};
