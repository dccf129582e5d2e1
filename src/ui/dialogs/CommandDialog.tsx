import { useState } from 'react';
import { useActions } from '../actions.ts';
import { keyWords, useCommands } from '../commands.ts';
import { Modal } from '../common/Modal.tsx';
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

/** Every action by name, with its keys. Typing narrows, arrows choose, Enter does it. */
export const CommandDialog = () => {
  const { all, run, enabled } = useCommands();
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
  const found = entries.filter((e) => words.every((w) => e.label.toLowerCase().includes(w)));
  const close = (): void => open(undefined);
  const act = (entry: Entry): void => {
    if (!entry.ready) return;
    close();
    entry.act();
  };
  return (
    <Modal title="Commands" open onClose={close}>
      <input
        className="input"
        aria-label="Find a command"
        placeholder="Find a command"
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
        {found.length === 0 ? <li className="soft">No command has these words.</li> : null}
      </ul>
    </Modal>
  );
};
