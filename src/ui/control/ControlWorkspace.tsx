import { useEffect } from 'react';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { CONTROL_TABS } from './tabs.ts';
import './control.css';

/** Keys the editor keeps for itself here; the others would move or delete what is chosen on a floor nobody sees. */
const isCommon = (e: React.KeyboardEvent): boolean =>
  e.key === '/' || e.key === '?' || ((e.ctrlKey || e.metaKey) && ['z', 'y'].includes(e.key.toLowerCase()));

/** Control data: who listens where, over what, at which level, and what is set up on each unit. */
export const ControlWorkspace = () => {
  const { session } = useServices();
  const message = useSessionSlice((s) => s.message);
  const chosen = useUi((u) => u.controlTab);
  const setTab = useUi((u) => u.setControlTab);
  const at = Math.max(
    0,
    CONTROL_TABS.findIndex((t) => t.id === chosen),
  );
  const tab = CONTROL_TABS[at];
  // What is said here is about this screen.
  useEffect(() => () => session.set({ message: '' }), [session]);

  return (
    <main
      className="control"
      aria-label="Control"
      onKeyDown={(e) => {
        if (!isCommon(e)) e.stopPropagation();
      }}
    >
      <TabStrip
        label="Control"
        id="control"
        tabs={CONTROL_TABS}
        chosen={tab?.id ?? ''}
        onChoose={setTab}
        message={message}
      />
      <div
        id="control-panel"
        className="control-panel"
        role="tabpanel"
        aria-label={tab?.name ?? ''}
        tabIndex={-1}
      >
        {tab ? <tab.Screen /> : null}
      </div>
    </main>
  );
};
