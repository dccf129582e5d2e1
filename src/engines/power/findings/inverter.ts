import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { kindOf, recordOf } from '../../../plan/plan.ts';
import type { Judged } from '../types.ts';
import { mostOver, ROUNDING } from './context.ts';

/**
 * What an inverter takes from the battery or pack that feeds it, in its worst setup: watts over its efficiency and its own
 * draw, in amps at the nominal volts of its inlet; a warning where that inlet carries less. The battery is not the plan's.
 */
export const inverterFeeds = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (n.what !== 'source' || n.notComputed !== undefined) return [];
    const box = recordOf(c.plan, 'box', n.recordId);
    const kind = box && kindOf(c.plan, box.kindId, 'converter');
    const [port] = kind?.dcIn ?? [];
    const watts = mostOver(c, n, 'inW');
    if (!kind || !port || !(watts > 0) || !(kind.efficiencyPct > 0) || !(port.voltsV > 0)) return [];
    const idleW = limitOf(c.plan, 'battery-inverter-idle').value;
    const feedW = watts / (kind.efficiencyPct / 100) + idleW;
    const amps = feedW / port.voltsV;
    const over = port.maxA !== undefined && amps > port.maxA * (1 + ROUNDING);
    return [
      {
        ...always('power-inverter-feed', over ? 'warn' : 'note', n.key, [n.recordId], {
          label: n.label,
          watts,
          efficiencyPct: kind.efficiencyPct,
          idleW,
          feedW,
          feedV: port.voltsV,
          amps,
          ...(port.maxA === undefined ? {} : { mostA: port.maxA }),
        }),
        figure: amps,
      } satisfies EngineFinding,
    ];
  });
