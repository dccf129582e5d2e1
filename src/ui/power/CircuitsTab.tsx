import { useState } from 'react';
import {
  formatAmps,
  formatCableLength,
  formatPct,
  formatVoltAmps,
  formatVolts,
  formatWatts,
} from '../../kernel/units.ts';
import { outletOnWay, replug } from '../../plan/edits/replug.ts';
import { recordName } from '../../plan/names.ts';
import { planRecord } from '../../plan/plan.ts';
import { inletsOf } from '../../plan/ports.ts';
import type { CircuitRow, LoadRow, SourceRow } from '../../report/summary.ts';
import { Figure } from '../common/Figure.tsx';
import { Meter } from '../common/Meter.tsx';
import { Severity } from '../common/Severity.tsx';
import { PlugDialog } from '../floor/PlugDialog.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useSupply } from '../supply.ts';
import { useUi } from '../ui-state.ts';

/** Every source, box, way and load with its current against the limit; this setup and the worst one. */
export const CircuitsTab = () => {
  const supply = useSupply();
  const [filter, setFilter] = useState('');
  const wanted = filter.trim().toLowerCase();
  const matches = (c: CircuitRow): boolean =>
    wanted === '' ||
    `${c.owner} ${c.label} ${c.loads.map((l) => `${l.label} ${l.kindName}`).join(' ')}`
      .toLowerCase()
      .includes(wanted);
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
        <p className="soft">
          Computed from this plan against the ratings it holds; other loads are unknown. A qualified person
          decides.
        </p>
      </div>
      {supply?.sources.length === 0 ? (
        <p className="power-empty">
          There is no source of power in this plan yet. Place a generator, a house panel or a wall circuit on
          the floor.
        </p>
      ) : null}
      {supply?.sources.map((s) => (
        <SourceTable key={s.id} source={s} circuits={s.circuits.filter(matches)} />
      ))}
      {supply && supply.unfed.length > 0 ? (
        <section>
          <h3 className="power-source">Not plugged</h3>
          <ul className="power-unfed">
            {supply.unfed.map((l) => (
              <li key={l.key}>
                <SelectName load={l} />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </section>
  );
};

const SourceTable = ({
  source,
  circuits,
}: {
  readonly source: SourceRow;
  readonly circuits: readonly CircuitRow[];
}) => (
  <section aria-label={`Circuits of ${source.label}`}>
    <h3 className="power-source">
      {source.label}{' '}
      <span className="soft">
        {source.kindName} · {source.system}
        {source.voltsV === undefined ? ' · volts not known: measure' : ` · ${formatVolts(source.voltsV)}`}
      </span>
    </h3>
    {source.notComputed ? <p className="soft">Not computed: {source.notComputed}</p> : null}
    <table className="table power-table">
      <thead>
        <tr>
          <th scope="col">Box and way</th>
          <th scope="col">Leg</th>
          <th scope="col">Breaker</th>
          <th scope="col">Unit</th>
          <th scope="col">Cable</th>
          <th scope="col" className="num">
            Load
          </th>
          <th scope="col" className="num">
            Now
          </th>
          <th scope="col" className="num">
            Worst
          </th>
          <th scope="col" className="num">
            Limit
          </th>
          <th scope="col">Of limit, worst</th>
          <th scope="col" className="num">
            Volts
          </th>
          <th scope="col" className="num">
            Drop
          </th>
          <th scope="col">Findings</th>
        </tr>
      </thead>
      {circuits.map((c) => (
        <CircuitBody key={c.key} circuit={c} />
      ))}
    </table>
    {circuits.length === 0 ? <p className="soft">Nothing here matches.</p> : null}
  </section>
);

/** What a dragged load row carries: the record that takes the mains. */
const DRAGGED = 'application/x-lampwright-load';

/** Moves a load to a way, or says why it cannot go there. */
const useMove = (): ((recordId: string, circuit: CircuitRow) => void) => {
  const { session, book } = useServices();
  return (recordId, circuit) => {
    const { plan } = session.getState();
    const inlet = inletsOf(plan, recordId)[0];
    if (!inlet || circuit.wayId === undefined) return;
    const at = { recordId, portId: inlet.id };
    const to = outletOnWay(plan, at, { ownerId: circuit.ownerId, wayId: circuit.wayId }, book.cables());
    const name = recordName(plan, recordId);
    if (to) {
      session.commit(`Move ${name} to ${circuit.label}`, replug(plan, at, to, session.newId));
      session.set({ message: `${name} is on ${circuit.label} now. De-energize before re-plugging.` });
    } else session.set({ message: `${circuit.label} has no free outlet that takes ${name}.` });
  };
};

const CircuitBody = ({ circuit }: { readonly circuit: CircuitRow }) => {
  const move = useMove();
  const [dragOver, setOver] = useState(false);
  const readOnly = useSessionSlice((s) => s.readOnly);
  const takes = (e: React.DragEvent): boolean =>
    !readOnly && circuit.wayId !== undefined && e.dataTransfer.types.includes(DRAGGED);
  const over = circuit.amps.limitA !== undefined && circuit.amps.worstA > circuit.amps.limitA;
  return (
    <tbody
      className={dragOver ? 'power-drop' : undefined}
      onDragOver={(e) => {
        if (!takes(e)) return;
        e.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(e) => {
        setOver(false);
        if (!takes(e)) return;
        e.preventDefault();
        move(e.dataTransfer.getData(DRAGGED), circuit);
      }}
    >
      <tr className="power-circuit">
        <th scope="row">
          {circuit.label}
          {circuit.outlets.length > 0 ? <span className="soft"> {circuit.outlets.join(', ')}</span> : null}
        </th>
        <td>{circuit.legs}</td>
        <td>
          {circuit.breakerA === undefined ? 'none' : `${circuit.breakerA} A ${circuit.poles}P`}
          {circuit.curve && circuit.curve !== 'na' ? ` ${circuit.curve}` : ''}
        </td>
        <td className="soft">
          {circuit.feeds.length > 0
            ? `feeds ${circuit.feeds.join(', ')}`
            : circuit.loads.length === 0
              ? 'free'
              : ''}
        </td>
        <td />
        <td className="num">
          {circuit.nowW > 0 ? `${formatWatts(circuit.nowW)}, ${formatVoltAmps(circuit.nowVa)}` : ''}
        </td>
        <td className="num">
          <Figure figureKey={circuit.amps.figureKey}>{formatAmps(circuit.amps.nowA)}</Figure>
        </td>
        <td className={over ? 'num over' : 'num strong'} title={`worst in ${circuit.amps.worstSetup}`}>
          {formatAmps(circuit.amps.worstA)}
        </td>
        <td
          className="num"
          title={circuit.amps.setBy ? `set by the ${circuit.amps.setBy.replace('-', ' ')}` : undefined}
        >
          {circuit.amps.limitA === undefined ? '–' : formatAmps(circuit.amps.limitA)}
        </td>
        <td className="power-meter">
          <Meter now={circuit.amps.nowA} worst={circuit.amps.worstA} limit={circuit.amps.limitA} />
          <span className={over ? 'over' : undefined}>{formatPct(circuit.amps.worstPct)}</span>
        </td>
        <td />
        <td />
        <td>
          <FindingMarks recordIds={[circuit.ownerId]} wayKey={circuit.key} />
        </td>
      </tr>
      {circuit.loads.map((l) => (
        <LoadLine key={l.key} load={l} />
      ))}
    </tbody>
  );
};

const LoadLine = ({ load }: { readonly load: LoadRow }) => {
  const { units, readOnly, chosen, movable } = useSessionSlice((s) => ({
    units: planRecord(s.plan).lengthUnits,
    readOnly: s.readOnly,
    chosen: s.selection.has(load.recordId),
    movable: inletsOf(s.plan, load.recordId).length > 0,
  }));
  const [moving, setMoving] = useState(false);
  const { session } = useServices();
  const inlet = moving ? inletsOf(session.getState().plan, load.recordId)[0] : undefined;
  return (
    <tr
      className={chosen ? 'chosen' : undefined}
      draggable={movable && !readOnly}
      onDragStart={(e) => {
        e.dataTransfer.setData(DRAGGED, load.recordId);
        e.dataTransfer.effectAllowed = 'move';
      }}
    >
      <td />
      <td />
      <td />
      <td>
        <SelectName load={load} />
        {movable ? (
          <button
            type="button"
            className="link power-move"
            disabled={readOnly}
            aria-label={`Move ${load.label} to another way`}
            onClick={() => setMoving(true)}
          >
            move…
          </button>
        ) : null}
        {inlet ? (
          <PlugDialog
            inlet={{ recordId: load.recordId, portId: inlet.id }}
            onClose={() => setMoving(false)}
          />
        ) : null}
      </td>
      <td className="soft">{load.cableMm > 0 ? formatCableLength(load.cableMm, units) : ''}</td>
      <td className="num">
        {formatWatts(load.nowW)}
        {load.levelPct !== undefined && load.levelPct !== 100 ? (
          <span className="soft"> at {load.levelPct} %</span>
        ) : null}
      </td>
      <td className="num">{formatAmps(load.nowA)}</td>
      <td className="num">{formatAmps(load.worstA)}</td>
      <td />
      <td />
      <td className="num">{Number.isFinite(load.voltsV) ? formatVolts(load.voltsV) : 'measure'}</td>
      <td className="num">{Number.isFinite(load.dropPct) ? formatPct(load.dropPct) : '–'}</td>
      <td>
        <FindingMarks
          recordIds={[load.recordId, ...(load.cableId ? [load.cableId] : [])]}
          wayKey={undefined}
        />
      </td>
    </tr>
  );
};

const SelectName = ({ load }: { readonly load: LoadRow }) => {
  const { session } = useServices();
  return (
    <button
      type="button"
      className="link"
      onClick={() => session.set({ selection: new Set([load.recordId]), workspace: 'floor' })}
    >
      {load.label} <span className="soft">{load.kindName}</span>
    </button>
  );
};

/** Findings whose main record is this one, as their numbers; choosing one opens the list. */
const FindingMarks = ({
  recordIds,
  wayKey,
}: {
  readonly recordIds: readonly string[];
  readonly wayKey: string | undefined;
}) => {
  const findings = useSessionSlice((s) => s.assessment?.findings);
  const setFindings = useUi((u) => u.setFindings);
  const found = (findings ?? []).filter((f) =>
    wayKey !== undefined ? f.id.endsWith(`:${wayKey}`) : recordIds.includes(f.recordIds[0] ?? ''),
  );
  if (found.length === 0) return null;
  return (
    <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
      {found.slice(0, 3).map((f) => (
        <Severity key={f.id} level={f.severity}>
          {f.number}
        </Severity>
      ))}
    </button>
  );
};
