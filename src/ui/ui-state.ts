import { create } from 'zustand';

/** What is open on top of the workspaces. Nothing here is part of the plan. */
interface UiState {
  readonly workingKey: string | undefined;
  readonly dialog: 'issue' | 'commands' | 'shortcuts' | 'title' | 'setups' | undefined;
  readonly findingsOpen: boolean;
  readonly openWorking: (key: string) => void;
  readonly closeWorking: () => void;
  readonly open: (dialog: UiState['dialog']) => void;
  readonly setFindings: (open: boolean) => void;
}

export const useUi = create<UiState>((set) => ({
  workingKey: undefined,
  dialog: undefined,
  findingsOpen: false,
  openWorking: (workingKey) => set({ workingKey }),
  closeWorking: () => set({ workingKey: undefined }),
  open: (dialog) => set({ dialog }),
  setFindings: (findingsOpen) => set({ findingsOpen }),
}));
