import type { EngineFinding } from '../../../derive/findings.ts';
import type { Computed } from '../types.ts';
import { overloads } from './overload.ts';

/** All findings of the power engine. */
export const powerFindings = (c: Computed): readonly EngineFinding[] => [...c.tree.defects, ...overloads(c)];
