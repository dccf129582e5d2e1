import type { EngineFinding } from '../derive/findings.ts';
import type { PowerResult } from '../engines/power/index.ts';
import type { Remedy } from './types.ts';

/** Changes offered with a finding. */
export const remediesFor = (_power: PowerResult, _f: EngineFinding): readonly Remedy[] => [];
