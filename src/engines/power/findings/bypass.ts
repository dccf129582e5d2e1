import { bypassOwnW, hasBypass } from '../../../derive/bypass.ts';
import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { kindOf, recordOf } from '../../../plan/plan.ts';
import type { Judged } from '../types.ts';
import { mostOver } from './context.ts';

/**
 * What hangs on an inverter that passes mains on: the most watts in any setup, and the minutes its own battery would bear them when
 * the mains fail: watt-hours × efficiency × usable share ÷ (watts + its own draw). Without its watt-hours no time is told.
 */
export const bypasses = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (n.what !== 'box' || n.notComputed !== undefined) return [];
    const box = recordOf(c.plan, 'box', n.recordId);
    const kind = box && kindOf(c.plan, box.kindId, 'converter');
    if (!hasBypass(kind)) return [];
    const watts = Math.max(0, mostOver(c, n, 'inW') - bypassOwnW(kind));
    if (!(watts > 1)) return [];
    const idleW = limitOf(c.plan, 'battery-inverter-idle').value;
    const usable = limitOf(c.plan, 'station-usable').value / 100;
    const wh = kind.storedWh;
    const minutes =
      wh !== undefined && wh > 0
        ? (60 * wh * usable) / (watts / Math.max(0.01, kind.efficiencyPct / 100) + idleW)
        : undefined;
    return [
      always('power-bypass', 'note', n.key, [n.recordId], {
        label: n.label,
        watts,
        efficiencyPct: kind.efficiencyPct,
        idleW,
        usablePct: usable * 100,
        ...(wh === undefined || minutes === undefined ? {} : { storedWh: wh, minutes }),
        figure: watts,
      }),
    ];
  });
