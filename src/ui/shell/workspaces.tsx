import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { Workspace } from '../../editor/session.ts';

interface WorkspaceEntry {
  readonly id: Workspace;
  readonly name: string;
  readonly Screen: LazyExoticComponent<ComponentType>;
}

/** A screen that is fetched from the program's own files when it is first shown. */
const screen = <M,>(load: () => Promise<M>, name: keyof M & string): LazyExoticComponent<ComponentType> =>
  lazy(async () => ({ default: (await load())[name] as ComponentType }));

/** Every workspace beside the floor, in the order of the tabs. A new one is one line here. */
export const WORKSPACES: readonly WorkspaceEntry[] = [
  {
    id: 'power',
    name: 'Power',
    Screen: screen(() => import('../power/PowerWorkspace.tsx'), 'PowerWorkspace'),
  },
  { id: 'day', name: 'Day', Screen: screen(() => import('../day/DayWorkspace.tsx'), 'DayWorkspace') },
  {
    id: 'control',
    name: 'Control',
    Screen: screen(() => import('../control/ControlWorkspace.tsx'), 'ControlWorkspace'),
  },
  { id: 'gear', name: 'Gear', Screen: screen(() => import('../gear/GearWorkspace.tsx'), 'GearWorkspace') },
  {
    id: 'papers',
    name: 'Papers',
    Screen: screen(() => import('../papers/PapersWorkspace.tsx'), 'PapersWorkspace'),
  },
];

export const IssueDialog = screen(() => import('../papers/IssueDialog.tsx'), 'IssueDialog');

export const TryBanner = screen(() => import('../power/TryBanner.tsx'), 'TryBanner');
