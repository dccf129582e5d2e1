/** Millimetres of one unit by the number that a DXF header gives in `$INSUNITS`. */
const BY_NUMBER: Readonly<Record<number, number>> = {
  1: 25.4,
  2: 304.8,
  3: 1_609_344,
  4: 1,
  5: 10,
  6: 1000,
  7: 1_000_000,
  8: 0.0000254,
  9: 0.0254,
  10: 914.4,
  13: 0.001,
  14: 100,
  15: 10_000,
  16: 100_000,
  // The survey foot of the United States, 1200/3937 m.
  21: 304.8006096,
};

/** Millimetres of a unit, or undefined where the header says nothing or what is no length on a set. */
export const mmOfUnits = (insUnits: number | undefined): number | undefined =>
  insUnits === undefined ? undefined : BY_NUMBER[insUnits];

/** Units a person can choose where a drawing names none. */
export const DRAWING_UNITS = [
  { id: 'mm', name: 'millimetres', mm: 1 },
  { id: 'cm', name: 'centimetres', mm: 10 },
  { id: 'm', name: 'metres', mm: 1000 },
  { id: 'in', name: 'inches', mm: 25.4 },
  { id: 'ft', name: 'feet', mm: 304.8 },
] as const;

export type DrawingUnit = (typeof DRAWING_UNITS)[number]['id'];

/** A set or a building is hardly smaller or larger than this. */
const LEAST_MM = 3000;
const MOST_MM = 150_000;

/** The likeliest unit of a drawing by its longer side: the first, of those usual for the plan, that makes a building of it. */
export const likelyUnit = (longSide: number, imperial: boolean): DrawingUnit => {
  const order: readonly DrawingUnit[] = imperial
    ? ['in', 'ft', 'mm', 'm', 'cm']
    : ['mm', 'm', 'cm', 'in', 'ft'];
  const fits = order.find((id) => {
    const mm = longSide * (DRAWING_UNITS.find((u) => u.id === id)?.mm ?? 1);
    return mm >= LEAST_MM && mm <= MOST_MM;
  });
  return fits ?? (imperial ? 'in' : 'mm');
};
