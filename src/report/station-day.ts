import { limitOf } from '../derive/limits.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { PowerStep, StationDay, StationSpan } from './day-types.ts';

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
    }
  | undefined => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = record && kindOf(plan, record.kindId, 'source');
  if (kind?.what !== 'power-station' || !(kind.storedWh && kind.storedWh > 0)) return undefined;
  const ratedW = (record?.ratedKw ?? kind.ratedKw ?? Number.NaN) * 1000;
  const surgeW = kind.surgeW ?? (ratedW * limitOf(plan, 'station-surge').value) / 100;
  return {
    storedWh: kind.storedWh,
    usableWh: (kind.storedWh * limitOf(plan, 'station-usable').value) / 100,
    efficiency: (kind.inverterPct ?? limitOf(plan, 'station-inverter').value) / 100,
    idleW: limitOf(plan, 'battery-inverter-idle').value,
    surgeW: Number.isFinite(surgeW) ? surgeW : undefined,
  };
};

/**
 * A power station over a day: it begins full and gives what hangs on it over its inverter, with the inverter's own draw
 * while anything is on, until what it can give is used up. E = Σ (P ÷ η + idle) × t.
 */
export const stationDay = (
  plan: Plan,
  sourceId: string,
  steps: readonly PowerStep[],
): StationDay | undefined => {
  const s = stationOf(plan, sourceId);
  if (!s) return undefined;
  const spans: StationSpan[] = [];
  let leftWh = s.usableWh;
  let emptyMin: number | undefined;
  for (const { startMin, endMin, lightW, chargerW } of steps) {
    const outW = lightW + chargerW;
    const fromShare = leftWh / s.usableWh;
    if (outW <= 0) {
      spans.push({ startMin, endMin, outW, fromShare, toShare: fromShare, state: 'rests' });
      continue;
    }
    const cellsW = outW / Math.max(0.05, s.efficiency) + s.idleW;
    const lasts = (60 * leftWh) / cellsW;
    const until = Math.min(endMin, startMin + lasts);
    leftWh = Math.max(0, leftWh - (cellsW * (until - startMin)) / 60);
    if (until > startMin)
      spans.push({ startMin, endMin: until, outW, fromShare, toShare: leftWh / s.usableWh, state: 'gives' });
    if (until < endMin - 1e-9) {
      emptyMin ??= until;
      spans.push({ startMin: until, endMin, outW, fromShare: 0, toShare: 0, state: 'empty' });
    }
  }
  return { storedWh: s.storedWh, usableWh: s.usableWh, leftWh, emptyMin, spans };
};
