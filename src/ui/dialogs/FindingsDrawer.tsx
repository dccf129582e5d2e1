import type { Severity as Level } from '../../report/types.ts';
import { Modal } from '../common/Modal.tsx';
import { FindingCard } from '../floor/FindingList.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useUi } from '../ui-state.ts';
import { AssumedLead } from './settings/AssumedLead.tsx';
import { leadOfAssumption } from './settings/lead.ts';

const LEVELS: readonly Level[] = ['stop', 'warn', 'note'];

/** All findings, the stops first, and what was assumed. Reachable from every workspace. */
export const FindingsDrawer = () => {
  const open = useUi((u) => u.findingsOpen);
  const setOpen = useUi((u) => u.setFindings);
  const assessment = useSessionSlice((s) => s.assessment);
  if (!open || !assessment) return null;
  return (
    <Modal title="Findings" open onClose={() => setOpen(false)} wide>
      {assessment.findings.length === 0 ? (
        <p>The checks made found nothing. Loads outside this plan are unknown; measure on the day.</p>
      ) : null}
      {LEVELS.flatMap((level) => assessment.findings.filter((f) => f.severity === level)).map((f) => (
        <FindingCard key={f.id} finding={f} />
      ))}
      {assessment.assumptions.length > 0 ? (
        <>
          <h3 className="inspector-head">Assumed, because the plan does not say</h3>
          <ul className="assumptions">
            {assessment.assumptions.map((a) => (
              <li key={a.id}>
                {a.text} <AssumedLead lead={leadOfAssumption(a.id)} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </Modal>
  );
};
