import type { Block } from '../../plan/records/index.ts';

/** What a block can be, with how long it is to begin with. */
export const WHATS: readonly {
  readonly id: Block['what'];
  readonly name: string;
  readonly minutes: number;
}[] = [
  { id: 'setup', name: 'Setup', minutes: 120 },
  { id: 'pre-light', name: 'Pre-light', minutes: 60 },
  { id: 'meal', name: 'Meal', minutes: 60 },
  { id: 'move', name: 'Company move', minutes: 30 },
  { id: 'wrap', name: 'Wrap', minutes: 30 },
  { id: 'other', name: 'Other', minutes: 60 },
];

/** Whether a block burns a setup of its own as a whole. */
export const burnsWhole = (what: Block['what']): boolean => what === 'setup' || what === 'pre-light';
