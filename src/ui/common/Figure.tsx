import { useUi } from '../ui-state.ts';

interface FigureProps {
  /** Key for the working; without one the figure is plain text. */
  readonly figureKey?: string | undefined;
  readonly children: React.ReactNode;
  readonly title?: string;
}

/** A computed figure. Choosing it opens the arithmetic behind it. */
export const Figure = ({ figureKey, children, title }: FigureProps) => {
  const openWorking = useUi((u) => u.openWorking);
  if (!figureKey) return <span className="figure">{children}</span>;
  return (
    <button
      type="button"
      className="link figure"
      title={title ?? 'Show the working'}
      onClick={() => openWorking(figureKey)}
    >
      {children}
    </button>
  );
};
