import type { Page } from '../../papers/page.ts';

/** The pages of a set by name. One takes the keyboard; arrows, Home and End go to the others. */
export const PageList = ({
  pages,
  chosen,
  onChoose,
}: {
  readonly pages: readonly Page[];
  readonly chosen: number;
  readonly onChoose: (page: number) => void;
}) => {
  const step = (e: React.KeyboardEvent<HTMLOListElement>): void => {
    const last = pages.length - 1;
    const to = {
      ArrowDown: Math.min(last, chosen + 1),
      ArrowUp: Math.max(0, chosen - 1),
      Home: 0,
      End: last,
    }[e.key];
    if (to === undefined) return;
    e.preventDefault();
    e.stopPropagation();
    onChoose(to);
    e.currentTarget.querySelectorAll('button')[to]?.focus();
  };
  return (
    <ol className="papers-list" aria-label="Pages" onKeyDown={step}>
      {pages.map((p, i) => (
        <li key={p.title}>
          <button
            type="button"
            className="papers-item"
            aria-current={i === chosen ? 'page' : undefined}
            tabIndex={i === chosen ? 0 : -1}
            onClick={() => onChoose(i)}
          >
            {p.title}
          </button>
        </li>
      ))}
    </ol>
  );
};
