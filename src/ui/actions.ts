import { useMemo } from 'react';
import { DRAWING_LAYERS } from '../drawing/display-list.ts';
import { withLayer } from '../editor/floor-view.ts';
import { recalled } from '../editor/views.ts';
import { viewsOf } from '../plan/edits/views.ts';
import { setupsOf } from '../plan/plan.ts';
import { SETTINGS_SECTIONS } from './dialogs/settings/sections.ts';
import { LAYER_WORDS } from './floor/layer-words.ts';
import { useSessionSlice } from './hooks.ts';
import { useServices } from './services.ts';
import { WORKSPACES } from './shell/workspaces.tsx';
import { POWER_TABS, useUi } from './ui-state.ts';

/** One thing the screens do beside the editor's commands. */
export interface Action {
  readonly id: string;
  readonly label: string;
  readonly keys: readonly string[];
  perform(): void;
}

/** What menus and panels offer beside the editor's commands, so that one search finds everything. */
export const useActions = (): readonly Action[] => {
  const { session, saveFile, scheme, setScheme, leave } = useServices();
  const open = useUi((u) => u.open);
  const openSettings = useUi((u) => u.openSettings);
  const setPowerTab = useUi((u) => u.setPowerTab);
  const { plan, layers } = useSessionSlice((s) => ({ plan: s.plan, layers: s.floorView.layers }));
  return useMemo(() => {
    const action = (
      id: string,
      label: string,
      perform: () => void,
      keys: readonly string[] = [],
    ): Action => ({
      id,
      label,
      keys,
      perform,
    });
    return [
      action('issue', 'Issue papers…', () => open('issue')),
      action('title', 'Title and crew…', () => open('title')),
      action('setups', 'Setups…', () => open('setups')),
      ...SETTINGS_SECTIONS.map((x) =>
        action(`settings-${x.id}`, `Plan settings: ${x.name.toLowerCase()}…`, () => openSettings(x.id)),
      ),
      ...POWER_TABS.map((t) =>
        action(`power-${t.id}`, `Power: ${t.name.toLowerCase()}`, () => {
          setPowerTab(t.id);
          session.set({ workspace: 'power' });
        }),
      ),
      action('save-file', 'Save plan file…', () => void saveFile()),
      action('keys', 'Keys…', () => open('shortcuts'), ['Shift+?']),
      action('scheme', scheme === 'bench' ? 'Dark scheme (truck)' : 'Light scheme (bench)', () =>
        setScheme(scheme === 'bench' ? 'truck' : 'bench'),
      ),
      action('leave', 'Start page', leave),
      action('go-floor', 'Go to Floor', () => session.set({ workspace: 'floor' })),
      ...WORKSPACES.map((w) =>
        action(`go-${w.id}`, `Go to ${w.name}`, () => session.set({ workspace: w.id })),
      ),
      ...setupsOf(plan).map((s) =>
        action(`setup-${s.id}`, `Setup: ${[s.scene, s.name].filter(Boolean).join(' · ')}`, () =>
          session.set({ setupId: s.id }),
        ),
      ),
      ...viewsOf(plan).map((v) =>
        action(`view-${v.id}`, `View: ${v.name}`, () => session.set(recalled(session.getState(), v))),
      ),
      ...DRAWING_LAYERS.flatMap((l) => {
        const name = LAYER_WORDS[l].toLowerCase();
        const set = (patch: Parameters<typeof withLayer>[2]) => () =>
          session.set({ floorView: withLayer(session.getState().floorView, l, patch) });
        const { shown, faded, locked } = layers[l];
        return [
          action(`layer-${l}`, `${shown ? 'Hide' : 'Show'} layer: ${name}`, set({ shown: !shown })),
          action(`fade-${l}`, `${faded ? 'Show full' : 'Fade'} layer: ${name}`, set({ faded: !faded })),
          action(`lock-${l}`, `${locked ? 'Unlock' : 'Lock'} layer: ${name}`, set({ locked: !locked })),
        ];
      }),
    ];
  }, [session, saveFile, scheme, setScheme, leave, open, openSettings, setPowerTab, plan, layers]);
};
