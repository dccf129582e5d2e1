import { useMemo, useState } from 'react';
import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { addMeasurement, removeMeasurement } from '../../plan/edits/measurements.ts';
import { planRecord, recordOf, setupsOf } from '../../plan/plan.ts';
import type { Measurement } from '../../plan/records/index.ts';
import { type Compared, measuredRows } from '../../report/measured.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** What was measured at each point, beside what the plan gives. A gap beyond what is let pass is a finding. */
export const MeasuredTab = () => {
  const { session } = useServices();
  const { plan, assessment, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    readOnly: s.readOnly,
  }));
  const rows = useMemo(() => (assessment ? measuredRows(plan, assessment) : []), [plan, assessment]);
  return (
    <section className="power-ask" aria-label="Measured">
      <p className="soft">
        Measuring on live parts is for qualified persons. What is written here changes no figure; it stands
        beside the computed one. The blank sheet to carry is among the papers.
      </p>
      {readOnly ? null : <NewMeasurement />}
      {rows.length === 0 ? (
        <p>Nothing is measured yet.</p>
      ) : (
        <table className="table power-table">
          <thead>
            <tr>
              <th scope="col">Point</th>
              <th scope="col">Setup</th>
              <th scope="col">Leg</th>
              <th scope="col" className="num">
                Volts
              </th>
              <th scope="col" className="num">
                computed
              </th>
              <th scope="col" className="num">
                Amps
              </th>
              <th scope="col" className="num">
                computed
              </th>
              <th scope="col" className="num">
                Hz
              </th>
              <th scope="col">Polarity</th>
              <th scope="col">Device test</th>
              <th scope="col">By, when</th>
              <th scope="col">
                <span className="visually-hidden">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ record: m, label, entity, volts, amps }) => (
              <tr key={m.id}>
                <th scope="row">{label}</th>
                <td>{m.setupId ? (recordOf(plan, 'setup', m.setupId)?.name ?? '–') : 'not said'}</td>
                <td>
                  {m.leg === undefined ? '' : legName(planRecord(plan).practice, entity?.system, m.leg)}
                </td>
                <Pair measured={m.voltsV} compared={volts} />
                <Pair measured={m.amps} compared={amps} />
                <td className="num">{m.hertz ?? ''}</td>
                <td className={m.polarity === 'wrong' ? 'over' : undefined}>{m.polarity ?? ''}</td>
                <td className={m.deviceTest === 'did-not-open' ? 'over' : undefined}>
                  {m.deviceTest?.replaceAll('-', ' ') ?? ''}
                </td>
                <td>{[m.by, m.when].filter(Boolean).join(', ')}</td>
                <td>
                  <button
                    type="button"
                    className="link"
                    disabled={readOnly}
                    aria-label={`Remove the measurement at ${label}`}
                    onClick={() =>
                      session.commit(`Remove measurement at ${label}`, removeMeasurement(plan, m.id))
                    }
                  >
                    remove
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
};

const Pair = ({
  measured,
  compared,
}: {
  readonly measured: number | undefined;
  readonly compared: Compared | undefined;
}) => {
  const over = compared !== undefined && compared.gapPct > compared.tolerancePct;
  const range = (c: Compared): string =>
    c.least.toFixed(1) === c.most.toFixed(1)
      ? c.least.toFixed(1)
      : `${c.least.toFixed(1)}–${c.most.toFixed(1)}`;
  return (
    <>
      <td className={over ? 'num over' : 'num strong'}>
        {measured === undefined ? '' : measured.toFixed(1)}
      </td>
      <td className="num soft">
        {compared ? `${range(compared)}${over ? `, ${Math.round(compared.gapPct)} % off` : ''}` : ''}
      </td>
    </>
  );
};

const NONE: readonly SupplyEntity[] = [];

const numberOf = (text: string): number | undefined => {
  const n = Number(text.trim().replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(n) || n < 0 ? undefined : n;
};

const EMPTY = { volts: '', amps: '', hertz: '', polarity: '', device: '' };

const NewMeasurement = () => {
  const { session, today } = useServices();
  const { plan, entities, setupId } = useSessionSlice((s) => ({
    plan: s.plan,
    entities: s.assessment?.entities ?? NONE,
    setupId: s.setupId,
  }));
  const [point, setPoint] = useState('');
  const [setup, setSetup] = useState(setupId ?? '');
  const [leg, setLeg] = useState('');
  const [by, setBy] = useState('');
  const [when, setWhen] = useState(today());
  const [form, setForm] = useState(EMPTY);
  const points = entities.filter((e) => e.sourceId !== undefined && e.what !== 'cable');
  const at = points.find((e) => e.key === point) ?? points[0];
  if (!at) return null;
  const set = (patch: Partial<typeof EMPTY>): void => setForm({ ...form, ...patch });
  const bad = (['volts', 'amps', 'hertz'] as const).filter(
    (k) => form[k].trim() !== '' && numberOf(form[k]) === undefined,
  );
  const something = Object.values(form).some((v) => v.trim() !== '') && bad.length === 0;

  const add = (): void => {
    const legNumber = leg === '' ? undefined : Number(leg);
    const optional: Partial<Measurement> = {
      ...(setup === '' ? {} : { setupId: setup }),
      ...(legNumber === undefined || !at.legs.includes(legNumber) ? {} : { leg: legNumber }),
      ...given('voltsV', numberOf(form.volts)),
      ...given('amps', numberOf(form.amps)),
      ...given('hertz', numberOf(form.hertz)),
      ...(form.polarity === 'right' || form.polarity === 'wrong' ? { polarity: form.polarity } : {}),
      ...(form.device === 'opened' || form.device === 'did-not-open' ? { deviceTest: form.device } : {}),
    };
    const on = { recordId: at.recordId, ...(at.wayId === undefined ? {} : { wayId: at.wayId }) };
    session.commit(
      `Measure at ${at.label}`,
      addMeasurement(plan, { on, by: by.trim(), when: when.trim(), ...optional }, session.newId),
    );
    setForm(EMPTY);
  };

  return (
    <form
      className="power-measure"
      aria-label="New measurement"
      onSubmit={(e) => {
        e.preventDefault();
        if (something) add();
      }}
    >
      <label>
        Point
        <select className="input" value={at.key} onChange={(e) => setPoint(e.target.value)}>
          {points.map((e) => (
            <option key={e.key} value={e.key}>
              {e.label}
            </option>
          ))}
        </select>
      </label>
      <label>
        Setup that was on
        <select className="input" value={setup} onChange={(e) => setSetup(e.target.value)}>
          <option value="">not said</option>
          {setupsOf(plan).map((s) => (
            <option key={s.id} value={s.id}>
              {s.name}
            </option>
          ))}
        </select>
      </label>
      {at.legs.length > 1 ? (
        <label>
          Leg
          <select className="input" value={leg} onChange={(e) => setLeg(e.target.value)}>
            <option value="">fullest</option>
            {at.legs.map((l) => (
              <option key={l} value={l}>
                {legName(planRecord(plan).practice, at.system, l)}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {(
        [
          ['volts', 'Volts'],
          ['amps', 'Amps'],
          ['hertz', 'Hertz'],
        ] as const
      ).map(([k, name]) => (
        <label key={k}>
          {name}
          <input
            className="input power-watts"
            inputMode="decimal"
            value={form[k]}
            aria-invalid={bad.includes(k)}
            onChange={(e) => set({ [k]: e.target.value })}
          />
        </label>
      ))}
      <label>
        Polarity
        <select className="input" value={form.polarity} onChange={(e) => set({ polarity: e.target.value })}>
          <option value="">not tested</option>
          <option value="right">right</option>
          <option value="wrong">wrong</option>
        </select>
      </label>
      <label>
        Device test
        <select className="input" value={form.device} onChange={(e) => set({ device: e.target.value })}>
          <option value="">not tested</option>
          <option value="opened">opened</option>
          <option value="did-not-open">did not open</option>
        </select>
      </label>
      <label>
        By
        <input className="input" value={by} onChange={(e) => setBy(e.target.value)} />
      </label>
      <label>
        When
        <input className="input" value={when} onChange={(e) => setWhen(e.target.value)} />
      </label>
      <button type="submit" className="button" disabled={!something}>
        Add to the log
      </button>
      {bad.length > 0 ? (
        <p className="field-error" role="alert">
          Write plain numbers, like 117.5.
        </p>
      ) : null}
    </form>
  );
};

const given = <K extends string>(key: K, value: number | undefined): { [P in K]?: number } =>
  value === undefined ? {} : ({ [key]: value } as { [P in K]?: number });
