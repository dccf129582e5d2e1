import { useEffect, useRef, useState } from 'react';
import type { PaperSet } from '../../papers/page.ts';
import { type PaperProgress, paperSteps } from '../../papers/paper-set.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Assessment } from '../../report/types.ts';
import { Stopped } from './stopped.ts';
import { runSteps } from './work.ts';

export interface LaidOut {
  readonly set: PaperSet | undefined;
  /** Set while a newer set is being laid out. */
  readonly progress: PaperProgress | undefined;
  readonly fault: string | undefined;
}

/** Pages of a plan, laid out beside the work on it: the last set stays in view until the next one is there. */
export const usePaperSet = (
  plan: Plan,
  assessment: Assessment | undefined,
  options: PaperOptions | undefined,
): LaidOut => {
  const [set, setSet] = useState<PaperSet>();
  const [progress, setProgress] = useState<PaperProgress>();
  const [fault, setFault] = useState<string>();
  const shown = useRef(0);
  useEffect(() => {
    if (!assessment || !options) return;
    const stop = new AbortController();
    shown.current = 0;
    setFault(undefined);
    setProgress({ done: 0, of: 1 });
    runSteps(
      paperSteps(plan, assessment, options),
      (p) => {
        // Ten times a second is often enough to tell how far it is.
        const now = performance.now();
        if (now - shown.current < 100) return;
        shown.current = now;
        setProgress(p);
      },
      stop.signal,
    ).then(
      (made) => {
        setSet(made);
        setProgress(undefined);
      },
      (cause: unknown) => {
        if (cause instanceof Stopped) return;
        console.error(cause);
        setProgress(undefined);
        setFault(cause instanceof Error ? cause.message : 'unknown fault');
      },
    );
    return () => stop.abort();
  }, [plan, assessment, options]);
  return { set, progress, fault };
};
