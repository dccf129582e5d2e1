import { legName } from '../derive/systems.ts';
import type { Quantity, SupplyEntity } from '../derive/types.ts';
import type { Id } from '../kernel/ids.ts';
import type { Practice } from '../plan/records/index.ts';
import type { Assessment } from './types.ts';

/** Reads an assessment for one setup: figures here, in the worst setup, and the tree below an entity. */
export interface Reader {
  readonly assessment: Assessment;
  readonly setupIndex: number;
  here(key: string, q: Quantity): number;
  worst(key: string, q: Quantity): number;
  worstSetup(key: string, q: Quantity): string | undefined;
  children(key: string): readonly SupplyEntity[];
  entity(key: string): SupplyEntity | undefined;
  roots(): readonly SupplyEntity[];
}

export const LEG_QUANTITIES = ['leg0A', 'leg1A', 'leg2A'] as const satisfies readonly Quantity[];

export const readerOf = (assessment: Assessment, setupId: Id | undefined): Reader => {
  const setupIndex = Math.max(
    0,
    assessment.setups.findIndex((s) => s.id === setupId),
  );
  const byKey = new Map(assessment.entities.map((e) => [e.key, e]));
  const children = new Map<string, SupplyEntity[]>();
  for (const e of assessment.entities) {
    if (e.parentKey === undefined) continue;
    const list = children.get(e.parentKey);
    if (list) list.push(e);
    else children.set(e.parentKey, [e]);
  }
  const { figures, setups } = assessment;
  return {
    assessment,
    setupIndex,
    here: (key, q) => (byKey.has(key) ? figures.get(key, q, setupIndex) : Number.NaN),
    worst: (key, q) => (byKey.has(key) ? figures.worst(key, q).value : Number.NaN),
    worstSetup: (key, q) => (byKey.has(key) ? setups[figures.worst(key, q).setupIndex]?.name : undefined),
    children: (key) => children.get(key) ?? [],
    entity: (key) => byKey.get(key),
    roots: () => assessment.entities.filter((e) => e.what === 'source'),
  };
};

/** The largest current on an entity's legs: the figure a one-pole breaker sees. */
export const largestLegA = (r: Reader, e: SupplyEntity, which: 'here' | 'worst'): number => {
  const legs = e.legs.length > 0 ? e.legs : [0];
  const values = legs
    .map((l) => r[which](e.key, LEG_QUANTITIES[l] ?? 'leg0A'))
    .filter((v) => !Number.isNaN(v));
  return values.length === 0 ? Number.NaN : Math.max(...values);
};

export const legsText = (practice: Practice, e: SupplyEntity): string =>
  e.legs.map((l) => legName(practice, e.system, l)).join(' ');

/** Plain number for a column: fixed decimals, a dash where it is not computed. */
export const cell = (v: number, decimals = 0): string => (Number.isFinite(v) ? v.toFixed(decimals) : '–');

/** Share of a limit in percent; NaN where either is unknown. */
export const pctOf = (v: number, limit: number | undefined): number =>
  limit === undefined || limit <= 0 ? Number.NaN : (v / limit) * 100;
