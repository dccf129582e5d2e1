import { fail, ok, type Problem, type Result } from '../kernel/result.ts';
import { type Kind, kindSchema } from '../plan/kinds/kinds.ts';
import { kindRecord } from './book.ts';
import { kindFaults } from './kind-faults.ts';

/** A figure of a kind that a person may change: where it is, what it is called, and its unit. */
export interface OwnFigure {
  readonly field: string;
  readonly label: string;
}

const LABELS: Readonly<Record<string, string>> = {
  massKg: 'Mass, kg',
  'sizeMm.lengthMm': 'Length along the throw, mm',
  'sizeMm.widthMm': 'Width across it, mm',
  'sizeMm.heightMm': 'Height, mm',
  ratedLoadKg: 'Rated load, kg',
  heightMinMm: 'Lowest, mm',
  heightMaxMm: 'Highest, mm',
  legCircleMm: 'Circle of its legs, mm',
  legs: 'Legs',
  areaM2: 'Face in the wind, m²',
  windShare: 'Share of the wind on a board',
  stands: 'Stands it takes',
  guys: 'Lines outdoors',
  reachMm: 'Reach, mm',
  people: 'People',
  windLimitMps: 'Wind limit, m/s',
  ratedKw: 'Rated, kW',
  ratedKva: 'Rated, kVA',
  mainBreakerA: 'Main breaker, A',
  storedWh: 'Cells hold, Wh',
  ampacityA: 'Carries, A',
  outputW: 'Gives, W',
  efficiencyPct: 'Efficiency, %',
  wayW: 'A way carries, W',
  leastW: 'Dims from, W',
  lossPct: 'Loses, %',
  slots: 'Slots',
  energyWh: 'Holds, Wh',
  capacityAh: 'Holds, Ah',
  voltsV: 'Nominal volts',
  fullV: 'Volts full',
  emptyV: 'Volts empty',
  continuousA: 'Gives, A',
  peakA: 'For a moment, A',
  chargeW: 'Charging, W',
  chargeMin: 'Charging, minutes',
  bays: 'Bays',
  together: 'Bays at once',
  bayW: 'Into a pack, W',
  sharedW: 'For all bays, W',
  supplyW: 'Supply, W',
  backupWh: 'Back-up cell, Wh',
  universes: 'Universes',
  sensitivityDbm: 'Weakest signal, dBm',
  conductedDbm: 'At its aerial socket, dBm',
  antennaGainDbi: 'Aerial, dBi',
  delayMs: 'Delay, ms',
  longestMm: 'Longest run, mm',
  impedanceOhm: 'Pairs, Ω',
  'load.wattsW': 'Input watts at full',
  'load.powerFactor': 'Power factor',
  'load.voltsMinV': 'Least volts',
  'load.voltsMaxV': 'Most volts',
};

const at = (kind: unknown, field: string): unknown =>
  field.split('.').reduce<unknown>((o, k) => (o as Record<string, unknown> | undefined)?.[k], kind);

/** The figures of a kind that a form offers to change, in the order of their labels above. */
export const ownFigures = (kind: Kind): readonly OwnFigure[] =>
  Object.entries(LABELS).flatMap(([field, label]) =>
    typeof at(kind, field) === 'number' ? [{ field, label }] : [],
  );

/** A figure of a kind as it stands. */
export const figureOf = (kind: Kind, field: string): number | undefined => {
  const v = at(kind, field);
  return typeof v === 'number' ? v : undefined;
};

const withFigure = (
  o: Readonly<Record<string, unknown>>,
  path: readonly string[],
  v: number,
): Record<string, unknown> => {
  const [head = '', ...rest] = path;
  return {
    ...o,
    [head]: rest.length === 0 ? v : withFigure((o[head] ?? {}) as Record<string, unknown>, rest, v),
  };
};

const slugOf = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'own-kind';

/**
 * A kind of one's own made from another: a new name and changed figures, each marked as entered by hand in its basis.
 * Gives problems in words for figures that are no numbers or cannot be.
 */
export const ownKindFrom = (
  from: Kind,
  name: string,
  figures: Readonly<Record<string, string>>,
): Result<Kind, readonly Problem[]> => {
  const problems: Problem[] = [];
  let raw: Record<string, unknown> = { ...from };
  const basis: Record<string, string> = { ...from.basis };
  for (const { field, label } of ownFigures(from)) {
    const typed = figures[field];
    if (typed === undefined) continue;
    const n = Number(typed.trim().replace(',', '.'));
    if (typed.trim() === '' || !Number.isFinite(n)) {
      problems.push({ what: `“${typed}” is not a number.`, where: label, todo: 'Write a plain number.' });
      continue;
    }
    if (n === figureOf(from, field)) continue;
    raw = withFigure(raw, field.split('.'), n);
    basis[field] = 'entered by hand';
  }
  const clean = name.trim();
  if (clean === '')
    problems.push({ what: 'It has no name.', todo: 'Say what it is, with its size or figure in words.' });
  if (problems.length > 0) return fail(problems);
  const parsed = kindSchema.safeParse({
    ...raw,
    name: clean,
    slug: slugOf(clean),
    basis,
    origin: { book: 'user', version: '1' },
  });
  if (!parsed.success)
    return fail(
      parsed.error.issues.slice(0, 5).map((i) => ({
        what: `${LABELS[i.path.join('.')] ?? i.path.join('.')}: ${i.message}.`,
        todo: 'Change the figure.',
      })),
    );
  const faults = kindFaults(parsed.data);
  return faults.length > 0
    ? fail(
        faults.map((f) => ({
          what: `${f.charAt(0).toUpperCase()}${f.slice(1)}.`,
          todo: 'Change the figure.',
        })),
      )
    : ok(kindRecord(parsed.data));
};
