import conductors from '../../shared/conductors.json' with { type: 'json' };
import { connector } from '../plan/connectors.ts';
import type { Plate } from '../plan/kinds/kinds.ts';
import {
  CHEMISTRIES,
  type Given,
  list,
  numberField as number,
  one,
  PLATES,
  RECEIVERS,
  RIGGING_SORTS,
  type SheetFamily,
  type SheetField,
  STAND_TOPS,
  text,
  wholeField as whole,
  yours,
} from './sheet-fields.ts';
import { connectorIdOf } from './sheet-values.ts';

const MASS = number('mass kg', 'massKg', 'kg', {
  other: { mass: 1, 'mass lb': 0.45359237 },
  words: 'its mass',
});
const mm = (heading: string, field: string, words: string, more: Partial<SheetField> = {}): SheetField =>
  number(`${heading} mm`, field, 'mm', {
    other: { [`${heading} m`]: 1000, [`${heading} in`]: 25.4, [`${heading} ft`]: 304.8 },
    words,
    ...more,
  });
const size = (side: string, words: string): SheetField =>
  number(`${side} mm`, `${side}Mm`, 'mm', { other: { [side]: 1, [`${side} in`]: 25.4 }, words });
const LENGTH = size('length', 'along the throw');
const WIDTH = size('width', 'across');
const HEIGHT = size('height', 'its own height');
const RATED = number('rated load kg', 'ratedLoadKg', 'kg', {
  other: { 'rated load lb': 0.45359237 },
  words: 'on its label',
});
const LOWEST = mm('lowest', 'heightMinMm', 'least height of its top');
const HIGHEST = mm('highest', 'heightMaxMm', 'greatest height of its top');
const LEGS_ROUND = mm('leg circle', 'legCircleMm', 'circle of its legs or wheels');
const need = (f: SheetField): SheetField => ({ ...f, need: true });
const or = (f: SheetField, assumed: (g: Given) => unknown): SheetField => ({ ...f, assumed });

const n = (g: Given, field: string): number => (typeof g[field] === 'number' ? g[field] : Number.NaN);
const round = (value: number, digits = 1): number => Number(value.toFixed(digits));
const tall = (g: Given): boolean => g.what !== 'bag' && g.what !== 'box';

/** Volts of one cell: nominal, full, empty. */
const CELL: Readonly<Record<string, readonly [number, number, number]>> = {
  'li-ion': [3.6, 4.2, 3],
  lifepo4: [3.2, 3.65, 2.5],
  nimh: [1.2, 1.45, 1],
  'lead-acid': [2, 2.4, 1.75],
};
const cell = (g: Given, at: 0 | 1 | 2): number => CELL[String(g.chemistry)]?.[at] ?? Number.NaN;

const leadOf = (plate: Plate): 'xlr-4' | 'xlr-3' | 'terminals' | 'plate' => {
  if (plate === 'belt-xlr4') return 'xlr-4';
  if (plate === 'terminals') return 'terminals';
  return plate === 'block-28' || plate === 'block-48' ? 'xlr-3' : 'plate';
};

const GRIP_SYMBOLS: Readonly<Record<string, string>> = { bag: 'sand-bag', box: 'apple-box' };
const RIGGING_SYMBOLS: Readonly<Record<string, string>> = { head: 'clamp' };
const GRIP_SORTS = yours('frame', 'flag', 'net', 'diffusion', 'bounce', 'cloth', 'bag', 'box');

/**
 * The families a list may hold besides lights, and their columns. What holds or carries is never assumed: a stand's load,
 * heights and legs, a cable's conductor and ampacity. What may be left empty says what is taken then.
 */
