import type { Severity as Level } from '../../report/types.ts';

/** The sign of a severity: a filled octagon, a half-filled diamond or an open square, always with its word. */
export const Severity = ({
  level,
  children,
}: {
  readonly level: Level;
  readonly children?: React.ReactNode;
}) => (
  <span className={`severity ${level}`}>
    <svg width="11" height="11" viewBox="0 0 12 12" aria-hidden="true" fill="none" stroke="currentColor">
      {level === 'stop' ? (
        <>
          <path d="M3.5 0.5h5l3 3v5l-3 3h-5l-3-3v-5z" fill="currentColor" stroke="none" />
          <path d="M3 6h6" stroke="var(--stop-back)" strokeWidth="2" />
        </>
      ) : level === 'warn' ? (
        <>
          <path d="M6 0.8L11.2 6L6 11.2L0.8 6z" />
          <path d="M6 0.8L6 11.2L0.8 6z" fill="currentColor" stroke="none" />
        </>
      ) : (
        <path d="M1.5 1.5h9v9h-9z" />
      )}
    </svg>
    {level}
    {children !== undefined ? <> {children}</> : null}
  </span>
);
