import { useState } from 'react';
import { useActions } from '../actions.ts';
import { keyWords, useCommands } from '../commands.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import './dialogs.css';

interface Entry {
  readonly id: string;
  readonly label: string;
  readonly keys: readonly string[];
  /** Whether it can be done now. */
  readonly ready: boolean;
  readonly act: () => void;
}

const GEAR_SHOWN = 6;

/** Gear and every action by name, with its keys. Typing narrows, arrows choose, Enter does it. */
export const CommandDialog = () => {
  const { all, run, enabled } = useCommands();
  const { session, searchGear } = useServices();
  const readOnly = useSessionSlice((x) => x.readOnly);
  const open = useUi((u) => u.open);
  const [query, setQuery] = useState('');
  const [active, setActive] = useState(0);
  const more = useActions();
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const entries: readonly Entry[] = [
    ...all.map((c) => ({
      id: c.id,
      label: c.label,
      keys: [...c.keys, ...(c.platformKeys ?? [])],
      ready: enabled(c),
      act: () => run(c.id),
    })),
    ...more.map((a) => ({ ...a, ready: true, act: a.perform })),
  ];
  const gear: readonly Entry[] =
    words.length === 0
      ? []
      : searchGear(query, GEAR_SHOWN).map((k) => ({
          id: `gear-${k.slug}`,
          label: k.name,
          keys: ['place it'],
          ready: !readOnly,
          act: () =>
            session.set({
              workspace: 'floor',
              placing: { kindSlug: k.slug },
              tool: 'place',
              message: '',
            }),
        }));
  const found = [...entries.filter((e) => words.every((w) => e.label.toLowerCase().includes(w))), ...gear];
  const close = (): void => open(undefined);
  const act = (entry: Entry): void => {
    if (!entry.ready) return;
    close();
    entry.act();
  };
  return (
    <Modal title="Gear and commands" open onClose={close}>
      <input
        className="input"
        aria-label="Find gear or a command"
        placeholder="Find gear or a command"
        value={query}
        onChange={(e) => {
          setQuery(e.target.value);
          setActive(0);
        }}
        onKeyDown={(e) => {
          const chosen = found[active];
          if (e.key === 'ArrowDown') setActive(Math.min(active + 1, found.length - 1));
          else if (e.key === 'ArrowUp') setActive(Math.max(active - 1, 0));
          else if (e.key === 'Enter' && chosen) act(chosen);
          else return;
          e.preventDefault();
        }}
      />
      <ul className="command-list">
        {found.map((c, i) => (
          <li key={c.id}>
            <button
              type="button"
              className="command-item"
              data-active={i === active}
              disabled={!c.ready}
              onClick={() => act(c)}
            >
              {c.label}
              <span className="kbd">{c.keys.map(keyWords).join(', ')}</span>
            </button>
          </li>
        ))}
        {found.length === 0 ? <li className="soft">Neither gear nor a command has these words.</li> : null}
      </ul>
    </Modal>
  );
};
