import type { Kind } from '../plan/kinds/kinds.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';

/** Families of kinds in words, many of them. */
export const FAMILY_WORDS: Readonly<Record<string, string>> = {
  fixture: 'Fixtures',
  ballast: 'Ballasts',
  stand: 'Stands',
  source: 'Sources',
  box: 'Boxes',
  dimmer: 'Dimmers',
  cable: 'Cables',
  adapter: 'Adapters and tees',
  converter: 'Supplies and transformers',
  pack: 'Packs',
  charger: 'Chargers',
  transmitter: 'Transmitters',
  receiver: 'Receivers',
  repeater: 'Repeaters',
  node: 'Desks and nodes',
  dataSplitter: 'Data splitters',
  video: 'Monitors and picture links',
  dataCable: 'Data cables',
  camera: 'Cameras',
  furniture: 'Furniture',
  vehicle: 'Vehicles',
  grip: 'Frames and grip',
  rigging: 'Rigging',
};

/** What a kind draws from the mains; nothing where it draws none. */
export const loadOf = (k: Kind): LoadSpec | undefined =>
  'load' in k ? (k.load as LoadSpec | undefined) : undefined;

/** Whether a kind draws watts that nobody has given. */
export const wattsUnknown = (k: Kind): boolean => loadOf(k)?.unknown === true;
