import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatClock } from '../../kernel/units.ts';
import { setStock } from '../../plan/edits/day.ts';
import { recordOf, recordsOf } from '../../plan/plan.ts';
import type { DaySummary, PoolRow } from '../../report/day.ts';
import { AIR_SOURCE } from '../../report/pack-air.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const whole = (t: string): Result<number> => {
  const n = Number(t.trim());
  return t.trim() !== '' && Number.isInteger(n) && n >= 0 && n <= 9999
    ? ok(n)
    : fail({ what: `“${t}” is no number of packs.` });
};
const health = (t: string): Result<number | undefined> => {
  if (t.trim() === '') return ok(undefined);
  const n = Number(t.replace('%', '').trim());
  return n > 0 && n <= 100
    ? ok(n)
    : fail({ what: `“${t}” is no state of health.`, todo: 'Write per cent of the first capacity.' });
};

/** Packs of each kind on the day: how many there are, how many are kept back, how many a plain rotation takes. */
export const StockTable = ({ summary }: { readonly summary: DaySummary }) => (
  <section aria-label="Packs at hand">
    <h3>Packs at hand</h3>
    {summary.pools.length === 0 ? (
      <p className="day-empty">No unit has packs to change yet.</p>
    ) : (
      <table className="table">
        <caption className="visually-hidden">Packs at hand</caption>
        <thead>
          <tr>
            <th scope="col">Packs</th>
            <th scope="col">In all</th>
            <th scope="col">Kept back</th>
            <th scope="col">Health</th>
            <th scope="col" className="num">
              A plain rotation takes
            </th>
            <th scope="col" className="num">
              Bays
            </th>
            <th scope="col" className="num">
              Changes
            </th>
            <th scope="col">On the day</th>
            <th scope="col">By air</th>
          </tr>
        </thead>
        <tbody>
          {summary.pools.map((p) => (
            <PoolLine key={p.id} pool={p} />
          ))}
        </tbody>
      </table>
    )}
    <p className="soft small">By air: {AIR_SOURCE}</p>
  </section>
);

const PoolLine = ({ pool }: { readonly pool: PoolRow }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const kind = recordOf(plan, 'kind', pool.id);
  const stock = recordsOf(plan, 'stock').find((s) => s.kindId === pool.id);
  const set = (label: string, patch: Parameters<typeof setStock>[2]): void => {
    if (kind) session.commit(label, setStock(plan, kind, patch, session.newId));
  };
  const short = pool.short;
  return (
    <tr>
      <th scope="row">{pool.exchange ? `${pool.name} (spare units)` : pool.name}</th>
      <td>
        <TypedCell
          label={`${pool.name} in all`}
          value={stock?.count}
          format={(v) => (v === undefined ? '' : String(v))}
          parse={whole as (t: string) => Result<number | undefined>}
          placeholder="not said"
          disabled={readOnly}
          onCommit={(n) => set('Packs in stock', { count: n ?? 0 })}
        />
        {pool.exchange && pool.count !== undefined && pool.atHand !== undefined ? (
          <span className="soft small"> spare, with those in use {pool.atHand}</span>
        ) : null}
      </td>
      <td>
        <TypedCell
          label={`${pool.name} kept back`}
          value={stock?.reserve ?? 0}
          format={String}
          parse={whole}
          disabled={readOnly || !stock}
          onCommit={(n) => set('Packs kept back', { reserve: n })}
        />
      </td>
      <td>
        <TypedCell
          label={`Health of ${pool.name} in per cent`}
          value={stock?.sohPct}
          format={(v) => (v === undefined ? '' : `${v} %`)}
          parse={health}
          placeholder="assumed"
          disabled={readOnly || !stock}
          onCommit={(sohPct) => set('Health of packs', { sohPct })}
        />
      </td>
      <td className={pool.atHand !== undefined && pool.need > pool.atHand ? 'num over' : 'num strong'}>
        {pool.need}
      </td>
      <td className="num">{pool.exchange ? 'own leads' : pool.bays}</td>
      <td className="num">{pool.swaps}</td>
      <td>
        {short ? (
          <span className="day-fault">
            {short.darkMin === undefined
              ? `${short.label} waits from ${formatClock(short.dueMin)}`
              : `${short.label} dark at ${formatClock(short.darkMin)}`}
          </span>
        ) : (
          'nobody waits'
        )}
      </td>
      <td className="soft">{pool.airText}</td>
    </tr>
  );
};
