import { create } from 'zustand';
import type { Point } from '../kernel/geometry.ts';
import type { Plan } from '../plan/plan.ts';
import type { Working } from '../report/types.ts';
import type { Fault } from '../report/whatif.ts';
import type { SettingsSection } from './dialogs/settings/sections.ts';

/** Screens of the Power workspace, in the order of their tabs. */
export const POWER_TABS = [
  { id: 'circuits', name: 'Circuits' },
  { id: 'one-line', name: 'One-line' },
  { id: 'what-if', name: 'What if' },
  { id: 'where', name: 'Where can I plug in' },
  { id: 'plug', name: 'Plug and balance' },
  { id: 'size', name: 'Size it' },
  { id: 'measured', name: 'Measured' },
] as const;

export type PowerTab = (typeof POWER_TABS)[number]['id'];

/** The working of a figure that is tried or asked for, by the plan as it is. */
export type MakeWorking = (plan: Plan) => Working | undefined;

/** A fault, or another kind of source, that is being tried over the plan. */
export type Trying =
  | { readonly what: 'fault'; readonly fault: Fault }
  | { readonly what: 'swap'; readonly sourceId: string; readonly slug: string };

/** What is open on top of the workspaces. Nothing here is part of the plan. */
interface UiState {
  readonly workingKey: string | undefined;
  /** Makes the working that is shown, of a figure that is only tried or asked for and so has no key in the plan. */
  readonly workingOf: MakeWorking | undefined;
  readonly dialog: 'issue' | 'commands' | 'shortcuts' | 'title' | 'setups' | 'settings' | undefined;
  /** Part of the plan's settings that is shown. */
  readonly settingsAt: SettingsSection;
  /** What the rules are searched for when they are opened. */
  readonly settingsFind: string;
  readonly findingsOpen: boolean;
  readonly powerTab: PowerTab;
  /** Id of the screen of the Control workspace that is shown. */
  readonly controlTab: string;
  /** Fault cases kept for comparing; they change nothing in the plan. */
  readonly faults: readonly Fault[];
  readonly trying: Trying | undefined;
  /** The spot of the floor “where can I plug in” was asked for; none: the middle of the view. */
  readonly whereAt: Point | undefined;
  readonly askWhere: (at: Point | undefined) => void;
  readonly setTrying: (trying: Trying | undefined) => void;
  readonly openWorking: (key: string) => void;
  readonly openTried: (make: MakeWorking) => void;
  readonly closeWorking: () => void;
  readonly open: (dialog: UiState['dialog']) => void;
  readonly openSettings: (at: SettingsSection, find?: string) => void;
  readonly setFindings: (open: boolean) => void;
  readonly setPowerTab: (powerTab: PowerTab) => void;
  readonly setControlTab: (controlTab: string) => void;
  readonly setFaults: (faults: readonly Fault[]) => void;
}

export const useUi = create<UiState>((set) => ({
  workingKey: undefined,
  workingOf: undefined,
  dialog: undefined,
  settingsAt: 'practice',
  settingsFind: '',
  findingsOpen: false,
  powerTab: 'circuits',
  controlTab: 'patch',
  faults: [],
  trying: undefined,
  whereAt: undefined,
  askWhere: (whereAt) => set({ whereAt, powerTab: 'where' }),
  setTrying: (trying) => set({ trying }),
  openWorking: (workingKey) => set({ workingKey, workingOf: undefined }),
  openTried: (workingOf) => set({ workingOf, workingKey: undefined }),
  closeWorking: () => set({ workingKey: undefined, workingOf: undefined }),
  open: (dialog) => set({ dialog }),
  openSettings: (settingsAt, settingsFind = '') =>
    set({
      dialog: 'settings',
      settingsAt,
      settingsFind,
      workingKey: undefined,
      workingOf: undefined,
      findingsOpen: false,
    }),
  setFindings: (findingsOpen) => set({ findingsOpen }),
  setPowerTab: (powerTab) => set({ powerTab }),
  setControlTab: (controlTab) => set({ controlTab }),
  setFaults: (faults) => set({ faults }),
}));
