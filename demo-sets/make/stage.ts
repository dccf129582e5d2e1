import type { Plan } from '../../src/plan/plan.ts';
import { Builder } from './builder.ts';
import { stageControl } from './stage-control.ts';

/** A studio stage for a music drama, in metres, on a 230/400 V house service. */
export const stage = (): Plan => {
  const d = new Builder(
    {
      title: 'Stage 2, three sets',
      production: 'A Tide of Glass',
      scene: '31 to 36',
      location: 'Kalmia Stages, stage 2',
      drawingNumber: 'TG-31-E-1',
      owner: 'Northquay Drama',
      dates: ['2027-09-06', '2027-09-10'],
      people: {
        'director-of-photography': 'E. Brandvold',
        gaffer: 'C. Amari',
        'best-boy': 'J. Petrov',
        'drawn-by': 'J. Petrov',
      },
      practice: 'europe',
      lengthUnits: 'metric',
      frequencyHz: 50,
      paper: { sheet: 'A1', landscape: true },
    },
    { name: 'Stage 2', ceilingMm: 9500 },
  );
  place(d);
  supply(d);
  backTruss(d);
  middleTruss(d);
  frontTruss(d);
  tubes(d);
  cyclorama(d);
  floorUnits(d);
  stageControl(d);
  handHeld(d);
  setups(d);
  shootingDay(d);
  return d.build();
};

const place = (d: Builder): void => {
  const studio: readonly (readonly [number, number])[] = [
    [-0.15, -0.15],
    [28.15, -0.15],
    [28.15, 20.15],
    [-0.15, 20.15],
  ];
  const walls = studio.map((from, i) => d.wall(from, studio[(i + 1) % 4] ?? from, 0.3, 9.5, 'concrete'));
  d.opening(walls[2] ?? '', 'door', 22.5, 3.5, 3.5);
  d.opening(walls[1] ?? '', 'door', 17.9, 1, 2.1, { swing: 'right-start' });
  d.wall([4.2, 1.4], [23.8, 1.4], 0.06, 6, 'drape');
  const hallBack = d.wall([5, 5.4], [9.4, 5.4], 0.12, 3.6, 'wood');
  const hallSide = d.wall([5, 9.6], [5, 5.4], 0.12, 3.6, 'wood');
  const kitchenBack = d.wall([18.6, 5.4], [23, 5.4], 0.12, 3.6, 'wood');
  const kitchenSide = d.wall([23, 5.4], [23, 9.6], 0.12, 3.6, 'wood');
  d.opening(hallBack, 'door', 1.6, 0.95, 2.1, { swing: 'left-start' });
  d.opening(hallSide, 'window', 1.1, 1.6, 1.5, { sill: 0.9 });
  d.opening(kitchenBack, 'archway', 1.8, 1.2, 2.2);
  d.opening(kitchenSide, 'window', 0.9, 1.8, 1.5, { sill: 0.9 });

  d.piece('Podium', [14, 8.3], 5, 3.6, { shape: 'ellipse', height: 0.6 });
  d.piece('Band riser', [14, 4.6], 6.4, 1.5, { height: 0.4 });
  d.piece('Bench', [6.6, 6], 1.8, 0.5, { height: 0.45 });
  d.piece('Counter', [21.6, 6], 2, 0.6, { height: 0.9 });
  d.piece('Kitchen table', [20.4, 8], 1.4, 0.8, { height: 0.75 });
  d.piece('Truss 1, 6.5 m', [14, 13.3], 19, 0.3, { line: 'hidden', height: 6.5 });
  d.piece('Truss 2, 6.5 m', [14, 10.8], 19, 0.3, { line: 'hidden', height: 6.5 });
  d.piece('Truss 3, 6 m', [14, 3.4], 19, 0.3, { line: 'hidden', height: 6 });
  d.piece('Audience', [14, 17.9], 16, 2.6, { line: 'ground', height: 0 });

  d.mark('singer', 'talent', 'Singer', [14, 8.3], 2.2, 90);
  d.mark('clerk', 'talent', 'Clerk', [7.4, 7.6], 1.6, 20);
  d.mark('guest', 'talent', 'Guest', [20.4, 7], 1.6, 160);
  d.mark('camera-1', 'camera', 'Cam 1, 40 mm', [14, 14.9], 1.6, 270, 45);
  d.mark('camera-2', 'camera', 'Cam 2, 65 mm', [9.6, 12.1], 1.5, 244, 26);
  d.mark('camera-3', 'camera', 'Cam 3, 65 mm', [18.2, 12.1], 1.5, 293, 26);
};

