import { useState } from 'react';
import { formatAmps, formatCableLength } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import type { AdapterKind } from '../../plan/kinds/adapter.ts';
import { planRecord } from '../../plan/plan.ts';
import { type Balanced, balanceLegs } from '../../report/balance.ts';
import { type PluggedAll, plugEverything } from '../../report/plug-all.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { chosenChanges } from './chosen-steps.ts';
import { PlugScores } from './PlugScores.tsx';
import { PowerCautions } from './PowerCautions.tsx';

type Offer =
  | { readonly what: 'plug'; readonly revision: number; readonly made: PluggedAll }
  | { readonly what: 'balance'; readonly revision: number; readonly made: Balanced };

/** Plugs in what has no feed, or moves plugs between ways: offered as a list, accepted whole or in part as one undo step. */
export const PlugTab = () => {
  const { session, book } = useServices();
  const { plan, revision, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    revision: s.revision,
    readOnly: s.readOnly,
  }));
  const [offer, setOffer] = useState<Offer | undefined>(undefined);
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set());
  const [moves, setMoves] = useState('');

  const propose = (o: Offer): void => {
    setOffer(o);
    setLeft(new Set());
  };
  const balance = (cap: number | undefined): void =>
    propose({ what: 'balance', revision, made: balanceLegs(plan, { moves: cap }) });
  const capOf = (text: string): number | undefined =>
    /^\d+$/.test(text.trim()) ? Number(text.trim()) : undefined;
  const stale = offer !== undefined && offer.revision !== revision;
  const steps: readonly Step[] = offer === undefined ? [] : stepsOf(offer, planRecord(plan).lengthUnits);
  const chosen = new Set(steps.map((_, i) => i).filter((i) => !left.has(i)));

  const accept = (): void => {
    if (!offer) return;
    const n = chosen.size;
    const words = `${n} ${offer.what === 'plug' ? (n === 1 ? 'unit' : 'units') : n === 1 ? 'plug' : 'plugs'}`;
    session.commit(
      offer.what === 'plug' ? `Plug in ${words}` : `Move ${words} for balance`,
      chosenChanges(plan, steps, chosen),
    );
    session.set({
      message: `${words} ${offer.what === 'plug' ? 'plugged in' : 'moved'}; undo takes all of it back. De-energize before re-plugging.`,
    });
    setOffer(undefined);
  };

  return (
    <section className="power-ask" aria-label="Plug and balance">
      <div className="power-head">
        <button
          type="button"
          className="button"
          onClick={() =>
            propose({
              what: 'plug',
              revision,
              made: plugEverything(plan, {
                newId: session.newId,
                book: book.cables(),
                adapters: book
                  .kinds()
                  .filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data'),
              }),
            })
          }
        >
          Plug everything in
        </button>
        <button type="button" className="button" onClick={() => balance(capOf(moves))}>
          Balance legs
        </button>
        <label>
          with at most{' '}
          <input
            className="input power-watts"
            inputMode="numeric"
            placeholder="any"
            value={moves}
            onChange={(e) => setMoves(e.target.value)}
          />{' '}
          re-plugs
        </label>
        <p className="soft">
          An offer to look through; nothing changes until you accept. What is locked stays where it is, units
          of one group go to one box; plugs that trade places belong together.
        </p>
      </div>
      {stale ? <p className="soft">The plan has changed since this was worked out. Ask again.</p> : null}
      <div className="power-proposal">
        {offer?.what === 'balance' ? (
          <div>
            {offer.made.sources.map((s) => (
              <PlugScores
                key={s.sourceId}
                source={s}
                onCap={(n) => {
                  setMoves(String(n));
                  balance(n);
                }}
              />
            ))}
          </div>
        ) : null}
        {offer && steps.length > 0 ? (
          <div>
            <table className="table power-table power-offer">
              <thead>
                <tr>
                  <th scope="col">
                    <button
                      type="button"
                      className="link"
                      onClick={() => setLeft(left.size > 0 ? new Set() : new Set(steps.map((_, i) => i)))}
                    >
                      {left.size > 0 ? 'Take all' : 'Take none'}
                    </button>
                  </th>
                  <th scope="col">What</th>
                  <th scope="col">Before</th>
                  <th scope="col">After</th>
                  {offer.what === 'plug' ? (
                    <>
                      <th scope="col">Cable</th>
                      <th scope="col" className="num">
                        Amps, nominal
                      </th>
                    </>
                  ) : null}
                </tr>
              </thead>
              <tbody>
                {steps.map((s, i) => (
                  <tr key={s.key}>
                    <td>
                      <input
                        type="checkbox"
                        aria-label={`Take ${s.what} to ${s.after}`}
                        checked={!left.has(i)}
                        onChange={() => {
                          const next = new Set(left);
                          if (!next.delete(i)) next.add(i);
                          setLeft(next);
                        }}
                      />
                    </td>
                    <th scope="row">{s.what}</th>
                    <td>{s.before}</td>
                    <td>{s.after}</td>
                    {offer.what === 'plug' ? (
                      <>
                        <td>{s.cable}</td>
                        <td className="num">{s.amps}</td>
                      </>
                    ) : null}
                  </tr>
                ))}
              </tbody>
            </table>
            <p className="power-accept">
              <button
                type="button"
                className="button primary"
                disabled={readOnly || stale || chosen.size === 0}
                onClick={accept}
              >
                Accept{' '}
                {chosen.size === steps.length ? `all ${steps.length}` : `${chosen.size} of ${steps.length}`}
              </button>
              <button type="button" className="button" onClick={() => setOffer(undefined)}>
                Discard
              </button>
            </p>
          </div>
        ) : null}
      </div>
      {offer && steps.length === 0 ? <p>{emptyWords(offer)}</p> : null}
      {offer?.what === 'plug' && offer.made.left.length > 0 ? (
        <>
          <h3 className="power-source">
            Left without a plug{' '}
            <span className="soft">
              place a box or source with room, an adapter, or lower levels; then ask again
            </span>
          </h3>
          <ul>
            {offer.made.left.map((l) => (
              <li key={l.recordId}>
                <span className="strong">{l.label}</span> {l.why}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <p className="soft small">
        Computed from this plan at nominal currents; other loads are not known. A qualified person decides.
      </p>
      <PowerCautions />
    </section>
  );
};

const emptyWords = (o: Offer): string => {
  if (o.what === 'balance') return 'No move makes it better, by what this plan knows.';
  return o.made.left.length > 0
    ? 'Nothing more can be plugged in.'
    : 'Every unit that takes the mains is plugged in.';
};

interface Step {
  readonly key: string;
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly cable: string;
  readonly amps: string;
  readonly changes: ChangeSet;
}

const stepsOf = (o: Offer, units: 'imperial' | 'metric'): readonly Step[] =>
  o.what === 'plug'
    ? o.made.steps.map((s) => ({
        key: s.recordId,
        what: s.label,
        before: 'not plugged',
        after: s.toLabel,
        cable: `${s.kindName}, ${formatCableLength(s.lengthMm, units)}`,
        amps: formatAmps(s.amps),
        changes: s.changes,
      }))
    : o.made.moves.map((m) => ({
        key: m.cableId,
        what: m.label,
        before: m.fromLabel,
        after: m.toLabel,
        cable: '',
        amps: '',
        changes: m.changes,
      }));
