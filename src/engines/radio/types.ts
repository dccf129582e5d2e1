import type { Id } from '../../kernel/ids.ts';
import type { Spot } from './path.ts';

/** The four steps of a margin, the best first. A hint, never a promise. */
export type Verdict = 'good' | 'fair' | 'weak' | 'none';

/** What a term of a link's sum stands for. */
export type TermId =
  | 'eirp'
  | 'pattern'
  | 'gain'
  | 'free'
  | 'indoors'
  | 'ground'
  | 'wall'
  | 'opening'
  | 'setPiece'
  | 'over'
  | 'floors'
  | 'crowd'
  | 'reserve'
  | 'wifi'
  | 'sensitivity';

/** One term of a link's sum: what it adds to the margin in dB (losses are negative), and where it is from. */
export interface Term {
  readonly id: TermId;
  readonly name: string;
  readonly db: number;
  readonly from: string;
  readonly assumed: boolean;
  readonly recordId?: Id;
}

/** A stretch of the radio bands in MHz. */
export interface Band {
  readonly fromMhz: number;
  readonly toMhz: number;
}

/** Something that sends: a transmitter, a repeater, or a unit of a mesh that passes on. */
export interface Sender {
  readonly id: Id;
  readonly role: 'transmitter' | 'repeater' | 'relay';
  readonly label: string;
  readonly floorId: Id;
  readonly spot: Spot;
  /** Above its own floor. */
  readonly heightM: number;
  readonly band: Band;
  /** Middle of its band, MHz. */
  readonly fMhz: number;
  readonly eirpDbm: number;
  readonly eirpFrom: string;
  readonly eirpAssumed: boolean;
  readonly antenna: string;
  readonly facingDeg: number;
  readonly universeIds: readonly Id[];
  readonly linksMax: number | undefined;
  readonly mesh: { readonly hopsMax: number; readonly relayEirpDbm: number } | undefined;
  readonly listensToId: Id | undefined;
}

/** Something that receives: a unit, a receiver at the head of a line, or a repeater on its incoming side. */
export interface Listener {
  readonly id: Id;
  readonly what: 'fixture' | 'receiver' | 'repeater';
  readonly label: string;
  readonly floorId: Id;
  readonly spot: Spot;
  readonly heightM: number;
  readonly sensitivityDbm: number;
  readonly gainDbi: number;
  readonly from: string;
  /** Nothing is known of its receiver. */
  readonly assumed: boolean;
  /** Bands it takes; undefined where not known. */
  readonly bands: readonly Band[] | undefined;
  readonly universeIds: readonly Id[];
  /** The transmitter, repeater or receiver it is told to listen to. */
  readonly linkId: Id | undefined;
}

/** The air of a plan: what is given and what is assumed. */
export interface Air {
  readonly crowd: 'none' | 'few' | 'many';
  readonly crowdAssumed: boolean;
  readonly wifiChannels: readonly number[];
  readonly wifiAssumed: boolean;
  /** dB per decade where the plan says so. */
  readonly coefficient: number | undefined;
}

/** One way from a transmitter to a listener, over repeaters or units of a mesh where it takes them. */
export interface Link {
  readonly listenerId: Id;
  readonly senderId: Id;
  /** From the transmitter to the last sender; the sender alone where the way is straight. */
  readonly viaIds: readonly Id[];
  /** The least of all hops, dB. NaN where it cannot be computed. */
  readonly marginDb: number;
  readonly verdict: Verdict;
  /** Why it is not computed, in words. */
  readonly notComputed: string | undefined;
}