const RIGHT = 27.3;
const LEFT = 0.7;
const FRONT = 19.6;

const supply = (d: Builder): void => {
  d.source('S1', 'service-250', [27.8, 16.6], {
    rotationDeg: 180,
    voltsV: 230,
    notes: '230 V as stated by the studio; to be measured on the rig day.',
  });
  d.box('K1', 'box-125-2x63-6x16', [26.2, 14.4], 'S1:1', { cable: 'flex-35-red-125', rotationDeg: 90 });
  d.box('K2', 'box-125-2x63-2x32', [1.5, 14.4], 'S1:2', {
    cable: 'flex-35-red-125',
    rotationDeg: 90,
    route: [
      [RIGHT, 16.6],
      [RIGHT, FRONT],
      [LEFT, FRONT],
      [LEFT, 14.4],
    ],
  });
  d.box('K3', 'box-63-12x16', [26.2, 12.1], 'K1:1', { route: { down: RIGHT }, rotationDeg: 90 });
  d.box('K4', 'box-63-6x16-2x32', [26.2, 3.4], 'K1:2', { route: { down: RIGHT }, rotationDeg: 90 });
  d.box('K5', 'box-32-6x16', [3, 2.6], 'K4:7', {
    route: [
      [RIGHT, 3.4],
      [RIGHT, 0.6],
      [3, 0.6],
    ],
  });
  d.box('K6', 'box-63-3x32-1ph-3x16', [1.5, 9], 'K2:1', { route: { down: LEFT }, rotationDeg: 90 });
  d.box('K7', 'box-32-6x16-schuko', [14, 16.1], 'K2:3', { route: 'down-first' });
  d.universe(1, 'Floor and truss, general');
  for (let u = 2; u <= 6; u++) d.universe(u, `Tubes ${u - 1}`);
  d.universe(7, 'Moving heads and bars');
  d.universe(8, 'Moving spots');
};

const chain = (units: readonly string[], first: string, i: number): string =>
  i === 0 ? first : `${units[i - 1] ?? ''}:through`;

const backTruss = (d: Builder): void => {
  const left = ['1', '2', '3'];
  const right = ['6', '5', '4'];
  const x: Record<string, number> = { '1': 6.2, '2': 9.2, '3': 12.2, '4': 15.8, '5': 18.8, '6': 21.8 };
  for (const [units, way] of [
    [right, 'K4:1'],
    [left, 'K4:2'],
  ] as const)
    units.forEach((unit, i) => {
      d.fixture({
        unit,
        kind: 'moving-wash-600w',
        at: [x[unit] ?? 0, 3.4],
        h: 5.6,
        aim: [90, -55],
        use: 'back wash',
        feed: chain(units, way, i),
        patch: [7, 'full'],
        route:
          i === 0
            ? [
                [24.6, 3.4],
                [24.6, 2.9],
                [x[unit] ?? 0, 2.9],
              ]
            : 'straight',
      });
    });
};

const middleTruss = (d: Builder): void => {
  const pairs = [
    ['12', '11'],
    ['10', '9'],
    ['8', '7'],
  ] as const;
  const x: Record<string, number> = { '7': 5.6, '8': 8.8, '9': 12.2, '10': 15.8, '11': 19.2, '12': 22.4 };
  pairs.forEach((units, p) => {
    units.forEach((unit, i) => {
      d.fixture({
        unit,
        kind: 'moving-spot-700w',
        at: [x[unit] ?? 0, 10.8],
        h: 6,
        aim: 'singer',
        use: 'spot, song',
        feed: chain(units, `K3:${p + 1}`, i),
        patch: [8, 'full'],
        route:
          i === 0
            ? [
                [24.8, 12.1],
                [24.8, 11.3],
                [x[unit] ?? 0, 11.3],
              ]
            : 'straight',
      });
    });
  });
};

