import { useMemo, useState } from 'react';
import { pageToSvg } from '../../output/svg.ts';
import { issueOptions } from '../../papers/issue-options.ts';
import { anchorsOf, targetOf } from '../../papers/page.ts';
import { sheetsOf } from '../../papers/paper-set.ts';
import type { PaperOptions } from '../../papers/sheet-info.ts';
import { assess } from '../../report/assess.ts';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice, useSettled } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ExportTab } from './ExportTab.tsx';
import { type Compared, IssuesTab } from './IssuesTab.tsx';
import { PaperForm } from './PaperForm.tsx';
import { SheetChooser } from './SheetChooser.tsx';
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
  const [zoom, setZoom] = useState<'fit' | 'full'>('fit');
  const [compared, setCompared] = useState<Compared>();
  const current = assessment?.revision === revision;
  const options = useMemo(
    (): PaperOptions => issueOptions(plan, { setupId, programVersion: version }),
    [plan, setupId, version],
  );
  const marked = useMemo(
    () =>
      compared && {
        plan: compared.after,
        assessment: assess(compared.after, { revision: 0 }),
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
    [compared, setupId, version],
  );
  const settled = useSettled(
    useMemo(
      () => marked ?? { plan, assessment: current ? assessment : undefined, options },
      [marked, plan, assessment, current, options],
    ),
    120,
  );
  const { set, progress, fault } = usePaperSet(settled.plan, settled.assessment, settled.options);
  const page = set?.pages[Math.min(chosen, set.pages.length - 1)];
  const svg = useMemo(() => (page ? pageToSvg(page) : ''), [page]);
  const anchors = useMemo(() => anchorsOf(set?.pages ?? []), [set]);

  const follow = (e: React.MouseEvent): void => {
    const to = (e.target as Element).getAttribute?.('data-to');
    const target =
      to && targetOf({ kind: 'link', xMm: 0, yMm: 0, widthMm: 0, heightMm: 0, to: to.split('|') }, anchors);
    if (target) setChosen(target.page);
  };
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
              <PaperForm notices={set?.notices ?? []} labels={labels} />
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
          {set && set.pages.length > 1 ? (
            <>
              <button
                type="button"
                className="button"
                disabled={chosen <= 0}
                onClick={() => setChosen(Math.max(0, chosen - 1))}
              >
                Previous
              </button>
              <button
                type="button"
                className="button"
                disabled={chosen >= set.pages.length - 1}
                onClick={() => setChosen(Math.min(set.pages.length - 1, chosen + 1))}
              >
                Next
              </button>
            </>
          ) : null}
          {compared ? (
            <span className="papers-compared">
              Changes from {compared.from} to {compared.to}
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
            </span>
          ) : null}
          <span className="soft small" role="status">
            {progress && progress.of > 1 ? `Laying out ${progress.done} of ${progress.of}` : ''}
          </span>
        </div>
        {page ? (
          // biome-ignore lint/a11y/useKeyWithClickEvents lint/a11y/noStaticElementInteractions: links on the sheet have their keyboard way in the list of pages
          <div
            className={`papers-sheet ${zoom}`}
            tabIndex={-1}
            onClick={follow}
            // biome-ignore lint/security/noDangerouslySetInnerHtml: our own page writer escapes every text
            dangerouslySetInnerHTML={{ __html: svg }}
          />
        ) : (
          <p className="soft papers-wait">
            {fault
              ? `The papers could not be laid out (${fault}). The plan is not affected.`
              : set
                ? 'There are no sheets. Choose some.'
                : 'Computing the figures…'}
          </p>
        )}
      </main>
    </div>
  );
};
