import { create } from 'zustand';
import { Stopped } from './stopped.ts';

/** How far a file is that is being made. */
export interface Running {
  readonly text: string;
  readonly share: number;
}

/** What an export is given: to tell how far it is, and to hear when it is to stop. */
export interface Watched {
  readonly tell: (text: string, share: number) => void;
  readonly signal: AbortSignal;
}

interface ExportState {
  readonly running: Running | undefined;
  /** What came of the last one. */
  readonly said: string;
  readonly bad: boolean;
  /** Makes one file at a time; a second one is not begun while the first is being made. */
  readonly run: (make: (w: Watched) => Promise<string>) => Promise<void>;
  readonly stop: () => void;
  readonly clear: () => void;
}

let current: AbortController | undefined;

/** The file that is being made, whatever screen is looked at meanwhile. Leaving the plan stops it. */
export const useExport = create<ExportState>((set, get) => ({
  running: undefined,
  said: '',
  bad: false,
  run: async (make) => {
    if (get().running) return;
    const own = new AbortController();
    current = own;
    set({ running: { text: 'Beginning', share: 0 }, said: '', bad: false });
    try {
      const said = await make({
        tell: (text, share) => {
          if (!own.signal.aborted) set({ running: { text, share } });
        },
        signal: own.signal,
      });
      set({ said });
    } catch (cause) {
      if (cause instanceof Stopped) set({ said: 'Stopped. Nothing was written.' });
      else {
        console.error(cause);
        const why = cause instanceof Error ? cause.message : 'unknown fault';
        set({ bad: true, said: `The file could not be made (${why}). The plan is not affected.` });
      }
    } finally {
      set({ running: undefined });
    }
  },
  stop: () => current?.abort(),
  clear: () => set({ said: '', bad: false }),
}));