const frontTruss = (d: Builder): void => {
  const profile: readonly (readonly [string, number, string, string, string])[] = [
    ['13', 6.4, 'clerk', 'key, hall', 'K3:4'],
    ['14', 10.6, 'singer', 'front, song', 'K3:5'],
    ['15', 17.4, 'singer', 'front, song', 'K3:6'],
    ['16', 21.6, 'guest', 'key, kitchen', 'K3:7'],
  ];
  for (const [unit, x, aim, use, feed] of profile)
    d.fixture({
      unit,
      kind: 'ellipsoidal-26-750w',
      at: [x, 13.3],
      h: 6.1,
      aim,
      use,
      gel: '¼ CTB',
      feed,
      route: [
        [24.8, 12.1],
        [24.8, 13.9],
        [x, 13.9],
      ],
    });
  const led = ['20', '19', '18', '17'];
  const ledX: Record<string, number> = { '17': 8.5, '18': 12.6, '19': 15.4, '20': 19.5 };
  led.forEach((unit, i) => {
    const x = ledX[unit] ?? 0;
    d.fixture({
      unit,
      kind: 'led-ellipsoidal-36-220w',
      at: [x, 13.3],
      h: 6.1,
      aim: 'singer',
      use: 'pattern, podium',
      feed: chain(led, 'K3:8', i),
      patch: [1, 'full'],
      route:
        i === 0
          ? [
              [24.8, 12.1],
              [24.8, 13.9],
              [x, 13.9],
            ]
          : 'straight',
    });
  });
  const fresnels: readonly (readonly [string, number, string, string, string])[] = [
    ['21', 4.9, 'clerk', 'fill, hall', 'K3:9'],
    ['22', 14, 'singer', 'base, podium', 'K3:10'],
    ['23', 20.6, 'guest', 'fill, kitchen', 'K3:11'],
    ['24', 23.1, 'guest', 'edge, kitchen', 'K3:12'],
  ];
  for (const [unit, x, aim, use, feed] of fresnels)
    d.fixture({
      unit,
      kind: 'led-fresnel-450w',
      at: [x, 13.3],
      h: 6.1,
      aim,
      use,
      feed,
      patch: [1, 'full'],
      route: [
        [24.8, 12.1],
        [24.8, 13.9],
        [x, 13.9],
      ],
    });
};

/** Twelve tubes across the back, twelve around the podium; five of 96 slots to a universe. */
const tubes = (d: Builder): void => {
  const places: (readonly [x: number, y: number, facing: number, use: string])[] = [];
  for (let i = 0; i < 12; i++) places.push([6.2 + i * 1.418, 2.5, 90, 'back wall of tubes']);
  for (let i = 0; i < 12; i++) {
    // Two chains of six, both from the left: down and round, then up and round.
    const deg = i < 6 ? 165 - i * 30 : 195 + (i - 6) * 30;
    const rad = (deg * Math.PI) / 180;
    // Square to the edge of the podium, a hand outside it.
    const facing = Math.round((Math.atan2(Math.sin(rad) / 1.95, Math.cos(rad) / 2.7) * 180) / Math.PI);
    places.push([
      Number((14 + 2.75 * Math.cos(rad)).toFixed(2)),
      Number((8.3 + 2.05 * Math.sin(rad)).toFixed(2)),
      facing,
      'podium edge',
    ]);
  }
  places.forEach(([x, y, facing, use], i) => {
    const group = Math.floor(i / 6);
    const first = i % 6 === 0;
    const feeds = ['K5:1', 'K5:2', 'K5:3', 'K5:4'];
    const onPodium = group > 1;
    const start = onPodium
      ? ([
          [3.9, 2.6],
          [3.9, 3.9],
          [10.2, 3.9],
          [10.2, y],
        ] as const)
      : ([
          [3, 2.05],
          [x, 2.05],
        ] as const);
    d.fixture({
      unit: String(25 + i),
      kind: 'pixel-tube-120',
      at: [x, y],
      h: onPodium ? 0.5 : 2.4,
      aim: [facing, 0],
      ...(onPodium ? { on: 'floor' as const } : {}),
      use,
      feed: first ? (feeds[group] ?? '') : `${24 + i}:through`,
      patch: [2 + Math.floor(i / 5), 'pixels-32'],
      route: first ? start : 'straight',
    });
  });
};

