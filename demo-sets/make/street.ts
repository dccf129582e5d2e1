import type { Plan } from '../../src/plan/plan.ts';
import { Builder } from './builder.ts';
import { streetControl } from './street-control.ts';

/** A street front at night on one three-phase generator. Feet throughout. */
export const street = (): Plan => {
  const d = new Builder(
    {
      title: 'Street, night',
      production: 'The Lamplighter’s Ledger',
      scene: '52',
      location: 'Cooper Row, back lot',
      drawingNumber: 'LL-52-E-1',
      owner: 'Tallow Street Films',
      dates: ['2027-05-18', '2027-05-19'],
      place: { latDeg: 40.71, lonDeg: -74.01, utcOffsetMin: -240 },
      people: {
        'director-of-photography': 'I. Vance',
        gaffer: 'M. Oduya',
        'best-boy': 'P. Lindholm',
        'drawn-by': 'P. Lindholm',
      },
      practice: 'north-america',
      lengthUnits: 'imperial',
      frequencyHz: 60,
      paper: { sheet: 'ANSI D', landscape: true },
    },
    { name: 'Street', northDeg: 250 },
  );
  place(d);
  supply(d);
  moon(d);
  road(d);
  workshop(d);
  hotel(d);
  bakery(d);
  close(d);
  streetControl(d);
  offTheMains(d);
  setups(d);
  return d.build();
};

const place = (d: Builder): void => {
  const bakeryFront = d.wall([8, 8], [36, 8], 1, 24, 'brick');
  const hotelFront = d.wall([36, 8], [78, 8], 1, 30, 'brick');
  const workshopFront = d.wall([78, 8], [112, 8], 1, 20, 'brick');
  for (const x of [8, 36, 78, 112]) d.wall([x, 8], [x, -9], 1, 24, 'brick');
  d.opening(bakeryFront, 'window', 2, 9, 7, { sill: 2 });
  d.opening(bakeryFront, 'door', 12.5, 3.5, 7.5, { swing: 'left-end' });
  d.opening(bakeryFront, 'window', 18, 8, 7, { sill: 2 });
  d.opening(hotelFront, 'window', 3, 6, 8, { sill: 2 });
  d.opening(hotelFront, 'window', 11, 5.5, 8, { sill: 2 });
  d.opening(hotelFront, 'archway', 18.5, 5, 9);
  d.opening(hotelFront, 'window', 26, 5.5, 8, { sill: 2 });
  d.opening(hotelFront, 'window', 33.5, 6, 8, { sill: 2 });
  d.opening(workshopFront, 'archway', 3, 12, 11);
  d.opening(workshopFront, 'door', 17.5, 3, 7);
  d.opening(workshopFront, 'window', 23, 8, 6, { sill: 3 });

  d.piece('Pavement', [60, 13], 104, 9, { line: 'ground', height: 0.5 });
  d.piece('Road', [60, 30.5], 118, 26, { line: 'ground', height: 0 });
  d.piece('Far pavement', [60, 49.5], 118, 12, { line: 'ground', height: 0.5 });
  d.piece('Parked car', [27, 21.3], 14.8, 5.9, { height: 4.8 });
  d.piece('Parked van', [91, 21.5], 17.4, 6.6, { height: 7.5 });
  d.piece('Taxi', [57, 31], 14.8, 5.9, { height: 4.8 });
  d.piece('Canopy', [57, 11.3], 8, 5.4, { height: 10, line: 'hidden' });
  for (const x of [18, 46, 74, 102]) d.piece('', [x, 16.4], 0.8, 0.8, { shape: 'ellipse', height: 14 });
  for (const x of [20, 74]) d.piece('Tree', [x, 47], 9, 9, { shape: 'ellipse', height: 22, line: 'hidden' });

  d.mark('iris', 'talent', 'Iris', [57, 13.4], 5.3, 90);
  d.mark('tomas', 'talent', 'Tomas', [66.5, 14.6], 5.8, 180);
  d.mark('driver', 'talent', 'Driver', [55.6, 32.2], 4, 0);
  d.mark('camera-a', 'camera', 'Cam A, 32 mm', [38, 36.5], 5, 310, 42);
  d.mark('camera-b', 'camera', 'Cam B, 75 mm', [80, 37], 5.5, 236, 18);
};

/** Runs cross the road only at its two ends, and go along the far pavement and behind the fronts. */
const FAR = 54;
const BACK = -8;
const LEFT = 4.5;
const RIGHT = 119;

