export interface CompiledRow {
  readonly id: string;
  readonly paths: readonly { readonly line: string; readonly commands: readonly (readonly (string | number)[])[] }[];
}
export function readSymbol(svg: string): CompiledRow['paths'];
export function compileSymbols(folder?: string): readonly CompiledRow[];
export function moduleText(symbols: readonly CompiledRow[]): string;