const cyclorama = (d: Builder): void => {
  const left = ['49', '50', '51', '52'];
  const right = ['56', '55', '54', '53'];
  for (const [units, way] of [
    [left, 'K5:5'],
    [right, 'K4:6'],
  ] as const)
    units.forEach((unit, i) => {
      const x = 5.4 + (Number(unit) - 49) * 2.46;
      d.fixture({
        unit,
        kind: 'led-par-150w',
        at: [x, 1.8],
        h: 0.3,
        aim: [270, 45],
        on: 'floor',
        use: 'cyclorama',
        feed: chain(units, way, i),
        patch: [1, 'full'],
        route: i === 0 ? 'down-first' : 'straight',
      });
    });
  const bars = ['69', '68', '67', '66'];
  bars.forEach((unit, i) => {
    const x = 11.6 + (Number(unit) - 66) * 1.6;
    d.fixture({
      unit,
      kind: 'pixel-bar-100',
      at: [x, 5.65],
      h: 0.3,
      aim: [270, 35],
      on: 'floor',
      use: 'band, from below',
      feed: chain(bars, 'K4:5', i),
      patch: [7, 'pixels-12'],
      route:
        i === 0
          ? [
              [24.2, 3.4],
              [24.2, 4.8],
              [17.9, 4.8],
              [17.9, 5.65],
            ]
          : 'straight',
    });
  });
};

const floorUnits = (d: Builder): void => {
  d.fixture({
    unit: '57',
    kind: 'tungsten-fresnel-5kw',
    at: [2.9, 7.2],
    h: 3.4,
    aim: 'clerk',
    stand: 'stand-windup-heavy',
    use: 'sun, hall window',
    gel: '½ CTO',
    feed: 'K6:1',
    route: 'down-first',
  });
  d.fixture({
    unit: '58',
    kind: 'tungsten-fresnel-2kw',
    at: [25, 9.6],
    h: 3.2,
    aim: 'guest',
    stand: 'stand-windup-3',
    use: 'late sun, kitchen',
    gel: '½ CTO',
    feed: 'K4:3',
    route: { down: 25.6 },
  });
  d.fixture({
    unit: '59',
    kind: 'discharge-par-1200w',
    at: [7.05, 3.5],
    h: 2.6,
    aim: [85, -12],
    stand: 'stand-combo-2',
    use: 'daylight, hall door',
    feed: 'K6:5',
    ballast: [5.3, 4.3],
    route: [
      [3.9, 9],
      [3.9, 4.3],
    ],
  });
  d.fixture({
    unit: '60',
    kind: 'led-panel-125x90-1500w',
    at: [25, 7],
    h: 2.8,
    aim: 'guest',
    stand: 'stand-windup-heavy',
    use: 'sky, kitchen window',
    feed: 'K4:4',
    patch: [1, 'full'],
    radio: true,
    linkTo: 'T1',
    route: 'down-first',
  });
  d.fixture({
    unit: '61',
    kind: 'led-panel-60x60',
    at: [16.6, 12.2],
    h: 2.4,
    aim: 'singer',
    stand: 'stand-combo-2',
    use: 'close key, song',
    feed: 'K7:1',
    patch: [1, 'full'],
    radio: true,
    linkTo: 'T1',
    route: [
      [14.4, 16.1],
      [14.4, 15.6],
      [16.6, 15.6],
    ],
  });
  d.fixture({
    unit: '62',
    kind: 'led-panel-60x60',
    at: [11.4, 12.2],
    h: 2.4,
    aim: 'singer',
    stand: 'stand-combo-2',
    use: 'close fill, song',
    feed: 'K7:2',
    patch: [1, 'full'],
    radio: true,
    linkTo: 'T1',
    route: [
      [13.6, 16.1],
      [13.6, 15.6],
      [11.4, 15.6],
    ],
  });
  d.fixture({
    unit: '63',
    kind: 'led-spot-600w',
    at: [20.9, 4.2],
    h: 2.6,
    aim: [95, -14],
    stand: 'stand-combo-2',
    use: 'corridor, kitchen arch',
    feed: 'K1:3',
    patch: [1, 'white-fine'],
    radio: true,
    linkTo: 'T1',
    route: [
      [27.3, 14.4],
      [27.3, 2.2],
      [23.4, 2.2],
      [23.4, 4.2],
    ],
  });
  d.fixture({
    unit: '64',
    kind: 'practical-table-60w',
    at: [5.7, 6],
    h: 1.1,
    aim: [90, -90],
    on: 'floor',
    use: 'hall lamp',
    feed: 'K6:4',
    route: [
      [4.3, 9],
      [4.3, 9.9],
      [5.7, 9.9],
    ],
  });
  d.fixture({
    unit: '65',
    kind: 'practical-floor-100w',
    at: [22.5, 8.9],
    h: 1.6,
    aim: [90, -90],
    on: 'floor',
    use: 'kitchen lamp',
    feed: 'K7:3',
    route: [
      [14.8, 16.1],
      [14.8, 15.8],
      [22.5, 15.8],
    ],
  });
  d.fixture({
    unit: '70',
    kind: 'tungsten-fresnel-5kw',
    at: [3, 12.6],
    h: 3.6,
    aim: 'singer',
    stand: 'stand-windup-heavy',
    use: 'side, song',
    feed: 'K6:2',
    route: 'down-first',
  });
  d.fixture({
    unit: '71',
    kind: 'par64-bank-6',
    at: [3, 10.4],
    h: 3.2,
    aim: 'singer',
    stand: 'stand-windup-heavy',
    use: 'blinder, chorus',
    feed: 'K6:3',
    route: 'down-first',
  });
};

