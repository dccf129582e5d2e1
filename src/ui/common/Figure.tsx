import { type MakeWorking, useUi } from '../ui-state.ts';

interface FigureProps {
  /** Key for the working; without one the figure is plain text. */
  readonly figureKey?: string | undefined;
  readonly children: React.ReactNode;
  readonly title?: string;
}

/** A figure that is tried or asked for, not one of the plan. Choosing it opens the arithmetic behind it. */
export const TriedFigure = ({
  working,
  children,
  title,
  className,
}: {
  readonly working: MakeWorking;
  readonly children: React.ReactNode;
  readonly title?: string;
  readonly className?: string;
}) => {
  const openTried = useUi((u) => u.openTried);
  return (
    <button
      type="button"
      className={className ?? 'link figure'}
      title={title ?? 'Show the working'}
      onClick={() => openTried(working)}
    >
      {children}
    </button>
  );
};

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
