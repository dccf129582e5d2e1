import { conductor } from '../../derive/conductors.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type LengthUnits, parseLengthMm } from '../../kernel/units.ts';

/** Conductors that leads of packs are made of. */
const LEADS = [
  'awg:18',
  'awg:16',
  'awg:14',
  'awg:12',
  'awg:10',
  'mm2:0.75',
  'mm2:1',
  'mm2:1.5',
  'mm2:2.5',
  'mm2:4',
  'mm2:6',
];

/** Conductors to choose from for a lead, with the one it has. */
export const leadChoices = (
  own: string | undefined,
): readonly { readonly id: string; readonly name: string }[] =>
  (own === undefined || LEADS.includes(own) ? LEADS : [own, ...LEADS]).map((id) => ({
    id,
    name: conductor(id)?.name ?? `${id}, not in the table`,
  }));

/** The conductor a lead has to begin with. */
export const usualConductor = (units: LengthUnits, shared: boolean): string =>
  shared ? (units === 'metric' ? 'mm2:2.5' : 'awg:14') : units === 'metric' ? 'mm2:1.5' : 'awg:16';

/** A typed length of a lead in millimetres; nothing typed is 0. */
export const readLeadLength =
  (units: LengthUnits) =>
  (t: string): Result<number> => {
    if (t.trim() === '') return ok(0);
    const r = parseLengthMm(t, units);
    return r.ok && (r.value < 0 || r.value > 100_000)
      ? fail({ what: 'A lead from packs is at most 100 m long.' })
      : r;
  };
