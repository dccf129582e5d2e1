import { useState } from 'react';
import { legName } from '../../derive/systems.ts';
import type { SupplyEntity } from '../../derive/types.ts';
import { addMeasurement } from '../../plan/edits/measurements.ts';
import { planRecord, setupsOf } from '../../plan/plan.ts';
import type { Measurement } from '../../plan/records/index.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const NONE: readonly SupplyEntity[] = [];

const numberOf = (text: string): number | undefined => {
  const n = Number(text.trim().replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(n) || n < 0 ? undefined : n;
};

const EMPTY = { volts: '', amps: '', neutral: '', hertz: '', polarity: '', device: '' };

/** What one measurement at one point showed; added to the log as one undo step. */
export const NewMeasurement = () => {
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
  const bad = (['volts', 'amps', 'neutral', 'hertz'] as const).filter(
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
      ...given('neutralA', numberOf(form.neutral)),
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
          ['neutral', 'Neutral A'],
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
        <input className="input power-who" value={by} onChange={(e) => setBy(e.target.value)} />
      </label>
      <label>
        When
        <input className="input power-who" value={when} onChange={(e) => setWhen(e.target.value)} />
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
