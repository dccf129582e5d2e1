import './tabs.css';

interface TabStripProps<T extends string> {
  /** Name of the strip for who cannot see it. */
  readonly label: string;
  /** Prefix of element ids: the panel is `<id>-panel`, a tab is `<id>-tab-<its id>`. */
  readonly id: string;
  readonly tabs: readonly { readonly id: T; readonly name: string }[];
  readonly chosen: T;
  readonly onChoose: (id: T) => void;
  /** What was said last about the screens of the strip, at its right end. */
  readonly message?: string;
}

/** Screens of one workspace side by side. One tab takes the keyboard; arrows, Home and End go to the others. */
export const TabStrip = <T extends string>(p: TabStripProps<T>) => {
  const at = p.tabs.findIndex((t) => t.id === p.chosen);
  const step = (e: React.KeyboardEvent): void => {
    const n = p.tabs.length;
    const to = { ArrowRight: (at + 1) % n, ArrowLeft: (at - 1 + n) % n, Home: 0, End: n - 1 }[e.key];
    const tab = to === undefined ? undefined : p.tabs[to];
    if (!tab) return;
    e.preventDefault();
    p.onChoose(tab.id);
    document.getElementById(`${p.id}-tab-${tab.id}`)?.focus();
  };
  return (
    <div className="tab-strip">
      <div role="tablist" aria-label={p.label} onKeyDown={step} tabIndex={-1}>
        {p.tabs.map((t) => (
          <button
            key={t.id}
            type="button"
            role="tab"
            id={`${p.id}-tab-${t.id}`}
            aria-selected={t.id === p.chosen}
            aria-controls={`${p.id}-panel`}
            tabIndex={t.id === p.chosen ? 0 : -1}
            onClick={() => p.onChoose(t.id)}
          >
            {t.name}
          </button>
        ))}
      </div>
      {p.message === undefined ? null : (
        <span className="tab-message soft" role="status" title={p.message}>
          {p.message}
        </span>
      )}
    </div>
  );
};
