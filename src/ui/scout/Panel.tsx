import { useState } from 'react';

/** A panel at the corner of the drawing that is made only while it is open. */
export const Panel = ({
  title,
  children,
}: {
  readonly title: string;
  readonly children: () => React.ReactNode;
}) => {
  const [open, setOpen] = useState(false);
  return (
    <details className="layers" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>{title}</summary>
      {open ? children() : null}
    </details>
  );
};
