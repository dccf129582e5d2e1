import table from '../../shared/colours.json' with { type: 'json' };
import type { System } from '../plan/kinds/kinds.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { legName, systemShape } from './systems.ts';

/** Colours of the conductors of one supply, in words. */
export interface WireColours {
  /** By leg of the source. */
  readonly legs: readonly string[];
  readonly neutral: string;
  readonly earth: string;
  /** Colours of old installations, where they mean something else now. */
  readonly old: string | undefined;
  readonly source: string;
  readonly fromMemory: boolean;
}

interface Row {
  readonly country: string;
  readonly practice: string;
  readonly volts: string;
  readonly legs: readonly string[];
  readonly highLeg?: string;
  readonly neutral: string;
  readonly earth: string;
  readonly old?: string;
  readonly source: string;
  readonly status: string;
}

/** Volts to neutral from which on the colours of the higher supply are the custom. */
const HIGH_V = 250;

/**
 * Colours by the country of a plan, else by its practice's first: black, red, blue in North America, brown, black, grey by
 * IEC 60445. Undefined for a system this program does not know.
 */
export const wireColours = (plan: Plan, system: System | undefined): WireColours | undefined => {
  const { practice, country } = planRecord(plan);
  const shape = system && systemShape(system);
  if (!shape) return undefined;
  const volts = shape.nominalV >= HIGH_V && practice === 'north-america' ? 'high' : 'low';
  const rows = (table.rows as readonly Row[]).filter((r) => r.practice === practice);
  const own = rows.filter((r) => r.country === country);
  const row = (own.length > 0 ? own : rows).find((r) => r.volts === 'both' || r.volts === volts);
  if (!row) return undefined;
  return {
    legs: shape.anglesRad.map((_, l) =>
      l === shape.highLeg && row.highLeg ? row.highLeg : (row.legs[l] ?? ''),
    ),
    neutral: row.neutral,
    earth: row.earth,
    old: row.old,
    source: row.source,
    fromMemory: row.status === 'from memory',
  };
};

/** The colours in one line: `A black, B red, C blue, neutral white or grey, ground green, or bare`. */
export const colourLine = (plan: Plan, system: System | undefined): string => {
  const c = wireColours(plan, system);
  if (!c) return '';
  const { practice } = planRecord(plan);
  const shape = system && systemShape(system);
  const legs = c.legs.map((colour, l) => `${legName(practice, system, l)} ${colour}`);
  return [
    ...legs,
    ...(shape?.neutral ? [`neutral ${c.neutral}`] : []),
    `${practice === 'europe' ? 'earth' : 'ground'} ${c.earth}`,
  ].join(', ');
};
