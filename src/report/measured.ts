import type { EngineFinding } from '../derive/findings.ts';
import { recordLabel } from '../derive/labels.ts';
import { limitOf } from '../derive/limits.ts';
import type { FigureTable, Quantity, SupplyEntity } from '../derive/types.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import type { Measurement } from '../plan/records/index.ts';

/** A measured value beside what was computed for its setup, or for all setups where none is named. */
export interface Compared {
  readonly measured: number;
  /** Least and most computed; the same where the setup is named. */
  readonly least: number;
  readonly most: number;
  /** How far it is outside, in per cent of the nearer; 0 inside. */
  readonly gapPct: number;
  readonly tolerancePct: number;
}

export interface MeasuredRow {
  readonly record: Measurement;
  /** The point in words. */
  readonly label: string;
  readonly entity: SupplyEntity | undefined;
  readonly volts: Compared | undefined;
  readonly amps: Compared | undefined;
  readonly neutral: Compared | undefined;
}

interface Computed {
  readonly entities: readonly SupplyEntity[];
  readonly figures: FigureTable;
  readonly setups: readonly { readonly id: string }[];
}

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

/** Key of the figures at a measured point. */
export const pointKey = (m: Measurement): string =>
  m.on.wayId === undefined ? m.on.recordId : `${m.on.recordId}/${m.on.wayId}`;

const compare = (
  measured: number | undefined,
  values: readonly number[],
  tolerancePct: number,
): Compared | undefined => {
  const known = values.filter(Number.isFinite);
  if (measured === undefined || known.length === 0) return undefined;
  const least = Math.min(...known);
  const most = Math.max(...known);
  const near = measured < least ? least : measured > most ? most : measured;
  const gap = Math.abs(measured - near);
  return {
    measured,
    least,
    most,
    gapPct: gap === 0 ? 0 : near === 0 ? 100 : (100 * gap) / Math.abs(near),
    tolerancePct,
  };
};

/** All measurements in the order they were written, each beside the computed figures. */
export const measuredRows = (plan: Plan, a: Computed): readonly MeasuredRow[] => {
  const all = recordsOf(plan, 'measurement');
  if (all.length === 0) return [];
  const byKey = new Map(a.entities.map((e) => [e.key, e]));
  return all.map((record): MeasuredRow => {
    const key = pointKey(record);
    const entity = byKey.get(key);
    const named = a.setups.findIndex((s) => s.id === record.setupId);
    const setups = named >= 0 ? [named] : a.setups.map((_, i) => i);
    const legs = record.leg === undefined ? (entity?.legs ?? []) : [record.leg];
    const amps = setups.map((s) =>
      Math.max(...legs.map((l) => a.figures.get(key, LEGS[l] ?? 'leg0A', s)).filter(Number.isFinite)),
    );
    return {
      record,
      label: entity?.label ?? recordLabel(plan, plan.records.get(record.on.recordId)),
      entity,
      volts: compare(
        record.voltsV,
        setups.map((s) => a.figures.get(key, 'voltsV', s)),
        limitOf(plan, 'measured-volts-gap').value,
      ),
      amps: compare(record.amps, amps, limitOf(plan, 'measured-amps-gap').value),
      neutral: compare(
        record.neutralA,
        setups.map((s) => a.figures.get(key, 'neutralA', s)),
        limitOf(plan, 'measured-amps-gap').value,
      ),
    };
  });
};

/** Measured values that say something else than the plan, a wrong polarity, a device that did not open. */
export const measuredFindings = (plan: Plan, a: Computed): readonly EngineFinding[] =>
  measuredRows(plan, a).flatMap(({ record: m, label, volts, amps, neutral }): readonly EngineFinding[] => {
    const found = (
      rule: string,
      severity: EngineFinding['severity'],
      params: EngineFinding['params'],
      figure?: number,
    ): EngineFinding => ({
      rule,
      severity,
      about: m.id,
      recordIds: [m.on.recordId, m.id],
      setups: [],
      worstSetup: -1,
      params: { label, by: m.by || 'someone', when: m.when, ...params },
      ...(figure === undefined ? {} : { figure }),
    });
    const gap = (rule: string, c: Compared | undefined, limitRow: string): readonly EngineFinding[] =>
      c && c.gapPct > c.tolerancePct
        ? [
            found(
              rule,
              'warn',
              {
                measured: c.measured,
                least: c.least,
                most: c.most,
                pct: c.gapPct,
                limitPct: c.tolerancePct,
                limitRow,
              },
              c.gapPct,
            ),
          ]
        : [];
    return [
      ...(m.polarity === 'wrong' ? [found('power-measured-polarity', 'stop', {})] : []),
      ...(m.deviceTest === 'did-not-open' ? [found('power-measured-device', 'stop', {})] : []),
      ...gap('power-measured-volts', volts, 'measured-volts-gap'),
      ...gap('power-measured-amps', amps, 'measured-amps-gap'),
      ...gap('power-measured-neutral', neutral, 'measured-amps-gap'),
    ];
  });
