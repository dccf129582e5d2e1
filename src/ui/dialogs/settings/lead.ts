import type { Workspace } from '../../../editor/session.ts';
import type { WorkingInput } from '../../../report/types.ts';
import type { SettingsSection } from './sections.ts';

/** Where a value that was assumed can be given: a part of the settings, or a workspace. */
export type Lead =
  | {
      readonly to: 'settings';
      readonly section: SettingsSection;
      readonly word: string;
      readonly find?: string;
    }
  | { readonly to: 'workspace'; readonly workspace: Workspace; readonly word: string };

const settings = (section: SettingsSection, word: string): Lead => ({ to: 'settings', section, word });
const workspace = (w: Workspace, word: string): Lead => ({ to: 'workspace', workspace: w, word });

const RULES = settings('rules', 'Rules…');
/** Rules, with one searched for. */
const rule = (find: string): Lead => ({ to: 'settings', section: 'rules', word: 'Rule…', find });
const GEAR = workspace('gear', 'Gear');

/** By the first word of an assumption's id. */
const BY_ID: Readonly<Record<string, Lead>> = {
  continuous: workspace('day', 'Day'),
  'level-full': workspace('day', 'Day'),
  volts: settings('sources', 'Volts…'),
  rating: settings('sources', 'Rating…'),
  derating: settings('place', 'Place…'),
  altitude: settings('place', 'Altitude…'),
  transformer: rule('transformer'),
  slack: rule('slack'),
  'conductor-temperature': rule('conductor-temp'),
  lines: workspace('control', 'Control'),
  kind: GEAR,
};

/** Where the assumption of this id can be replaced by what is known; undefined where nothing can. */
export const leadOfAssumption = (id: string): Lead | undefined =>
  (id.startsWith('limit:') ? rule(id.slice(6)) : BY_ID[id.split(':')[0] ?? '']) ??
  (id.startsWith('radio') ? RULES : undefined);

const BY_NAME: readonly (readonly [RegExp, Lead])[] = [
  [/level/i, workspace('day', 'Day')],
  [/volts|nominal of the set/i, settings('sources', 'Volts…')],
  [/^tank$/i, settings('sources', 'Tank…')],
  [/rated k|rating/i, settings('sources', 'Rating…')],
  [/air|height|altitude/i, settings('place', 'Place…')],
  [/watts|load model|power factor|harmonic|standby|draws|cell/i, GEAR],
];

/** Where an input of a working that was assumed can be given. */
export const leadOfInput = (i: WorkingInput): Lead =>
  BY_NAME.find(([re]) => re.test(i.name))?.[1] ?? BY_NAME.find(([re]) => re.test(i.from))?.[1] ?? RULES;
