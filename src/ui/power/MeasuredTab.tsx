import { useMemo } from 'react';
import { limitOf } from '../../derive/limits.ts';
import { legName } from '../../derive/systems.ts';
import { removeMeasurement } from '../../plan/edits/measurements.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import { type Compared, measuredRows } from '../../report/measured.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { NewMeasurement } from './NewMeasurement.tsx';
import { PowerCautions } from './PowerCautions.tsx';

/** What was measured at each point, beside what the plan gives. A gap beyond what is let pass is a finding. */
export const MeasuredTab = () => {
  const { session } = useServices();
  const { plan, assessment, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    readOnly: s.readOnly,
  }));
  const openSettings = useUi((u) => u.openSettings);
  const plain = (id: string): string => String(limitOf(plan, id).value);
  const rows = useMemo(() => (assessment ? measuredRows(plan, assessment) : []), [plan, assessment]);
  return (
    <section className="power-ask" aria-label="Measured">
      <p className="soft">
        Measuring on live parts is for qualified persons. What is written here changes no figure; it stands
        beside the computed one. A gap is a finding: {plain('measured-volts-gap')} % of the volts,{' '}
        {plain('measured-amps-gap')} % of the amps,{' '}
        <button type="button" className="link" onClick={() => openSettings('rules', 'measured')}>
          as the rules say
        </button>
        . A blank{' '}
        <button type="button" className="link" onClick={() => session.set({ workspace: 'papers' })}>
          test sheet
        </button>{' '}
        to carry is among the papers.
      </p>
      {readOnly ? null : <NewMeasurement />}
      {rows.length === 0 ? (
        <p>
          Nothing is measured yet. Choose a point above, write what the meter showed, and it stands here
          beside the computed value.
        </p>
      ) : (
        <table className="table power-table power-fit">
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
                Neutral
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
            {rows.map(({ record: m, label, entity, volts, amps, neutral }) => (
              <tr key={m.id}>
                <th scope="row">{label}</th>
                <td>{m.setupId ? (recordOf(plan, 'setup', m.setupId)?.name ?? '–') : 'not said'}</td>
                <td>
                  {m.leg === undefined ? '' : legName(planRecord(plan).practice, entity?.system, m.leg)}
                </td>
                <Pair measured={m.voltsV} compared={volts} />
                <Pair measured={m.amps} compared={amps} />
                <Pair measured={m.neutralA} compared={neutral} />
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
      <PowerCautions />
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
