import { useMemo, useState } from 'react';
import { formatVolts } from '../../kernel/units.ts';
import type { CircuitRow, SourceRow } from '../../report/summary.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useSupply } from '../supply.ts';
import { useUi } from '../ui-state.ts';
import { CircuitBody } from './CircuitBody.tsx';
import { PowerCautions } from './PowerCautions.tsx';
import { Unfed } from './Unfed.tsx';

type Shown = 'all' | 'used' | 'burning' | 'findings' | 'free';

const SHOWN: readonly { readonly id: Shown; readonly word: string }[] = [
  { id: 'all', word: 'all circuits' },
  { id: 'used', word: 'with something on them' },
  { id: 'burning', word: 'that carry something in this setup' },
  { id: 'findings', word: 'with findings' },
  { id: 'free', word: 'that are free' },
];

/** Every source, box, way and load with its current against the limit; this setup and the worst one. */
export const CircuitsTab = () => {
  const { session } = useServices();
  const supply = useSupply();
  const [filter, setFilter] = useState('');
  const [shown, setShown] = useState<Shown>('all');
  const { setups, setupId, findings } = useSessionSlice((s) => ({
    setups: s.assessment?.setups,
    setupId: s.setupId,
    findings: s.assessment?.findings,
  }));
  const wanted = filter.trim().toLowerCase();
  const found = new Set((findings ?? []).flatMap((f) => [...f.recordIds.slice(0, 1), f.id]));
  const isFound = (c: CircuitRow): boolean =>
    [...found].some((id) => id.endsWith(`:${c.key}`)) ||
    c.loads.some((l) => found.has(l.recordId) || (l.cableId !== undefined && found.has(l.cableId)));
  const matches = (c: CircuitRow): boolean => {
    const used = c.loads.length > 0 || c.feeds.length > 0 || c.outlets.length > 0;
    if (shown === 'used' && !used) return false;
    if (shown === 'free' && (used || c.wayId === undefined)) return false;
    if (shown === 'burning' && !(c.nowW > 0)) return false;
    if (shown === 'findings' && !isFound(c)) return false;
    return (
      wanted === '' ||
      `${c.owner} ${c.label} ${c.loads.map((l) => `${l.label} ${l.kindName}`).join(' ')}`
        .toLowerCase()
        .includes(wanted)
    );
  };
  return (
    <section aria-label="Circuits">
      <div className="power-head">
        <h2>Circuits</h2>
        <input
          className="input power-filter"
          aria-label="Find a circuit or unit"
          placeholder="Find a circuit or unit"
          value={filter}
          onChange={(e) => setFilter(e.target.value)}
        />
        <label>
          Show{' '}
          <select className="input" value={shown} onChange={(e) => setShown(e.target.value as Shown)}>
            {SHOWN.map((s) => (
              <option key={s.id} value={s.id}>
                {s.word}
              </option>
            ))}
          </select>
        </label>
        <label>
          Setup{' '}
          <select
            className="input"
            value={setupId ?? ''}
            onChange={(e) => session.set({ setupId: e.target.value })}
          >
            {(setups ?? []).map((s) => (
              <option key={s.id} value={s.id}>
                {s.name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className="soft small">
        Computed from this plan against the ratings it holds; other loads are unknown. Drag a load to another
        way, or use “move…”; type names, breakers and levels in place.
      </p>
      {supply?.sources.length === 0 ? (
        <p className="power-empty">
          There is no source of power in this plan yet. Place a generator, a house panel or a wall circuit on
          the floor.{' '}
          <button type="button" className="button" onClick={() => session.set({ workspace: 'floor' })}>
            To the floor
          </button>
        </p>
      ) : null}
      {supply?.sources.map((s) => (
        <SourceTable key={s.id} source={s} circuits={s.circuits.filter(matches)} />
      ))}
      {supply && supply.unfed.length > 0 ? <Unfed loads={supply.unfed} /> : null}
      <PowerCautions />
    </section>
  );
};

const COLUMNS: readonly (readonly [string, boolean])[] = [
  ['Box and way', false],
  ['Leg', false],
  ['Breaker', false],
  ['Unit', false],
  ['Cable', false],
  ['Load', true],
  ['Now', true],
  ['Worst', true],
  ['Limit', true],
  ['Of limit, worst', false],
  ['Volts', true],
  ['Drop', true],
  ['Findings', false],
];

/** Boxes between a source and the ways of this box, the box counted. */
const useDepths = (): ((ownerId: string) => number) => {
  const entities = useSessionSlice((s) => s.assessment?.entities);
  return useMemo(() => {
    const byKey = new Map((entities ?? []).map((e) => [e.key, e]));
    return (ownerId) => {
      let depth = 0;
      for (let at = byKey.get(ownerId); at; at = byKey.get(at.parentKey ?? ''))
        if (at.what === 'box') depth++;
      return depth;
    };
  }, [entities]);
};

const SourceTable = ({
  source,
  circuits,
}: {
  readonly source: SourceRow;
  readonly circuits: readonly CircuitRow[];
}) => {
  const { session } = useServices();
  const depthOf = useDepths();
  const openSettings = useUi((u) => u.openSettings);
  return (
    <section aria-label={`Circuits of ${source.label}`}>
      <h3 className="power-source">
        {source.label}{' '}
        <span className="soft">
          {source.kindName} · {source.system} ·{' '}
          <button type="button" className="link" onClick={() => openSettings('sources')}>
            {source.voltsV === undefined
              ? 'volts not known: measure'
              : `${formatVolts(source.voltsV)}${source.voltsBasis === 'set-nominal' ? ', assumed' : ''}`}
          </button>
        </span>
      </h3>
      {source.notComputed ? <p className="soft">Not computed: {source.notComputed}</p> : null}
      {source.circuits.length > 0 ? (
        <table className="table power-table">
          <thead>
            <tr>
              {COLUMNS.map(([name, num]) => (
                <th key={name} scope="col" className={num ? 'num' : undefined}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          {circuits.map((c) => (
            <CircuitBody key={c.key} circuit={c} depth={depthOf(c.ownerId)} />
          ))}
        </table>
      ) : null}
      {source.circuits.length === 0 ? (
        <p className="soft">
          No circuit of it is known yet. Choose it on the floor and add its circuits and outlets as read off
          the panel.{' '}
          <button
            type="button"
            className="button"
            onClick={() => session.set({ selection: new Set([source.id]), workspace: 'floor' })}
          >
            Show {source.label} on the floor
          </button>
        </p>
      ) : circuits.length === 0 ? (
        <p className="soft">Nothing here matches.</p>
      ) : null}
    </section>
  );
};
