import { useState } from 'react';
import type { NewPlan } from '../../plan/edits/new-plan.ts';
import type { StoredPlanInfo } from '../../storage/port.ts';
import { NewPlanForm } from './NewPlanForm.tsx';
import './start.css';

export interface DemoCard {
  readonly slug: string;
  readonly title: string;
  readonly story: string;
  readonly picture: string;
}

interface StartPageProps {
  readonly demos: readonly DemoCard[];
  readonly recent: readonly StoredPlanInfo[];
  readonly message: string;
  readonly busy: boolean;
  readonly onDemo: (slug: string) => void;
  readonly onOpenStored: (planId: string) => void;
  readonly onRemove: (planId: string) => void;
  /** Plans in the bin, newest first. */
  readonly removed: readonly StoredPlanInfo[];
  readonly onRestore: (planId: string) => void;
  /** A plan could not be opened; what is kept of it can be saved. */
  readonly salvageable: boolean;
  readonly onSalvage: () => void;
  readonly onNew: (plan: NewPlan) => void;
  readonly onOpenFile: () => void;
  /** A plan file was dropped on the page. */
  readonly onDropFile: (file: File) => void;
  readonly scheme: 'bench' | 'truck';
  readonly onScheme: (s: 'bench' | 'truck') => void;
}

/** Where every day begins: the demo plans, a new plan, a file, or what was open last. */
export const StartPage = (p: StartPageProps) => {
  const [filter, setFilter] = useState('');
  const shown = p.recent.filter((r) =>
    `${r.title} ${r.production}`.toLowerCase().includes(filter.toLowerCase()),
  );
  return (
    <main
      className="start"
      onDragOver={(e) => e.preventDefault()}
      onDrop={(e) => {
        e.preventDefault();
        const file = e.dataTransfer.files[0];
        if (file) p.onDropFile(file);
      }}
    >
      <header className="start-head">
        <div>
          <h1>Lampwright</h1>
          <p>
            The set’s lighting as one drawing to scale, with its power, control and papers computed as you
            draw.
          </p>
        </div>
        <button
          type="button"
          className="button"
          onClick={() => p.onScheme(p.scheme === 'bench' ? 'truck' : 'bench')}
        >
          {p.scheme === 'bench' ? 'Dark scheme' : 'Light scheme'}
        </button>
      </header>

      {p.message ? (
        <p className="start-message" role="alert">
          {p.message}
          {p.salvageable ? (
            <>
              {' '}
              <button type="button" className="link" onClick={p.onSalvage}>
                Save what is kept of it
              </button>
            </>
          ) : null}
        </p>
      ) : null}

      <div className="start-columns">
        <section aria-labelledby="start-demos">
          <h2 id="start-demos">Look at a demo plan</h2>
          <p className="soft">Invented productions. Each opens as a copy you can change.</p>
          <ul className="demo-list">
            {p.demos.map((d) => (
              <li key={d.slug}>
                <button
                  type="button"
                  className="demo-card"
                  disabled={p.busy}
                  onClick={() => p.onDemo(d.slug)}
                >
                  <img className="demo-picture" src={d.picture} alt="" />
                  <span className="demo-title">{d.title}</span>
                  <span className="demo-story">{d.story}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>

        <section aria-labelledby="start-new">
          <h2 id="start-new">Start a plan</h2>
          <NewPlanForm busy={p.busy} onNew={p.onNew} />
          <h2 className="start-gap">Open a file</h2>
          <p className="soft">Plan files stay on this computer. Nothing is sent anywhere.</p>
          <button type="button" className="button" disabled={p.busy} onClick={p.onOpenFile}>
            Open plan file…
          </button>
        </section>

        <section aria-labelledby="start-recent">
          <h2 id="start-recent">Kept in this browser</h2>
          {p.recent.length === 0 ? (
            <p className="soft">Nothing yet. Plans you open or start are kept here as you work.</p>
          ) : (
            <>
              {p.recent.length > 6 ? (
                <input
                  className="input"
                  aria-label="Find a kept plan"
                  placeholder="Find a plan"
                  value={filter}
                  onChange={(e) => setFilter(e.target.value)}
                />
              ) : null}
              <ul className="recent-list">
                {shown.map((r) => (
                  <li key={r.planId}>
                    <button
                      type="button"
                      className="recent-open"
                      disabled={p.busy}
                      onClick={() => p.onOpenStored(r.planId)}
                    >
                      <span className="strong">{r.title || 'Untitled plan'}</span>
                      <span className="soft">
                        {[r.production, `${r.fixtureCount} fixtures`, savedText(r.savedAtMs)]
                          .filter(Boolean)
                          .join(' · ')}
                      </span>
                    </button>
                    <button
                      type="button"
                      className="button quiet"
                      aria-label={`Remove ${r.title || 'untitled plan'}`}
                      onClick={() => p.onRemove(r.planId)}
                    >
                      Remove
                    </button>
                  </li>
                ))}
              </ul>
            </>
          )}
          {p.removed.length > 0 ? (
            <details className="start-bin">
              <summary>Removed, {p.removed.length}</summary>
              <ul className="recent-list">
                {p.removed.map((r) => (
                  <li key={r.planId}>
                    <span className="recent-open">
                      <span className="strong">{r.title || 'Untitled plan'}</span>
                      <span className="soft">{savedText(r.savedAtMs)}</span>
                    </span>
                    <button
                      type="button"
                      className="button quiet"
                      aria-label={`Bring back ${r.title || 'untitled plan'}`}
                      onClick={() => p.onRestore(r.planId)}
                    >
                      Bring back
                    </button>
                  </li>
                ))}
              </ul>
            </details>
          ) : null}
        </section>
      </div>

      <footer className="start-foot">
        A planning aid, not an electrical design. Local electrical codes, the authority having jurisdiction
        and makers’ instructions come first; tie-ins, generators and anything energized are for qualified
        people.
      </footer>
    </main>
  );
};

const savedText = (ms: number): string =>
  new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }).format(ms);