const supply = (d: Builder): void => {
  d.source('G1', 'generator-100kw-3ph', [134, 50.5], {
    rotationDeg: 90,
    voltsV: 120,
    notes: 'Set to 120 V leg to neutral at the generator.',
  });
  d.box('K1', 'box-400-mixed', [103, 50.5], 'G1:1', {
    cable: 'feeder-4-0-3ph',
    route: 'straight',
    rotationDeg: 90,
  });
  d.box('K2', 'box-400-3x100-3x60', [33, 50.5], 'K1:through', {
    cable: 'feeder-4-0-3ph',
    route: { along: FAR },
    rotationDeg: 90,
  });
  d.box('K3', 'box-400-two-leg', [12, 50.5], 'K2:through', {
    cable: 'feeder-4-0-3ph',
    route: { along: FAR },
    rotationDeg: 90,
  });
  d.box('K4', 'box-100-pin-5x20', [108.5, -6], 'K1:1', {
    route: [
      [103, FAR],
      [RIGHT, FAR],
      [RIGHT, BACK],
      [108.5, BACK],
    ],
  });
  d.box('K5', 'box-100-pin-5x20', [75, -6], 'K1:2', {
    route: [
      [103, FAR],
      [RIGHT, FAR],
      [RIGHT, BACK],
      [75, BACK],
    ],
  });
  d.box('K6', 'box-100-pin-5x20', [33, -6], 'K2:1', {
    route: [
      [33, FAR],
      [LEFT, FAR],
      [LEFT, BACK],
      [33, BACK],
    ],
  });
  d.box('K7', 'box-100-pin-5x20-gfci', [1.5, 20], 'K2:3', {
    route: [
      [33, FAR],
      [1.5, FAR],
    ],
    rotationDeg: 90,
  });
  d.box('K8', 'box-100-pin-5x20-gfci', [51, 50.5], 'K2:2', { route: { along: FAR }, rotationDeg: 90 });
  d.box('Q1', 'quad-box-20', [15, -6], 'K6:1a', { route: 'across-first' });
  d.universe(1, 'Street');
};

const moon = (d: Builder): void => {
  d.fixture({
    unit: '1',
    kind: 'discharge-fresnel-6kw',
    at: [22, -2],
    h: 26,
    aim: 'iris',
    use: 'moon, left roof',
    gel: '½ CTB',
    feed: 'K3:4',
    ballast: [26, -5.5],
    route: [
      [12, FAR],
      [LEFT, FAR],
      [LEFT, BACK],
      [26, BACK],
    ],
  });
  d.fixture({
    unit: '2',
    kind: 'discharge-fresnel-6kw',
    at: [95, -2],
    h: 26,
    aim: 'tomas',
    use: 'moon, right roof',
    gel: '½ CTB',
    feed: 'K1:5',
    ballast: [99, -5.5],
    route: [
      [103, FAR],
      [RIGHT, FAR],
      [RIGHT, BACK],
      [99, BACK],
    ],
  });
  d.fixture({
    unit: '3',
    kind: 'discharge-reflector-4kw',
    at: [116, 4],
    h: 12,
    aim: [128, -12],
    stand: 'stand-windup-3',
    use: 'alley, right',
    feed: 'K1:6',
    ballast: [122, 6],
    route: [
      [103, FAR],
      [122, FAR],
    ],
  });
  d.fixture({
    unit: '4',
    kind: 'balloon-350-4kw',
    at: [77, 27],
    h: 24,
    aim: [90, -90],
    use: 'street ambience',
    feed: 'K1:4',
    route: { along: 47 },
  });
  d.fixture({
    unit: '9',
    kind: 'tungsten-fresnel-2kw',
    at: [-1, 2],
    h: 10,
    aim: [52, -12],
    stand: 'stand-combo-3',
    use: 'alley, left',
    gel: 'full straw',
    feed: 'K1:9a',
    cable: 'pin-20-12-3',
    route: [
      [103, FAR],
      [LEFT, FAR],
      [LEFT, 2],
    ],
  });
};

