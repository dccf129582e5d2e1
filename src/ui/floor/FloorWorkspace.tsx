import { Cable as CableIcon, Crosshair, Hand, Maximize, MousePointer2 } from 'lucide-react';
import { FloorCanvas } from '../../canvas/FloorCanvas.tsx';
import type { ToolId } from '../../editor/session.ts';
import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { GearShelf } from './GearShelf.tsx';
import { Inspector } from './Inspector.tsx';
import './floor.css';

const TOOLS: readonly { readonly id: ToolId; readonly name: string; readonly icon: typeof Hand }[] = [
  { id: 'select', name: 'Select', icon: MousePointer2 },
  { id: 'aim', name: 'Aim', icon: Crosshair },
  { id: 'cable', name: 'Cable', icon: CableIcon },
  { id: 'pan', name: 'Pan', icon: Hand },
];

export const FloorWorkspace = ({ fitAtFirst }: { readonly fitAtFirst: boolean }) => {
  const { session, book, scheme } = useServices();
  const { run, keysOf } = useCommands();
  const { tool, message } = useSessionSlice((s) => ({ tool: s.tool, message: s.message }));
  return (
    <div className="floor">
      <GearShelf />
      <main className="floor-canvas">
        <FloorCanvas session={session} book={book} scheme={scheme} fitAtFirst={fitAtFirst} />
        <div className="tool-strip" role="toolbar" aria-label="Tools" aria-orientation="vertical">
          {TOOLS.map((t) => (
            <button
              key={t.id}
              type="button"
              className="button"
              aria-pressed={tool === t.id}
              title={`${t.name} (${keysOf(`tool-${t.id}`)})`}
              onClick={() => run(`tool-${t.id}`)}
            >
              <t.icon size={15} aria-hidden="true" />
              {t.name}
            </button>
          ))}
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
        {message ? (
          <p className="canvas-message" role="status">
            {message}
          </p>
        ) : null}
      </main>
      <Inspector />
    </div>
  );
};
