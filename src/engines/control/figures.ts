import table from '../../../shared/control.json' with { type: 'json' };

/** A figure of the control standards, from the table that names its source. */
export const controlFigure = (id: string): number => {
  const row = table.rows.find((r) => r.id === id);
  if (!row) throw new Error(`no control figure ${id}`);
  return row.value;
};

/** Where a figure is from, in one line for people. */
export const controlSource = (id: string): string => {
  const row = table.rows.find((r) => r.id === id);
  return row ? `${row.text} ${row.source}` : '';
};
