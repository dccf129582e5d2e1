import { limitOf } from '../derive/limits.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { PowerStep, StationDay, StationSpan } from './day-types.ts';
import { chargeParts, type StationCharger } from './station-charge.ts';

/** Figures of a power station: its kind's, else the table's. Undefined for anything else or without watt-hours. */
export const stationOf = (
  plan: Plan,
  sourceId: string,
):
  | {
      readonly storedWh: number;
      readonly usableWh: number;
      readonly efficiency: number;
      readonly idleW: number;
      readonly surgeW: number | undefined;
      /** Its kind does not say what it gives for a moment: the table’s multiple is used. */
      readonly surgeAssumed: boolean;
      /** How it is charged where its kind has an inlet, and what of the watts there reaches its cells. */
      readonly charger: StationCharger | undefined;
      readonly chargeEfficiency: number;
    }
  | undefined => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = record && kindOf(plan, record.kindId, 'source');
  if (kind?.what !== 'power-station' || !(kind.storedWh && kind.storedWh > 0)) return undefined;
  const ratedW = (record?.ratedKw ?? kind.ratedKw ?? Number.NaN) * 1000;
  const surgeW = kind.surgeW ?? (ratedW * limitOf(plan, 'station-surge').value) / 100;
  const usableWh = (kind.storedWh * limitOf(plan, 'station-usable').value) / 100;
  const chargeEfficiency = Math.max(0.1, limitOf(plan, 'battery-charger-efficiency').value / 100);
  const takesW = kind.inlets && kind.inlets.length > 0 ? kind.load?.wattsW : undefined;
  return {
    storedWh: kind.storedWh,
    usableWh,
    chargeEfficiency,
    charger:
      takesW === undefined
        ? undefined
        : {
            cellsW: takesW * chargeEfficiency,
            usableWh,
            changeOver: limitOf(plan, 'battery-change-over').value / 100,
            endC: limitOf(plan, 'battery-charge-end').value,
          },
    efficiency: (kind.inverterPct ?? limitOf(plan, 'station-inverter').value) / 100,
    idleW: limitOf(plan, 'battery-inverter-idle').value,
    surgeW: Number.isFinite(surgeW) ? surgeW : undefined,
    surgeAssumed: kind.surgeW === undefined,
  };
};

/** A stretch of a station's day: what is drawn from it, and whether any of its units burns. */
export interface StationStep extends PowerStep {
  readonly lit: boolean;
}

/**
 * A power station over a day: it begins full and gives what hangs on it over its inverter, with the inverter's own draw
 * while anything is on, until what it can give is used up. E = Σ (P ÷ η + idle) × t. Where its inlet is plugged in
 * (`from` names the source) it is charged while none of its units burns.
 */
export const stationDay = (
  plan: Plan,
  sourceId: string,
  steps: readonly StationStep[],
  from: string | undefined,
): StationDay | undefined => {
  const s = stationOf(plan, sourceId);
  if (!s) return undefined;
  const spans: StationSpan[] = [];
  let leftWh = s.usableWh;
  let chargedWh = 0;
  let wantedWh = 0;
  let emptyMin: number | undefined;
  const rest = (startMin: number, endMin: number, outW: number, throughW = 0): void => {
    const share = leftWh / s.usableWh;
    if (endMin > startMin + 1e-9)
      spans.push({
        startMin,
        endMin,
        outW,
        throughW,
        chargeW: 0,
        fromShare: share,
        toShare: share,
        state: 'rests',
      });
  };
  for (const { startMin, endMin, lightW, chargerW, lit } of steps) {
    const outW = lightW + chargerW;
    if (from !== undefined && !lit && s.charger) {
      const parts = chargeParts(s.charger, leftWh / s.usableWh, endMin - startMin);
      for (const x of parts)
        spans.push({
          startMin: startMin + x.fromMin,
          endMin: startMin + x.toMin,
          outW: 0,
          // What hangs on it and is off draws its standby through it from what it is plugged into.
          throughW: outW,
          chargeW: x.cellsW / s.chargeEfficiency,
          fromShare: x.fromShare,
          toShare: x.toShare,
          state: 'charges',
        });
      const before = leftWh;
      leftWh = (parts.at(-1)?.toShare ?? leftWh / s.usableWh) * s.usableWh;
      chargedWh += leftWh - before;
      rest(startMin + (parts.at(-1)?.toMin ?? 0), endMin, 0, outW);
      continue;
    }
    if (outW <= 0) {
      rest(startMin, endMin, outW);
      continue;
    }
    wantedWh += (outW * (endMin - startMin)) / 60;
    const fromShare = leftWh / s.usableWh;
    const cellsW = outW / Math.max(0.05, s.efficiency) + s.idleW;
    const lasts = (60 * leftWh) / cellsW;
    const until = Math.min(endMin, startMin + lasts);
    leftWh = Math.max(0, leftWh - (cellsW * (until - startMin)) / 60);
    const common = { outW, throughW: 0, chargeW: 0, fromShare };
    if (until > startMin)
      spans.push({ ...common, startMin, endMin: until, toShare: leftWh / s.usableWh, state: 'gives' });
    if (until < endMin - 1e-9) {
      emptyMin ??= until;
      spans.push({ ...common, startMin: until, endMin, outW: 0, fromShare: 0, toShare: 0, state: 'empty' });
    }
  }
  return {
    storedWh: s.storedWh,
    usableWh: s.usableWh,
    leftWh,
    emptyMin,
    chargesFrom: from,
    wantedWh,
    chargedWh,
    spans,
  };
};