const road = (d: Builder): void => {
  d.fixture({
    unit: '5',
    kind: 'discharge-fresnel-2500w',
    at: [29, 41.5],
    h: 12,
    aim: 'iris',
    stand: 'stand-junior-rolling-3',
    use: 'cross key, wide',
    feed: 'K2:4',
    ballast: [26, 44.5],
    route: [
      [33, 47],
      [26, 47],
    ],
  });
  d.fixture({
    unit: '6',
    kind: 'discharge-par-2500w',
    at: [113, 29],
    h: 13,
    aim: 'driver',
    stand: 'stand-junior-rolling-3',
    use: 'rain backlight',
    feed: 'K1:10a',
    cable: 'pin-60-6-3',
    ballast: [116.5, 32],
    route: [
      [103, 46.5],
      [116.5, 46.5],
    ],
  });
  d.fixture({
    unit: '7',
    kind: 'tungsten-fresnel-5kw',
    at: [9.5, 39],
    h: 11,
    aim: 'driver',
    stand: 'stand-crank-heavy',
    use: 'headlight sweep',
    feed: 'K2:6',
    pieces: [50, 25],
    route: [
      [33, 47.8],
      [9.5, 47.8],
    ],
  });
  d.fixture({
    unit: '8',
    kind: 'discharge-par-1200w',
    at: [104, 38.5],
    h: 11,
    aim: 'tomas',
    stand: 'stand-combo-3',
    use: 'edge, pavement',
    feed: 'K1:8a',
    ballast: [107, 41.5],
    route: [
      [103, 45.8],
      [107, 45.8],
    ],
  });
  d.fixture({
    unit: '10',
    kind: 'led-spot-1200w',
    at: [46, 42.5],
    h: 10,
    aim: 'iris',
    stand: 'stand-combo-3',
    use: 'soft key through frame',
    feed: 'K8:5a',
    pieces: [25, 10],
    patch: [1, 'white'],
    route: { along: 45.6 },
  });
  d.fixture({
    unit: '11',
    kind: 'discharge-fresnel-1200w',
    at: [92, 41.5],
    h: 11,
    aim: 'driver',
    stand: 'stand-combo-3',
    use: 'taxi edge',
    feed: 'K1:12a',
    ballast: [95, 44],
    route: [
      [103, 45.2],
      [95, 45.2],
    ],
  });
  d.fixture({
    unit: '12',
    kind: 'par64-1kw-medium',
    at: [7.5, 23],
    h: 9,
    aim: 'driver',
    stand: 'stand-baby-3',
    use: 'wet-down glint',
    feed: 'K7:1a',
    route: 'down-first',
  });
  d.fixture({
    unit: '13',
    kind: 'par64-1kw-medium',
    at: [7.5, 29],
    h: 9,
    aim: 'driver',
    stand: 'stand-baby-3',
    use: 'wet-down glint',
    feed: 'K7:2a',
    pieces: [25, 10],
    route: 'down-first',
  });
  d.fixture({
    unit: '14',
    kind: 'par64-1kw-medium',
    at: [111, 36],
    h: 9,
    aim: [190, -10],
    stand: 'stand-baby-3',
    use: 'wet-down glint',
    feed: 'K1:7a',
    pieces: [25, 10],
    route: [
      [103, 44.5],
      [111, 44.5],
    ],
  });
  d.fixture({
    unit: '45',
    kind: 'par36-bank-2',
    at: [7.5, 35],
    h: 4.5,
    aim: [352, -2],
    stand: 'stand-baby-2',
    use: 'passing headlights',
    feed: 'K7:4a',
    cable: 'cord-12-3',
    route: 'down-first',
  });
  d.fixture({
    unit: '44',
    kind: 'discharge-par-400w',
    at: [62, 45.5],
    h: 5,
    aim: [10, 20],
    stand: 'stand-baby-2',
    use: 'tree, right',
    feed: 'K8:2a',
    ballast: [59.5, 47.5],
    route: 'across-first',
  });
  d.fixture({
    unit: '47',
    kind: 'led-par-150w',
    at: [17.8, 48.4],
    h: 0.5,
    aim: [315, 70],
    on: 'floor',
    use: 'tree, left',
    feed: 'K8:3a',
    patch: [1, 'rgbw'],
    route: [
      [51, 49],
      [17.8, 49],
    ],
  });
  d.fixture({
    unit: '48',
    kind: 'led-par-150w',
    at: [22.2, 48.4],
    h: 0.5,
    aim: [225, 70],
    on: 'floor',
    use: 'tree, left',
    feed: '47:through',
    patch: [1, 'rgbw'],
    route: 'straight',
  });
};

