import type { Builder } from './builder.ts';

const upTo = (from: number, to: number): string[] =>
  Array.from({ length: Math.abs(to - from) + 1 }, (_, i) => String(from + Math.sign(to - from) * i));

/** Control of the stage: a desk behind the audience, a network to a node at either end, a transmitter for floor units. */
export const stageControl = (d: Builder): void => {
  const onTruss = 6.5;
  d.device('D1', 'desk-8', [17.2, 16.2], {
    h: 0.8,
    rotationDeg: 270,
    feed: 'K7:4',
    route: [
      [14, 16.7],
      [17.2, 16.7],
    ],
    ports: { 'out-1': 1 },
  });
  d.device('SW1', 'switch-10', [15.6, 16.2], { rotationDeg: 270, feed: 'K7:5', route: [[14.6, 16.2]] });
  d.device('T1', 'transmitter-1-cell', [12.4, 15.9], {
    h: 3.4,
    stand: 'stand-baby-3',
    feed: 'K7:6',
    route: [[13, 16.1]],
    ports: { 'in-1': 1 },
  });
  d.device('N1', 'node-8', [2.3, 3.6], {
    feed: 'K5:6',
    route: [[2.3, 2.6]],
    ports: { 'out-1': 2, 'out-2': 3, 'out-3': 4, 'out-4': 5, 'out-5': 6, 'out-6': 1, 'out-7': 7 },
  });
  d.device('N2', 'node-2', [25, 12.9], {
    h: onTruss,
    feed: 'K1:4',
    route: [
      [25.4, 14.4],
      [25.4, 12.9],
    ],
    ports: { 'out-1': 1, 'out-2': 8 },
  });
  d.line('NET1', 'D1:network-1', ['SW1']);
  d.line('NET2', 'SW1:network-2', ['N1'], {
    routes: {
      0: [
        [15.6, 19.4],
        [0.5, 19.4],
        [0.5, 3.6],
      ],
    },
  });
  d.line('NET3', 'SW1:network-3', ['N2'], {
    routes: {
      0: [
        [15.6, 19.2],
        [25, 19.2],
      ],
    },
  });
  d.line('L1', 'D1:out-1', ['T1']);
  d.line('L2', 'N1:out-1', upTo(25, 29));
  d.line('L3', 'N1:out-2', upTo(30, 34));
  // Around the podium straight from tube to tube.
  d.line('L4', 'N1:out-3', upTo(35, 39), { routes: { 3: [], 4: [] } });
  d.line('L5', 'N1:out-4', upTo(40, 44), { routes: { 1: [], 2: [], 4: [] } });
  d.line('L6', 'N1:out-5', upTo(45, 48), { routes: { 1: [], 2: [], 3: [] } });
  d.line('L7', 'N1:out-6', upTo(49, 56));
  d.line('L8', 'N1:out-7', [...upTo(1, 6), ...upTo(69, 66)], {
    routes: {
      6: [
        [21.8, 4.9],
        [16.4, 4.9],
      ],
    },
  });
  d.line('L9', 'N2:out-1', ['24', '23', '20', '19', '22', '18', '17', '21']);
  d.line('L10', 'N2:out-2', upTo(12, 7));
};
