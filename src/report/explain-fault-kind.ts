import { type Plan, recordOf } from '../plan/plan.ts';
import type { Working, WorkingInput } from './types.ts';
import type { FaultLoad, TriedFault } from './whatif-types.ts';

/** Volts a load takes, as shown: `90–250 V`; `any` where nothing bounds them, as of a load known by its amps alone. */
export const voltsTaken = (l: Pick<FaultLoad, 'voltsMinV' | 'voltsMaxV'>): string =>
  Number.isFinite(l.voltsMaxV) ? `${l.voltsMinV}–${l.voltsMaxV} V` : 'any';

/** Time a head has to cool before it is struck again, as shown. */
export const restrikeWords = (minutes: number): string => (minutes === 0 ? 'at once' : `${minutes} min`);

/**
 * Where a figure of a tried fault is from that a load's kind gives: the volts it takes, or the minutes until its head can be
 * struck again. Undefined where it is not known.
 */
export const explainFaultKind = (
  plan: Plan,
  t: TriedFault,
  key: string,
  of: 'takes' | 'restrike',
): Working | undefined => {
  const row = t.result.loads.find((l) => l.key === key);
  const r = row && plan.records.get(row.recordId);
  if (!row || !r) return undefined;
  const headId = r.type === 'ballast' ? r.fixtureId : r.id;
  const kindId = of === 'restrike' ? recordOf(plan, 'fixture', headId)?.kindId : kindIdOf(r);
  const common = { key: `${t.result.title}: ${of} of ${key}`, rule: 'power-what-if' };
  if (of === 'takes')
    return Number.isFinite(row.voltsMinV)
      ? {
          ...common,
          title: `Volts ${row.label} takes`,
          formula: 'outside its volts where what it sees is under the least or over the most',
          inputs: [
            ...kindLines(plan, kindId, 'load', [
              ['least volts', `${row.voltsMinV} V`],
              ['most volts', Number.isFinite(row.voltsMaxV) ? `${row.voltsMaxV} V` : 'not known'],
            ]),
          ],
          steps: Number.isFinite(row.voltsV) && row.state !== 'dark' ? [seen(row)] : [],
          result: voltsTaken(row),
          source: 'Its kind in the plan; the plate of the unit in hand goes before',
        }
      : undefined;
  if (row.restrikeMin === undefined) return undefined;
  return {
    ...common,
    title: `Restrike of ${row.label} once it has gone dark`,
    formula: 'minutes until a hot lamp can be struck again',
    inputs: kindLines(plan, kindId, 'hotRestrikeMin', [['hot restrike', restrikeWords(row.restrikeMin)]]),
    steps: ['told of a head that burned before the fault and goes dark by it; a cold lamp strikes at once'],
    result: restrikeWords(row.restrikeMin),
    source: 'Its kind in the plan; the lamp’s own sheet goes before',
  };
};

const seen = (l: FaultLoad): string => {
  const volts = `${l.voltsV.toFixed(1)} V`;
  if (l.voltsV > l.voltsMaxV) return `it sees ${volts}: over ${l.voltsMaxV} V`;
  if (l.voltsV < l.voltsMinV) return `it sees ${volts}: under ${l.voltsMinV} V`;
  return `it sees ${volts}: within`;
};

const kindIdOf = (r: object): string | undefined =>
  'kindId' in r && typeof r.kindId === 'string' ? r.kindId : undefined;

/** Values of a kind with its working name and what they rest on, marked where that is assumed. */
const kindLines = (
  plan: Plan,
  kindId: string | undefined,
  field: string,
  rows: readonly (readonly [name: string, value: string])[],
): readonly WorkingInput[] => {
  const kind = kindId === undefined ? undefined : recordOf(plan, 'kind', kindId);
  const basis = kind?.basis[field] ?? kind?.basis.all;
  return rows.map(([name, value]) => ({
    name,
    value,
    from: kind ? `its kind, ${kind.name}${basis ? `: ${basis}` : ''}` : 'the load as it is entered',
    assumed: /\bassumed\b/.test(basis ?? ''),
  }));
};
