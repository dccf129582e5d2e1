import { useState } from 'react';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { portName, recordName } from '../../plan/names.ts';
import { outletSockets, outletWord } from '../../plan/outlet-sockets.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import { feedOf, inletsOf, waysOf } from '../../plan/ports.ts';
import type { AnyRecord, Outlet } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { anyText, text } from '../common/parse.ts';
import { DeviceRows } from '../control/DeviceRows.tsx';
import { DimmerRows } from '../control/DimmerRows.tsx';
import { LineRows } from '../control/LineRows.tsx';
import { DeviceRadioRows } from '../control/RadioRows.tsx';
import { DevicePackRows } from '../day/DevicePackRows.tsx';
import { PackRows } from '../day/PackRows.tsx';
import { useSessionSlice } from '../hooks.ts';
import { CrossingRows, FeatureRows } from '../scout/FeatureRows.tsx';
import { NoteRows, PhotoRows } from '../scout/PhotoRows.tsx';
import { UnderlayRows } from '../scout/UnderlayRows.tsx';
import { useServices } from '../services.ts';
import { CableRows } from './CableRows.tsx';
import { EntityFigures } from './EntityFigures.tsx';
import { PlaceRows } from './PlaceRows.tsx';
import { PlotRows } from './PlotRows.tsx';
import { PlugDialog } from './PlugDialog.tsx';
import { RiggingFigures } from './RiggingFigures.tsx';
import { DimensionRows, OpeningRows, WallRows } from './RoomInspector.tsx';
import { SettingsLink } from './SettingsLink.tsx';
import { SourceCircuits } from './SourceCircuits.tsx';

/** What the panel is headed: a mark by its own name, a dimmer by what it is. */
const titleOf = (r: AnyRecord, kind: Kind | undefined, name: string): string => {
  if (r.type === 'mark' && r.what !== 'note' && r.name !== '') return r.name;
  return r.type === 'box' && kind?.family === 'dimmer' ? `dimmer ${r.label}` : name;
};

/** Everything that is not a fixture: boxes, sources, outlets, cables, stands, marks, walls. */
export const OtherInspector = ({ record }: { readonly record: AnyRecord }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [plugging, setPlugging] = useState(false);
  const units = planRecord(plan).lengthUnits;
  const kind =
    'kindId' in record && typeof record.kindId === 'string' ? kindOf(plan, record.kindId) : undefined;
  const inlet = inletsOf(plan, record.id)[0];
  const ref = inlet ? { recordId: record.id, portId: inlet.id } : undefined;
  const feed = ref ? feedOf(plan, ref) : undefined;
  const name = recordName(plan, record);
  const title = titleOf(record, kind, name);

  const change = (label: string, patch: Record<string, unknown>): void => {
    const r = changeRecord(plan, record, patch as Partial<AnyRecord>);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };

  return (
    <section aria-label={name}>
      <h2 className="inspector-title">{title.charAt(0).toUpperCase() + title.slice(1)}</h2>
      {kind ? <p className="soft">{kind.name}</p> : null}
      {'label' in record && typeof record.label === 'string' && record.type !== 'cable' ? (
        <Field
          label="Label"
          value={record.label}
          format={text}
          parse={anyText}
          disabled={readOnly}
          onCommit={(label) => change('Change label', { label })}
        />
      ) : null}
      {record.type === 'mark' ? (
        <>
          <Field
            label="Name"
            value={record.name}
            format={text}
            parse={anyText}
            disabled={readOnly}
            onCommit={(v) => change('Rename mark', { name: v })}
          />
          <LengthField
            label="Height"
            mm={record.heightMm}
            units={units}
            disabled={readOnly}
            onCommit={(heightMm) => change('Change height', { heightMm })}
          />
        </>
      ) : null}
      {record.type === 'stand' ? (
        <LengthField
          label="Height"
          mm={record.heightMm}
          units={units}
          disabled={readOnly}
          onCommit={(heightMm) => change('Change height', { heightMm })}
        />
      ) : null}
      {record.type === 'outlet' ? <OutletRows outlet={record} onChange={change} readOnly={readOnly} /> : null}
      {record.type === 'source' ? (
        <Field
          label="Volts"
          value={record.voltsV}
          format={(v) => (v === undefined ? '' : `${v} V`)}
          parse={parseVolts}
          disabled={readOnly}
          hint={record.voltsV === undefined ? 'measure, leg to neutral; empty: not known' : 'leg to neutral'}
          onCommit={(voltsV) => change('Change source volts', { voltsV })}
        />
      ) : null}
      <SettingsLink record={record} />
      {record.type === 'source' ? <SourceCircuits source={record} /> : null}
      {record.type === 'cable' ? <CableRows cable={record} /> : null}
      {record.type === 'line' ? <LineRows line={record} /> : null}
      {record.type === 'box' ? <DimmerRows box={record} /> : null}
      {record.type === 'device' ? <DeviceRows device={record} /> : null}
      {record.type === 'device' ? <DeviceRadioRows device={record} /> : null}
      {record.type === 'device' ? <DevicePackRows device={record} /> : null}
      {record.type === 'pack' ? <PackRows pack={record} /> : null}
      {record.type === 'underlay' ? <UnderlayRows underlay={record} /> : null}
      {record.type === 'feature' ? <FeatureRows feature={record} /> : null}
      {record.type === 'crossing' ? <CrossingRows crossing={record} /> : null}
      {record.type === 'photo' ? <PhotoRows photo={record} /> : null}
      {record.type === 'mark' && record.what === 'note' ? <NoteRows note={record} /> : null}
      {record.type === 'wall' ? <WallRows wall={record} /> : null}
      {record.type === 'opening' ? <OpeningRows opening={record} /> : null}
      {record.type === 'dimension' ? <DimensionRows dimension={record} /> : null}
      <PlaceRows record={record} />
      <PlotRows record={record} />
      <RiggingFigures record={record} />
      {ref ? (
        <>
          <h3 className="inspector-head">Power</h3>
          <Row label="Fed from">
            <button type="button" className="link" disabled={readOnly} onClick={() => setPlugging(true)}>
              {feed ? portName(plan, feed.from) : 'Plug in…'}
            </button>
          </Row>
        </>
      ) : null}
      {record.type === 'box' ||
      record.type === 'charger' ||
      record.type === 'source' ||
      record.type === 'outlet' ||
      record.type === 'cable' ? (
        <EntityFigures
          recordId={record.type === 'outlet' ? record.sourceId : record.id}
          wayId={record.type === 'outlet' ? record.wayId : undefined}
        />
      ) : null}
      {plugging && ref ? <PlugDialog inlet={ref} onClose={() => setPlugging(false)} /> : null}
    </section>
  );
};

