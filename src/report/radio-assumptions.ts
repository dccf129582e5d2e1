import { limitsOf } from '../derive/limits.ts';
import { computeRadio } from '../engines/radio/index.ts';
import type { Plan } from '../plan/plan.ts';
import type { Assumption } from './types.ts';

/** What the radio margins take from elsewhere because the plan does not say; nothing where nothing sends. */
export const radioAssumptions = (plan: Plan): readonly Assumption[] => {
  const { model, links } = computeRadio(plan);
  if (model.senders.size === 0 || links.size === 0) return [];
  const { air } = model;
  const limit = (id: string): number => limitsOf(plan).get(id)?.value ?? Number.NaN;
  const out: Assumption[] = [
    {
      id: 'radio-law',
      text: `Radio margins are planning estimates: ${limit('radio-reserve')} dB kept for aerials that are not turned alike, losses of walls and set pieces from a table, doors closed, reflections not counted.`,
      recordIds: [],
    },
  ];
  if (air.coefficient === undefined)
    out.push({
      id: 'radio-distance',
      text: `Radio: indoors loss grows by ${limit('radio-distance-indoors')} dB per decade of distance, in the open by ${limit('radio-distance-outdoors')} dB.`,
      recordIds: ['plan'],
    });
  if (air.crowdAssumed)
    out.push({ id: 'radio-crowd', text: 'Radio: few people between the aerials.', recordIds: ['plan'] });
  if (air.wifiAssumed)
    out.push({
      id: 'radio-wifi',
      text: `Radio: Wi-Fi channel ${air.wifiChannels.join(', ')} in use.`,
      recordIds: ['plan'],
    });
  const deaf = [...model.listeners.values()].filter((l) => l.assumed);
  if (deaf.length > 0)
    out.push({
      id: 'radio-receiver',
      text: `Radio: ${deaf.length} ${deaf.length === 1 ? 'unit has a receiver' : 'units have receivers'} of which nothing is known; ${limit('radio-sensitivity')} dBm taken.`.replace(
        ' -',
        ' −',
      ),
      recordIds: deaf.map((l) => l.id),
    });
  return out;
};
