import { Menu } from '@base-ui/react/menu';
import { useEffect, useMemo, useRef } from 'react';
import { keyboardSpot } from '../../editor/pointer-spot.ts';
import type { Point } from '../../kernel/geometry.ts';
import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

export interface MenuSpot {
  readonly x: number;
  readonly y: number;
}

const CHOSEN: readonly (readonly string[])[] = [
  ['copy', 'paste', 'duplicate', 'delete'],
  ['replace', 'row', 'renumber', 'turn-about'],
  ['put-on-stand', 'take-off-stand', 'hang', 'toggle-level'],
  ['plug-in', 'unplug', 'on-packs', 'to-mains'],
  ['group', 'ungroup', 'lock', 'unlock', 'hide', 'show'],
  ['stack-front', 'stack-back', 'reset-labels', 'let-route', 'split-wall', 'join-walls'],
  ['select-kind', 'select-circuit', 'select-universe', 'fit-selection'],
];
const EMPTY: readonly (readonly string[])[] = [
  ['paste', 'paste-in-place', 'select-all', 'show-all'],
  ['add-room', 'add-talent', 'add-camera', 'add-note'],
  ['floor-table', 'fit-all'],
];

/** What can be done with what is selected, or with the floor, where the menu was asked for. */
export const FloorMenu = ({
  at,
  onClose,
}: {
  readonly at: MenuSpot | undefined;
  readonly onClose: () => void;
}) => {
  const { all, run, enabled, keysOf } = useCommands();
  const chosen = useSessionSlice((s) => s.selection.size > 0);
  const { session } = useServices();
  const askWhere = useUi((u) => u.askWhere);
  const anchor = useMemo(
    () => ({ getBoundingClientRect: () => new DOMRect(at?.x ?? 0, at?.y ?? 0, 0, 0) }),
    [at],
  );
  // The spot of the floor under the pointer when the menu was asked for; by then the pointer is over the menu.
  const spot = useRef<Point | undefined>(undefined);
  useEffect(() => {
    if (at) spot.current = keyboardSpot(session);
  }, [at, session]);
  const groups = (at ? (chosen ? CHOSEN : EMPTY) : [])
    .map((ids) =>
      ids.flatMap((id) => {
        const c = all.find((x) => x.id === id);
        return c && enabled(c) ? [c] : [];
      }),
    )
    .filter((g) => g.length > 0);
  return (
    <Menu.Root open={at !== undefined} onOpenChange={(open) => (open ? undefined : onClose())} modal={false}>
      <Menu.Portal>
        <Menu.Positioner
          anchor={anchor}
          side="bottom"
          align="start"
          sideOffset={2}
          collisionAvoidance={{ side: 'shift', align: 'shift' }}
        >
          <Menu.Popup className="menu floor-menu" aria-label={chosen ? 'Selection' : 'Floor'}>
            {groups.map((g, i) => (
              <div key={g[0]?.id} role="presentation">
                {i > 0 ? <Menu.Separator className="menu-line" /> : null}
                {g.map((c) => (
                  <Menu.Item key={c.id} className="menu-item" onClick={() => run(c.id)}>
                    {c.label}
                    <span className="kbd">{keysOf(c.id).split(', ')[0]}</span>
                  </Menu.Item>
                ))}
              </div>
            ))}
            <Menu.Separator className="menu-line" />
            <Menu.Item
              className="menu-item"
              onClick={() => {
                askWhere(chosen ? undefined : spot.current);
                session.set({ workspace: 'power' });
              }}
            >
              {chosen ? 'Where can I plug it in…' : 'Where can I plug in here…'}
            </Menu.Item>
          </Menu.Popup>
        </Menu.Positioner>
      </Menu.Portal>
    </Menu.Root>
  );
};
