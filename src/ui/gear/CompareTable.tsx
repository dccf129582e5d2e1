import type { Kind } from '../../plan/kinds/kinds.ts';
import { planRecord } from '../../plan/plan.ts';
import { kindFacts } from '../../report/kind-facts.ts';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { placeKind } from '../floor/placing.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { WhereUsed } from './WhereUsed.tsx';

/** Families that come with, on or along something and are not placed by themselves. */
const NOT_ALONE: ReadonlySet<string> = new Set(['cable', 'dataCable', 'ballast', 'pack']);

/** Kinds side by side: a line per fact, the basis under each value. Values that differ stand out. */
export const CompareTable = ({
  kinds,
  onDrop,
}: {
  readonly kinds: readonly Kind[];
  readonly onDrop: (k: Kind) => void;
}) => {
  const { session, book } = useServices();
  const { units, readOnly } = useSessionSlice((s) => ({
    units: planRecord(s.plan).lengthUnits,
    readOnly: s.readOnly,
  }));
  const facts = kinds.map((k) => new Map(kindFacts(k, units).map((f) => [f.name, f])));
  const names = [...new Set(facts.flatMap((f) => [...f.keys()]))].filter((n) =>
    facts.some((f) => f.get(n) && f.get(n)?.value !== '–'),
  );
  return (
    <table className="table compare">
      <thead>
        <tr>
          <th scope="col">
            <span className="visually-hidden">Fact</span>
          </th>
          {kinds.map((k) => (
            <th key={k.id} scope="col" className="compare-head">
              <SymbolIcon symbolId={k.symbol} size={64} />
              <span className="compare-name">{k.name}</span>
              <span className="soft">
                {k.origin.book === 'built-in' ? 'built-in' : 'own'}
                {k.also.length > 0 ? ` · also ${k.also.slice(0, 4).join(', ')}` : ''}
              </span>
              <span className="compare-actions">
                {!NOT_ALONE.has(k.family) ? (
                  <button
                    type="button"
                    className="button"
                    disabled={readOnly}
                    onClick={() => {
                      placeKind(session, book, k);
                      session.set({ workspace: 'floor' });
                    }}
                  >
                    Place on the floor
                  </button>
                ) : null}
                {kinds.length > 1 ? (
                  <button type="button" className="link" onClick={() => onDrop(k)}>
                    leave out
                  </button>
                ) : null}
              </span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {names.map((name) => {
          const values = facts.map((f) => f.get(name)?.value ?? '–');
          const differ = new Set(values).size > 1;
          return (
            <tr key={name}>
              <th scope="row">{name}</th>
              {facts.map((f, i) => (
                <td key={kinds[i]?.id} className={differ ? 'strong' : undefined}>
                  {values[i]}
                  <span
                    className={
                      /assumed/.test(f.get(name)?.basis ?? '') ? 'compare-basis assumed' : 'compare-basis'
                    }
                  >
                    {f.get(name)?.basis}
                  </span>
                </td>
              ))}
            </tr>
          );
        })}
        <tr>
          <th scope="row">In this plan</th>
          {kinds.map((k) => (
            <td key={k.id}>
              <WhereUsed kind={k} />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
};
