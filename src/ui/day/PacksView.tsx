import { useEffect, useState } from 'react';
import { daySummary, type LeastRow, leastBaysOf, leastOf } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { BackUps } from './BackUps.tsx';
import { ChargerTable } from './ChargerTable.tsx';
import { FloorPacks } from './FloorPacks.tsx';
import { PackSettings } from './PackSettings.tsx';
import { PackUnits } from './PackUnits.tsx';
import { StockTable } from './StockTable.tsx';

interface Answer {
  readonly plan: unknown;
  readonly least: readonly LeastRow[];
  readonly bays: number | undefined;
}

/** What runs on packs or its own cells, how many packs and bays there are, and how many are needed. */
export const PacksView = ({ day }: { readonly day: number }) => {
  const plan = useSessionSlice((s) => s.plan);
  const [answer, setAnswer] = useState<Answer | undefined>(undefined);
  const [looking, setLooking] = useState(false);
  // The search takes a moment on a large day: the screen says so first.
  useEffect(() => {
    if (!looking) return;
    const t = setTimeout(() => {
      setAnswer({ plan, least: leastOf(plan, day), bays: leastBaysOf(plan, day) });
      setLooking(false);
    }, 30);
    return () => clearTimeout(t);
  }, [looking, plan, day]);
  const summary = daySummary(plan, day);
  const now = answer?.plan === plan ? answer : undefined;
  return (
    <div className="packs">
      <PackUnits summary={summary} />
      <FloorPacks summary={summary} />
      <StockTable summary={summary} />
      <section aria-label="Fewest packs and bays" className="packs-least">
        <button
          type="button"
          className="button primary"
          disabled={looking || summary.pools.length === 0 || summary.blocks.length === 0}
          onClick={() => setLooking(true)}
        >
          {looking ? 'Looking for the fewest…' : `Find the fewest packs and bays for day ${day}`}
        </button>
        {summary.blocks.length === 0 ? <span className="soft"> Plan the shooting day first.</span> : null}
        {now ? (
          <ul>
            {now.least.map((l) => (
              <li key={l.pool}>
                <b>{l.name}</b>: {l.text}
              </li>
            ))}
            {summary.bays.length > 0 ? (
              <li>
                <b>Bays</b>:{' '}
                {now.bays === undefined
                  ? `with the packs at hand, all ${summary.bays.length} are too few.`
                  : `${now.bays} of ${summary.bays.length} do with the packs at hand.`}
              </li>
            ) : null}
          </ul>
        ) : null}
      </section>
      <ChargerTable />
      <BackUps summary={summary} />
      <PackSettings />
      <p className="soft">
        Runtimes are planning values for packs of usual health, from worst to best. The packs’ own state, cold
        and age decide; their makers’ instructions come first.
      </p>
    </div>
  );
};
