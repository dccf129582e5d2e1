import { useMemo, useState } from 'react';
import { pageToSvg } from '../../output/svg.ts';
import { paperSet } from '../../papers/paper-set.ts';
import { SHEET_IDS, scalesFor } from '../../papers/sheets.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { issuesOf, planHash } from '../../plan/edits/issue.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { SheetChooser } from './SheetChooser.tsx';
import './papers.css';

/** The pages as they will print: the same page model as the PDF, drawn as SVG. */
export const PapersWorkspace = () => {
  const { session, version } = useServices();
  const open = useUi((u) => u.open);
  const sheets = useUi((u) => u.sheets);
  const { plan, assessment, setupId, readOnly, revision } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    setupId: s.setupId,
    readOnly: s.readOnly,
    revision: s.revision,
  }));
  const [chosen, setChosen] = useState(0);
  const [zoom, setZoom] = useState<'fit' | 'full'>('fit');
  const head = planRecord(plan);
  const issues = issuesOf(plan);
  const last = issues.at(-1);
  const current = assessment?.revision === revision;

  const set = useMemo(
    () =>
      assessment && current
        ? paperSet(plan, assessment, {
            setupId,
            revision: last?.revision ?? '–',
            date: last?.date ?? '',
            programVersion: version,
            sheets,
          })
        : undefined,
    [plan, assessment, current, setupId, last, version, sheets],
  );
  const page = set?.pages[Math.min(chosen, set.pages.length - 1)];
  const svg = useMemo(() => (page ? pageToSvg(page) : ''), [page]);

  const paper = (patch: Partial<typeof head.paper>): void => {
    const next = { ...head.paper, ...patch };
    if (patch.scale === undefined && 'scale' in patch) delete next.scale;
    const r = changeRecord(plan, head, { paper: next });
    if (r.ok) session.commit('Change sheet', r.value);
  };

  return (
    <div className="papers">
      <aside className="papers-side" aria-label="Sheets">
        <h2 className="panel-title">Sheets</h2>
        <SheetChooser />
        <ol className="papers-list">
          {set?.pages.map((p, i) => (
            <li key={p.title}>
              <button
                type="button"
                className="papers-item"
                aria-current={p === page}
                onClick={() => setChosen(i)}
              >
                {p.title}
              </button>
            </li>
          ))}
        </ol>
        <h3 className="inspector-head">Sheet</h3>
        <label className="papers-field">
          Size
          <select
            className="input"
            value={head.paper.sheet}
            disabled={readOnly}
            onChange={(e) => paper({ sheet: e.target.value })}
          >
            {SHEET_IDS.map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
        </label>
        <label className="papers-field">
          Way round
          <select
            className="input"
            value={head.paper.landscape ? 'landscape' : 'portrait'}
            disabled={readOnly}
            onChange={(e) => paper({ landscape: e.target.value === 'landscape' })}
          >
            <option value="landscape">landscape</option>
            <option value="portrait">portrait</option>
          </select>
        </label>
        <label className="papers-field">
          Scale of the plot
          <select
            className="input"
            value={head.paper.scale ?? ''}
            disabled={readOnly}
            onChange={(e) => paper({ scale: e.target.value === '' ? undefined : Number(e.target.value) })}
          >
            <option value="">largest that fits</option>
            {scalesFor(head.lengthUnits).map((s) => (
              <option key={s.ratio} value={s.ratio}>
                {s.text}
              </option>
            ))}
          </select>
        </label>
        <p>
          <button type="button" className="link" onClick={() => open('title')}>
            Title block…
          </button>
        </p>
        {set && set.notices.length > 0 ? (
          <>
            <h3 className="inspector-head">Notices</h3>
            <ul className="papers-notices">
              {set.notices.map((n) => (
                <li key={n}>{n}</li>
              ))}
            </ul>
          </>
        ) : null}
        <h3 className="inspector-head">Issues</h3>
        {issues.length === 0 ? (
          <p className="soft">Not issued yet. “Issue papers” gives revision A.</p>
        ) : null}
        <ul className="papers-notices">
          {issues.map((i) => (
            <li key={i.id}>
              <span className="strong">{i.revision}</span> {i.date} {i.note}
            </li>
          ))}
        </ul>
        {last ? <ChangedSince plan={plan} hash={last.planHash} revision={last.revision} /> : null}
      </aside>
      <main className="papers-view" aria-label="Preview">
        <div className="papers-tools">
          <button
            type="button"
            className="button"
            aria-pressed={zoom === 'fit'}
            onClick={() => setZoom('fit')}
          >
            Whole sheet
          </button>
          <button
            type="button"
            className="button"
            aria-pressed={zoom === 'full'}
            onClick={() => setZoom('full')}
          >
            Full size
          </button>
        </div>
        {page ? (
          // biome-ignore lint/security/noDangerouslySetInnerHtml: our own page writer escapes every text
          <div className={`papers-sheet ${zoom}`} tabIndex={-1} dangerouslySetInnerHTML={{ __html: svg }} />
        ) : (
          <p className="soft papers-wait">
            {current ? 'There are no sheets. Choose some.' : 'Computing the figures…'}
          </p>
        )}
      </main>
    </div>
  );
};

const ChangedSince = ({
  plan,
  hash,
  revision,
}: {
  readonly plan: Plan;
  readonly hash: string;
  readonly revision: string;
}) => {
  const now = useMemo(() => planHash(plan), [plan]);
  return (
    <p className="soft small">
      {now === hash
        ? `The plan is as it was issued in ${revision}.`
        : `The plan has changed since ${revision}; what prints now would be the next revision.`}
    </p>
  );
};
