import { useMemo, useState } from 'react';
import { issueOptions } from '../../papers/issue-options.ts';
import { progressOf, sheetsOf } from '../../papers/paper-set.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import { assess } from '../../report/assess.ts';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice, useSettled } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ExportBar } from './ExportBar.tsx';
import { ExportTab } from './ExportTab.tsx';
import { broughtUp, type Compared, IssuesTab } from './IssuesTab.tsx';
import { LabelForm } from './LabelForm.tsx';
import { PageList } from './PageList.tsx';
import { PagePreview } from './PagePreview.tsx';
import { PaperForm } from './PaperForm.tsx';
import { PaperNotices } from './PaperNotices.tsx';
import { SheetChooser } from './SheetChooser.tsx';
import { SparesForm } from './SparesForm.tsx';
import { usePaperSet } from './use-paper-set.ts';
import './papers.css';

const TABS = [
  { id: 'sheets', name: 'Sheets' },
  { id: 'issues', name: 'Issues' },
  { id: 'export', name: 'Export' },
] as const;
type Tab = (typeof TABS)[number]['id'];

/** The pages as they will print: the same page model as the PDF, drawn as SVG. */
export const PapersWorkspace = () => {
  const { version } = useServices();
  const { plan, assessment, setupId, revision } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    setupId: s.setupId,
    revision: s.revision,
  }));
  const [tab, setTab] = useState<Tab>('sheets');
  const [chosen, setChosen] = useState(0);
  const [asked, setCompared] = useState<Compared>();
  const compared = useMemo(() => asked && broughtUp(asked, plan), [asked, plan]);
  const current = assessment?.revision === revision;
  const options = useMemo(
    (): PaperOptions => issueOptions(plan, { setupId, programVersion: version }),
    [plan, setupId, version],
  );
  const issuedFigures = useMemo(
    () => (compared && !compared.now ? assess(compared.after, { revision: 0 }) : undefined),
    [compared],
  );
  const marked = useMemo(
    () =>
      compared && {
        plan: compared.after,
        assessment: issuedFigures ?? (current ? assessment : undefined),
        options: {
          setupId,
          programVersion: version,
          revision: compared.to.split(',')[0] ?? '',
          date: '',
          draft: true,
          sheets: ['plot', 'changes'],
          since: { plan: compared.before, revision: compared.from },
        },
      },
    [compared, issuedFigures, assessment, current, setupId, version],
  );
  const settled = useSettled(
    useMemo(
      () => marked ?? { plan, assessment: current ? assessment : undefined, options },
      [marked, plan, assessment, current, options],
    ),
    120,
  );
  const { set, progress, fault } = usePaperSet(settled.plan, settled.assessment, settled.options);
  const far = progress && (progress.sheet !== undefined || progress.of > 1) ? progressOf(progress).text : '';
  const pages = set?.pages ?? [];
  const at = Math.max(0, Math.min(chosen, pages.length - 1));
  const labels = sheetsOf(plan, undefined).some((s) => s.endsWith('-labels'));

  return (
    <div className="papers">
      <aside className="papers-side" aria-label="Papers">
        <h2 className="visually-hidden">Papers</h2>
        <TabStrip label="Papers" id="papers" tabs={TABS} chosen={tab} onChoose={setTab} />
        <div
          id="papers-panel"
          role="tabpanel"
          className="papers-panel"
          aria-labelledby={`papers-tab-${tab}`}
          tabIndex={-1}
        >
          {tab === 'sheets' ? (
            <>
              <PaperForm />
              <SheetChooser />
              {labels ? <LabelForm /> : null}
              <SparesForm />
              <PageList pages={pages} chosen={at} onChoose={setChosen} />
            </>
          ) : tab === 'issues' ? (
            <IssuesTab
              show={(c) => {
                setCompared(c);
                setChosen(0);
              }}
            />
          ) : (
            <ExportTab assessment={current ? assessment : undefined} options={options} />
          )}
        </div>
        <ExportBar />
      </aside>
      <main className="papers-view" aria-label="Preview">
        {pages.length > 0 ? (
          <PagePreview pages={pages} chosen={at} onChoose={setChosen} status={far}>
            {compared ? (
              <p className="papers-compared">
                <span className="strong">
                  Changes from {compared.from} to {compared.to}
                </span>
                <button
                  type="button"
                  className="button"
                  onClick={() => {
                    setCompared(undefined);
                    setChosen(0);
                  }}
                >
                  Back to the papers
                </button>
              </p>
            ) : null}
            <PaperNotices notices={set?.notices ?? []} />
          </PagePreview>
        ) : (
          <p className="soft papers-wait" role="status">
            {fault
              ? `The papers could not be laid out (${fault}). The plan is not affected.`
              : set
                ? 'There are no sheets: none is chosen, or those chosen have nothing to say about this plan.'
                : far || 'Computing the figures…'}
          </p>
        )}
      </main>
    </div>
  );
};
