import { ArrowDown, ArrowUp, X } from 'lucide-react';
import { useState } from 'react';
import { lineLength } from '../../derive/data-lines.ts';
import { compareNatural } from '../../kernel/ids.ts';
import type { Result } from '../../kernel/result.ts';
import { problemText } from '../../kernel/result.ts';
import { formatCableLength, formatLength } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { canStop, insertStop, letHop, moveStop, setStops } from '../../plan/edits/lines.ts';
import { recordName } from '../../plan/names.ts';
import { planRecord, recordsOf } from '../../plan/plan.ts';
import type { DataLine } from '../../plan/records/index.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** What a line reaches, in order: moved, taken out and put in without a mouse on the drawing. */
export const LineOrder = ({ line }: { readonly line: DataLine }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [adding, setAdding] = useState('');
  const units = planRecord(plan).lengthUnits;
  const off = readOnly || line.locked === true;
  const length = lineLength(plan, line);
  const hops = new Map(length.hops.map((h) => [h.index, h]));
  const name = recordName(plan, line);
  const commit = (label: string, r: Result<ChangeSet>): void => {
    session.set({ message: r.ok ? '' : problemText(r.error) });
    if (r.ok) session.commit(label, r.value);
  };
  const on = new Set([line.from.recordId, ...line.stops]);
  const free = [...recordsOf(plan, 'fixture'), ...recordsOf(plan, 'device'), ...recordsOf(plan, 'box')]
    .filter((r) => !on.has(r.id) && canStop(plan, r.id))
    .map((r) => ({
      id: r.id,
      words: recordName(plan, r),
      patched: r.type === 'fixture' && r.patch !== undefined,
    }))
    .sort((a, b) => Number(b.patched) - Number(a.patched) || compareNatural(a.words, b.words));

  return (
    <div className="line-order">
      <table className="table line-stops">
        <thead>
          <tr>
            <th scope="col">Stop</th>
            <th scope="col" className="num">
              Way
            </th>
            <th scope="col" className="line-cable">
              Cable
            </th>
            <th scope="col">
              <span className="visually-hidden">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {line.stops.map((id, i) => {
            const hop = hops.get(i);
            const stop = recordName(plan, id);
            return (
              <tr key={`${id}-${i}`}>
                <th scope="row">
                  {i + 1}{' '}
                  <button
                    type="button"
                    className="link"
                    onClick={() => session.set({ selection: new Set([id]) })}
                  >
                    {stop}
                  </button>
                </th>
                <td className="num">
                  {hop ? formatLength(hop.neededMm, units) : '–'}
                  {hop?.byHand ? (
                    <button
                      type="button"
                      className="link line-hand"
                      disabled={off}
                      title="Laid by hand: let it find its own way again"
                      onClick={() =>
                        session.commit(
                          `Let ${name} find its way`,
                          letHop(session.getState().plan, line.id, i),
                        )
                      }
                    >
                      by hand ×
                    </button>
                  ) : null}
                </td>
                <td className="line-cable">
                  {hop ? hop.piecesMm.map((mm) => formatCableLength(mm, units)).join(' + ') : '–'}
                </td>
                <td className="line-buttons">
                  <button
                    type="button"
                    className="button quiet icon"
                    aria-label={`Move ${stop} up`}
                    title="Move up"
                    disabled={off || i === 0}
                    onClick={() => commit(`Move ${stop} on ${name}`, moveStop(plan, line.id, i, -1))}
                  >
                    <ArrowUp size={13} aria-hidden="true" />
                  </button>
                  <button
                    type="button"
                    className="button quiet icon"
                    aria-label={`Move ${stop} down`}
                    title="Move down"
                    disabled={off || i === line.stops.length - 1}
                    onClick={() => commit(`Move ${stop} on ${name}`, moveStop(plan, line.id, i, 1))}
                  >
                    <ArrowDown size={13} aria-hidden="true" />
                  </button>
                  <button
                    type="button"
                    className="button quiet icon"
                    aria-label={`Take ${stop} out`}
                    title="Take out"
                    disabled={off}
                    onClick={() =>
                      commit(
                        line.stops.length === 1 ? `Remove ${name}` : `Take ${stop} out of ${name}`,
                        setStops(
                          plan,
                          line.id,
                          line.stops.filter((_, k) => k !== i),
                        ),
                      )
                    }
                  >
                    <X size={13} aria-hidden="true" />
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In all</th>
            <td className="num">{formatLength(length.neededMm, units)}</td>
            <td className="line-cable">
              {formatLength(length.totalMm, units)} in {length.pieces}{' '}
              {length.pieces === 1 ? 'cable' : 'cables'}
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
      <div className="line-add">
        <select
          className="input"
          aria-label={`Add a stop to ${name}`}
          value={adding}
          disabled={off || free.length === 0}
          onChange={(e) => setAdding(e.target.value)}
        >
          <option value="">{free.length === 0 ? 'nothing else takes data' : 'add a stop…'}</option>
          {free.map((r) => (
            <option key={r.id} value={r.id}>
              {r.words}
            </option>
          ))}
        </select>
        {(['first', 'last'] as const).map((where) => (
          <button
            key={where}
            type="button"
            className="button"
            disabled={off || adding === ''}
            onClick={() => {
              commit(
                `Add a stop to ${name}`,
                insertStop(plan, line.id, where === 'first' ? 0 : line.stops.length, adding),
              );
              setAdding('');
            }}
          >
            {where === 'first' ? 'As first' : 'As last'}
          </button>
        ))}
      </div>
      <p className="small soft">
        Way: along the floor, drops and rises, and slack
        {length.slackAssumed ? ' as usual' : ''}.{' '}
        {length.stockAssumed ? 'Cable lengths are assumed stock.' : ''}
      </p>
    </div>
  );
};
