/** The figures of the control engine that screens and papers share. */
export {
  bandwidthKbps,
  DIP_WEIGHTS,
  dipSwitches,
  multicastGroup,
  orderFixtures,
  type PatchPlace,
  type PatchRow,
  placesOf,
  type UniverseUse,
  universeUse,
} from '../engines/control/index.ts';