const workshop = (d: Builder): void => {
  d.fixture({
    unit: '15',
    kind: 'tungsten-fresnel-650w',
    at: [83, 2.5],
    h: 8,
    aim: [70, -12],
    stand: 'stand-baby-2',
    use: 'workshop arch',
    gel: '½ CTO',
    feed: 'K4:1a',
    route: [
      [108.5, -3.5],
      [83, -3.5],
    ],
  });
  d.fixture({
    unit: '16',
    kind: 'tungsten-fresnel-650w',
    at: [107, 2.5],
    h: 8,
    aim: [105, -12],
    stand: 'stand-baby-2',
    use: 'workshop window',
    gel: '½ CTO',
    feed: 'K4:1b',
    route: [
      [108.5, -1],
      [107, -1],
    ],
  });
  d.fixture({
    unit: '17',
    kind: 'discharge-par-800w',
    at: [92, 3.2],
    h: 5,
    aim: [95, -5],
    stand: 'stand-combo-2',
    use: 'welding glow',
    feed: 'K4:2a',
    ballast: [96, 4.2],
    route: [
      [108.5, -2.2],
      [96, -2.2],
    ],
  });
  d.fixture({
    unit: '18',
    kind: 'led-panel-60x60',
    at: [101.5, 2],
    h: 9,
    aim: [90, -30],
    stand: 'stand-combo-2',
    use: 'bench light',
    feed: 'K4:3a',
    patch: [1, 'hue'],
    route: [
      [108.5, -1.6],
      [101.5, -1.6],
    ],
  });
  d.fixture({
    unit: '37',
    kind: 'photoflood-250w',
    at: [102, 16.4],
    h: 14,
    aim: [90, -90],
    use: 'street lamp 4',
    gel: 'full straw',
    feed: 'K4:4a',
    route: [
      [114.5, -6],
      [114.5, 17.4],
      [102, 17.4],
    ],
  });
  d.fixture({
    unit: '36',
    kind: 'photoflood-250w',
    at: [74, 16.4],
    h: 14,
    aim: [90, -90],
    use: 'street lamp 3',
    gel: 'full straw',
    feed: 'K4:4b',
    route: [
      [114.5, -6],
      [114.5, 17.4],
      [74, 17.4],
    ],
  });
};

const hotel = (d: Builder): void => {
  d.fixture({
    unit: '19',
    kind: 'tungsten-fresnel-1kw',
    at: [41, 1.5],
    h: 9,
    aim: [88, -12],
    stand: 'stand-baby-2',
    use: 'hotel window 1',
    gel: '¼ CTO',
    feed: 'K5:1a',
    cable: 'cord-10-3-20',
    route: [
      [75, -4.5],
      [41, -4.5],
    ],
  });
  d.fixture({
    unit: '20',
    kind: 'tungsten-fresnel-1kw',
    at: [73.5, 1.5],
    h: 9,
    aim: [95, -12],
    stand: 'stand-baby-2',
    use: 'hotel window 4',
    gel: '¼ CTO',
    feed: 'K5:2a',
    route: [
      [75, -1],
      [73.5, -1],
    ],
  });
  d.fixture({
    unit: '21',
    kind: 'tungsten-fresnel-650w',
    at: [49.5, 1.5],
    h: 8,
    aim: [90, -12],
    stand: 'stand-baby-2',
    use: 'hotel window 2',
    feed: 'K5:3a',
    cable: 'cord-10-3-20',
    route: [
      [75, -3.7],
      [49.5, -3.7],
    ],
  });
  d.fixture({
    unit: '22',
    kind: 'tungsten-fresnel-650w',
    at: [65, 1.5],
    h: 8,
    aim: [90, -12],
    stand: 'stand-baby-2',
    use: 'hotel window 3',
    feed: 'K5:3b',
    route: [
      [75, -2.8],
      [65, -2.8],
    ],
  });
  d.fixture({
    unit: '23',
    kind: 'led-lantern-90',
    at: [57, 3],
    h: 9.5,
    aim: [90, -90],
    use: 'lobby',
    feed: 'K5:4a',
    route: [
      [75, -3.3],
      [57, -3.3],
    ],
  });
  d.fixture({
    unit: '24',
    kind: 'practical-table-60w',
    at: [45.2, 5.4],
    h: 4,
    aim: [90, -90],
    on: 'floor',
    use: 'lobby lamp',
    feed: 'K5:5a',
    route: [
      [75, -4.1],
      [45.2, -4.1],
    ],
  });
  d.fixture({
    unit: '25',
    kind: 'practical-table-60w',
    at: [69.3, 5.4],
    h: 4,
    aim: [90, -90],
    on: 'floor',
    use: 'lobby lamp',
    feed: 'K5:5b',
    route: [
      [75, -1.9],
      [69.3, -1.9],
    ],
  });
  d.fixture({
    unit: '43',
    kind: 'discharge-fresnel-575w',
    at: [66, -6.2],
    h: 32,
    aim: [200, -35],
    use: 'hotel sign',
    feed: 'K5:4b',
    ballast: [69, -7.2],
    route: 'across-first',
  });
};

