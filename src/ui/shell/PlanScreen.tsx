import { Suspense, useEffect } from 'react';
import { problemText } from '../../kernel/result.ts';
import { useKeys } from '../commands.ts';
import { CommandDialog } from '../dialogs/CommandDialog.tsx';
import { FindingsDrawer } from '../dialogs/FindingsDrawer.tsx';
import { SetupsDialog } from '../dialogs/SetupsDialog.tsx';
import { ShortcutsDialog } from '../dialogs/ShortcutsDialog.tsx';
import { SettingsDialog } from '../dialogs/settings/SettingsDialog.tsx';
import { TitleDialog } from '../dialogs/TitleDialog.tsx';
import { WorkingDialog } from '../dialogs/WorkingDialog.tsx';
import { FloorWorkspace } from '../floor/FloorWorkspace.tsx';
import { useSessionSlice } from '../hooks.ts';
import { ExportBar } from '../papers/ExportBar.tsx';
import { useExport } from '../papers/export-state.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { Fault } from './Fault.tsx';
import { MeterRail } from './MeterRail.tsx';
import { SaveBanner } from './SaveBanner.tsx';
import { TopBar } from './TopBar.tsx';
import { IssueDialog, TryBanner, WORKSPACES } from './workspaces.tsx';
import './shell.css';

/** An open plan: bar, workspace, meter rail, and what opens on top. */
export const PlanScreen = ({ fitAtFirst }: { readonly fitAtFirst: boolean }) => {
  const { session, saveFile } = useServices();
  const workspace = useSessionSlice((s) => s.workspace);
  const dialog = useUi((u) => u.dialog);
  const open = useUi((u) => u.open);
  const openSettings = useUi((u) => u.openSettings);
  const trying = useUi((u) => u.trying !== undefined);
  const Screen = WORKSPACES.find((w) => w.id === workspace)?.Screen;
  useKeys();
  // A file that is being made is one of this plan: leaving it stops that.
  useEffect(() => () => useExport.getState().stop(), []);

  const save = async (): Promise<void> => {
    const r = await saveFile();
    session.set({ message: r.ok ? (r.value ? `Saved as ${r.value}.` : '') : problemText(r.error) });
  };

  return (
    <div className="app">
      <TopBar
        onIssue={() => open('issue')}
        onCommands={() => open('commands')}
        onShortcuts={() => open('shortcuts')}
        onTitle={() => open('title')}
        onSetups={() => open('setups')}
        onSettings={() => openSettings('practice')}
        onSaveFile={() => void save()}
      />
      <SaveBanner onSaveFile={() => void save()} />
      {trying ? (
        <Suspense fallback={null}>
          <TryBanner />
        </Suspense>
      ) : null}
      <div className="workspace">
        <Fault screen={workspace} onSaveFile={() => void save()}>
          {workspace === 'floor' ? <FloorWorkspace fitAtFirst={fitAtFirst} /> : null}
          <Suspense fallback={<main className="soft workspace-wait">Opening…</main>}>
            {Screen ? <Screen /> : null}
          </Suspense>
        </Fault>
        {workspace === 'papers' ? null : <ExportBar floating />}
      </div>
      <MeterRail />
      <svg className="visually-hidden" aria-hidden="true">
        <defs>
          <pattern
            id="over-hatch"
            width="4"
            height="4"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect width="2" height="4" className="hatch-ink" />
          </pattern>
        </defs>
      </svg>
      <WorkingDialog />
      <FindingsDrawer />
      {dialog === 'title' ? <TitleDialog /> : null}
      {dialog === 'settings' ? <SettingsDialog /> : null}
      {dialog === 'setups' ? <SetupsDialog /> : null}
      {dialog === 'commands' ? <CommandDialog /> : null}
      {dialog === 'shortcuts' ? <ShortcutsDialog /> : null}
      {dialog === 'issue' ? (
        <Suspense fallback={null}>
          <IssueDialog />
        </Suspense>
      ) : null}
    </div>
  );
};
