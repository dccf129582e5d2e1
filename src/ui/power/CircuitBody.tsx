import { useState } from 'react';
import { figureKey } from '../../derive/types.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatAmps, formatPct, formatVoltAmps, formatWatts } from '../../kernel/units.ts';
import { changeWay, type WayChange } from '../../plan/edits/ways.ts';
import { waysOf } from '../../plan/ports.ts';
import { readWayDevice, wayDeviceText } from '../../plan/way-device.ts';
import type { CircuitRow } from '../../report/summary.ts';
import { Figure } from '../common/Figure.tsx';
import { inSetup, worstKey } from '../common/figure-keys.ts';
import { Meter } from '../common/Meter.tsx';
import { anyText, text } from '../common/parse.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { FindingMarks } from './circuit-parts.tsx';
import { LoadLine } from './LoadLine.tsx';
import { DRAGGED, useMove } from './use-move.ts';

const parseAmps = (t: string): Result<number> => {
  const m = /^\s*(\d+(?:[.,]\d+)?)\s*a?\s*$/i.exec(t);
  const a = m ? Number(m[1]?.replace(',', '.')) : Number.NaN;
  return a > 0 ? ok(a) : fail({ what: `“${t}” is no breaker.`, todo: 'Type its rating in amps, like 20.' });
};

/** A device that can be read, as it was typed. */
const anyDevice = (t: string): Result<string> => {
  const device = readWayDevice(t);
  return device.ok ? ok(t.trim()) : device;
};

/** Element id of a way's row. */
export const rowId = (key: string): string => `circuit-${key}`;

/** One way with the loads on it; loads are dropped on it, and its name and breaker typed in place. */
export const CircuitBody = ({
  circuit,
  depth,
}: {
  readonly circuit: CircuitRow;
  /** Boxes between the source and this way. */
  readonly depth: number;
}) => {
  const { session } = useServices();
  const move = useMove();
  const [dragOver, setOver] = useState(false);
  const { readOnly, way, setupId } = useSessionSlice((s) => ({
    setupId: s.setupId,
    readOnly: s.readOnly,
    way: waysOf(s.plan, circuit.ownerId).find((w) => w.id === circuit.wayId),
  }));
  const wayLabel = way?.label;
  const takes = (e: React.DragEvent): boolean =>
    !readOnly && circuit.wayId !== undefined && e.dataTransfer.types.includes(DRAGGED);
  const key = (q: 'loadW' | 'loadVa' | 'usePct'): string => figureKey(q, circuit.key, setupId ?? '');
  const over = circuit.amps.limitA !== undefined && circuit.amps.worstA > circuit.amps.limitA;
  const change = (what: WayChange, words: string): void => {
    if (circuit.wayId === undefined) return;
    const r = changeWay(session.getState().plan, circuit.ownerId, circuit.wayId, what);
    if (r.ok) session.commit(`${words} of ${circuit.label}`, r.value);
    else session.set({ message: `${r.error.what} ${r.error.todo ?? ''}` });
  };
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
      <tr className="power-circuit" data-depth={Math.min(depth, 4)} id={rowId(circuit.key)}>
        <th scope="row">
          {wayLabel === undefined ? (
            circuit.label
          ) : (
            <>
              {circuit.owner} {/^\d+[a-z]?$/i.test(wayLabel) ? 'way ' : ''}
              <TypedCell
                label={`Name of ${circuit.label}`}
                value={wayLabel}
                format={text}
                parse={anyText}
                disabled={readOnly}
                onCommit={(label) => change({ label }, 'Name')}
              />
            </>
          )}
          {circuit.outlets.length > 0 ? <span className="soft"> {circuit.outlets.join(', ')}</span> : null}
        </th>
        <td>{circuit.legs}</td>
        <td>
          {circuit.breakerA === undefined ? (
            'none'
          ) : circuit.wayId === undefined ? (
            `${circuit.breakerA} A`
          ) : (
            <TypedCell
              label={`Breaker of ${circuit.label}`}
              value={circuit.breakerA}
              format={(a) => `${a} A`}
              parse={parseAmps}
              disabled={readOnly}
              onCommit={(breakerA) => change({ breakerA }, 'Breaker')}
            />
          )}
          {circuit.poles > 0 ? <span className="soft"> {circuit.poles}P</span> : null}
          {way ? (
            <span className="power-device">
              <TypedCell
                label={`Curve and residual-current device of ${circuit.label}`}
                value={wayDeviceText(way)}
                format={text}
                parse={anyDevice}
                disabled={readOnly}
                placeholder="no device"
                onCommit={(t) => {
                  const device = readWayDevice(t);
                  if (device.ok) change({ device: device.value }, 'Device');
                }}
              />
            </span>
          ) : null}
        </td>
        <td className="soft">
          {circuit.feeds.length > 0
            ? `feeds ${circuit.feeds.join(', ')}`
            : circuit.loads.length === 0
              ? circuit.outlets.length > 0
                ? 'nothing plugged'
                : 'free'
              : ''}
        </td>
        <td />
        <td className="num">
          {circuit.nowW > 0 ? (
            <>
              <Figure figureKey={key('loadW')}>{formatWatts(circuit.nowW)}</Figure>
              <span className="power-va">
                , <Figure figureKey={key('loadVa')}>{formatVoltAmps(circuit.nowVa)}</Figure>
              </span>
            </>
          ) : (
            ''
          )}
        </td>
        <td className="num">
          <Figure figureKey={circuit.amps.figureKey}>{formatAmps(circuit.amps.nowA)}</Figure>
        </td>
        <td className={over ? 'num over' : 'num strong'}>
          <Figure
            figureKey={worstKey(circuit.amps)}
            title={`worst in ${circuit.amps.worstSetup}: show the working`}
          >
            {formatAmps(circuit.amps.worstA)}
          </Figure>
        </td>
        <td
          className="num"
          title={circuit.amps.setBy ? `set by the ${circuit.amps.setBy.replace('-', ' ')}` : undefined}
        >
          {circuit.amps.limitA === undefined ? '–' : formatAmps(circuit.amps.limitA)}
        </td>
        <td className="power-meter">
          <Meter
            now={circuit.amps.nowA}
            worst={circuit.amps.worstA}
            limit={circuit.amps.limitA}
            rating={circuit.amps.ratingA}
          />
          <span className={over ? 'over' : undefined}>
            {Number.isFinite(circuit.amps.worstPct) ? (
              <Figure figureKey={inSetup(key('usePct'), circuit.amps.worstSetupId)}>
                {formatPct(circuit.amps.worstPct)}
              </Figure>
            ) : (
              '–'
            )}
          </span>
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
