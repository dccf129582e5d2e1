import {
  BrickWall,
  Cable as CableIcon,
  Crosshair,
  DoorOpen,
  Hand,
  Maximize,
  MousePointer2,
  Plug,
  Ruler,
  Table2,
  TrafficCone,
  Trees,
  Waypoints,
} from 'lucide-react';
import { Fragment, useMemo, useState } from 'react';
import { FloorCanvas } from '../../canvas/FloorCanvas.tsx';
import { onSetup } from '../../editor/on-setup.ts';
import type { ToolId } from '../../editor/session.ts';
import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';
import { FloorsPanel } from '../scout/FloorsPanel.tsx';
import { ScoutPanel } from '../scout/ScoutPanel.tsx';
import { SunPanel } from '../scout/SunPanel.tsx';
import { ServicesContext, useServices } from '../services.ts';
import { useClipboard } from './clipboard.ts';
import { EntryTag } from './EntryTag.tsx';
import { FloorDialogs } from './FloorDialogs.tsx';
import { FloorMenu, type MenuSpot } from './FloorMenu.tsx';
import { FloorTable } from './FloorTable.tsx';
import { GearShelf } from './GearShelf.tsx';
import { Inspector } from './Inspector.tsx';
import { LayersPanel } from './LayersPanel.tsx';
import { MoveOffer } from './MoveOffer.tsx';
import { ViewsPanel } from './ViewsPanel.tsx';
import './floor.css';

const TOOLS: readonly {
  readonly id: ToolId;
  readonly command: string;
  readonly name: string;
  readonly icon: typeof Hand;
}[] = [
  { id: 'select', command: 'tool-select', name: 'Select', icon: MousePointer2 },
  { id: 'aim', command: 'tool-aim', name: 'Aim', icon: Crosshair },
  { id: 'cable', command: 'tool-cable', name: 'Cable', icon: CableIcon },
  { id: 'line', command: 'tool-line', name: 'Data line', icon: Waypoints },
  { id: 'wall', command: 'tool-wall', name: 'Wall', icon: BrickWall },
  { id: 'opening', command: 'tool-door', name: 'Opening', icon: DoorOpen },
  { id: 'outlet', command: 'tool-outlet', name: 'Outlet', icon: Plug },
  { id: 'feature', command: 'tool-feature', name: 'Outdoors', icon: Trees },
  { id: 'crossing', command: 'tool-crossing', name: 'Crossing', icon: TrafficCone },
  { id: 'measure', command: 'tool-measure', name: 'Measure', icon: Ruler },
  { id: 'pan', command: 'tool-pan', name: 'Pan', icon: Hand },
];

/** What the opening tool puts into a wall. */
const OPENINGS = [
  { what: 'door', name: 'Door' },
  { what: 'window', name: 'Window' },
  { what: 'archway', name: 'Archway' },
] as const;

/** The floor works on the plan as it stands in the chosen setup. */
export const FloorWorkspace = ({ fitAtFirst }: { readonly fitAtFirst: boolean }) => {
  const services = useServices();
  const here = useMemo(() => ({ ...services, session: onSetup(services.session) }), [services]);
  return (
    <ServicesContext.Provider value={here}>
      <Floor fitAtFirst={fitAtFirst} />
    </ServicesContext.Provider>
  );
};

const Floor = ({ fitAtFirst }: { readonly fitAtFirst: boolean }) => {
  const { session, book, scheme } = useServices();
  const { run, keysOf } = useCommands();
  useClipboard(run);
  const [menuAt, setMenuAt] = useState<MenuSpot | undefined>(undefined);
  const { tool, opening, message, shows } = useSessionSlice((s) => ({
    tool: s.tool,
    opening: s.floorView.opening.what,
    message: s.message,
    shows: s.floorView.shows,
  }));
  return (
    <div className="floor">
      <GearShelf />
      <main className="floor-canvas">
        <FloorCanvas
          session={session}
          book={book}
          scheme={scheme}
          fitAtFirst={fitAtFirst}
          onMenu={setMenuAt}
        />
        <FloorMenu at={menuAt} onClose={() => setMenuAt(undefined)} />
        <div className="tool-strip" role="toolbar" aria-label="Tools" aria-orientation="vertical">
          {TOOLS.map((t) => (
            <Fragment key={t.id}>
              <button
                type="button"
                className="button"
                aria-pressed={tool === t.id}
                title={`${t.id === 'opening' ? 'Opening: door, window or archway' : t.name} (${keysOf(t.command)})`}
                onClick={() => run(t.id === 'opening' ? `tool-${opening}` : t.command)}
              >
                <t.icon size={15} aria-hidden="true" />
                {t.name}
              </button>
              {t.id === 'opening' && tool === 'opening'
                ? OPENINGS.map((o) => (
                    <button
                      key={o.what}
                      type="button"
                      className="button tool-choice"
                      aria-pressed={opening === o.what}
                      title={[o.name, keysOf(`tool-${o.what}`)].filter(Boolean).join(', ')}
                      onClick={() => run(`tool-${o.what}`)}
                    >
                      {o.name}
                    </button>
                  ))
                : null}
            </Fragment>
          ))}
          <button
            type="button"
            className="button"
            aria-pressed={shows === 'table'}
            title={`Table (${keysOf('floor-table')})`}
            onClick={() => run('floor-table')}
          >
            <Table2 size={15} aria-hidden="true" />
            Table
          </button>
          <button
            type="button"
            className="button"
            title={`Fit all (${keysOf('fit-all')})`}
            onClick={() => run('fit-all')}
          >
            <Maximize size={15} aria-hidden="true" />
            Fit all
          </button>
        </div>
        {shows === 'table' ? <FloorTable /> : null}
        <EntryTag />
        <MoveOffer />
        <div className="floor-corner">
          <LayersPanel />
          <ViewsPanel />
          <ScoutPanel />
          <FloorsPanel />
          <SunPanel />
        </div>
        {message ? (
          <p className="canvas-message" role="status">
            {message}
          </p>
        ) : null}
      </main>
      <Inspector />
      <FloorDialogs />
    </div>
  );
};
