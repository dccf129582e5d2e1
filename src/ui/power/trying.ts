import { useEffect, useMemo } from 'react';
import { fail, type Result } from '../../kernel/result.ts';
import { type SourceSwap, swapSource } from '../../report/swap-source.ts';
import { type Fault, type WhatIf, whatIf } from '../../report/whatif.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { type Trying, useUi } from '../ui-state.ts';

export type Tried =
  | { readonly what: 'fault'; readonly fault: Fault; readonly result: Result<WhatIf> }
  | { readonly what: 'swap'; readonly result: Result<SourceSwap> };

/** What is being tried, worked out on the plan as it is now. */
export const useTried = (): Tried | undefined => {
  const trying = useUi((u) => u.trying);
  const { book } = useServices();
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  return useMemo((): Tried | undefined => {
    if (!trying) return undefined;
    if (trying.what === 'fault')
      return { what: 'fault', fault: trying.fault, result: whatIf(plan, trying.fault, setupId) };
    const kind = book.find(trying.slug);
    return {
      what: 'swap',
      result:
        kind?.family === 'source'
          ? swapSource(plan, trying.sourceId, kind)
          : fail({ what: 'That source is not in the gear book.', todo: 'Choose another.' }),
    };
  }, [trying, plan, setupId, book]);
};

/** Lends what is tried to the drawing, so that floor, diagram and table show it; takes it back at the end. */
export const useTriedOnDrawing = (tried: Tried | undefined): void => {
  const { session } = useServices();
  useEffect(() => {
    if (!tried?.result.ok) {
      if (session.getState().tried) session.set({ tried: undefined });
      return;
    }
    const hit = new Map<string, 'dark' | 'fewer legs' | 'wrong volts'>();
    if (tried.what === 'fault' && tried.result.ok)
      for (const l of tried.result.value.loads) if (l.state !== 'as before') hit.set(l.recordId, l.state);
    if (tried.what === 'swap' && tried.result.ok)
      for (const id of tried.result.value.unfed) hit.set(id, 'dark');
    session.set({ tried: hit });
  }, [tried, session]);
  useEffect(() => () => session.set({ tried: undefined }), [session]);
};

/** The same thing tried twice. */
export const sameTrying = (a: Trying | undefined, b: Trying): boolean =>
  a !== undefined && JSON.stringify(a) === JSON.stringify(b);
