import { create } from 'zustand';

/** What is open on top of the workspaces. Nothing here is part of the plan. */
interface UiState {
  readonly workingKey: string | undefined;
  readonly dialog: 'issue' | 'commands' | 'shortcuts' | 'title' | 'setups' | undefined;
  readonly findingsOpen: boolean;
  /** Ids of the sheets that are shown and issued; all of them when undefined. */
  readonly sheets: readonly string[] | undefined;
  readonly openWorking: (key: string) => void;
  readonly closeWorking: () => void;
  readonly open: (dialog: UiState['dialog']) => void;
  readonly setFindings: (open: boolean) => void;
  readonly setSheets: (sheets: readonly string[]) => void;
}

export const useUi = create<UiState>((set) => ({
  workingKey: undefined,
  dialog: undefined,
  findingsOpen: false,
  sheets: undefined,
  openWorking: (workingKey) => set({ workingKey }),
  closeWorking: () => set({ workingKey: undefined }),
  open: (dialog) => set({ dialog }),
  setFindings: (findingsOpen) => set({ findingsOpen }),
  setSheets: (sheets) => set({ sheets }),
}));
