import { useEffect } from 'react';
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

  const step = (e: React.KeyboardEvent): void => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[e.key];
    const to =
      by === undefined ? undefined : CONTROL_TABS[(at + by + CONTROL_TABS.length) % CONTROL_TABS.length];
    if (!to) return;
    setTab(to.id);
    document.getElementById(`control-tab-${to.id}`)?.focus();
  };

  return (
    <main
      className="control"
      aria-label="Control"
      onKeyDown={(e) => {
        if (!isCommon(e)) e.stopPropagation();
      }}
    >
      <div className="control-tabs">
        <div role="tablist" aria-label="Control" onKeyDown={step} tabIndex={-1}>
          {CONTROL_TABS.map((t, i) => (
            <button
              key={t.id}
              type="button"
              role="tab"
              id={`control-tab-${t.id}`}
              aria-selected={i === at}
              aria-controls="control-panel"
              tabIndex={i === at ? 0 : -1}
              onClick={() => setTab(t.id)}
            >
              {t.name}
            </button>
          ))}
        </div>
        <span className="control-message soft" role="status">
          {message}
        </span>
      </div>
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
