import { create } from 'zustand';
import type { Fault } from '../report/whatif.ts';

export type PowerTab = 'circuits' | 'one-line' | 'what-if' | 'where' | 'plug' | 'measured';

/** A fault, or another kind of source, that is being tried over the plan. */
export type Trying =
  | { readonly what: 'fault'; readonly fault: Fault }
  | { readonly what: 'swap'; readonly sourceId: string; readonly slug: string };

/** What is open on top of the workspaces. Nothing here is part of the plan. */
interface UiState {
  readonly workingKey: string | undefined;
  readonly dialog: 'issue' | 'commands' | 'shortcuts' | 'title' | 'setups' | undefined;
  readonly findingsOpen: boolean;
  readonly powerTab: PowerTab;
  /** Id of the screen of the Control workspace that is shown. */
  readonly controlTab: string;
  /** Fault cases kept for comparing; they change nothing in the plan. */
  readonly faults: readonly Fault[];
  readonly trying: Trying | undefined;
  readonly setTrying: (trying: Trying | undefined) => void;
  readonly openWorking: (key: string) => void;
  readonly closeWorking: () => void;
  readonly open: (dialog: UiState['dialog']) => void;
  readonly setFindings: (open: boolean) => void;
  readonly setPowerTab: (powerTab: PowerTab) => void;
  readonly setControlTab: (controlTab: string) => void;
  readonly setFaults: (faults: readonly Fault[]) => void;
}

export const useUi = create<UiState>((set) => ({
  workingKey: undefined,
  dialog: undefined,
  findingsOpen: false,
  powerTab: 'circuits',
  controlTab: 'patch',
  faults: [],
  trying: undefined,
  setTrying: (trying) => set({ trying }),
  openWorking: (workingKey) => set({ workingKey }),
  closeWorking: () => set({ workingKey: undefined }),
  open: (dialog) => set({ dialog }),
  setFindings: (findingsOpen) => set({ findingsOpen }),
  setPowerTab: (powerTab) => set({ powerTab }),
  setControlTab: (controlTab) => set({ controlTab }),
  setFaults: (faults) => set({ faults }),
}));
