import type { Outlet } from './records/index.ts';

/** Household connectors whose wall plates mostly have two sockets. Common practice, no published source. */
const IN_PAIRS: ReadonlySet<string> = new Set(['nema-5-15', 'nema-5-20', 'bs-1363']);

/** Sockets in the plate of a wall outlet: as the plan says, else the usual number for its connector. */
export const outletSockets = (
  outlet: Pick<Outlet, 'sockets' | 'connector'>,
): { readonly count: number; readonly assumed: boolean } =>
  outlet.sockets === undefined
    ? { count: IN_PAIRS.has(outlet.connector) ? 2 : 1, assumed: true }
    : { count: outlet.sockets, assumed: false };

/** Symbol of a wall outlet by its sockets: one, two, or more. */
export const outletSymbol = (count: number): string =>
  count <= 1 ? 'wall-outlet' : count === 2 ? 'outlet-duplex' : 'outlet-quad';

/** In words: single, duplex, or the number. */
export const outletWord = (count: number): string =>
  count <= 1 ? 'single' : count === 2 ? 'duplex' : `${count} sockets`;
