import type { DisplayItem } from '../drawing/display-list.ts';
import type { Id } from '../kernel/ids.ts';
import type { SpotChoice } from '../report/radio.ts';

/** A coverage picture as last made, and what it was made for. */
export interface RadioPicture {
  readonly floorId: Id;
  readonly items: readonly DisplayItem[];
  readonly senderIds: readonly Id[];
  readonly heightM: number;
  readonly sensitivityDbm: number;
}

/** What the coverage picture is wanted of, the picture, and the places found for transmitters. */
export interface RadioView {
  /** One sender; absent: the best of all that carry the universe, or of all. */
  readonly senderId: Id | undefined;
  readonly universeId: Id | undefined;
  readonly picture: RadioPicture | undefined;
  readonly spots: { readonly floorId: Id; readonly choices: readonly SpotChoice[] } | undefined;
}

export const NO_RADIO: RadioView = {
  senderId: undefined,
  universeId: undefined,
  picture: undefined,
  spots: undefined,
};
