import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { portName } from '../../plan/names.ts';
import { kindOf, planRecord, recordOf } from '../../plan/plan.ts';
import { feedOf, inletsOf } from '../../plan/ports.ts';
import type { Device } from '../../plan/records/index.ts';
import { networkOf } from '../../report/control.ts';
import { backupOf, devicePower, type RadioResult, radioKey, servedBy } from '../../report/radio.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { isSet, PortCell } from './DeviceRows.tsx';
import { LinkSelect } from './RadioLinks.tsx';
import { lastsText } from './radio-words.ts';

const numberOrNothing =
  (from: number, to: number, unit: string) =>
  (t: string): Result<number | undefined> => {
    const s = t
      .replace(/[a-z]+$/i, '')
      .replace('−', '-')
      .replace(',', '.')
      .trim();
    if (s === '') return ok(undefined);
    const n = Number(s);
    return n >= from && n <= to
      ? ok(n)
      : fail({ what: `Write ${from} to ${to} ${unit}.`, todo: 'Nothing: the figure of its kind.' });
  };

/** Settings of one transmitter or repeater: band, power, height, universes, back-up; and what it is fed by and serves. */
export const RadioSender = ({
  device,
  result,
}: {
  readonly device: Device;
  readonly result: RadioResult;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const kind = kindOf(plan, device.kindId, 'transmitter', 'repeater');
  const sender = result.model.senders.get(device.id);
  const units = planRecord(plan).lengthUnits;
  const stand = device.standId === undefined ? undefined : recordOf(plan, 'stand', device.standId);
  const served = servedBy(result).get(device.id) ?? [];
  const backup = backupOf(plan, device);
  const power = devicePower(plan, device);
  const inlet = inletsOf(plan, device.id)[0];
  const feed = inlet && feedOf(plan, { recordId: device.id, portId: inlet.id });
  const band = kind?.bands[device.band];

  const change = (label: string, patch: { [K in keyof Device]?: Device[K] | undefined }): void => {
    const r = changeRecord(plan, device, patch as Partial<Device>);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };

  return (
    <section aria-label={device.label}>
      <p className="soft radio-kind">{kind?.name ?? 'kind missing'}</p>
      {kind && kind.bands.length > 1 ? (
        <Row label="Band">
          <select
            className="inline-input"
            aria-label="Band"
            disabled={readOnly}
            value={device.band}
            onChange={(e) => change('Change band', { band: Number(e.target.value) })}
          >
            {kind.bands.map((b, i) => (
              <option key={b.fromMhz} value={i}>
                {b.fromMhz} to {b.toMhz} MHz
              </option>
            ))}
          </select>
        </Row>
      ) : (
        <Row label="Band">{band ? `${band.fromMhz} to ${band.toMhz} MHz` : '–'}</Row>
      )}
      <Field
        label="Radiates"
        value={device.eirpDbm}
        format={(v) => (v === undefined ? '' : `${v} dBm`)}
        parse={numberOrNothing(-30, 36, 'dBm')}
        disabled={readOnly}
        hint={device.eirpDbm === undefined && sender ? `${sender.eirpDbm} dBm of its kind, assumed` : 'EIRP'}
        onCommit={(eirpDbm) => change('Change radiated power', { eirpDbm })}
      />
      {stand ? (
        <Row label="Height">
          {formatLength(stand.heightMm, units)} <span className="row-hint">its stand’s</span>
        </Row>
      ) : (
        <Field
          label="Height"
          value={device.heightMm}
          format={(v) => formatLength(v, units)}
          parse={(t) => {
            const r = parseLengthMm(t, units);
            return r.ok && (r.value < 0 || r.value > 60_000)
              ? fail({ what: 'A height is between the floor and 60 m (197′).' })
              : r;
          }}
          disabled={readOnly}
          onCommit={(heightMm) => change('Change height', { heightMm })}
        />
      )}
      {kind?.antenna === 'panel' ? (
        <Field
          label="Points to"
          value={device.rotationDeg}
          format={(v) => `${Math.round(v)}°`}
          parse={(t) => {
            const n = Number(t.replace('°', '').trim());
            return Number.isFinite(n) && t.trim() !== ''
              ? ok(((n % 360) + 360) % 360)
              : fail({ what: 'Write degrees, like 90.' });
          }}
          disabled={readOnly}
          onCommit={(rotationDeg) => change('Turn aerial', { rotationDeg })}
        />
      ) : null}
      {kind?.family === 'repeater' ? (
        <Row label="Listens to">
          <LinkSelect listenerId={device.id} result={result} />
        </Row>
      ) : (
        <Ports device={device} />
      )}
      <Field
        label="Links"
        value={device.linksMax}
        format={(v) => (v === undefined ? '' : String(v))}
        parse={(t) => {
          const r = numberOrNothing(1, 10_000, 'links')(t);
          return r.ok && r.value !== undefined && !Number.isInteger(r.value)
            ? fail({ what: 'Write a whole number.' })
            : r;
        }}
        disabled={readOnly}
        hint={`${served.length} now${
          sender?.linksMax === undefined ? ', no limit known' : `, ${sender.linksMax} at most`
        }`}
        onCommit={(linksMax) => change('Change links', { linksMax })}
      />
      <Field
        label="Back-up"
        value={device.backupMin}
        format={(v) => (v === undefined ? '' : `${v} min`)}
        parse={numberOrNothing(0, 6000, 'minutes')}
        disabled={readOnly}
        hint={device.backupMin === undefined ? 'as measured; empty: by its kind' : 'measured'}
        onCommit={(backupMin) => change('Change back-up time', { backupMin })}
      />
      <Row label="Fed from">
        {inlet ? (feed ? portName(plan, feed.from) : 'not plugged in') : 'a small supply or its own cell'}
        {power.way && feed && !portName(plan, feed.from).startsWith(power.way.label) ? (
          <span className="row-hint">{power.way.label}</span>
        ) : null}
      </Row>
      <Row label="Unplugged">
        {backup ? (
          <>
            lasts{' '}
            <Figure figureKey={radioKey('radioBackupMin', device.id)}>{lastsText(backup.minutes)}</Figure>
          </>
        ) : (
          'its links drop at once'
        )}
        {served.length > 0 ? (
          <span className="row-hint">then {served.map((l) => l.label).join(', ')} lose data</span>
        ) : null}
      </Row>
    </section>
  );
};

/** The universes of every port that is told them by hand. */
const Ports = ({ device }: { readonly device: Device }) => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const row = networkOf(plan).nodes.find((n) => n.deviceId === device.id);
  return row?.ports
    .filter((p) => isSet(row.family, p))
    .map((p) => (
      <Row key={p.port.id} label={words(p.port.label ?? p.port.id)}>
        <span className="soft">U </span>
        <PortCell device={device} port={p} disabled={readOnly || device.locked === true} />
        <span className="row-hint">
          {p.lines.length > 0 ? `by ${p.lines.join(', ')}` : 'no line'}
          {p.port.universes > 1 ? `; ${p.universes.length} of ${p.port.universes}` : ''}
        </span>
      </Row>
    ));
};

const words = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