/** Two tubes the singer carries, on their own cells: two more are charged while they burn. */
const handHeld = (d: Builder): void => {
  for (const [unit, x] of [
    ['72', 13.4],
    ['73', 14.6],
  ] as const)
    d.fixture({
      unit,
      kind: 'led-tube-120',
      at: [x, 8.9],
      h: 1.4,
      aim: [90, 0],
      on: 'held',
      use: 'in the singer’s hand',
      packs: true,
      ownCells: 'exchange',
      patch: [1, 'rgbw'],
      radio: true,
      linkTo: 'T1',
    });
  d.stock('led-tube-120', 4, 0, 'fixture');
};

/** One day for all setups: the song after the meal, the kitchen last. */
const shootingDay = (d: Builder): void => {
  d.block('07:00', '09:00', 'pre-light', 1);
  d.block('09:00', '12:30', 'setup', 2);
  d.block('12:30', '13:30', 'meal', undefined, ['64']);
  d.block('13:30', '15:30', 'setup', 3);
  d.block('15:30', '18:00', 'setup', 4);
  d.block('18:00', '18:30', 'move');
  d.block('18:30', '20:30', 'setup', 5);
  d.block('20:30', '21:00', 'wrap');
};

const setups = (d: Builder): void => {
  d.setup(1, '31', 'Work and audience in', { '*': 0, '1-6': 20, '21-24': 60, '49-56': 40, '64-65': 100 });
  d.setup(2, '32', 'Hall, morning', {
    '*': 0,
    '13': 80,
    '21': 60,
    '57': 100,
    '59': 100,
    '64': 100,
    '49-56': 35,
    '1-3': 25,
  });
  d.setup(3, '33', 'Song, verse', {
    '*': 0,
    '1-6': 45,
    '7-12': 60,
    '14-15': 55,
    '17-20': 50,
    '22': 40,
    '25-48': 50,
    '49-56': 60,
    '61-62': 45,
    '66-69': 40,
    '70': 70,
    '72-73': 60,
  });
  d.setup(4, '34', 'Song, chorus', {
    '*': 0,
    '1-12': 100,
    '14-15': 80,
    '17-20': 90,
    '22': 70,
    '25-56': 100,
    '61-62': 45,
    '66-69': 100,
    '70': 100,
    '71': 100,
    '72-73': 100,
  });
  const amber = { levelPct: 100, color: '#ffb066' };
  const blue = { levelPct: 40, color: '#2a5bd7' };
  d.gradient(3, '37-42', blue, { ...amber, levelPct: 70 });
  d.gradient(3, '43-48', { ...amber, levelPct: 70 }, blue);
  d.gradient(4, '25-36', { levelPct: 100, color: '#ff5a4e' }, amber);
  d.setup(5, '36', 'Kitchen, evening', {
    '*': 0,
    '16': 75,
    '23-24': 65,
    '58': 100,
    '60': 55,
    '63': 70,
    '65': 100,
    '49-56': 25,
    '4-6': 20,
  });
};
