import type { Plan } from '../../../plan/plan.ts';

/** Parts of the settings of a plan, in the order of their tabs. */
export const SETTINGS_SECTIONS = [
  { id: 'practice', name: 'Practice and units' },
  { id: 'place', name: 'Production and place' },
  { id: 'sources', name: 'Sources' },
  { id: 'rules', name: 'Rules and margins' },
] as const;

export type SettingsSection = (typeof SETTINGS_SECTIONS)[number]['id'];

/** What every part of the form gets: the plan as it would be, and the ways to change it. */
export interface SectionProps {
  readonly draft: Plan;
  readonly disabled: boolean;
  /** Sets fields of one record; undefined takes a field out. */
  readonly onSet: (id: string, patch: Readonly<Record<string, unknown>>) => void;
  readonly onPlan: (draft: Plan) => void;
}
