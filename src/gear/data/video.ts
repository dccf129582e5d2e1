import { mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';

/** Slug, name, what, watts, kg, [width, length, height] mm, symbol, least and most volts of packs, other words. */
type VideoRow = readonly [
  slug: string,
  name: string,
  what: 'monitor' | 'sender' | 'receiver',
  watts: number,
  kg: number,
  size: readonly [number, number, number],
  symbol: string,
  volts: readonly [number, number] | undefined,
  also: string,
];

const rows: readonly VideoRow[] = [
  [
    'monitor-7',
    'Monitor 7 in, 18 W',
    'monitor',
    18,
    0.8,
    [180, 60, 120],
    'monitor',
    [11, 17],
    'camera,on-board',
  ],
  [
    'monitor-9',
    'Monitor 9 in, 25 W',
    'monitor',
    25,
    1.6,
    [230, 70, 160],
    'monitor',
    [11, 17],
    'director,handheld',
  ],
  [
    'monitor-17',
    'Monitor 17 in, 40 W',
    'monitor',
    40,
    4.5,
    [410, 120, 290],
    'monitor',
    [11, 17],
    'director,village',
  ],
  [
    'monitor-24',
    'Monitor 24 in, 65 W',
    'monitor',
    65,
    7,
    [570, 150, 380],
    'monitor',
    [11, 30],
    'director,village',
  ],
  [
    'monitor-32',
    'Monitor 32 in, 95 W',
    'monitor',
    95,
    12,
    [740, 200, 480],
    'monitor',
    undefined,
    'village,client',
  ],
  [
    'picture-sender',
    'Wireless picture sender, 10 W',
    'sender',
    10,
    0.4,
    [80, 120, 35],
    'transmitter-pocket',
    [11, 17],
    'transmitter,wireless,link',
  ],
  [
    'picture-receiver',
    'Wireless picture receiver, 12 W',
    'receiver',
    12,
    0.9,
    [160, 130, 50],
    'receiver',
    [11, 17],
    'wireless,link',
  ],
];

/** Monitors and wireless picture links: loads that ride through a pulled plug on a pack on their plate. */
export const videoKinds: Family = (practice) =>
  rows.map(
    ([slug, name, what, supplyW, massKg, [widthMm, lengthMm, heightMm], symbol, volts, also]): Entry => {
      const { load, inlets } = mains(practice, 'domestic', supplyW > 75 ? 'led' : 'led-small', supplyW, {
        standbyW: 1,
      });
      return {
        family: 'video',
        slug,
        name,
        also: ['video', 'picture', what, ...also.split(',')],
        what,
        symbol,
        massKg,
        sizeMm: { widthMm, lengthMm, heightMm },
        supplyW,
        load,
        inlets,
        ...(volts
          ? {
              packIn: {
                plates: ['v-plate', 'three-stud'],
                packs: 1,
                joined: 'parallel',
                minV: volts[0],
                maxV: volts[1],
                hotSwap: false,
              },
            }
          : {}),
        basis: {
          all: COMMON,
          supplyW: 'planning value of its size, assumed: its rating plate comes first',
          ...(volts ? { packIn: 'a plate for one pack is usual, assumed: look at the unit' } : {}),
        },
      };
    },
  );
