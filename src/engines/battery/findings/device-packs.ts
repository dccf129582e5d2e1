import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { type Plan, recordsOf } from '../../../plan/plan.ts';
import { devicePacks } from '../device-packs.ts';

/** Packs on devices that would not carry them when the plug is pulled. */
export const devicePackFindings = (plan: Plan): readonly EngineFinding[] =>
  recordsOf(plan, 'device').flatMap((d) => {
    const on = devicePacks(plan, d);
    if (on?.problem === undefined) return [];
    return [
      always('battery-back-up', 'warn', d.id, [d.id], {
        label: recordLabel(plan, d),
        pack: on.packName,
        why: on.problem,
      }),
    ];
  });
