import { planRecord } from '../../plan/plan.ts';
import { cautions } from '../../report/cautions.ts';
import { useSessionSlice } from '../hooks.ts';

const SHOWN = [
  'qualified',
  'local-rules',
  'dead',
  'order',
  'neutral',
  'ground',
  'set-fault',
  'transformers',
  'other-loads',
];

/** The standing cautions that hands-on work with power asks for; the first ones always in sight, the others a key away. */
export const PowerCautions = () => {
  const practice = useSessionSlice((s) => planRecord(s.plan).practice);
  const all = cautions(practice).filter((c) => SHOWN.includes(c.id));
  const byId = (id: string): string => all.find((c) => c.id === id)?.text ?? '';
  return (
    <details className="power-cautions">
      <summary>
        <span className="strong">Cautions</span> {byId('qualified')} {byId('dead')} The local code and the
        authority having jurisdiction prevail.
      </summary>
      <dl>
        {all.map((c) => (
          <div key={c.id}>
            <dt className="strong">{c.title}</dt>
            <dd>{c.text}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
};
