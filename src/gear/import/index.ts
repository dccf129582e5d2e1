export { type ImportedKind, importGdtf } from './gdtf.ts';
export { dmxInBytes, dmxValueOf } from './gdtf-values.ts';
export type { ImportOptions } from './options.ts';
