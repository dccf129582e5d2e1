import { useMemo, useState } from 'react';
import { byPosition } from '../../derive/positions.ts';
import { printAddress } from '../../plan/address.ts';
import { clearTicks, tickSteps, untickSteps } from '../../plan/edits/ticks.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { orderFixtures, placesOf } from '../../report/control.ts';
import { cardProgress, cardUnits } from '../../report/setup-steps.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import './cards.css';

type Show = 'all' | 'left' | 'done';

const SHOWS: readonly { readonly id: Show; readonly words: string }[] = [
  { id: 'all', words: 'all units' },
  { id: 'left', words: 'not done' },
  { id: 'done', words: 'done' },
];

const NAME_KEY = 'lampwright.setup-by';

/** Who ticks on this machine, kept between visits where the browser lets us. */
const rememberedName = (): string => {
  try {
    return localStorage.getItem(NAME_KEY) ?? '';
  } catch {
    return '';
  }
};

const remember = (name: string): void => {
  try {
    localStorage.setItem(NAME_KEY, name);
  } catch {
    // Without a store the name is asked for again next time.
  }
};

/** `18 May, 14:05`, from the moment a step was ticked. */
const whenWords = (when: string): string => {
  const d = new Date(when);
  return Number.isNaN(d.getTime())
    ? ''
    : d.toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
};

/** Setup cards on screen: position by position, each step ticked as it is done, by whom. */
export const CardsTab = () => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [show, setShow] = useState<Show>('all');
  const [query, setQuery] = useState('');
  const [by, setBy] = useState(rememberedName);
  const groups = useMemo(() => byPosition(plan, orderFixtures(plan, cardUnits(plan), 'path')), [plan]);
  const units = groups.flatMap((g) => g.fixtures);
  const progress = new Map(units.map((f) => [f.id, cardProgress(plan, f)]));
  const done = units.filter((f) => progress.get(f.id)?.all).length;
  const steps = [...progress.values()].reduce((s, p) => s + p.steps.length, 0);
  const ticked = [...progress.values()].reduce((s, p) => s + p.done, 0);
  const words = query.trim().toLowerCase();
  const shown = (f: Fixture): boolean => {
    const p = progress.get(f.id);
    if (show === 'left' && p?.all) return false;
    if (show === 'done' && !p?.all) return false;
    const text = `${f.unit} ${kindOf(plan, f.kindId)?.name ?? ''} ${f.use}`.toLowerCase();
    return text.includes(words);
  };

  if (units.length === 0)
    return (
      <p className="cards-none soft">
        No unit has an address yet. Assign addresses in Patch; each unit then has a card here.
      </p>
    );
  return (
    <div className="cards">
      <div className="cards-head">
        <h2>Set-up cards</h2>
        <span className="strong">
          {done} of {units.length} units done
        </span>
        <span className="soft">
          {ticked} of {steps} steps
        </span>
        <progress className="cards-bar" max={steps} value={ticked} aria-label="Steps done" />
        <input
          className="input cards-find"
          type="search"
          aria-label="Find a unit"
          placeholder="Find a unit"
          value={query}
          onChange={(e) => setQuery(e.target.value)}
        />
        <select
          className="input cards-show"
          aria-label="Show"
          value={show}
          onChange={(e) => setShow(e.target.value as Show)}
        >
          {SHOWS.map((s) => (
            <option key={s.id} value={s.id}>
              {s.words}
            </option>
          ))}
        </select>
        <label className="cards-by">
          Ticked by
          <input
            className="input"
            value={by}
            maxLength={40}
            autoComplete="off"
            onChange={(e) => {
              setBy(e.target.value);
              remember(e.target.value);
            }}
          />
        </label>
        <button
          type="button"
          className="button"
          disabled={readOnly || ticked === 0}
          onClick={() => session.commit('Take all ticks away', clearTicks(session.getState().plan))}
        >
          Start over
        </button>
      </div>
      <div className="cards-scroll">
        {groups.map((g) => {
          const list = g.fixtures.filter(shown);
          if (list.length === 0) return null;
          const all = g.fixtures.filter((f) => progress.get(f.id)?.all).length;
          return (
            <section key={g.position.key} aria-label={g.position.name}>
              <h3 className="cards-position">
                {g.position.name}
                <span className="soft">
                  {' '}
                  {all} of {g.fixtures.length} done
                </span>
              </h3>
              <div className="cards-grid">
                {list.map((f) => (
                  <Card key={f.id} fixture={f} by={by} />
                ))}
              </div>
            </section>
          );
        })}
        {groups.every((g) => g.fixtures.every((f) => !shown(f))) ? (
          <p className="cards-none soft">
            {show === 'left' && words === '' ? 'Every unit is done.' : 'No unit matches.'}
          </p>
        ) : null}
        <p className="cards-none small soft">
          Reset first, and clear an old radio link before a new one is made: common practice, no published
          source. Menus differ: follow each maker’s instructions. {planRecord(plan).title}
        </p>
      </div>
    </div>
  );
};

const Card = ({ fixture: f, by }: { readonly fixture: Fixture; readonly by: string }) => {
  const { session } = useServices();
  const { plan, readOnly, selected } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    selected: s.selection.has(f.id),
  }));
  const p = cardProgress(plan, f);
  const tick = (step: string, on: boolean): void => {
    const now = session.getState().plan;
    session.commit(
      `${on ? 'Tick' : 'Untick'} unit ${f.unit}`,
      on ? tickSteps(now, f.id, [step], by.trim(), new Date().toISOString()) : untickSteps(now, f.id, [step]),
    );
  };
  const all = p.steps.map((s) => s.id);
  return (
    <article
      className={`card${p.all ? ' done' : ''}${selected ? ' selected' : ''}`}
      aria-label={`Card of unit ${f.unit}`}
    >
      <header className="card-head">
        <button
          type="button"
          className="card-unit"
          title="Select it on the floor"
          onClick={() => session.set({ selection: new Set([f.id]) })}
        >
          {f.unit}
        </button>
        <div className="card-what">
          <span className="card-kind">{kindOf(plan, f.kindId)?.name ?? 'kind missing'}</span>
          <span className="soft">{f.use}</span>
          <span className="strong">{placesOf(plan, f).map(printAddress).join(', ')}</span>
        </div>
        <span className="card-count soft">
          {p.done}/{p.steps.length}
        </span>
      </header>
      <ol className="card-steps">
        {p.steps.map((s) => (
          <li key={s.id}>
            <label>
              <input
                type="checkbox"
                checked={s.tick !== undefined}
                disabled={readOnly}
                onChange={(e) => tick(s.id, e.target.checked)}
              />
              <span>{s.text}</span>
              {s.tick ? (
                <span className="card-by soft" title={whenWords(s.tick.when)}>
                  {s.tick.by || 'done'}
                </span>
              ) : null}
            </label>
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="button quiet card-all"
        disabled={readOnly}
        onClick={() => {
          const now = session.getState().plan;
          session.commit(
            p.all ? `Open the card of unit ${f.unit} again` : `Unit ${f.unit} is set up`,
            p.all
              ? untickSteps(now, f.id, all)
              : tickSteps(now, f.id, all, by.trim(), new Date().toISOString()),
          );
        }}
      >
        {p.all ? 'Not done after all' : 'All done'}
      </button>
    </article>
  );
};