const bakery = (d: Builder): void => {
  const tubes: readonly (readonly [number, number, string])[] = [
    [11.5, 5.6, 'shop window'],
    [17, 5.6, 'shop window'],
    [11.5, -3.4, 'bread shelf'],
    [17, -3.4, 'bread shelf'],
  ];
  tubes.forEach(([x, y, use], i) => {
    d.fixture({
      unit: String(26 + i),
      kind: 'led-tube-120',
      at: [x, y],
      h: 7.5,
      aim: [90, -50],
      use,
      feed: `Q1:${i + 1}`,
      patch: [1, 'hue'],
      route: { down: x < 14 ? 14.3 : 15.8 },
    });
  });
  d.fixture({
    unit: '30',
    kind: 'led-tube-120',
    at: [28, 5.6],
    h: 7.5,
    aim: [90, -50],
    use: 'shop window',
    feed: 'K6:1b',
    patch: [1, 'hue'],
    route: 'down-first',
  });
  d.fixture({
    unit: '31',
    kind: 'led-tube-120',
    at: [33, 5.6],
    h: 7.5,
    aim: [90, -50],
    use: 'shop window',
    feed: 'K6:5a',
    patch: [1, 'hue'],
    route: 'down-first',
  });
  d.fixture({
    unit: '32',
    kind: 'open-face-1kw',
    at: [31, -2.5],
    h: 4,
    aim: [100, 0],
    stand: 'stand-baby-low',
    use: 'oven glow',
    gel: 'full CTO',
    feed: 'K6:2a',
    route: 'down-first',
  });
  d.fixture({
    unit: '33',
    kind: 'led-panel-30x120',
    at: [22.5, 3.2],
    h: 9.5,
    aim: [90, -60],
    use: 'counter',
    feed: 'K6:3a',
    patch: [1, 'white'],
    route: [
      [33, 0.5],
      [22.5, 0.5],
    ],
  });
  d.fixture({
    unit: '34',
    kind: 'photoflood-250w',
    at: [18, 16.4],
    h: 14,
    aim: [90, -90],
    use: 'street lamp 1',
    gel: 'full straw',
    feed: 'K7:3a',
    route: [
      [1.5, 17.4],
      [18, 17.4],
    ],
  });
  d.fixture({
    unit: '35',
    kind: 'photoflood-250w',
    at: [46, 16.4],
    h: 14,
    aim: [90, -90],
    use: 'street lamp 2',
    gel: 'full straw',
    feed: 'K7:3b',
    route: [
      [1.5, 17.4],
      [46, 17.4],
    ],
  });
};

const close = (d: Builder): void => {
  d.fixture({
    unit: '38',
    kind: 'led-panel-60x60',
    at: [47.8, 24],
    h: 7,
    aim: 'iris',
    stand: 'stand-combo-2',
    use: 'key, Iris close',
    gel: '',
    feed: 'K8:1a',
    patch: [1, 'full'],
    route: [[47.8, 50.5]],
  });
  d.fixture({
    unit: '39',
    kind: 'led-spot-600w',
    at: [84, 13],
    h: 9,
    aim: 'tomas',
    stand: 'stand-combo-2',
    use: 'edge, Tomas close',
    feed: 'K4:5a',
    cable: 'cord-10-3-20',
    patch: [1, 'white'],
    radio: true,
    linkTo: 'R3',
    route: [
      [114.5, -6],
      [114.5, 17.4],
      [84, 17.4],
    ],
  });
  d.fixture({
    unit: '40',
    kind: 'led-spot-350w',
    at: [68, 40.5],
    h: 6.5,
    aim: 'tomas',
    stand: 'stand-baby-2',
    use: 'eye light',
    feed: 'K8:1b',
    patch: [1, 'white'],
    route: [
      [51, 43.8],
      [68, 43.8],
    ],
  });
  d.fixture({
    unit: '41',
    kind: 'led-tube-60',
    at: [59, 29.6],
    h: 4.3,
    aim: [180, -20],
    use: 'taxi roof',
    packs: true,
    radio: true,
    linkTo: 'T1',
    patch: [1, 'hue'],
  });
  d.fixture({
    unit: '42',
    kind: 'led-light-10w',
    at: [52.6, 31.6],
    h: 3.2,
    aim: [0, 20],
    on: 'held',
    use: 'dash glow',
    packs: true,
  });
  d.fixture({
    unit: '46',
    kind: 'led-spot-220w',
    at: [66.3, 21.5],
    h: 6,
    aim: 'iris',
    stand: 'stand-baby-2',
    use: 'kick, Iris close',
    feed: 'K8:4a',
    patch: [1, 'white'],
    route: [
      [51, 44.8],
      [66.3, 44.8],
    ],
  });
};

