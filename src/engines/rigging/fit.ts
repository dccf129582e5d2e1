import type { Kind } from '../../plan/kinds/kinds.ts';
import type { Carried, StandUse } from './model.ts';

/** Everything a fixture could sit on: the top of the stand, and what its accessories make of that, one after another. */
export const offeredBy = (use: StandUse, accessories: Carried['accessories']): ReadonlySet<string> => {
  const offered = new Set<string>(use.kind.receives);
  const left = new Set(accessories);
  for (let grew = true; grew; ) {
    grew = false;
    for (const k of left) {
      if (k.family !== 'rigging' || !k.fits.some((f) => offered.has(f))) continue;
      for (const r of k.receives) offered.add(r);
      left.delete(k);
      grew = true;
    }
  }
  return offered;
};

/** Mounts that need no stand top, so that nothing can be said about their fit. */
const ANY = new Set(['floor', 'held', 'clip', 'socket', 'hung']);

/** Whether a fixture's kind sits on what is offered; undefined where its kind is not known or takes no stand. */
export const fits = (kind: Kind | undefined, offered: ReadonlySet<string>): boolean | undefined => {
  if (kind?.family !== 'fixture') return undefined;
  const mounts: readonly string[] = kind.mount.fits;
  if (mounts.some((m) => offered.has(m))) return true;
  return mounts.length === 0 || mounts.every((m) => ANY.has(m)) ? undefined : false;
};
