import { problemText } from '../../kernel/result.ts';
import { parseUniverses, setPortUniverses } from '../../plan/edits/devices.ts';
import type { Device } from '../../plan/records/index.ts';
import { type NodePort, networkOf } from '../../report/control.ts';
import { Row } from '../common/Field.tsx';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import './lines.css';

/** Universes as they are shown in a field: `1, 2, 5-8`. */
export const universeList = (numbers: readonly number[]): string => {
  const out: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let j = i;
    while (numbers[j + 1] === (numbers[j] ?? 0) + 1) j++;
    out.push(j > i + 1 ? `${numbers[i]}-${numbers[j]}` : String(numbers[i]));
    i = j > i + 1 ? j + 1 : i + 1;
  }
  return out.join(', ');
};

/** Whether a port is told its universe by hand: not a splitter’s, which passes on what comes. */
export const isSet = (family: string, p: NodePort): boolean => {
  if (family === 'dataSplitter' || p.port.id === 'through') return false;
  if (family === 'transmitter') return p.side === 'in';
  if (family === 'repeater') return p.side === 'in';
  return p.side === 'out' && p.port.connector !== 'radio';
};

/** The universes of one port, typed. */
export const PortCell = ({
  device,
  port,
  disabled,
  label,
}: {
  readonly device: Device;
  readonly port: NodePort;
  readonly disabled: boolean;
  /** Where the same port stands on one screen twice. */
  readonly label?: string;
}) => {
  const { session } = useServices();
  const words = `${device.label}, ${port.port.label ?? port.port.id}`;
  return (
    <TypedCell
      label={label ?? `Universes of ${words}`}
      value={port.universes}
      format={universeList}
      parse={parseUniverses}
      disabled={disabled}
      placeholder="none"
      onCommit={(numbers) => {
        const r = setPortUniverses(session.getState().plan, device.id, port.port.id, numbers);
        session.set({ message: r.ok ? '' : problemText(r.error) });
        if (r.ok) session.commit(`Universes of ${words}`, r.value);
      }}
    />
  );
};

/** Data ports of a device with the universes they carry, in the panel beside the drawing. */
export const DeviceRows = ({ device }: { readonly device: Device }) => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const row = networkOf(plan).nodes.find((n) => n.deviceId === device.id);
  if (!row || row.ports.length === 0) return null;
  return (
    <>
      <h3 className="inspector-head">Data ports</h3>
      {row.ports.map((p) => (
        <Row key={`${p.side}-${p.port.id}`} label={p.port.label ?? p.port.id}>
          {isSet(row.family, p) ? (
            <>
              <span className="soft">U </span>
              <PortCell device={device} port={p} disabled={readOnly || device.locked === true} />
            </>
          ) : (
            <span className="soft">
              {p.side === 'in' ? 'in' : p.port.connector === 'radio' ? 'radio' : 'out'}
            </span>
          )}
          <span className="row-hint">{p.lines.length > 0 ? p.lines.join(', ') : 'no line'}</span>
        </Row>
      ))}
    </>
  );
};
