import { useMemo, useState } from 'react';
import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { problemText } from '../../kernel/result.ts';
import { planRecord } from '../../plan/plan.ts';
import { type Fault, whatIf } from '../../report/whatif.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { type Trying, useUi } from '../ui-state.ts';
import { FaultCase } from './FaultCase.tsx';
import { LoopsList } from './LoopsList.tsx';
import { PowerCautions } from './PowerCautions.tsx';
import { SwapCase } from './SwapCase.tsx';
import { swapChoices } from './swap-choices.ts';
import { sameTrying, useTried } from './trying.ts';

type What = 'trip' | 'leg' | 'neutral' | 'swap';

const NONE: readonly SupplyEntity[] = [];

/** A fault or another source tried on the plan as it is: what goes dark, what each side would see. The plan is not changed. */
export const WhatIfTab = () => {
  const { book } = useServices();
  const { plan, entities } = useSessionSlice((s) => ({
    plan: s.plan,
    entities: s.assessment?.entities ?? NONE,
  }));
  const kept = useUi((u) => u.faults);
  const setKept = useUi((u) => u.setFaults);
  const trying = useUi((u) => u.trying);
  const setTrying = useUi((u) => u.setTrying);
  const [what, setWhat] = useState<What>(trying?.what === 'swap' ? 'swap' : 'trip');
  const [target, setTarget] = useState('');
  const [slug, setSlug] = useState('');
  const practice = planRecord(plan).practice;
  const choices = useMemo(
    () =>
      // An inverter is a box: no source of the book comes in its place.
      choicesOf(entities, what, practice).filter(
        (c) => what !== 'swap' || plan.records.get(c.id)?.type === 'source',
      ),
    [entities, what, practice, plan],
  );
  const chosen = choices.find((c) => c.id === target) ?? choices[0];
  const sources = useMemo(() => book.kinds().filter((k) => k.family === 'source'), [book]);
  const offered = useMemo(() => swapChoices(plan, sources, chosen?.id ?? ''), [plan, sources, chosen?.id]);
  const kind = sources.find((k) => k.slug === slug) ?? offered.first ?? sources[0];
  const asked: Trying | undefined =
    chosen === undefined
      ? undefined
      : chosen.fault
        ? { what: 'fault', fault: chosen.fault }
        : kind && { what: 'swap', sourceId: chosen.id, slug: kind.slug };
  const tried = useTried();
  const isKept =
    trying?.what === 'fault' && kept.some((f) => JSON.stringify(f) === JSON.stringify(trying.fault));

  return (
    <section className="power-ask" aria-label="What if">
      <div className="power-head">
        <label>
          What happens{' '}
          <select className="input" value={what} onChange={(e) => setWhat(e.target.value as What)}>
            <option value="trip">a breaker trips</option>
            <option value="leg">a leg is lost</option>
            <option value="neutral">the neutral is lost</option>
            <option value="swap">another source comes</option>
          </select>
        </label>
        <label>
          {what === 'swap' ? 'In place of' : 'Where'}{' '}
          <select className="input" value={chosen?.id ?? ''} onChange={(e) => setTarget(e.target.value)}>
            {choices.map((c) => (
              <option key={c.id} value={c.id}>
                {c.name}
              </option>
            ))}
          </select>
        </label>
        {what === 'swap' ? (
          <label>
            Comes{' '}
            <select className="input" value={kind?.slug ?? ''} onChange={(e) => setSlug(e.target.value)}>
              {offered.groups.map((g) => (
                <optgroup key={g.name} label={g.name}>
                  {g.kinds.map((k) => (
                    <option key={k.slug} value={k.slug}>
                      {k.name}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
          </label>
        ) : null}
        <button
          type="button"
          className="button primary"
          disabled={!asked || sameTrying(trying, asked)}
          onClick={() => setTrying(asked)}
        >
          Try it
        </button>
        {tried?.what === 'fault' ? (
          <button
            type="button"
            className="button"
            disabled={isKept}
            onClick={() => setKept([...kept, tried.fault])}
          >
            Keep this case
          </button>
        ) : null}
        <p className="soft">
          Tried on the plan as it is; nothing in it changes. The floor, the diagram and the circuits show what
          is hit.
        </p>
      </div>
      {choices.length === 0 ? (
        <p className="soft">There is nothing in this plan that this can happen to.</p>
      ) : null}
      {tried?.what === 'fault' && tried.result.ok ? (
        <FaultCase result={tried.result.value} fault={tried.fault} />
      ) : null}
      {tried?.what === 'swap' && tried.result.ok ? <SwapCase result={tried.result.value} /> : null}
      {tried && !tried.result.ok ? <p className="soft">{problemText(tried.result.error)}</p> : null}
      {kept.length > 0 ? <h3 className="power-source">Cases kept for comparing</h3> : null}
      {kept.map((fault) => (
        <Kept
          key={JSON.stringify(fault)}
          fault={fault}
          onDiscard={() => setKept(kept.filter((f) => f !== fault))}
        />
      ))}
      <LoopsList />
      <PowerCautions />
    </section>
  );
};

const Kept = ({ fault, onDiscard }: { readonly fault: Fault; readonly onDiscard: () => void }) => {
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  const result = useMemo(() => whatIf(plan, fault, setupId), [plan, fault, setupId]);
  return (
    <div className="power-kept">
      {result.ok ? (
        <FaultCase result={result.value} fault={fault} />
      ) : (
        <p className="soft">{problemText(result.error)}</p>
      )}
      <button type="button" className="button" onClick={onDiscard}>
        Discard{result.ok ? ` “${result.value.title}”` : ''}
      </button>
    </div>
  );
};

interface Choice {
  readonly id: string;
  readonly name: string;
  /** Absent for a source that may be swapped. */
  readonly fault?: Fault;
}

const choicesOf = (
  entities: readonly SupplyEntity[],
  what: What,
  practice: Parameters<typeof legName>[0],
): readonly Choice[] => {
  const used = new Set(entities.flatMap((e) => (e.parentKey === undefined ? [] : [e.parentKey])));
  const sources = entities.filter((e) => e.what === 'source');
  if (what === 'swap') return sources.map((e) => ({ id: e.recordId, name: e.label }));
  if (what === 'trip')
    return entities.flatMap((e): readonly Choice[] =>
      e.what === 'way' && e.wayId !== undefined && used.has(e.key)
        ? [{ id: e.key, name: e.label, fault: { trip: { ownerId: e.recordId, wayId: e.wayId } } }]
        : [],
    );
  if (what === 'leg')
    return sources.flatMap((e) =>
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
