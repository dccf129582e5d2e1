import { travel } from '../../engines/battery/index.ts';
import { formatAmps, formatClock, formatWatts } from '../../kernel/units.ts';
import type { Writer, WriterContext } from './context.ts';

const clock = (c: WriterContext, name: string): string => formatClock(c.num(name));
const plates = (list: string): string => list.replaceAll('-', ' ');
const many = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`;
const bays = (c: WriterContext): string =>
  c.num('bays') === 0 ? 'no bay that takes them' : many(c.num('bays'), 'bay');

/** Where what comes off is charged: units that are exchanged each on its own lead. */
const charged = (c: WriterContext): string => (c.num('exchange') ? 'each charged on its own lead' : bays(c));

/** Where the limits of passenger air are from, and as of when. */
const AIR = `${travel.source}; as of ${travel.asOf}. Editions change: the operator decides.`;

/** Ends the texts about runtimes: what they are worth. */
const PLANNED =
  'Runtimes are planning values for packs of usual health; the packs’ own state, cold and age decide. Keep spare packs.';

export const batteryTexts: Readonly<Record<string, Writer>> = {
  'battery-no-pack': (c) => ({
    head: `${c.text('label')}: its runtime is not known`,
    body: `It runs on packs, and ${c.text('why')}. It is in no runtime and no rotation.`,
    todo: 'Choose its packs in Day, or plug it in.',
    citation: '',
  }),
  'battery-mains-only': (c) => ({
    head: `${c.text('label')}: its kind takes mains only`,
    body: `${c.text('pack')} is put on it, and ${c.text('kind')} has no plate and no inlet for packs. It is in no runtime and no rotation.`,
    todo: 'Use a kind with a plate, put an inverter between, or plug it in.',
    citation: 'the kind',
  }),
  'battery-plate': (c) => ({
    head: `${c.text('label')}: the pack does not fit its plate`,
    body: `${c.text('pack')} has a ${plates(c.text('plate'))}; it takes ${plates(c.text('takes'))}.`,
    todo: 'Choose packs with its plate, or a plate adapter between.',
    citation: 'the kinds',
  }),
  'battery-plates': (c) => ({
    head: `${c.text('label')}: ${many(c.num('packs'), 'pack')} on ${many(c.num('plates'), 'plate')}`,
    body: `The plan puts ${many(c.num('packs'), 'pack')} (${c.text('pack')}) on it at once; its kind takes ${c.text('plates')}.`,
    todo: 'Plan with as many as it has plates for, or put a plate for several packs or a lead between.',
    citation: 'the kind',
  }),
  'battery-volts-high': (c) => ({
    head: `${c.text('label')}: packs of ${c.volts('fullV')} when full, it takes ${c.volts('maxV')} at most`,
    body: `${many(c.num('packs'), 'pack')}${c.num('packs') > 1 ? ` in ${c.text('joined')}` : ''} (${c.text('pack')}) give ${c.volts('fullV')} when full. More than it takes can destroy it. Packs of different volts share the same plates: read the label.`,
    todo: 'Do not put them on. Choose packs of its volts.',
    citation: 'volts of the pack and of the unit by their kinds',
  }),
  'battery-volts-low': (c) => ({
    head: `${c.text('label')}: cuts out at ${c.volts('minV')}, before its packs are empty`,
    body: `Its packs (${c.text('pack')}) go down to ${c.volts('emptyV')}; it runs on ${c.volts('minV')} or more. About ${c.pct('leftPct')} of their charge stays in them, which is reckoned with.`,
    todo: 'Plan with shorter runtimes, or choose packs of higher volts.',
    citation: 'volts of the pack and of the unit by their kinds',
  }),
  'battery-weak': (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')} from each pack, it gives ${c.amps(c.num('amps') > c.num('peakA') ? 'peakA' : 'continuousA')} ${c.num('amps') > c.num('peakA') ? 'for a moment' : 'for long'}`,
    body: `At full it draws ${formatWatts(c.num('watts'))}: at the ${c.volts('cutOffV')} of a nearly empty pack that is ${c.amps('amps')} from each of ${many(c.num('packs'), 'pack')} (${c.text('pack')}), ${c.pct('pct')} of ${formatAmps(c.num('continuousA'))}. They may cut out however much is in them; ${formatWatts(c.num('mostW'))} is what they give for long.`,
    todo: 'Use more packs at once, stronger ones, or keep the level down.',
    citation: 'current of the pack by its kind, at its cut-off volts',
  }),
  'battery-plate-current': (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')} through a plate for ${c.amps('maxA')}`,
    body: `At full, with packs nearly empty (${c.text('pack')}), ${c.amps('amps')} go through each of ${many(c.num('packs'), 'plate')}: ${c.pct('pct')} of what one carries for long. It runs hot, whatever the pack can give.`,
    todo: 'Use more packs at once, a lead and a block instead of the plate, or keep the level down.',
    citation: 'current of the plate by the kind of the unit',
  }),
  'battery-inrush': (c) => ({
    head: `${c.text('label')}: its packs may cut out when it is switched on`,
    body: `Switched on at full it takes ${c.num('multiple')} times its watts for a moment, ${formatWatts(c.num('watts'))}${c.num('inverter') ? ' before its inverter' : ''}: ${formatWatts(c.num('watts'))} ÷ ${c.text('packs')} ÷ ${c.volts('cutOffV')} = ${c.amps('amps')} from each of ${many(c.num('packs'), 'pack')} (${c.text('pack')}) when nearly empty, which gives ${c.amps('peakA')} for a moment.`,
    todo: 'Switch it on at a low level, use more packs at once, or stronger ones.',
    citation: 'inrush of the unit and peak current of the pack by their kinds, assumed where these say so',
  }),
  'battery-shared-weak': (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')} from a pack that gives ${c.amps('continuousA')}`,
    body: `All its units at full draw ${c.text('sum')} = ${formatWatts(c.num('watts'))}; ÷ ${c.text('packs')} ÷ ${c.volts('cutOffV')} when nearly empty = ${c.amps('amps')} from each of ${many(c.num('packs'), 'pack')} (${c.text('pack')}), ${c.pct('pct')} of what it gives for long${c.num('amps') > c.num('peakA') ? ` and more than the ${c.amps('peakA')} it gives for a moment` : ''}. It cuts out, and all its units go dark at once.`,
    todo: 'Hang fewer units on it, use more packs side by side or a stronger one, or keep the levels down.',
    citation: 'current of the pack by its kind; I = P ÷ V at its cut-off volts, over the sum of its units',
  }),
  'battery-shared-inrush': (c) => ({
    head: `${c.text('label')} may cut out when ${c.text('unit')} is switched on`,
    body: `Switched on last, ${c.text('unit')} takes ${c.num('multiple')} times its watts for a moment; with the others at full that is ${formatWatts(c.num('watts'))} ÷ ${c.text('packs')} ÷ ${c.volts('cutOffV')} = ${c.amps('amps')} from each of ${many(c.num('packs'), 'pack')} (${c.text('pack')}), which gives ${c.amps('peakA')} for a moment. All its units go dark at once.`,
    todo: 'Switch that one on first or at a low level, or use more packs side by side.',
    citation: 'inrush of the unit and peak current of the pack by their kinds, assumed where these say so',
  }),
  'battery-outlets': (c) => ({
    head: `${c.text('label')}: ${many(c.num('leads'), 'lead')} for ${many(c.num('outlets'), 'outlet')}`,
    body: `${c.text('packs')} × ${c.text('pack')} ${c.num('packs') === 1 ? 'has' : 'have'} ${many(c.num('outlets'), 'outlet')} in all, and the plan leads ${c.text('leads')} units from there.`,
    todo: 'Use a pack with more outlets, one more pack side by side, or a splitter for its direct current.',
    citation: 'outlets of the pack by its kind',
  }),
  'battery-outlet-taken': (c) => ({
    head: `${c.text('label')}: ${c.text('unit')} has no outlet ${c.text('outlet')} to be in`,
    body: c.num('gone')
      ? `${c.text('pack')} has no outlet ${c.text('outlet')}.`
      : `Another unit’s lead is in outlet ${c.text('outlet')} already.`,
    todo: 'Choose a free outlet, or leave it open.',
    citation: 'outlets of the pack by its kind',
  }),
  'battery-outlet-current': (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')} for ${c.text('unit')} from an outlet for ${c.amps('maxA')}`,
    body: `At full and with the pack nearly empty its lead carries ${c.amps('amps')}, ${c.pct('pct')} of what outlet ${c.text('outlet')} of ${c.text('pack')} is made for.`,
    todo: 'Use another outlet or pack, or keep the level down.',
    citation: 'current of the outlet by the kind of the pack',
  }),
  'battery-back-up': (c) => ({
    head: `${c.text('label')}: the packs on it do not carry it when its plug is pulled`,
    body: `${c.text('pack') || 'Its pack'}: ${c.text('why')}.`,
    todo: 'Choose packs of its volts that give what it draws, or take them off.',
    citation: 'volts and current of the pack and of the device by their kinds',
  }),
  'battery-converter': (c) => ({
    head: `${c.text('label')}: ${formatWatts(c.num('watts'))} from a converter for ${formatWatts(c.num('outputW'))}`,
    body: `${c.text('converter')} gives ${formatWatts(c.num('outputW'))}; the unit takes ${c.pct('pct')} of that at full.`,
    todo: 'Use a larger converter, or keep the level down.',
    citation: 'output of the converter by its kind',
  }),
  'battery-converter-volts': (c) => ({
    head: `${c.text('label')}: the volts at its converter do not fit`,
    body: `${c.text('converter')} between ${c.text('pack')} and the unit: ${c.text('why')}.`,
    todo: 'Join the packs otherwise, or choose a converter for these packs and this unit.',
    citation: 'volts of packs, converter and unit by their kinds',
  }),
  'battery-lead-start': (c) => ({
    head: `${c.text('label')}: cannot start on this lead`,
    body: `Through ${c.num('ohm').toFixed(2)} Ω at ${c.volts('emptyV')} no more than ${formatWatts(c.num('mostW'))} arrive (V² ÷ 4R); it wants ${formatWatts(c.num('watts'))}.`,
    todo: 'Use a shorter or heavier lead, or packs of higher volts.',
    citation: 'power through a resistance, V² ÷ 4R',
  }),
  'battery-lead': (c) => ({
    head: `${c.text('label')}: ${c.volts('volts')} at the end of its lead`,
    body: `With its packs nearly empty (${c.volts('emptyV')}), ${c.num('dropV').toFixed(2)} V (${c.pct('pct')}) are lost in ${c.num('ohm').toFixed(3)} Ω at ${c.amps('amps')}${c.num('minV') > 0 ? `; it runs on ${c.volts('minV')} or more` : ''}.${c.num('leftPct') > 0 ? ` It cuts out with about ${c.pct('leftPct')} of their charge left, which is reckoned with.` : ''}`,
    todo: 'Use a shorter or heavier lead.',
    citation: c.cite('limitRow'),
  }),
  'battery-dark': (c) => ({
    head: `With ${many(c.num('packs'), c.num('exchange') ? 'unit' : 'pack')} ${c.text('label')} goes dark at ${clock(c, 'darkMin')} on day ${c.text('day')}`,
    body: `${c.text('pack')}: ${c.num('count') > 0 ? `${c.text('count')} in stock, ${c.text('reserve')} kept back, ` : ''}${charged(c)}. At ${clock(c, 'dueMin')} ${c.num('exchange') ? 'its cells are' : 'its packs fall'} due and no charged one is left; it is dark from ${clock(c, 'darkMin')}. By a plain rotation ${c.text('need')} get through the day: ${c.text('missing')} more. ${PLANNED}`,
    todo: 'Get more packs or bays, charge in the breaks, lower the levels, or plug units in.',
    citation: 'rotation played through at planning values; runtimes by Peukert’s law and the battery table',
  }),
  'battery-late': (c) => ({
    head: `With ${many(c.num('packs'), c.num('exchange') ? 'unit' : 'pack')} ${c.text('label')} runs into its last at ${clock(c, 'dueMin')} on day ${c.text('day')}`,
    body: `${c.text('pack')}: at ${clock(c, 'dueMin')} ${c.num('exchange') ? 'its cells are' : 'its packs fall'} due and no charged one is ready; one comes before it is dark. By a plain rotation ${c.text('need')} leave no unit waiting. ${PLANNED}`,
    todo: 'Keep one more pack or bay at hand.',
    citation: 'rotation played through at planning values',
  }),
  'battery-overnight': (c) => ({
    head: `Day ${c.text('nextDay')} counts on ${c.text('wants')} full ${c.num('exchange') ? 'units' : 'packs'} (${c.text('pack')})${c.num('bays') === 0 && !c.num('exchange') ? '' : `, only ${c.text('full')} ${c.num('full') === 1 ? 'is' : 'are'} by then`}`,
    body: `Every day is reckoned with full packs, and day ${c.text('nextDay')} first wants them at ${clock(c, 'wantedMin')} as day ${c.text('day')} counts. ${
      c.num('bays') === 0 && !c.num('exchange')
        ? 'No charger of the plan takes them, so those used must be charged elsewhere by then.'
        : `Charged without a pause from when they come off${c.num('exchange') ? '' : `, in ${bays(c)}`}, the last is full at ${clock(c, 'readyMin')}; somebody must change them, and the power must stay on.`
    } ${PLANNED}`,
    todo: 'Charge in more bays, take more packs along, or begin later.',
    citation:
      'charging times of the packs by their kinds, the shortest first, each in the bay it is full soonest in',
  }),
  'battery-own-dark': (c) => ({
    head: `${c.text('label')} goes dark at ${clock(c, 'darkMin')} on day ${c.text('day')}`,
    body: `Its own ${c.num('wh').toFixed(0)} Wh are used up then${c.num('recharge') ? ', charging in the breaks counted in' : ''}; ${Math.round(c.num('lostMin'))} minutes of the day are left. ${PLANNED}`,
    todo: c.num('recharge')
      ? 'Exchange it, lower its level, or plug it in.'
      : 'Charge it in the breaks, exchange it, lower its level, or plug it in.',
    citation: 'energy of its own cells by its kind, at planning values',
  }),
  'station-empty': (c) => ({
    head: `${c.text('label')} is empty at ${clock(c, 'emptyMin')} on day ${c.text('day')}`,
    body: `The power station holds ${c.num('storedWh').toFixed(0)} Wh and gives ${c.num('usableWh').toFixed(0)} Wh of them; ${c.num('wantedWh').toFixed(0)} Wh are asked for on the day, its inverter’s loss and own draw not counted in${c.text('from') ? `; ${c.num('chargedWh').toFixed(0)} Wh come back from ${c.text('from')} while nothing on it burns` : ''}. ${Math.round(c.num('lostMin'))} minutes of light are lost, and ${many(c.num('units'), 'load')} ${c.num('units') === 1 ? 'hangs' : 'hang'} on it${c.text('dark') ? `; dark then: ${c.text('dark')}` : ''}.${c.num('charges') > 0 ? ` ${many(c.num('charges'), 'charge')} in ${c.text('chargers')} that the rotation counts on ${c.num('charges') === 1 ? 'ends' : 'end'} after that and will not be done.` : ''} Its own state, cold and age decide.`,
    todo: 'Take a larger one or a second, charge it in the breaks, lower the levels, or plug in elsewhere.',
    citation: 'energy over power; usable share and inverter by the battery table',
  }),
  'station-overnight': (c) => ({
    head: `${c.text('label')} is at ${Math.round(c.num('morningPct'))} % when day ${c.text('nextDay')} begins`,
    body: `Every day is reckoned with a full station. ${
      c.text('from')
        ? `From ${c.text('from')} no more goes in during the ${(c.num('gapMin') / 60).toFixed(1)} h after day ${c.text('day')}, and that only where the power stays on`
        : `By the plan it is plugged into nothing after day ${c.text('day')}`
    }; with what is in it then it does not get through day ${c.text('nextDay')}. Its own state, cold and age decide.`,
    todo: 'Plug it in overnight where it charges for long enough, or take a second one.',
    citation: 'energy over power; charging by the kind of the station and the battery table',
  }),
  'battery-charger-off': (c) => ({
    head: `${c.text('label')} is not plugged in, and ${many(c.num('charges'), 'charge')} ${c.num('charges') === 1 ? 'is' : 'are'} counted on`,
    body: `From day ${c.text('day')} on packs are charged in its bays by the plan, and no source of the plan feeds it. What it draws is on no circuit.`,
    todo: 'Plug it in, or take it out of the plan where packs are charged elsewhere.',
    citation: '',
  }),
  'station-surge': (c) => ({
    head: `${c.text('label')} may switch off when ${c.text('load')} is switched on`,
    body: `Switched on last, it takes ${formatWatts(c.num('inrushW'))} for a moment beside the ${formatWatts(c.num('restW'))} of what else hangs on it at full: ${formatWatts(c.num('watts'))}. The station gives ${formatWatts(c.num('surgeW'))} for a moment.`,
    todo: 'Switch it on first, or plug it in elsewhere.',
    citation: c.num('assumed')
      ? c.cite('limitRow')
      : 'what its kind says it gives for a moment, assumed where the kind says so',
  }),
  'station-chain': (c) => ({
    head: `${c.text('label')} is plugged into a power station to be charged`,
    body: `It is charged from ${c.text('from')}. What one gives the other is lost twice over, and no charging is reckoned with.`,
    todo: 'Plug it into house power or a set while nothing on it burns.',
    citation: '',
  }),
  'battery-charge-cold': (c) => ({
    head: `Packs at ${c.text('cellC')} °C are not to be charged on day ${c.text('day')}`,
    body: 'The plan says how cold the cells are; charging lithium cells in frost harms them for good. The rotation counts on charging.',
    todo: 'Charge where it is warm, and let cold packs warm up first. The maker’s instructions decide.',
    citation: c.cite('limitRow'),
  }),
  'battery-air-cargo': (c) => ({
    head: `${c.text('count')} × ${c.text('name')}: ${c.num('wh').toFixed(0)} Wh each do not fly with passengers`,
    body: `More than ${travel.largeWh} Wh in one ${c.num('builtIn') ? 'unit' : 'pack'}: not in cabin or hold baggage, only as dangerous goods by cargo. ${travel.cargo}`,
    todo: 'Send them by cargo or road, rent them there, or plan with smaller ones. The operator decides.',
    citation: AIR,
  }),
  'battery-air-ask': (c) => ({
    head: `${c.text('count')} × ${c.text('name')}: ask the operator before they fly`,
    body: `${c.num('wh').toFixed(0)} Wh is more than ${travel.smallWh} and no more than ${travel.largeWh} Wh: with the operator’s approval only${c.num('builtIn') ? '' : `, in the cabin, contacts covered, at most ${c.text('most')} spares a person. ${c.text('count')} of them${c.num('all') > c.num('count') ? `, ${c.text('all')} packs between the limits in all,` : ''} take ${many(c.num('needs'), 'person', 'people')}${c.num('people') < 0 ? '' : `; ${many(c.num('people'), 'person travels', 'people travel')}`}`}.`,
    todo: 'Get the approval in writing, share them out, or send the rest by cargo.',
    citation: AIR,
  }),
  'battery-air-spares': (c) => ({
    head: `${many(c.num('count'), 'pack')} to ${travel.smallWh} Wh fly in the cabin, ${c.text('most')} a person at most`,
    body: `All packs in stock count as spares: in the cabin, each with its contacts covered, none in hold baggage. ${c.text('count')} of them take ${many(c.num('needs'), 'person', 'people')}${c.num('people') < 0 ? '' : `; ${many(c.num('people'), 'person travels', 'people travel')}`}. ${travel.powerBanks}`,
    todo: 'Share them out, and ask the operator: many are stricter.',
    citation: AIR,
  }),
  'day-block-empty': (c) => ({
    head: `${c.text('label')}: it does not end after it starts`,
    body: `It runs from ${clock(c, 'startMin')} to ${clock(c, 'endMin')}. It takes no part in the day.`,
    todo: 'Set its times right.',
    citation: '',
  }),
  'day-block-outside': (c) => ({
    head: `${c.text('label')}: it lies outside the day`,
    body: `It runs from ${clock(c, 'startMin')} to ${clock(c, 'endMin')}; a day reaches from 00:00 to noon of the next. It takes no part in the day.`,
    todo: 'Set its times right, or put it on another day.',
    citation: '',
  }),
  'day-block-overlap': (c) => ({
    head: `${c.text('label')} and ${c.text('other')} run at the same time`,
    body: `Both are of the ${c.text('crew')} crew, from ${clock(c, 'startMin')} to ${clock(c, 'untilMin')}. Where blocks overlap each unit is taken to burn at the brighter of its levels.`,
    todo: 'Set their times right, or give one of them to the other crew.',
    citation: '',
  }),
  'day-block-no-setup': (c) => ({
    head: `${c.text('label')}: its setup is not in the plan`,
    body: 'What burns in it is not known, so it takes no part in the day.',
    todo: 'Choose its setup.',
    citation: '',
  }),
};
