import type { Builder } from './builder.ts';

/**
 * Control of the street: a desk and a splitter on the far pavement, one transmitter, and a receiver at the head of the
 * line in each shop, so that no data line crosses the road.
 */
export const streetControl = (d: Builder): void => {
  d.device('D1', 'desk-2', [71, 52.8], {
    h: 3,
    rotationDeg: 270,
    feed: 'K1:11a',
    route: [
      [103, 53.4],
      [71, 53.4],
    ],
    ports: { 'out-1': 1 },
  });
  d.device('DS1', 'split-data-4-rdm', [55, 48.4], {
    rotationDeg: 90,
    feed: 'K8:4b',
    route: [[51, 48.4]],
  });
  d.device('T1', 'transmitter-1-cell', [79.5, 49.5], {
    h: 12,
    stand: 'stand-baby-3',
    feed: 'K1:11b',
    route: [
      [103, 53],
      [79.5, 53],
    ],
    ports: { 'in-1': 1 },
  });
  d.device('R1', 'receiver-1-cell', [26, 1], {
    h: 6,
    feed: 'K6:2b',
    route: [[33, 1]],
    ports: { 'out-1': 1 },
    listensTo: 'T1',
  });
  d.device('R2', 'receiver-1', [104.5, 4.2], {
    h: 7,
    feed: 'K4:2b',
    route: [
      [108.5, 3],
      [104.5, 3],
    ],
    ports: { 'out-1': 1 },
    listensTo: 'T1',
  });
  d.device('R3', 'receiver-plug-cell', [84, 13], { on: '39', ports: { 'out-1': 1 }, listensTo: 'T1' });
  d.line('L1', 'D1:out-1', ['DS1']);
  d.line('L2', 'DS1:out-1', ['10', '48', '47'], {
    routes: {
      1: [
        [46, 46.5],
        [24, 46.5],
      ],
    },
  });
  d.line('L3', 'DS1:out-2', ['40', '46', '38'], { open: true });
  d.line('L4', 'DS1:out-3', ['T1']);
  d.line('L5', 'R1:out-1', ['30', '31', '33', '27', '26', '28', '29']);
  d.line('L6', 'R2:out-1', ['18']);
};
