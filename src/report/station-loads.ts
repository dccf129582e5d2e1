import { recordLabel } from '../derive/labels.ts';
import { levelFixtureId } from '../derive/loads.ts';
import { type Day, stretchesOf } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import { minutesIn } from './day-lanes.ts';
import type { SourceDay, StationLoadLane, StationSpan } from './day-types.ts';

type Span = StationLoadLane['spans'][number];

/** When a unit that should burn from `x.startMin` to `x.endMin` does, and when its station is empty. */
const parted = (x: Omit<Span, 'state'>, empty: readonly StationSpan[]): readonly Span[] => {
  const out: Span[] = [];
  let at = x.startMin;
  for (const e of empty) {
    const [from, to] = [Math.max(at, e.startMin), Math.min(x.endMin, e.endMin)];
    if (to <= from) continue;
    if (from > at) out.push({ ...x, startMin: at, endMin: from, state: 'burning' });
    const last = out.at(-1);
    if (last?.state === 'dark' && last.endMin === from) out[out.length - 1] = { ...last, endMin: to };
    else out.push({ ...x, startMin: from, endMin: to, state: 'dark' });
    at = to;
  }
  if (at < x.endMin) out.push({ ...x, startMin: at, endMin: x.endMin, state: 'burning' });
  return out;
};

/** Units on the mains that hang on power stations: when they burn, and from when they are dark because theirs is empty. */
export const stationLoads = (
  plan: Plan,
  day: Day,
  sources: readonly SourceDay[],
): readonly StationLoadLane[] =>
  sources.flatMap((source) => {
    const { station } = source;
    if (!station) return [];
    const empty = station.spans.filter((s) => s.state === 'empty');
    const nodes = supplyTree(plan).nodes.filter((n) => n.sourceId === source.id && n.what === 'load');
    const fixtures = new Set(
      nodes.flatMap((n) => {
        const r = plan.records.get(n.recordId);
        const drawn = n.notComputed === undefined && n.load !== undefined;
        return drawn && (r?.type === 'fixture' || r?.type === 'ballast') ? [levelFixtureId(r)] : [];
      }),
    );
    return [...fixtures].flatMap((id): StationLoadLane[] => {
      const f = recordOf(plan, 'fixture', id);
      if (!f) return [];
      const spans = stretchesOf(day, id).flatMap((x) => parted(x, empty));
      return [
        {
          fixtureId: id,
          label: recordLabel(plan, f),
          kindName: kindOf(plan, f.kindId)?.name ?? '',
          sourceId: source.id,
          sourceLabel: source.label,
          spans,
          burnsMin: minutesIn(spans, 'burning'),
          darkMin: minutesIn(spans, 'dark'),
        },
      ];
    });
  });
