import { type LineLength, lineLengths, needsTerminator } from '../../derive/data-lines.ts';
import { dataNet, type Segment } from '../../derive/data-net.ts';
import { always, type EngineFinding } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { rememberedEach } from '../../plan/remembered.ts';
import { lineLabel, unitLoadsOf } from './line-words.ts';

/** Unit loads, length and terminator of a stretch of wire with nothing active on it. */
export const segmentFindings = (plan: Plan, s: Segment): readonly EngineFinding[] => {
  const first = recordOf(plan, 'line', s.firstId);
  if (!first || s.stops.length === 0) return [];
  const label = lineLabel(plan, first);
  const ids: Id[] = [...s.lineIds];
  const out: EngineFinding[] = [];
  const loads = s.stops.reduce((sum, id) => sum + unitLoadsOf(plan, id), 0);
  const most = limitOf(plan, 'line-loads').value;
  const advised = limitOf(plan, 'line-devices').value;
  const stops = s.stops.length;
  if (loads > most)
    out.push({
      ...always('control-line-loads', 'stop', s.firstId, [...ids, ...s.stops], { label, loads, most, stops }),
      figure: loads,
    });
  else if (stops > advised)
    out.push({
      ...always('control-line-many', 'note', s.firstId, ids, { label, stops, advised, most }),
      figure: stops,
    });
  const warnM = limitOf(plan, 'line-length').value;
  const stopM = limitOf(plan, 'line-length-max').value;
  const m = s.lengthMm / 1000;
  if (m > warnM)
    out.push({
      ...always('control-line-length', m > stopM ? 'stop' : 'warn', s.firstId, ids, {
        label,
        lengthMm: s.lengthMm,
        limitM: m > stopM ? stopM : warnM,
        row: m > stopM ? 'line-length-max' : 'line-length',
      }),
      figure: m,
    });
  // The end of the segment is the last stop of the line that nothing goes on from.
  for (const id of s.lineIds) {
    const l = recordOf(plan, 'line', id);
    const end = l?.stops.at(-1);
    if (!l || end === undefined || l.terminated || !needsTerminator(plan, l)) continue;
    const goesOn = s.lineIds.some((o) => o !== id && recordOf(plan, 'line', o)?.from.recordId === end);
    if (!goesOn)
      out.push(
        always('control-line-end', 'warn', id, [id, end], {
          label: lineLabel(plan, l),
          end: recordLabel(plan, plan.records.get(end)),
        }),
      );
  }
  return out;
};

/** Hops longer than the cable they are laid in is meant for, or than a network link may be. */
export const hopFindings = (plan: Plan): readonly EngineFinding[] => longHops(plan, lineLengths(plan)).flat();

const longHops = rememberedEach((plan, length: LineLength): readonly EngineFinding[] => {
  const line = recordOf(plan, 'line', length.lineId);
  const kind = line?.kindId === undefined ? undefined : kindOf(plan, line.kindId, 'dataCable');
  const limitMm =
    kind?.longestMm ??
    (length.connector === 'ethernet'
      ? limitOf(plan, 'network-length').value * 1000
      : Number.POSITIVE_INFINITY);
  const worst = [...length.hops].sort((a, b) => b.neededMm - a.neededMm)[0];
  if (!line || !worst || worst.neededMm <= limitMm) return [];
  return [
    {
      ...always('control-line-hop', 'warn', line.id, [line.id, worst.toId], {
        label: lineLabel(plan, line),
        to: recordLabel(plan, plan.records.get(worst.toId)),
        lengthMm: worst.neededMm,
        limitM: limitMm / 1000,
        kind: kind?.name ?? 'a network cable',
        row: kind ? '' : 'network-length',
      }),
      figure: worst.neededMm / 1000,
    },
  ];
});

/** Units that pass on both their power and their data to others of one line. */
export const chainFindings = (plan: Plan): readonly EngineFinding[] => {
  const net = dataNet(plan);
  const feeds = new Map<Id, Set<Id>>();
  for (const r of recordsOf(plan, 'cable'))
    if (kindOf(plan, recordOf(plan, 'fixture', r.from.recordId)?.kindId ?? '', 'fixture')) {
      const list = feeds.get(r.from.recordId) ?? new Set<Id>();
      list.add(r.to.recordId);
      feeds.set(r.from.recordId, list);
    }
  const units = new Set<Id>();
  const behind = new Set<Id>();
  const lines = new Set<Id>();
  for (const l of net.lines)
    l.stops.forEach((id, i) => {
      const next = l.stops[i + 1];
      if (next === undefined || !feeds.get(id)?.has(next)) return;
      units.add(id);
      behind.add(next);
      lines.add(l.id);
    });
  if (units.size === 0) return [];
  return [
    {
      ...always('control-line-chain', 'note', 'plan', [...units], {
        count: units.size,
        behind: behind.size,
        lines: [...lines].map((id) => recordOf(plan, 'line', id)?.label || 'one').join(', '),
      }),
      figure: units.size,
    },
  ];
};