const OutletRows = ({
  outlet,
  onChange,
  readOnly,
}: {
  readonly outlet: Outlet;
  readonly onChange: (label: string, patch: Record<string, unknown>) => void;
  readonly readOnly: boolean;
}) => {
  const plan = useSessionSlice((s) => s.plan);
  const ways = waysOf(plan, outlet.sourceId);
  const sockets = outletSockets(outlet);
  return (
    <>
      <Row label="Circuit">
        <select
          className="inline-input"
          aria-label="Circuit"
          disabled={readOnly}
          value={outlet.wayId}
          onChange={(e) => onChange('Change circuit', { wayId: e.target.value })}
        >
          {ways.map((w) => (
            <option key={w.id} value={w.id}>
              {w.label} · {w.breakerA} A
            </option>
          ))}
        </select>
      </Row>
      <Row label="Sockets">
        <select
          className="inline-input"
          aria-label="Sockets"
          disabled={readOnly}
          value={sockets.count}
          onChange={(e) => onChange('Set sockets', { sockets: Number(e.target.value) })}
        >
          {[1, 2, 4].map((n) => (
            <option key={n} value={n}>
              {outletWord(n)}
            </option>
          ))}
        </select>
        {sockets.assumed ? <span className="row-hint">usual for its connector, assumed</span> : null}
      </Row>
    </>
  );
};

const LengthField = ({
  label,
  mm,
  units,
  disabled,
  onCommit,
}: {
  readonly label: string;
  readonly mm: number;
  readonly units: 'imperial' | 'metric';
  readonly disabled: boolean;
  readonly onCommit: (mm: number) => void;
}) => (
  <Field
    label={label}
    value={mm}
    format={(v) => formatLength(v, units)}
    parse={(t) => {
      const r = parseLengthMm(t, units);
      return r.ok && r.value < 0 ? fail({ what: 'It cannot be below the floor.' }) : r;
    }}
    disabled={disabled}
    onCommit={onCommit}
  />
);

const parseVolts = (t: string): Result<number | undefined> => {
  const s = t.replace(/v(olts?)?$/i, '').trim();
  if (s === '') return ok(undefined);
  const n = Number(s.replace(',', '.'));
  return n > 0 && n < 1000
    ? ok(n)
    : fail({ what: `“${t}” is not a voltage.`, todo: 'Write what the meter showed, like 118.5.' });
};
