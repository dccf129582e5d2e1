import { useMemo, useState } from 'react';
import {
  CONNECTOR_WORDS,
  lineLengths,
  linesInOrder,
  needsTerminator,
  startPort,
} from '../../derive/data-lines.ts';
import { startPorts } from '../../derive/data-net.ts';
import { problemText } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { addLine, canStop } from '../../plan/edits/lines.ts';
import type { DataCableKind } from '../../plan/kinds/kinds.ts';
import { recordName } from '../../plan/names.ts';
import { planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { DataLine } from '../../plan/records/index.ts';
import type { Finding } from '../../report/types.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { FindingSigns, findingsBy } from './FindingSigns.tsx';
import { carriedWords, LineRows, startChoices } from './LineRows.tsx';
import { NodesTable } from './NodesTable.tsx';
import './lines.css';

/** Data lines with what they reach and how long they are; desks, nodes and splitters with their ports; the network in all. */
export const LinesTab = () => {
  const { session } = useServices();
  const { plan, selection, findings, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    selection: s.selection,
    findings: s.assessment?.findings,
    readOnly: s.readOnly,
  }));
  const about = useMemo(() => findingsBy(findings ?? []), [findings]);
  const units = planRecord(plan).lengthUnits;
  const lines = linesInOrder(plan);
  const lengths = new Map(lineLengths(plan).map((l) => [l.lineId, l]));
  const chosen = lines.find((l) => selection.has(l.id));
  const totals = [...lengths.values()];

  return (
    <div className="lines">
      <div className="lines-main">
        <section aria-label="Data lines">
          <div className="lines-head">
            <h2>Data lines</h2>
            <span className="soft">
              {lines.length} {lines.length === 1 ? 'line' : 'lines'},{' '}
              {formatLength(
                totals.reduce((s, l) => s + l.totalMm, 0),
                units,
              )}{' '}
              of cable in {totals.reduce((s, l) => s + l.pieces, 0)} pieces
            </span>
          </div>
          {lines.length === 0 ? (
            <p className="soft">
              No data lines yet. On the floor choose Data line and press on the desk, node or splitter, then
              on each unit in order; or start one below.
            </p>
          ) : (
            <table className="table">
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">From</th>
                  <th scope="col">Carries</th>
                  <th scope="col" className="num">
                    Stops
                  </th>
                  <th scope="col">Reaches</th>
                  <th scope="col" className="num">
                    Length
                  </th>
                  <th scope="col">End</th>
                  <th scope="col">Findings</th>
                </tr>
              </thead>
              <tbody>
                {lines.map((l) => (
                  <LineRow
                    key={l.id}
                    line={l}
                    chosen={l.id === chosen?.id}
                    totalMm={lengths.get(l.id)?.totalMm ?? 0}
                    findings={about.get(l.id) ?? []}
                  />
                ))}
              </tbody>
            </table>
          )}
          <NewLine disabled={readOnly} />
        </section>
        <NodesTable about={about} />
      </div>
      <aside className="lines-side" aria-label="The chosen line">
        {chosen ? (
          <>
            <div className="lines-head">
              <h2>{recordName(plan, chosen).replace(/^data line /, 'Line ')}</h2>
              <button
                type="button"
                className="button"
                onClick={() => session.set({ workspace: 'floor', selection: new Set([chosen.id]) })}
              >
                Show on the floor
              </button>
            </div>
            <LineRows key={chosen.id} line={chosen} />
          </>
        ) : (
          <p className="soft">
            Choose a line: the order of what it reaches, its way and its end are set here.
          </p>
        )}
      </aside>
    </div>
  );
};

const LineRow = ({
  line,
  chosen,
  totalMm,
  findings,
}: {
  readonly line: DataLine;
  readonly chosen: boolean;
  readonly totalMm: number;
  readonly findings: readonly Finding[];
}) => {
  const { session } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const units = planRecord(plan).lengthUnits;
  const from = plan.records.get(line.from.recordId);
  const port = startPort(plan, line);
  const short = (id: string): string => {
    const r = plan.records.get(id);
    return r?.type === 'fixture' ? r.unit : r && 'label' in r ? String(r.label) : 'gone';
  };
  return (
    <tr className={chosen ? 'chosen' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="link"
          aria-pressed={chosen}
          onClick={() => session.set({ selection: new Set([line.id]) })}
        >
          {line.label || 'a line'}
        </button>
      </th>
      <td>
        {from ? short(from.id) : 'gone'} {port?.label ?? line.from.portId}
        <span className="soft"> {CONNECTOR_WORDS[port?.connector ?? 'xlr-5']}</span>
      </td>
      <td className="strong">{carriedWords(plan, line)}</td>
      <td className="num">{line.stops.length}</td>
      <td className="lines-cut" title={line.stops.map(short).join(' → ')}>
        {line.stops.map(short).join(' → ')}
      </td>
      <td className="num">{formatLength(totalMm, units)}</td>
      <td>{needsTerminator(plan, line) ? (line.terminated ? 'terminated' : 'open') : 'ends itself'}</td>
      <td>
        <FindingSigns findings={findings} />
      </td>
    </tr>
  );
};

/** Starts a line without a mouse: from a port to a first stop. */
const NewLine = ({ disabled }: { readonly disabled: boolean }) => {
  const { session, book } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const [start, setStart] = useState('');
  const [stop, setStop] = useState('');
  const choices = startChoices(plan);
  const from = choices.find((c) => c.key === start);
  const stops = [...recordsOf(plan, 'device'), ...recordsOf(plan, 'fixture')].filter(
    (r) => r.id !== from?.recordId && canStop(plan, r.id),
  );
  const add = (): void => {
    if (!from || !recordOf(plan, plan.records.get(stop)?.type === 'device' ? 'device' : 'fixture', stop))
      return;
    const connector = startPorts(plan, from.recordId).find((p) => p.id === from.portId)?.connector;
    const cable = book
      .kinds()
      .find((k): k is DataCableKind => k.family === 'dataCable' && k.connector === connector);
    const r = addLine(plan, { recordId: from.recordId, portId: from.portId }, [stop], session.newId, cable);
    if (!r.ok) return session.set({ message: problemText(r.error) });
    session.commit(`Draw ${recordName(plan, r.value.line)}`, r.value.changes);
    session.set({ selection: new Set([r.value.line.id]), message: '' });
    setStart('');
    setStop('');
  };
  return (
    <div className="lines-new">
      <select
        className="input"
        aria-label="New line starts from"
        value={start}
        disabled={disabled || choices.length === 0}
        onChange={(e) => setStart(e.target.value)}
      >
        <option value="">{choices.length === 0 ? 'nothing gives data yet' : 'new line from…'}</option>
        {choices.map((c) => (
          <option key={c.key} value={c.key}>
            {c.words}
          </option>
        ))}
      </select>
      <select
        className="input"
        aria-label="New line leads to"
        value={stop}
        disabled={disabled || start === ''}
        onChange={(e) => setStop(e.target.value)}
      >
        <option value="">to…</option>
        {stops.map((r) => (
          <option key={r.id} value={r.id}>
            {recordName(plan, r)}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="button"
        disabled={disabled || start === '' || stop === ''}
        onClick={add}
      >
        Start the line
      </button>
    </div>
  );
};
