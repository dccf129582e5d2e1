import {
  formatFactor,
  formatKg,
  formatNewtons,
  formatWind,
  frameRows,
  riggingRows,
  standRows,
} from '../engines/rigging/index.ts';
import { formatLength, formatPct } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';

/** Stands, what hangs, and frames in the wind, as lines of the check; none where the plan has none of them. */
export const riggingLines = (plan: Plan): readonly string[] => {
  const units = planRecord(plan).lengthUnits;
  const kg = (n: number): string => formatKg(n, units);
  const stands = standRows(plan).filter((s) => s.fixtureIds.length + s.gripIds.length > 0);
  const carriers = riggingRows(plan);
  const frames = frameRows(plan);
  if (stands.length + carriers.length + frames.length === 0) return [];
  const bags = (n: number): string => (Number.isFinite(n) ? `${n} advised` : 'bags are not enough');
  return [
    'Stands and rigging',
    ...stands.map(
      (s) =>
        `  ${s.label}: ${kg(s.loadKg)} of ${kg(s.ratedKg)} (${formatPct(s.usePct)}) on ${s.kind} at ${formatLength(s.heightMm, units)}; ` +
        `tip factor ${formatFactor(s.tipFactor)} (${s.tipWanted} is planned for), ${s.bags} ${s.bags === 1 ? 'bag' : 'bags'}, ${bags(s.bagsWanted)}`,
    ),
    ...carriers.map(
      (c) =>
        `  ${c.label} (${c.kind}): ${kg(c.loadKg)}${c.ratedKg === undefined ? ', rated load not known' : ` of ${kg(c.ratedKg)}`}` +
        `${c.people > 0 ? `, ${c.people} people in it` : ''}${c.operator ? `, worked by ${c.operator}` : ''}`,
    ),
    ...frames.map(
      (f) =>
        `  ${f.label}: ${f.areaM2.toFixed(1)} m²` +
        (f.windMps === undefined || f.windN === undefined
          ? ', wind not known'
          : `, ${formatNewtons(f.windN, units)} in wind of ${formatWind(f.windMps, units)}`) +
        (Number.isFinite(f.tipWindMps)
          ? `; tips at ${formatWind(f.tipWindMps, units)}, lines not counted`
          : ''),
    ),
    '  The label, the rigger and the authority having jurisdiction decide; overhead work is for qualified riggers.',
    '',
  ];
};
