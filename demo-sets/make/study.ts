import type { Plan } from '../../src/plan/plan.ts';
import { Builder } from './builder.ts';

/** A study by day on two wall circuits, as drawn on the scout. */
export const study = (): Plan => {
  const d = new Builder(
    {
      title: 'Study, day',
      production: 'Saltmarsh Letters',
      scene: '14',
      location: 'Alder House, ground floor',
      drawingNumber: 'SL-14-E-1',
      owner: 'Reedbank Pictures',
      dates: ['2027-03-04'],
      people: {
        'director-of-photography': 'R. Maddern',
        gaffer: 'T. Kolar',
        'best-boy': 'A. Sund',
        'drawn-by': 'T. Kolar',
      },
      practice: 'north-america',
      lengthUnits: 'imperial',
      frequencyHz: 60,
      paper: { sheet: 'ANSI B', landscape: true, scale: 48 },
      place: { latDeg: 43.08, lonDeg: -70.76, utcOffsetMin: -300 },
    },
    { name: 'Ground floor', ceilingMm: 2896 },
  );
  const north = d.wall([-0.25, -0.25], [24.25, -0.25], 0.5, 9.5);
  const east = d.wall([24.25, -0.25], [24.25, 18.25], 0.5, 9.5, 'brick');
  const south = d.wall([24.25, 18.25], [-0.25, 18.25], 0.5, 9.5);
  d.wall([-0.25, 18.25], [-0.25, -0.25], 0.5, 9.5);
  d.wall([-0.25, 18.25], [-0.25, 23.75], 0.5, 9.5);
  d.wall([-0.25, 23.75], [24.25, 23.75], 0.5, 9.5);
  const hallEnd = d.wall([24.25, 23.75], [24.25, 18.25], 0.5, 9.5, 'brick');
  d.opening(east, 'window', 4.25, 7, 5, { sill: 2.5 });
  d.opening(north, 'window', 2.25, 4, 4.5, { sill: 3 });
  d.opening(south, 'door', 7.25, 3, 6.75, { swing: 'right-start' });
  d.opening(hallEnd, 'door', 1.25, 3, 6.75, { swing: 'right-end' });

  d.piece('Rug', [11.2, 8.6], 9.5, 6.5, { line: 'ground', height: 0 });
  d.piece('Desk', [19.2, 8], 2.4, 5, { height: 2.5 });
  d.piece('', [17.2, 8], 1.5, 1.5, { height: 3 });
  d.piece('Sofa', [10.6, 2.1], 7, 2.9, { height: 2.6 });
  d.piece('', [10.6, 5.5], 3.6, 1.9, { height: 1.4 });
  d.piece('Bookcase', [0.6, 7.2], 1.2, 7, { height: 7 });
  d.piece('', [5.2, 5.4], 2.7, 2.7, { rotationDeg: 25, height: 3 });
  d.piece('Sideboard', [7.2, 17.2], 5.4, 1.5, { height: 2.8 });

  d.mark('camera-a', 'camera', 'Cam A, 35 mm', [4.6, 11.8], 4.6, 344, 40);
  d.mark('ada', 'talent', 'Ada', [17, 8], 3.9, 0);
  d.mark('jonas', 'talent', 'Jonas', [10.8, 8.4], 5.4, 350);

  d.source('P1', 'house-panel-120-240', [0.25, 21.6], {
    rotationDeg: 0,
    voltsV: 118,
    notes:
      'Hall panel. 118 V measured at W1 on the scout with nothing of ours plugged in. What else hangs on 7 and 9 is not known.',
    ways: [
      { id: '7', label: '7', breakerA: 20, poles: 1, curve: 'na', legs: [0] },
      { id: '9', label: '9', breakerA: 20, poles: 1, curve: 'na', legs: [1] },
    ],
  });
  d.outlet('W1', 'P1', '7', 'nema-5-20', [0, 13.2], 0);
  d.outlet('W2', 'P1', '7', 'nema-5-20', [16.4, 0], 90);
  d.outlet('W3', 'P1', '7', 'nema-5-20', [18.4, 0], 90);
  d.outlet('W4', 'P1', '9', 'nema-5-20', [24, 13], 180);
  d.outlet('W5', 'P1', '9', 'nema-5-20', [11.4, 18], 270);
  d.outlet('W6', 'P1', '9', 'nema-5-20', [12.4, 18.5], 90);
  d.box('Q1', 'quad-box-20', [1.3, 13.2], 'W1', { rotationDeg: 90, route: 'straight' });
  d.box('Q2', 'quad-box-20', [22.8, 13], 'W4', { rotationDeg: 90, route: 'straight' });

  d.fixture({
    unit: '1',
    kind: 'led-panel-60x60',
    at: [12.7, 13.4],
    h: 7,
    aim: 'ada',
    stand: 'stand-combo-2',
    use: 'key, Ada',
    feed: 'W5',
    route: 'down-first',
  });
  d.fixture({
    unit: '2',
    kind: 'led-spot-600w',
    at: [30.4, 5.2],
    h: 9.5,
    aim: 'ada',
    stand: 'stand-combo-3',
    use: 'sun through window',
    gel: '¼ CTO',
    feed: 'Q2:1',
    pieces: [25],
    route: [
      [22.8, 10.2],
      [27.6, 10.2],
      [27.6, 5.2],
    ],
  });
  d.fixture({
    unit: '3',
    kind: 'led-spot-350w',
    at: [30.4, 11.6],
    h: 8,
    aim: 'jonas',
    stand: 'stand-baby-2',
    use: 'window fill',
    feed: 'Q2:2',
    route: [
      [22.8, 10.2],
      [27.6, 10.2],
      [27.6, 11.6],
    ],
  });
  d.fixture({
    unit: '4',
    kind: 'tungsten-fresnel-650w',
    at: [2.6, 1.9],
    h: 8,
    aim: 'jonas',
    stand: 'stand-baby-2',
    use: 'edge, Jonas',
    gel: '½ CTB',
    feed: 'Q1:1',
    pieces: [25, 10],
    route: [
      [1.9, 12.2],
      [1.9, 3.2],
      [2.6, 3.2],
    ],
  });
  d.fixture({
    unit: '5',
    kind: 'led-panel-30x120',
    at: [7.4, 14.2],
    h: 6.5,
    aim: 'jonas',
    stand: 'stand-combo-2',
    use: 'fill, Jonas',
    feed: 'Q1:2',
    route: { along: 15.9 },
  });
  d.fixture({
    unit: '6',
    kind: 'open-face-800w',
    at: [2.4, 15.6],
    h: 5.5,
    aim: [318, 45],
    stand: 'stand-baby-low',
    use: 'ceiling bounce',
    feed: 'Q1:3',
    route: 'down-first',
  });
  d.fixture({
    unit: '7',
    kind: 'led-tube-120',
    at: [1.5, 7.2],
    h: 6.6,
    aim: [0, -60],
    use: 'bookcase glow',
    packs: true,
    ownCells: 'exchange',
  });
  d.fixture({
    unit: '8',
    kind: 'led-tube-120',
    at: [10.6, 0.3],
    h: 3,
    aim: [90, 60],
    on: 'floor',
    use: 'wall behind sofa',
    packs: true,
    ownCells: 'exchange',
  });
  d.fixture({
    unit: '9',
    kind: 'practical-floor-100w',
    at: [15.4, 1.9],
    h: 5,
    aim: [90, -90],
    on: 'floor',
    use: 'reading lamp',
    feed: 'W2',
    route: 'down-first',
  });
  d.fixture({
    unit: '10',
    kind: 'practical-table-60w',
    at: [5.6, 17.2],
    h: 4.2,
    aim: [90, -90],
    on: 'floor',
    use: 'sideboard lamp',
    feed: 'Q1:4',
    route: { along: 16.2 },
  });
  d.fixture({
    unit: '11',
    kind: 'led-spot-120w',
    at: [22.2, 2.2],
    h: 8.5,
    aim: 'ada',
    stand: 'stand-kit',
    use: 'hair, Ada',
    feed: 'W3',
    route: 'down-first',
  });

  d.fixture({
    unit: '12',
    kind: 'led-panel-30x30',
    at: [20.6, 16.4],
    h: 5.5,
    aim: 'ada',
    stand: 'stand-kit',
    use: 'desk bounce, Ada',
    packs: ['pack-v-plate-14-4v-98wh', 1],
  });
  d.fixture({
    unit: '13',
    kind: 'led-spot-60w',
    at: [8.6, 21.4],
    h: 6.5,
    aim: [0, -10],
    stand: 'stand-kit',
    use: 'hall, through the door',
    packs: ['pack-v-plate-14-4v-98wh', 1],
  });
  d.charger('C1', 'charger-v-2', [14.6, 22.2], 'W6');
  d.stock('pack-v-plate-14-4v-98wh', 6, 1);
  d.stock('led-tube-120', 4, 0, 'fixture');

  d.setup(1, '14A', 'Ada reads, late morning', {
    '*': 100,
    '1': 70,
    '5': 45,
    '6': 95,
    '8': 40,
    '9-10': 0,
    '11': 60,
    '12': 50,
    '13': 50,
  });
  d.setup(2, '14B', 'Jonas comes in', {
    '*': 100,
    '1': 40,
    '2': 85,
    '3': 80,
    '5': 95,
    '6': 100,
    '7': 60,
    '8': 60,
    '11': 35,
    '12': 65,
    '13': 60,
  });
  d.setup(3, '14C', 'Evening, lamps on', {
    '*': 0,
    '1': 20,
    '2': 15,
    '4': 80,
    '7': 35,
    '9-10': 100,
    '11': 50,
    '12': 35,
    '13': 60,
  });

  d.color(1, '1,5,12', '5600 K');
  d.color(2, '1,5,12', '5000 K');
  d.color(3, '1,12', '3200 K');
  d.color(3, '2', '4300 K · moonlight');
  // In the evening the edge comes from the bookcase, beside the camera.
  d.move(3, '4', [4.4, 8.6]);

  d.block('07:00', '08:30', 'pre-light', 1);
  d.block('08:30', '12:30', 'setup', 1);
  d.block('12:30', '13:30', 'meal', undefined, ['12', '13']);
  d.block('13:30', '17:00', 'setup', 2);
  d.block('17:00', '17:30', 'move');
  d.block('17:30', '20:30', 'setup', 3);
  d.block('20:30', '21:00', 'wrap');
  return d.build();
};
