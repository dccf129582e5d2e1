import { useMemo } from 'react';
import { limitsOf } from '../../derive/limits.ts';
import { explain } from '../../report/explain.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useUi } from '../ui-state.ts';
import { AssumedLead } from './settings/AssumedLead.tsx';
import { leadOfInput } from './settings/lead.ts';
import './dialogs.css';

/** The arithmetic behind one figure: formula, inputs and where each is from, steps, rule and source. */
export const WorkingDialog = () => {
  const key = useUi((u) => u.workingKey);
  const make = useUi((u) => u.workingOf);
  const close = useUi((u) => u.closeWorking);
  const openSettings = useUi((u) => u.openSettings);
  const plan = useSessionSlice((s) => s.plan);
  const working = useMemo(
    () => (make ? make(plan) : key ? explain(plan, key) : undefined),
    [plan, key, make],
  );
  if (!key && !make) return null;
  return (
    <Modal title={working?.title ?? 'Working'} open onClose={close} wide>
      {working ? (
        <div className="working">
          <p className="working-result">{working.result}</p>
          <p className="working-formula">{working.formula}</p>
          <table className="table">
            <caption className="visually-hidden">Inputs</caption>
            <thead>
              <tr>
                <th scope="col">Input</th>
                <th scope="col" className="num">
                  Value
                </th>
                <th scope="col">From</th>
              </tr>
            </thead>
            <tbody>
              {working.inputs.map((i, at) => (
                <tr key={`${at} ${i.name}`}>
                  <td>
                    {limitsOf(plan).has(i.name) ? (
                      <button
                        type="button"
                        className="link"
                        title="A rule of the plan: see or change it in the plan settings"
                        onClick={() => openSettings('rules', i.name)}
                      >
                        {i.name}
                      </button>
                    ) : (
                      i.name
                    )}
                  </td>
                  <td className="num">{i.value}</td>
                  <td>
                    {i.from}
                    {i.assumed ? <AssumedLead lead={leadOfInput(i)} word="assumed" /> : null}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {working.steps.length > 0 ? (
            <ol className="working-steps">
              {working.steps.map((s, i) => (
                <li key={i}>{s}</li>
              ))}
            </ol>
          ) : null}
          <p className="soft">
            Rule {working.rule}. {working.source}
          </p>
          <p className="soft small">
            Computed from this plan; other loads are unknown. Local codes and the authority having
            jurisdiction come first.
          </p>
        </div>
      ) : (
        <p>There is no such figure in the plan any more.</p>
      )}
    </Modal>
  );
};