/** Where no cable may lie over the pavement a block feeds two units; the monitors hang on a power station. */
const offTheMains = (d: Builder): void => {
  d.pack('P1', 'pack-block-48-50-4v-1000wh', [97.5, 13.6]);
  d.stock('pack-block-48-50-4v-1000wh', 2);
  d.fixture({
    unit: '49',
    kind: 'led-spot-350w',
    at: [94.5, 15.2],
    h: 9,
    aim: 'tomas',
    stand: 'stand-baby-3',
    use: 'edge past the van',
    from: 'P1',
  });
  d.fixture({
    unit: '50',
    kind: 'led-panel-30x120',
    at: [101, 15.2],
    h: 7,
    aim: [190, -10],
    stand: 'stand-baby-2',
    use: 'far pavement lift',
    from: 'P1',
  });
  d.source('PS1', 'power-station-1800w', [117, 12.8], { voltsV: 120 });
  d.chargeFrom('PS1', 'K4:3b', 'cord-12-3', [
    [108.5, BACK],
    [RIGHT, BACK],
    [RIGHT, 12.8],
  ]);
  d.fixture({
    unit: '51',
    kind: 'led-panel-30x30',
    at: [122, 14.5],
    h: 7.5,
    aim: [165, -30],
    stand: 'stand-baby-2',
    use: 'village work light',
    feed: 'PS1:1a',
  });
  d.device('V1', 'monitor-24', [111.6, 16.4], {
    h: 4.5,
    rotationDeg: 90,
    feed: 'PS1:1b',
    pack: 'pack-v-plate-14-4v-195wh',
  });
  d.device('V2', 'monitor-17', [116.8, 16.6], { h: 4.5, rotationDeg: 90, feed: 'PS1:1c' });
  d.charger('C1', 'charger-block-48-2', [112.5, -2.5], 'K4:5b');
};

const setups = (d: Builder): void => {
  d.setup(1, '52A', 'Wide, taxi arrives', {
    '*': 100,
    '10': 70,
    '23': 60,
    '24-25': 80,
    '26-31': 55,
    '33': 50,
    '38-40,46': 0,
    '41': 30,
    '42': 40,
    '49': 60,
    '50': 50,
    '51': 100,
  });
  d.setup(2, '52B', 'Iris at the hotel door', {
    '*': 100,
    '5': 0,
    '6': 0,
    '7': 0,
    '10': 45,
    '12-14': 0,
    '17': 0,
    '23': 75,
    '24-25': 90,
    '26-31': 40,
    '33': 50,
    '38': 65,
    '39': 0,
    '40': 20,
    '41-42': 0,
    '45': 0,
    '46': 35,
    '49': 0,
    '50': 40,
    '51': 100,
  });
  d.setup(3, '52C', 'In the taxi', {
    '*': 60,
    '1-3': 100,
    '4': 50,
    '6': 100,
    '8': 100,
    '11': 100,
    '5': 0,
    '15-22': 80,
    '26-31': 30,
    '38-40,46': 0,
    '41': 55,
    '42': 70,
    '45': 100,
    '43': 100,
    '44': 100,
    '17': 100,
    '49-50': 0,
    '51': 100,
  });
  d.setup(4, '52D', 'Tomas on the pavement', {
    '*': 100,
    '5': 0,
    '6': 100,
    '7': 0,
    '10': 0,
    '12-14': 80,
    '23': 60,
    '26-31': 40,
    '33': 35,
    '38': 0,
    '39': 70,
    '40': 30,
    '41-42': 0,
    '45': 0,
    '46': 0,
    '49': 80,
    '50': 60,
    '51': 100,
  });

  d.block('18:00', '19:30', 'pre-light', 2);
  d.block('20:00', '22:00', 'setup', 1);
  d.block('22:00', '23:30', 'setup', 2);
  d.block('23:30', '24:30', 'meal');
  d.block('24:30', '25:45', 'setup', 3);
  d.block('25:45', '28:00', 'setup', 4);
  d.block('28:00', '29:00', 'wrap');
};
