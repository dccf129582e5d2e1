import { useState } from 'react';
import { paperSet } from '../../papers/paper-set.ts';
import { applyChanges } from '../../plan/change-set.ts';
import { addIssue, nextRevision } from '../../plan/edits/issue.ts';
import { planRecord } from '../../plan/plan.ts';
import { assess } from '../../report/assess.ts';
import { Modal } from '../common/Modal.tsx';
import { Severity } from '../common/Severity.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

/** Issues the papers: the next revision letter, a date, a note; then the PDF. */
export const IssueDialog = () => {
  const { session, today, deliver, fonts, version } = useServices();
  const open = useUi((u) => u.open);
  const sheets = useUi((u) => u.sheets);
  const { plan, assessment, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const head = planRecord(plan);
  const [date, setDate] = useState(today());
  const [note, setNote] = useState('');
  const [by, setBy] = useState(head.people['drawn-by'] ?? '');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const revision = nextRevision(plan);
  const stops = assessment?.findings.filter((f) => f.severity === 'stop').length ?? 0;

  const issue = async (): Promise<void> => {
    setBusy(true);
    setProblem('');
    try {
      const made = addIssue(plan, { date, note: note.trim(), by: by.trim() }, session.newId);
      const issued = applyChanges(plan, made.changes);
      // Loaded when first needed: the PDF writer is the largest part of the program.
      const { pagesToPdf } = await import('../../output/pdf.ts');
      const set = paperSet(issued, assess(issued, { revision: 0 }), {
        setupId,
        revision,
        date,
        programVersion: version,
        sheets,
      });
      const bytes = pagesToPdf(set.pages, await fonts(), {
        title: [head.production, head.title].filter(Boolean).join(' – '),
        subject: `Lighting papers, revision ${revision}`,
        author: by.trim(),
        ...(date ? { date } : {}),
      });
      session.commit(`Issue revision ${revision}`, made.changes);
      await deliver(
        `${fileStem(head.drawingNumber || head.title)}-${revision}.pdf`,
        bytes,
        'application/pdf',
      );
      open(undefined);
    } catch (cause) {
      console.error(cause);
      setProblem(
        `The papers could not be made (${cause instanceof Error ? cause.message : 'unknown fault'}). The plan is not affected.`,
      );
    } finally {
      setBusy(false);
    }
  };

  return (
    <Modal
      title={`Issue papers, revision ${revision}`}
      open
      onClose={() => open(undefined)}
      foot={
        <button
          type="button"
          className="button primary"
          disabled={busy || readOnly}
          onClick={() => void issue()}
        >
          {busy ? 'Making the PDF…' : `Issue ${revision} as PDF`}
        </button>
      }
    >
      <div className="form-grid">
        <label>
          Date of issue
          <input className="input" type="date" value={date} onChange={(e) => setDate(e.target.value)} />
        </label>
        <label>
          Issued by
          <input className="input" value={by} onChange={(e) => setBy(e.target.value)} />
        </label>
        <label className="wide">
          What changed
          <input
            className="input"
            value={note}
            placeholder="First issue"
            onChange={(e) => setNote(e.target.value)}
          />
        </label>
      </div>
      <p className="issue-status">
        {stops > 0 ? (
          <>
            <Severity level="stop">{stops}</Severity> The title block will say “For review: {stops} stop
            {stops === 1 ? '' : 's'} open”.
          </>
        ) : (
          'The title block will say “For review”. A person signs; the program does not.'
        )}
      </p>
      {problem ? (
        <p className="field-error" role="alert">
          {problem}
        </p>
      ) : null}
    </Modal>
  );
};

const fileStem = (s: string): string =>
  s.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'papers';
