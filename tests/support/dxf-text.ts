/** Groups of a DXF file as text: code and value by turns. */
export const groups = (...pairs: readonly (number | string)[]): string => `${pairs.join('\n')}\n`;

/** A whole DXF from entity groups, with what else is asked. */
export const dxfOf = (
  entities: string,
  more: { readonly header?: string; readonly tables?: string; readonly blocks?: string } = {},
): string =>
  [
    groups(0, 'SECTION', 2, 'HEADER', ...(more.header ? [more.header.trimEnd()] : []), 0, 'ENDSEC'),
    more.tables ? groups(0, 'SECTION', 2, 'TABLES') + more.tables + groups(0, 'ENDSEC') : '',
    more.blocks ? groups(0, 'SECTION', 2, 'BLOCKS') + more.blocks + groups(0, 'ENDSEC') : '',
    groups(0, 'SECTION', 2, 'ENTITIES'),
    entities,
    groups(0, 'ENDSEC', 0, 'EOF'),
  ].join('');

export const insUnits = (n: number): string => groups(9, '$INSUNITS', 70, n);
export const lineGroups = (x1: number, y1: number, x2: number, y2: number, layer = '0'): string =>
  groups(0, 'LINE', 8, layer, 10, x1, 20, y1, 11, x2, 21, y2);
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
