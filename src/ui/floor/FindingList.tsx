import { useMemo, useState } from 'react';
import { showRecords } from '../../editor/show-records.ts';
import { setupsOf } from '../../plan/plan.ts';
import { mateRemedies } from '../../report/adapters.ts';
import { moveRemedies } from '../../report/move-remedies.ts';
import { findingText } from '../../report/text.ts';
import type { Finding } from '../../report/types.ts';
import { Severity } from '../common/Severity.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { AcknowledgeForm } from './AcknowledgeForm.tsx';
import { PlugActions } from './PlugActions.tsx';

interface FindingListProps {
  readonly title: string;
  /** Only findings about these records; all when undefined. */
  readonly about: ReadonlySet<string> | undefined;
  readonly exclude?: ReadonlySet<string> | undefined;
  readonly limit?: number;
}

export const FindingList = ({ title, about, exclude, limit = 50 }: FindingListProps) => {
  const assessment = useSessionSlice((s) => s.assessment);
  const setFindings = useUi((u) => u.setFindings);
  if (!assessment) return null;
  const found = assessment.findings.filter(
    (f) =>
      (about === undefined || f.recordIds.some((id) => about.has(id))) &&
      !(exclude && f.recordIds.some((id) => exclude.has(id))),
  );
  if (found.length === 0 && (about !== undefined || assessment.findings.length > 0)) return null;
  return (
    <section className="findings" aria-label={title}>
      <h3 className="inspector-head">{title}</h3>
      {found.length === 0 ? (
        <p className="soft">Nothing found by the checks made. Loads outside this plan are unknown.</p>
      ) : null}
      {found.slice(0, limit).map((f) => (
        <FindingCard key={f.id} finding={f} />
      ))}
      {found.length > limit ? (
        <button type="button" className="link" onClick={() => setFindings(true)}>
          {found.length - limit} more
        </button>
      ) : null}
    </section>
  );
};

/** One finding: what was computed, the limit and where it is from, what to do. */
export const FindingCard = ({ finding }: { readonly finding: Finding }) => {
  const { session, book } = useServices();
  const { plan, assessment, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    readOnly: s.readOnly,
  }));
  const openWorking = useUi((u) => u.openWorking);
  const setFindings = useUi((u) => u.setFindings);
  const [noting, setNoting] = useState(false);
  const changes = useMemo(
    () => [
      ...mateRemedies(plan, finding, book.kinds(), session.newId),
      ...(assessment ? moveRemedies(plan, assessment, finding, book.kinds(), session.newId) : []),
    ],
    [plan, assessment, finding, book, session],
  );
  const t = findingText(plan, finding);
  const worst = setupsOf(plan).find((s) => s.id === finding.worstSetupId);
  return (
    <article className={`finding ${finding.severity}`}>
      <p className="finding-head">
        <Severity level={finding.severity}>{finding.number}</Severity> {t.head}
      </p>
      <p className="finding-body">
        {t.body} {t.todo}
      </p>
      <p className="finding-foot">
        {worst && finding.setupIds.length > 0 ? <span>Worst in {worst.name}. </span> : null}
        {t.citation ? <span>{t.citation} </span> : null}
      </p>
      {finding.acknowledged ? (
        <p className="finding-foot">
          Known to {finding.acknowledged.by}: {finding.acknowledged.reason} ({finding.acknowledged.when})
        </p>
      ) : null}
      <p className="finding-actions">
        {finding.figureKey ? (
          <button type="button" className="link" onClick={() => openWorking(finding.figureKey ?? '')}>
            Show working
          </button>
        ) : null}
        {finding.recordIds.some((id) => plan.records.has(id)) ? (
          <button
            type="button"
            className="link"
            onClick={() => {
              // The drawer would cover what is asked for.
              setFindings(false);
              showRecords(session, finding.recordIds);
            }}
          >
            Select
          </button>
        ) : null}
        {finding.rule === 'power-unplugged' ? <PlugActions finding={finding} /> : null}
        {[...finding.remedies, ...changes].map((r) => (
          <button
            key={r.label}
            type="button"
            className="link"
            disabled={readOnly}
            onClick={() => {
              session.commit(r.label, r.changes);
              if (finding.rule === 'power-breaker')
                session.set({ message: `${r.label}: done. De-energize before re-plugging.` });
            }}
          >
            {r.label}
          </button>
        ))}
        {!finding.acknowledged && finding.severity !== 'note' && !readOnly ? (
          <button type="button" className="link" onClick={() => setNoting(!noting)}>
            Note as known…
          </button>
        ) : null}
      </p>
      {noting ? <AcknowledgeForm finding={finding} onDone={() => setNoting(false)} /> : null}
    </article>
  );
};
