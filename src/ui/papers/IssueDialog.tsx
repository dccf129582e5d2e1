import { useEffect, useMemo, useRef, useState } from 'react';
import { issueOptions } from '../../papers/issue-options.ts';
import { applyChanges } from '../../plan/change-set.ts';
import { addIssue, issuesOf, nextRevision } from '../../plan/edits/issue.ts';
import { planRecord } from '../../plan/plan.ts';
import { assess } from '../../report/assess.ts';
import { Modal } from '../common/Modal.tsx';
import { Severity } from '../common/Severity.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { makePdf } from './export-files.ts';
import { IssueChanges } from './IssueChanges.tsx';
import { PaperNotices } from './PaperNotices.tsx';
import { Stopped } from './stopped.ts';
import { usePaperSet } from './use-paper-set.ts';

/** Issues the papers: the next revision letter, a date, a note; then the PDF. The plan as issued is kept. */
export const IssueDialog = () => {
  const { session, today, deliver, fonts, version } = useServices();
  const open = useUi((u) => u.open);
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
  const [busy, setBusy] = useState('');
  const [share, setShare] = useState(0);
  const [problem, setProblem] = useState('');
  const stop = useRef<AbortController>(undefined);
  useEffect(() => () => stop.current?.abort(), []);
  // What would be cut off or cut short is said before it is issued.
  const options = useMemo(
    () => issueOptions(plan, { setupId, programVersion: version }),
    [plan, setupId, version],
  );
  const { set } = usePaperSet(plan, busy === '' ? assessment : undefined, options);
  const revision = nextRevision(plan);
  const last = issuesOf(plan).at(-1);
  const stops = assessment?.findings.filter((f) => f.severity === 'stop').length ?? 0;

  const issue = async (): Promise<void> => {
    const own = new AbortController();
    stop.current = own;
    setBusy('Beginning');
    setProblem('');
    try {
      const made = addIssue(plan, { date, note: note.trim(), by: by.trim() }, session.newId);
      const issued = applyChanges(plan, made.changes);
      const file = await makePdf({
        plan: issued,
        assessment: assess(issued, { revision: 0 }),
        options: issueOptions(issued, { setupId, programVersion: version }),
        fonts,
        tell: (text, done) => {
          setBusy(text);
          setShare(done);
        },
        signal: own.signal,
      });
      // Recorded when the papers are out of the house, so that no letter is used up by a file nobody has.
      const given = await deliver(file.name, file.bytes, file.mime);
      if (!given.ok) setProblem(`${given.error.what} ${given.error.todo} Nothing was issued.`);
      else if (given.value === '') setProblem('No place was chosen for the PDF. Nothing was issued.');
      else {
        session.commit(`Issue revision ${revision}`, made.changes);
        open(undefined);
      }
    } catch (cause) {
      if (cause instanceof Stopped) setProblem('Stopped. Nothing was issued.');
      else {
        console.error(cause);
        setProblem(
          `The papers could not be made (${cause instanceof Error ? cause.message : 'unknown fault'}). The plan is not affected.`,
        );
      }
    } finally {
      setBusy('');
    }
  };

  return (
    <Modal
      title={`Issue papers, revision ${revision}`}
      open
      onClose={() => open(undefined)}
      foot={
        busy ? (
          <div className="papers-progress">
            <progress max={1} value={share} aria-label="How far the PDF is" />
            <span className="soft small">{busy}</span>
            <button type="button" className="button" onClick={() => stop.current?.abort()}>
              Stop
            </button>
          </div>
        ) : (
          <button
            type="button"
            className="button primary"
            disabled={readOnly || date === ''}
            onClick={() => void issue()}
          >
            {`Issue ${revision} as PDF`}
          </button>
        )
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
            placeholder={last ? `Since issue ${last.revision}` : 'First issue'}
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
      {date === '' ? <p className="field-error">Give the date of issue: it prints on every sheet.</p> : null}
      <PaperNotices notices={set?.notices ?? []} />
      <IssueChanges plan={plan} />
      {problem ? (
        <p className="field-error" role="alert">
          {problem}
        </p>
      ) : null}
    </Modal>
  );
};
