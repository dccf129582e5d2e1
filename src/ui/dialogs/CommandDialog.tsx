import { useState } from 'react';
import { keyWords, useCommands } from '../commands.ts';
import { Modal } from '../common/Modal.tsx';
import { useUi } from '../ui-state.ts';
import './dialogs.css';

/** Every action by name, with its keys. Typing narrows, arrows choose, Enter does it. */
export const CommandDialog = () => {
  const { all, run, enabled } = useCommands();
  const open = useUi((u) => u.open);
  const [query, setQuery] = useState('');
  const [active, setActive] = useState(0);
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const found = all.filter((c) => words.every((w) => c.label.toLowerCase().includes(w)));
  const close = (): void => open(undefined);
  const act = (id: string): void => {
    close();
    run(id);
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
          else if (e.key === 'Enter' && chosen) act(chosen.id);
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
              disabled={!enabled(c)}
              onClick={() => act(c.id)}
            >
              {c.label}
              <span className="kbd">{[...c.keys, ...(c.platformKeys ?? [])].map(keyWords).join(', ')}</span>
            </button>
          </li>
        ))}
        {found.length === 0 ? <li className="soft">No command has these words.</li> : null}
      </ul>
    </Modal>
  );
};