export const SHEET_FAMILIES: Readonly<Record<string, SheetFamily>> = {
  stand: {
    words: 'a stand',
    fields: [
      need(list('offers', 'receives', STAND_TOPS, 'what its top takes')),
      need(RATED),
      need(LOWEST),
      need(HIGHEST),
      need(LEGS_ROUND),
      whole('legs', 'legs', 'how many, evenly spaced; empty: three'),
      need(MASS),
      or(LENGTH, (g) => g.legCircleMm),
      or(WIDTH, (g) => g.legCircleMm),
    ],
    finish: (g) => ({
      sizeMm: { heightMm: g.heightMinMm },
      symbol: n(g, 'ratedLoadKg') >= 30 ? 'stand-heavy' : 'stand',
    }),
  },
  grip: {
    words: 'a frame, flag or cloth',
    fields: [
      need(one('sort', 'what', GRIP_SORTS, 'what it is')),
      need(WIDTH),
      need(HEIGHT),
      or(LENGTH, () => 25),
      need(MASS),
      or(
        number('area m2', 'areaM2', 'm²', { words: 'the face in the wind; empty: width times height' }),
        (g) => (tall(g) ? round((n(g, 'widthMm') * n(g, 'heightMm')) / 1e6, 3) : undefined),
      ),
      or(
        number('share of wind', 'windShare', '', { words: 'of that on a solid board; empty: 1, the whole' }),
        (g) => (tall(g) ? 1 : undefined),
      ),
      or(whole('stands', 'stands', 'it takes'), (g) => (tall(g) ? 1 : 0)),
      or(whole('lines', 'guys', 'it is held with outdoors'), () => 0),
      or(list('goes on', 'fits', RECEIVERS, 'what it is held by'), (g) => (tall(g) ? ['grip-head'] : [])),
    ],
    finish: (g) => ({ symbol: GRIP_SYMBOLS[String(g.what)] ?? String(g.what) }),
  },
  rigging: {
    words: 'rigging',
    fields: [
      need(one('sort', 'what', RIGGING_SORTS, 'what it is')),
      need(MASS),
      { ...RATED, words: 'on its label; empty: only its maker’s table can tell' },
      mm('reach', 'reachMm', 'how far out it carries'),
      LOWEST,
      HIGHEST,
      LEGS_ROUND,
      whole('people', 'people', 'its basket is made for'),
      number('wind limit mps', 'windLimitMps', 'm/s', {
        words: 'it comes down at; 0: indoors only',
        other: { 'wind limit mph': 0.44704 },
      }),
      text('worked by', 'operator', 'who may work it'),
      or(list('goes on', 'fits', RECEIVERS, 'what carries it'), () => []),
      or(list('offers', 'receives', RECEIVERS, 'what it takes'), () => []),
      or(LENGTH, (g) => g.reachMm ?? 300),
      or(WIDTH, () => 100),
      HEIGHT,
    ],
    finish: (g) => ({ symbol: RIGGING_SYMBOLS[String(g.what)] ?? String(g.what) }),
  },
  pack: {
    words: 'a pack',
    fields: [
      need(one('plate', 'plate', PLATES, 'what it is held by')),
      or(one('chemistry', 'chemistry', CHEMISTRIES, 'of its cells; empty: li-ion'), () => 'li-ion'),
      need(number('energy wh', 'energyWh', 'Wh', { words: 'as its label prints' })),
      need(number('volts', 'voltsV', 'V', { words: 'nominal' })),
      need(number('amps', 'continuousA', 'A', { words: 'it gives for long' })),
      or(number('peak amps', 'peakA', 'A', { words: 'for a moment' }), (g) => g.continuousA),
      or(whole('cells', 'cells', 'in a row'), (g) => Math.max(1, Math.round(n(g, 'voltsV') / cell(g, 0)))),
      or(number('volts full', 'fullV', 'V', { words: 'fully charged' }), (g) =>
        Math.max(n(g, 'voltsV'), round(n(g, 'cells') * cell(g, 1))),
      ),
      or(number('volts empty', 'emptyV', 'V', { words: 'where its guard ends' }), (g) =>
        Math.min(n(g, 'voltsV'), round(n(g, 'cells') * cell(g, 2))),
      ),
      or(number('capacity ah', 'capacityAh', 'Ah', { words: 'empty: Wh over volts' }), (g) =>
        round(n(g, 'energyWh') / n(g, 'voltsV'), 2),
      ),
      or(number('charge w', 'chargeW', 'W', { words: 'it takes at most' }), (g) =>
        round(n(g, 'energyWh') / 3),
      ),
      or(number('charge min', 'chargeMin', 'min', { words: 'from empty to full' }), (g) =>
        Math.round(((n(g, 'energyWh') / n(g, 'chargeW')) * 60) / 0.8),
      ),
      or(MASS, (g) => round(n(g, 'energyWh') / 130, 2)),
      or(LENGTH, () => 60),
      or(WIDTH, () => 100),
      HEIGHT,
    ],
    finish: (g) => ({
      symbol: 'pack',
      dcOut: [{ id: 'plate', connector: leadOf(g.plate as Plate), voltsV: g.voltsV, maxA: g.continuousA }],
    }),
  },
  cable: {
    words: 'a cable',
    fields: [
      need({
        heading: 'conductor',
        field: 'conductor',
        words: 'a row of shared/conductors.json',
        todo: 'Write it like mm2:2.5 or awg:12.',
        read: (t) => conductors.rows.find((r) => [r.id, r.name.toLowerCase()].includes(t.toLowerCase()))?.id,
      }),
      need(number('ampacity a', 'ampacityA', 'A', { words: 'it carries' })),
      ...(['plug', 'socket'] as const).map(
        (end): SheetField => ({
          heading: end,
          field: end,
          words: 'id or name of a connector',
          todo: 'Use an id of shared/connectors.json, like iec-16-1.',
          need: true,
          read: connectorIdOf,
        }),
      ),
      need({
        heading: 'lengths m',
        field: 'stockLengthsMm',
        words: 'in stock, between semicolons',
        todo: 'Write metres between semicolons: 5; 10; 25.',
        read: (t) => {
          const all = t.split(/[;|]/).map((x) => Number(x.trim().replace(/\s*m$/i, '').replace(',', '.')));
          return all.every((m) => m > 0 && m <= 10_000) ? all.map((m) => Math.round(m * 1000)) : undefined;
        },
        write: (v) => (v as readonly number[]).map((l) => l / 1000).join(';'),
      }),
      or(
        one('construction', 'construction', yours('multicore', 'single-conductors'), 'empty: multicore'),
        () => 'multicore',
      ),
      or(whole('parallel', 'parallel', 'conductors side by side on each leg; empty: 1'), () => 1),
      or(MASS, (g) => round(Math.max(...(g.stockLengthsMm as readonly number[])) / 1e4)),
      or(LENGTH, (g) => Math.max(...(g.stockLengthsMm as readonly number[]))),
      or(WIDTH, () => 15),
    ],
    finish: (g) => {
      const plug = connector(String(g.plug));
      return {
        symbol: g.construction === 'multicore' ? 'cable' : 'feeder',
        legs: plug?.legs ?? 1,
        neutral: plug?.neutral ?? true,
      };
    },
    faults: (g) => {
      const [a, b] = [connector(String(g.plug)), connector(String(g.socket))];
      return a && b && (a.legs !== b.legs || a.neutral !== b.neutral)
        ? [`its plug and socket carry different conductors (${a.name}; ${b.name})`]
        : [];
    },
  },
};
