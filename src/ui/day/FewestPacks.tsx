import { useEffect, useRef, useState } from 'react';
import type { Plan } from '../../plan/plan.ts';
import type { DaySummary } from '../../report/day.ts';
import type { Fewest, FewestStep } from '../../report/fewest.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

type Search =
  | { readonly state: 'none' }
  | { readonly state: 'looking'; readonly step: FewestStep | undefined }
  | { readonly state: 'found'; readonly plan: Plan; readonly day: number; readonly fewest: Fewest }
  | { readonly state: 'failed'; readonly what: string };

/** Finds the fewest packs and bays of a day, beside the screen: what it looks at is told, and it can be stopped. */
export const FewestPacks = ({ day, summary }: { readonly day: number; readonly summary: DaySummary }) => {
  const { fewest: service } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const [search, setSearch] = useState<Search>({ state: 'none' });
  const running = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => running.current?.abort(), []);
  const look = async (): Promise<void> => {
    running.current?.abort();
    const stop = new AbortController();
    running.current = stop;
    setSearch({ state: 'looking', step: undefined });
    const r = await service.find(
      plan,
      day,
      (step) => {
        if (running.current === stop) setSearch({ state: 'looking', step });
      },
      stop.signal,
    );
    if (running.current !== stop) return;
    running.current = undefined;
    setSearch(
      r.ok ? { state: 'found', plan, day, fewest: r.value } : { state: 'failed', what: r.error.what },
    );
  };
  const looking = search.state === 'looking';
  const found = search.state === 'found' ? search : undefined;
  const stale = found !== undefined && (found.plan !== plan || found.day !== day);
  return (
    <section aria-label="Fewest packs and bays" className="packs-least">
      {looking ? (
        <button type="button" className="button" onClick={() => running.current?.abort()}>
          Stop
        </button>
      ) : (
        <button
          type="button"
          className="button primary"
          disabled={summary.pools.length === 0 || summary.blocks.length === 0}
          onClick={() => void look()}
        >
          {`Find the fewest packs and bays for day ${day}`}
        </button>
      )}
      <span className="soft packs-looking" role="status">
        {search.state === 'looking'
          ? stepWords(search.step)
          : search.state === 'failed'
            ? ` ${search.what}`
            : stale
              ? ' The plan has changed since: look again.'
              : summary.blocks.length === 0
                ? ' Plan the shooting day first.'
                : ''}
      </span>
      {search.state === 'looking' ? (
        <progress
          aria-label="The search"
          max={search.step?.of ?? 1}
          value={search.step ? search.step.now - 1 : 0}
        />
      ) : null}
      {found && !stale ? (
        <ul>
          {found.fewest.least.map((l) => (
            <li key={l.pool}>
              <b>{l.name}</b>: {l.text}
            </li>
          ))}
          {summary.bays.length > 0 ? (
            <li>
              <b>Bays</b>:{' '}
              {found.fewest.bays === undefined
                ? `with the packs at hand, all ${summary.bays.length} are too few.`
                : `${found.fewest.bays} of ${summary.bays.length} do with the packs at hand.`}
            </li>
          ) : null}
        </ul>
      ) : null}
    </section>
  );
};

const stepWords = (s: FewestStep | undefined): string =>
  s ? ` Looking: ${s.what}, ${s.now} of ${s.of} …` : ' Looking for the fewest …';
