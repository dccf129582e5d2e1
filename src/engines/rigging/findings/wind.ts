import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { beaufort } from '../calc.ts';
import type { RiggingResult } from '../figures.ts';
import { riggingKey } from '../keys.ts';
import { standsUnder } from '../model.ts';
import { sailForceN } from '../tipping.ts';

/** Frames: the stands and lines they take, and what the wind does to them. */
export const windFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan, factors } = r.model;
  const out: EngineFinding[] = [];
  const sails = [...r.sails.values()];
  const of = (id: string): number => limitOf(plan, `rigging-${id}`).value;
  for (const s of sails) {
    const under = standsUnder(plan, s.grip).length;
    const hung = s.grip.riggingId !== undefined;
    if (!hung && under < s.kind.stands && (under > 0 || s.kind.stands > 1))
      out.push(
        always('rigging-frame-stands', 'warn', s.grip.id, [s.grip.id], {
          label: s.kind.name,
          stands: under,
          wanted: s.kind.stands,
        }),
      );
    if ((factors.windMps ?? 0) > 0 && s.grip.guys < s.kind.guys)
      out.push(
        always('rigging-guys', 'warn', s.grip.id, [s.grip.id], {
          label: s.kind.name,
          guys: s.grip.guys,
          wanted: s.kind.guys,
        }),
      );
  }
  if (factors.windMps === undefined) {
    const asked = sails.filter((s) => s.areaM2 >= of('wind-ask'));
    const most = asked.reduce((a, b) => (b.areaM2 > a.areaM2 ? b : a), asked[0] as (typeof asked)[0]);
    if (most)
      out.push({
        ...always(
          'rigging-wind-open',
          'note',
          'plan',
          asked.map((s) => s.grip.id),
          {
            label: most.kind.name,
            count: asked.length,
            tableMps: 5,
            forceN: sailForceN(factors, most, 5),
          },
        ),
        figureKey: riggingKey('windN', most.grip.id),
      });
    return out;
  }
  const large = sails.filter((s) => s.areaM2 >= of('wind-large'));
  const [first] = large;
  if (first && factors.windMps >= of('wind-watch')) {
    const step =
      factors.windMps >= of('wind-down') ? 'down' : factors.windMps >= of('wind-hands') ? 'hands' : 'watch';
    out.push({
      ...always(
        'rigging-wind',
        step === 'watch' ? 'note' : 'warn',
        'plan',
        large.map((s) => s.grip.id),
        {
          label: first.kind.name,
          count: large.length,
          windMps: factors.windMps,
          beaufort: beaufort(factors.windMps),
          step,
          row: `rigging-wind-${step}`,
        },
      ),
      figure: factors.windMps,
      figureKey: riggingKey('windN', first.grip.id),
    });
  }
  return out;
};
