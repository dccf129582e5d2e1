import { Menu } from '@base-ui/react/menu';
import { Redo2, Undo2 } from 'lucide-react';
import { useSyncExternalStore } from 'react';
import type { Workspace } from '../../editor/session.ts';
import { planRecord, setupsOf } from '../../plan/plan.ts';
import type { SaveState } from '../../storage/port.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { WORKSPACES } from './workspaces.tsx';

const TABS: readonly { readonly id: Workspace; readonly name: string }[] = [
  { id: 'floor', name: 'Floor' },
  ...WORKSPACES,
];

interface TopBarProps {
  readonly onIssue: () => void;
  readonly onCommands: () => void;
  readonly onShortcuts: () => void;
  readonly onTitle: () => void;
  readonly onSetups: () => void;
  readonly onSettings: () => void;
  readonly onSaveFile: () => void;
}

export const TopBar = (p: TopBarProps) => {
  const { session, leave, scheme, setScheme } = useServices();
  const s = useSessionSlice((x) => ({
    plan: x.plan,
    setupId: x.setupId,
    workspace: x.workspace,
    undo: x.undoStack.at(-1)?.label,
    redo: x.redoStack.at(-1)?.label,
    readOnly: x.readOnly,
  }));
  const head = planRecord(s.plan);
  const setups = setupsOf(s.plan);

  return (
    <header className="topbar">
      <Menu.Root>
        <Menu.Trigger className="topbar-title" title="Plan menu">
          <h1>
            {[head.production || head.title, head.production ? head.title : ''].filter(Boolean).join(' — ')}
          </h1>
          <span aria-hidden="true">▾</span>
        </Menu.Trigger>
        <Menu.Portal>
          <Menu.Positioner sideOffset={4} align="start">
            <Menu.Popup className="menu">
              <Item onClick={p.onTitle}>Title and crew…</Item>
              <Item onClick={p.onSetups}>Setups…</Item>
              <Item onClick={p.onSettings}>Plan settings…</Item>
              <Item onClick={p.onSaveFile}>Save plan file…</Item>
              <div className="menu-line" />
              <Item onClick={p.onCommands} keys="/">
                All commands…
              </Item>
              <Item onClick={p.onShortcuts} keys="?">
                Keys…
              </Item>
              <Item onClick={() => setScheme(scheme === 'bench' ? 'truck' : 'bench')}>
                {scheme === 'bench' ? 'Dark scheme (truck)' : 'Light scheme (bench)'}
              </Item>
              <div className="menu-line" />
              <Item onClick={leave}>Start page</Item>
            </Menu.Popup>
          </Menu.Positioner>
        </Menu.Portal>
      </Menu.Root>
      <SaveMark />
      <nav className="tabs" aria-label="Workspaces">
        {TABS.map((w) => (
          <button
            key={w.id}
            type="button"
            className="tab"
            aria-current={s.workspace === w.id ? 'page' : undefined}
            onClick={() => session.set({ workspace: w.id, message: '' })}
          >
            {w.name}
          </button>
        ))}
      </nav>
      <label className="topbar-setup">
        <span className="soft">Setup</span>
        <select
          className="input"
          value={s.setupId ?? ''}
          onChange={(e) => session.set({ setupId: e.target.value })}
        >
          {setups.map((u) => (
            <option key={u.id} value={u.id}>
              {[u.scene, u.name].filter(Boolean).join(' · ')}
            </option>
          ))}
        </select>
      </label>
      <div className="topbar-history">
        <button
          type="button"
          className="button icon"
          disabled={!s.undo || s.readOnly}
          title={s.undo ? `Undo ${s.undo} (Ctrl+Z)` : 'Nothing to undo'}
          aria-label={s.undo ? `Undo ${s.undo}` : 'Undo'}
          onClick={() => session.undo()}
        >
          <Undo2 size={16} aria-hidden="true" />
        </button>
        <button
          type="button"
          className="button icon"
          disabled={!s.redo || s.readOnly}
          title={s.redo ? `Redo ${s.redo} (Ctrl+Shift+Z)` : 'Nothing to redo'}
          aria-label={s.redo ? `Redo ${s.redo}` : 'Redo'}
          onClick={() => session.redo()}
        >
          <Redo2 size={16} aria-hidden="true" />
        </button>
      </div>
      <button type="button" className="button primary" onClick={p.onIssue}>
        Issue papers
      </button>
    </header>
  );
};

const Item = ({
  children,
  keys,
  onClick,
}: {
  children: React.ReactNode;
  keys?: string;
  onClick: () => void;
}) => (
  <Menu.Item className="menu-item" onClick={onClick}>
    {children}
    {keys ? <span className="kbd">{keys}</span> : null}
  </Menu.Item>
);

/** What saving is doing, in words. */
const SaveMark = () => {
  const { saveState, onSaveState } = useServices();
  const state = useSyncExternalStore(onSaveState, saveState);
  return (
    <span className={`save-mark ${state.state}`} role="status">
      {saveWords(state)}
    </span>
  );
};

const saveWords = (s: SaveState): string => {
  switch (s.state) {
    case 'saved':
      return 'saved · works offline';
    case 'saving':
      return 'saving…';
    case 'read-only':
      return s.reason === 'other-tab' ? 'read-only: open in another tab' : 'read-only: newer version';
    case 'failed':
      return 'not saved';
  }
};
