import { recordLabel } from '../derive/labels.ts';
import { compareNatural } from '../kernel/ids.ts';
import { printAddress } from '../plan/address.ts';
import { dimmerSlots } from '../plan/edits/dimmer-patch.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { feedOf, inletsOf, outletsOf, powerInletRecord, waysOf } from '../plan/ports.ts';
import type { Fixture } from '../plan/records/index.ts';

/** How a unit that takes no control data is controlled. */
export type ControlBy = 'dimmer' | 'app' | 'local' | 'manual';

export interface OtherControl {
  readonly how: ControlBy;
  /** In words, for lists: so that nothing is forgotten. */
  readonly words: string;
  /** Taken from its kind’s sort; the kind does not say. */
  readonly assumed: boolean;
}

const WORDS: Readonly<Record<Exclude<ControlBy, 'dimmer'>, string>> = {
  app: 'by its maker’s app only',
  local: 'at the unit itself',
  manual: 'switched or dimmed by hand',
};

/** The dimmer way a unit hangs on, through whatever passes power on; undefined without one. */
const dimmerOver = (plan: Plan, f: Fixture): string | undefined => {
  let at = powerInletRecord(plan, f);
  for (let steps = 0; steps < 40; steps++) {
    const inlet = inletsOf(plan, at)[0];
    const cable = inlet && feedOf(plan, { recordId: at, portId: inlet.id });
    if (!cable) return undefined;
    const from = recordOf(plan, 'box', cable.from.recordId);
    if (from && kindOf(plan, from.kindId, 'dimmer')) {
      const wayId = outletsOf(plan, from.id).find((o) => o.id === cable.from.portId)?.wayId;
      const ways = waysOf(plan, from.id);
      const way = ways.find((w) => w.id === wayId);
      const universe = from.patch && recordOf(plan, 'universe', from.patch.universeId)?.number;
      // Its ways lie on its address and the slots after it, in their order.
      const at =
        from.patch && way && universe !== undefined && ways.length === dimmerSlots(plan, from)
          ? `, ${printAddress({ universe, address: from.patch.address + ways.indexOf(way) })}`
          : '';
      return `${recordLabel(plan, from)}${way ? ` way ${way.label}` : ''}${at}`;
    }
    at = cable.from.recordId;
  }
  return undefined;
};

/** Whether a unit takes control data: it is patched, or its kind has modes. */
export const takesData = (plan: Plan, f: Fixture): boolean =>
  f.patch !== undefined || (kindOf(plan, f.kindId, 'fixture')?.modes.some((m) => m.slots > 0) ?? false);

/** How a unit without control data is controlled: by the dimmer it hangs on, as its kind says, else as its sort is as a rule. */
export const controlBy = (plan: Plan, f: Fixture): OtherControl => {
  const dimmer = dimmerOver(plan, f);
  if (dimmer) return { how: 'dimmer', words: `dimmed by ${dimmer}`, assumed: false };
  const kind = kindOf(plan, f.kindId, 'fixture');
  const given = kind?.controlBy;
  if (given) return { how: given, words: WORDS[given], assumed: false };
  if (kind?.needsBallast || kind?.source === 'discharge')
    return { how: 'local', words: 'at its ballast', assumed: true };
  if (kind?.source === 'led')
    return { how: 'local', words: 'at the unit itself, or by its maker’s app', assumed: true };
  return { how: 'manual', words: WORDS.manual, assumed: true };
};

/** All units without control data, by unit number. */
export const withoutData = (plan: Plan): readonly Fixture[] =>
  recordsOf(plan, 'fixture')
    .filter((f) => !takesData(plan, f))
    .sort((a, b) => compareNatural(a.unit, b.unit));
