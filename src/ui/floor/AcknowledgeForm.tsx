import { useState } from 'react';
import { acknowledge } from '../../plan/edits/document.ts';
import { findingFigure } from '../../report/acknowledge.ts';
import type { Finding } from '../../report/types.ts';
import { useServices } from '../services.ts';

/** Who knows of a finding, and why it stays. It prints with the finding and changes no status. */
export const AcknowledgeForm = ({
  finding,
  onDone,
}: {
  readonly finding: Finding;
  readonly onDone: () => void;
}) => {
  const { session, today } = useServices();
  const [who, setWho] = useState('');
  const [reason, setReason] = useState('');
  const ready = who.trim() !== '' && reason.trim() !== '';
  return (
    <form
      className="acknowledge"
      onSubmit={(e) => {
        e.preventDefault();
        if (!ready) return;
        const figure = findingFigure(finding);
        session.commit(
          `Note ${finding.number} as known`,
          acknowledge(
            session.getState().plan,
            {
              findingId: finding.id,
              severity: finding.severity,
              who: who.trim(),
              reason: reason.trim(),
              when: today(),
              ...(typeof figure === 'number' ? { figure } : {}),
            },
            session.newId,
          ),
        );
        onDone();
      }}
    >
      <label>
        Name
        <input className="input" value={who} onChange={(e) => setWho(e.target.value)} />
      </label>
      <label>
        Reason
        <input className="input" value={reason} onChange={(e) => setReason(e.target.value)} />
      </label>
      <p className="soft small">It prints with the finding. The status stays “for review”.</p>
      <button type="submit" className="button" disabled={!ready}>
        Note it
      </button>
    </form>
  );
};
