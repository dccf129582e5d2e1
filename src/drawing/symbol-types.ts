/** `outline` 0.5 mm, closed shapes filled with the ground; `detail` thin strokes; `solid` filled with ink. */
export type SymbolLine = 'outline' | 'detail' | 'solid';

/** A symbol as compiled: millimetres, origin at the mounting point, +x the throw. */
export interface CompiledSymbol {
  readonly id: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** minX, minY, maxX, maxY of what is drawn. */
  readonly box: readonly [number, number, number, number];
  readonly words: string;
  readonly paths: readonly { readonly line: SymbolLine; readonly d: string }[];
}
