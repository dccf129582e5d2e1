import { ChevronLeft, ChevronRight } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import { pageToSvg } from '../../output/svg.ts';
import { anchorsOf, type Page, targetOf } from '../../papers/page.ts';

const ZOOMS = [
  ['fit', 'Whole sheet'],
  ['wide', 'Width'],
  ['full', 'Full size'],
] as const;
type Zoom = (typeof ZOOMS)[number][0];

/** Pages turned by these keys while the whole sheet is in view; else they scroll it. */
const TURN: Readonly<Record<string, number>> = { PageDown: 1, ArrowRight: 1, PageUp: -1, ArrowLeft: -1 };

interface PagePreviewProps {
  readonly pages: readonly Page[];
  readonly chosen: number;
  readonly onChoose: (page: number) => void;
  /** What stands between the buttons and the sheet. */
  readonly children?: React.ReactNode;
  readonly status: string;
}

/** One page as it will print, drawn from the page model of the PDF, with the ways to the others. */
export const PagePreview = ({ pages, chosen, onChoose, children, status }: PagePreviewProps) => {
  const [zoom, setZoom] = useState<Zoom>('fit');
  const stage = useRef<HTMLElement>(null);
  const page = pages[chosen];
  const svg = useMemo(() => (page ? pageToSvg(page) : ''), [page]);
  const anchors = useMemo(() => anchorsOf(pages), [pages]);
  const last = pages.length - 1;
  // Each page begins at its upper left corner.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page is what this waits for
  useEffect(() => {
    stage.current?.scrollTo(0, 0);
  }, [chosen, zoom]);

  const follow = (e: React.MouseEvent): void => {
    const to = (e.target as Element).getAttribute?.('data-to');
    const target =
      to && targetOf({ kind: 'link', xMm: 0, yMm: 0, widthMm: 0, heightMm: 0, to: to.split('|') }, anchors);
    if (target) onChoose(target.page);
  };
  const turn = (e: React.KeyboardEvent): void => {
    // These keys are of the page, whatever they do elsewhere.
    if (e.key in TURN || e.key === 'ArrowUp' || e.key === 'ArrowDown') e.stopPropagation();
    const by = zoom === 'fit' && !e.ctrlKey && !e.altKey && !e.metaKey ? TURN[e.key] : undefined;
    if (by === undefined) return;
    e.preventDefault();
    onChoose(Math.max(0, Math.min(last, chosen + by)));
  };

  return (
    <>
      <div className="papers-tools">
        {ZOOMS.map(([id, name]) => (
          <button
            key={id}
            type="button"
            className="button"
            aria-pressed={zoom === id}
            onClick={() => setZoom(id)}
          >
            {name}
          </button>
        ))}
        {pages.length > 1 ? (
          <span className="papers-turn">
            <button
              type="button"
              className="button icon"
              aria-label="Page before"
              disabled={chosen <= 0}
              onClick={() => onChoose(chosen - 1)}
            >
              <ChevronLeft size={16} aria-hidden />
            </button>
            <span className="papers-count">
              {chosen + 1} of {pages.length}
            </span>
            <button
              type="button"
              className="button icon"
              aria-label="Next page"
              disabled={chosen >= last}
              onClick={() => onChoose(chosen + 1)}
            >
              <ChevronRight size={16} aria-hidden />
            </button>
          </span>
        ) : null}
        <span className="soft small papers-status" role="status">
          {status}
        </span>
      </div>
      {children}
      <section
        ref={stage}
        className="papers-stage"
        aria-label={page ? `Page ${page.title}` : 'Page'}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a field that scrolls must be reached by the keyboard
        tabIndex={0}
        onKeyDown={turn}
      >
        {page ? (
          // biome-ignore lint/a11y/useKeyWithClickEvents lint/a11y/noStaticElementInteractions: links on the sheet have their keyboard way in the list of pages
          <div
            className={`papers-sheet ${zoom}`}
            onClick={follow}
            // biome-ignore lint/security/noDangerouslySetInnerHtml: our own page writer escapes every text
            dangerouslySetInnerHTML={{ __html: svg }}
          />
        ) : null}
      </section>
    </>
  );
};
