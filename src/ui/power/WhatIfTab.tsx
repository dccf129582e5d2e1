import { useMemo, useState } from 'react';
import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { problemText } from '../../kernel/result.ts';
import { formatAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { type Fault, type FaultLoad, type WhatIf, whatIf } from '../../report/whatif.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

type What = 'trip' | 'leg' | 'neutral';

const NONE: readonly SupplyEntity[] = [];

/** A fault tried on the plan as it is: what goes dark, what each side would see. The plan is not changed. */
export const WhatIfTab = () => {
  const { plan, entities, setupId } = useSessionSlice((s) => ({
    plan: s.plan,
    entities: s.assessment?.entities ?? NONE,
    setupId: s.setupId,
  }));
  const kept = useUi((u) => u.faults);
  const setKept = useUi((u) => u.setFaults);
  const [what, setWhat] = useState<What>('trip');
  const [target, setTarget] = useState('');
  const choices = useMemo(() => choicesOf(entities, what, planRecord(plan).practice), [entities, what, plan]);
  const chosen = choices.find((c) => c.id === target) ?? choices[0];
  const result = useMemo(
    () => (chosen ? whatIf(plan, chosen.fault, setupId) : undefined),
    [plan, chosen, setupId],
  );
  const isKept = chosen && kept.some((f) => JSON.stringify(f) === JSON.stringify(chosen.fault));

  return (
    <section className="power-ask" aria-label="What if">
      <div className="power-head">
        <label>
          What happens{' '}
          <select className="input" value={what} onChange={(e) => setWhat(e.target.value as What)}>
            <option value="trip">a breaker trips</option>
            <option value="leg">a leg is lost</option>
            <option value="neutral">the neutral is lost</option>
          </select>
        </label>
        <label>
          Where{' '}
          <select className="input" value={chosen?.id ?? ''} onChange={(e) => setTarget(e.target.value)}>
            {choices.map((c) => (
              <option key={c.id} value={c.id}>
                {c.name}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button"
          disabled={!chosen || isKept}
          onClick={() => chosen && setKept([...kept, chosen.fault])}
        >
          Keep this case
        </button>
        <p className="soft">Tried on the plan as it is; nothing in it changes.</p>
      </div>
      {choices.length === 0 ? (
        <p className="soft">There is nothing in this plan that this can happen to.</p>
      ) : null}
      {result?.ok ? <Case result={result.value} /> : null}
      {result && !result.ok ? <p className="soft">{problemText(result.error)}</p> : null}
      {kept.map((fault) => (
        <Kept
          key={JSON.stringify(fault)}
          fault={fault}
          onDiscard={() => setKept(kept.filter((f) => f !== fault))}
        />
      ))}
    </section>
  );
};

const Kept = ({ fault, onDiscard }: { readonly fault: Fault; readonly onDiscard: () => void }) => {
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  const result = useMemo(() => whatIf(plan, fault, setupId), [plan, fault, setupId]);
  return (
    <div className="power-kept">
      {result.ok ? <Case result={result.value} /> : <p className="soft">{problemText(result.error)}</p>}
      <button type="button" className="button" onClick={onDiscard}>
        Discard{result.ok ? ` “${result.value.title}”` : ''}
      </button>
    </div>
  );
};

const STATE: Readonly<Record<FaultLoad['state'], string>> = {
  dark: 'dark',
  'fewer legs': 'on fewer legs',
  'wrong volts': 'outside its volts',
  'as before': 'as before',
};

const Case = ({ result }: { readonly result: WhatIf }) => {
  const { session } = useServices();
  const hit = result.loads.filter((l) => l.state !== 'as before');
  const rest = result.loads.length - hit.length;
  return (
    <article aria-label={result.title}>
      <h3 className="power-source">
        {result.title} <span className="soft">in {result.setup || 'the plan'}</span>
      </h3>
      <p className="soft">
        {hit.length === 0 ? 'No load is hit. ' : ''}
        {rest} of {result.loads.length} loads as before.
        {result.voltsKnown ? '' : ' Volts are reckoned from nominal: the house volts are not known.'}
      </p>
      {result.meter ? (
        <p>
          {result.meter.label}:{' '}
          {result.meter.wires
            .map((w) => `${w.name} ${formatAmps(w.beforeA)} → ${formatAmps(w.afterA)}`)
            .join(' · ')}
        </p>
      ) : null}
      {hit.length > 0 ? (
        <>
          <table className="table power-table">
            <thead>
              <tr>
                <th scope="col">Load</th>
                <th scope="col">What it sees</th>
                <th scope="col" className="num">
                  Volts
                </th>
                <th scope="col" className="num">
                  Takes
                </th>
                <th scope="col" className="num">
                  Watts there
                </th>
                <th scope="col">Restrike</th>
              </tr>
            </thead>
            <tbody>
              {hit.map((l) => (
                <tr key={l.key}>
                  <td>{l.label}</td>
                  <td className={l.state === 'wrong volts' ? 'over' : 'strong'}>{STATE[l.state]}</td>
                  <td className="num">{formatVolts(l.voltsV)}</td>
                  <td className="num">
                    {Number.isFinite(l.voltsMinV) ? `${l.voltsMinV}–${l.voltsMaxV} V` : '–'}
                  </td>
                  <td className="num">{Number.isFinite(l.wattsW) ? formatWatts(l.wattsW) : '–'}</td>
                  <td>{l.restrikeMin === undefined ? '' : `${l.restrikeMin} min`}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p>
            <button
              type="button"
              className="button"
              onClick={() =>
                session.set({ selection: new Set(hit.map((l) => l.recordId)), workspace: 'floor' })
              }
            >
              Show them on the floor
            </button>
          </p>
        </>
      ) : null}
      {result.notes.map((n) => (
        <p key={n} className="soft">
          {n}
        </p>
      ))}
    </article>
  );
};

interface Choice {
  readonly id: string;
  readonly name: string;
  readonly fault: Fault;
}

const choicesOf = (
  entities: readonly SupplyEntity[],
  what: What,
  practice: Parameters<typeof legName>[0],
): readonly Choice[] => {
  const used = new Set(entities.flatMap((e) => (e.parentKey === undefined ? [] : [e.parentKey])));
  if (what === 'trip')
    return entities.flatMap((e): readonly Choice[] =>
      e.what === 'way' && e.wayId !== undefined && used.has(e.key)
        ? [{ id: e.key, name: e.label, fault: { trip: { ownerId: e.recordId, wayId: e.wayId } } }]
        : [],
    );
  if (what === 'leg')
    return entities
      .filter((e) => e.what === 'source')
      .flatMap((e) =>
        e.legs.map((leg) => ({
          id: `${e.key}:${leg}`,
          name: `${e.label} leg ${legName(practice, e.system, leg)}`,
          fault: { loseLeg: { sourceId: e.recordId, leg } },
        })),
      );
  return entities
    .filter((e) => (e.what === 'source' || e.what === 'box') && e.neutral && e.legs.length > 1)
    .map((e) => ({
      id: e.key,
      name: `ahead of ${e.label}`,
      fault: { loseNeutral: { recordId: e.recordId } },
    }));
};
