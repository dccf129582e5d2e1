import { useMemo, useState } from 'react';
import type { AdapterKind } from '../../plan/kinds/adapter.ts';
import { planRecord } from '../../plan/plan.ts';
import { balanceLegs } from '../../report/balance.ts';
import { explainPlug, type PlugFigure } from '../../report/explain-plug.ts';
import { plugEverything } from '../../report/plug-all.ts';
import { ChangeEffect } from '../common/ChangeEffect.tsx';
import { TriedFigure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { chosenChanges } from './chosen-steps.ts';
import { PlugScores } from './PlugScores.tsx';
import { PowerCautions } from './PowerCautions.tsx';
import { emptyWords, type Offer, type Step, stepsOf } from './plug-steps.ts';

const stepFigure = ({ plug }: Step, f: PlugFigure, text: string) =>
  plug ? <TriedFigure working={(plan) => explainPlug(plan, plug, f)}>{text}</TriedFigure> : text;

/** Plugs in what has no feed, or moves plugs between ways: offered as a list, accepted whole or in part as one undo step. */
export const PlugTab = () => {
  const { session, book } = useServices();
  const { plan, revision, readOnly, assessment, setupId } = useSessionSlice((s) => ({
    assessment: s.assessment,
    setupId: s.setupId,
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
  const units = planRecord(plan).lengthUnits;
  const steps = useMemo(
    (): readonly Step[] => (offer === undefined || stale ? [] : stepsOf(offer, units)),
    [offer, stale, units],
  );
  const chosen = new Set(steps.map((_, i) => i).filter((i) => !left.has(i)));

  const change = useMemo(
    () => chosenChanges(plan, steps, new Set(steps.map((_, i) => i).filter((i) => !left.has(i)))),
    [plan, steps, left],
  );

  const accept = (): void => {
    if (!offer) return;
    const n = chosen.size;
    const words = `${n} ${offer.what === 'plug' ? (n === 1 ? 'unit' : 'units') : n === 1 ? 'plug' : 'plugs'}`;
    session.commit(offer.what === 'plug' ? `Plug in ${words}` : `Move ${words} for balance`, change);
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
                        <td>{stepFigure(s, 'cable', s.cable)}</td>
                        <td className="num">{stepFigure(s, 'amps', s.amps)}</td>
                      </>
                    ) : null}
                  </tr>
                ))}
              </tbody>
            </table>
            <ChangeEffect plan={plan} changes={change} assessment={assessment} setupId={setupId} />
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
      {offer && !stale && steps.length === 0 ? <p>{emptyWords(offer)}</p> : null}
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
