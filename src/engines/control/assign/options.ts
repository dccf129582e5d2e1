import type { Id } from '../../../kernel/ids.ts';
import type { Order } from './order.ts';

/**
 * What fixtures have in common that keeps them in one universe, or gives them universes of their own. `line` is the data line
 * that reaches them, or the transmitter their radio link is with.
 */
export type Common = 'nothing' | 'group' | 'kind' | 'floor' | 'rigging' | 'link' | 'line';

export const ORDERS: readonly Order[] = ['unit', 'channel', 'left-right', 'top-bottom', 'path', 'line'];

export interface AssignOptions {
  /** Fixtures that get addresses; all that take control data where absent. */
  readonly fixtureIds?: ReadonlySet<Id> | undefined;
  readonly order: Order;
  /** Where the first one goes. */
  readonly start: { readonly universe: number; readonly address: number };
  /** Addresses are 1 and then every so many slots on; 1 for any. */
  readonly step: number;
  /** Slots left free after each fixture, and at the end of each universe. */
  readonly gapSlots: number;
  readonly spareSlots: number;
  /** Fixtures that have an address keep it. Locked ones keep it in any case. */
  readonly keepPatched: boolean;
  readonly together: Common;
  readonly ownUniverse: Common;
  /** As few universes as can be found, in place of one behind the other. */
  readonly fewest: boolean;
  /** Units of several parts fill a universe to its end and go on in the next. Those no universe holds are parted in any case. */
  readonly part: boolean;
  /** Channels are numbered anew in this order from here on; left alone where absent. */
  readonly channelsFrom?: number | undefined;
}

export const DEFAULT_ASSIGN: AssignOptions = {
  order: 'unit',
  start: { universe: 1, address: 1 },
  step: 1,
  gapSlots: 0,
  spareSlots: 0,
  keepPatched: false,
  together: 'nothing',
  ownUniverse: 'nothing',
  fewest: false,
  part: false,
};
