import type { ComponentType } from 'react';
import { CardsTab } from './CardsTab.tsx';
import { LinesTab } from './LinesTab.tsx';
import { PartsTab } from './PartsTab.tsx';
import { PatchTab } from './PatchTab.tsx';
import { RadioTab } from './RadioTab.tsx';

/** The screens of the Control workspace, in their order. */
export const CONTROL_TABS: readonly {
  readonly id: string;
  readonly name: string;
  readonly Screen: ComponentType;
}[] = [
  { id: 'patch', name: 'Patch', Screen: PatchTab },
  { id: 'lines', name: 'Lines and nodes', Screen: LinesTab },
  { id: 'radio', name: 'Radio', Screen: RadioTab },
  { id: 'parts', name: 'Part levels', Screen: PartsTab },
  { id: 'cards', name: 'Set-up cards', Screen: CardsTab },
];
