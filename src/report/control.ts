/** The figures of the control engine that screens and papers share. */
export {
  bandwidthKbps,
  DIP_WEIGHTS,
  dipSwitches,
  lineLabel,
  multicastGroup,
  type NetUniverse,
  type Network,
  type NodePort,
  type NodeRow,
  networkOf,
  orderFixtures,
  type PatchPlace,
  type PatchRow,
  placesOf,
  type UniverseUse,
  universeUse,
} from '../engines/control/index.ts';
