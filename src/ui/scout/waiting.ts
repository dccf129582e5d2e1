import type { DxfDrawing } from '../../import/dxf/dxf.ts';
import type { DrawingUnit } from '../../import/dxf/units.ts';

/** Line work that does not say its unit waits for it. */
export interface WaitingLines {
  readonly name: string;
  readonly drawing: DxfDrawing;
  readonly unit: DrawingUnit;
}
