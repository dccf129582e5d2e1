import {
  type Complex,
  type FeederSpec,
  spreadLoads,
  transformerRatio,
} from '../../src/engines/power/index.ts';
import { polar } from './circuit.ts';
import { lineOf, loadRow } from './feeder-tables.ts';

/** IEEE 34 Node Test Feeder, data of the working group's paper, from memory. 24.9 kV, two regulators held at their printed steps. */
const KV = 24_900;
const LOW = 4160;
const none: Complex = [0, 0];

const line = lineOf({
  '300': {
    z: [
      [1.3368, 1.3343],
      [0.2101, 0.5779],
      [0.213, 0.5015],
      [1.3238, 1.3569],
      [0.2066, 0.4591],
      [1.3294, 1.3471],
    ],
    b: [5.335, -1.5313, -0.9943, 5.0979, -0.6212, 4.888],
  },
  '301': {
    z: [
      [1.93, 1.4115],
      [0.2327, 0.6442],
      [0.2359, 0.5691],
      [1.9157, 1.4281],
      [0.2288, 0.5238],
      [1.9219, 1.4209],
    ],
    b: [5.1207, -1.4364, -0.9402, 4.9055, -0.5951, 4.7154],
  },
  '302': { z: [[2.7995, 1.4855], none, none, none, none, none], b: [4.2251, 0, 0, 0, 0, 0] },
  '303': { z: [none, none, none, [2.7995, 1.4855], none, none], b: [0, 0, 0, 4.2251, 0, 0] },
  '304': { z: [none, none, none, [1.9217, 1.4212], none, none], b: [0, 0, 0, 4.3637, 0, 0] },
});

/** A regulator's steps of 0.00625 each, at the head of a line. */
const step = (n: number): number => 1 + 0.00625 * n;
const regulated = (steps: readonly [number, number, number], from: string, to: string) => ({
  from,
  to,
  ohm: [
    [none, none, none],
    [none, none, none],
    [none, none, none],
  ],
  ratio: transformerRatio.regulator(step(steps[0]), step(steps[1]), step(steps[2])),
});

const base = LOW ** 2 / 500e3;
const leg = (i: number): Complex[] =>
  [0, 1, 2].map((j): Complex => (i === j ? [0.019 * base, 0.0408 * base] : none));

const segments = [
  line('800', '802', 2580, '300'),
  line('802', '806', 1730, '300'),
  line('806', '808', 32230, '300'),
  line('808', '810', 5804, '303'),
  line('808', '812', 37500, '300'),
  line('812', '814', 29730, '300'),
  regulated([12, 5, 5], '814', 'R814'),
  line('R814', '850', 10, '301'),
  line('816', '818', 1710, '302'),
  line('816', '824', 10210, '301'),
  line('818', '820', 48150, '302'),
  line('820', '822', 13740, '302'),
  line('824', '826', 3030, '303'),
  line('824', '828', 840, '301'),
  line('828', '830', 20440, '301'),
  line('830', '854', 520, '301'),
  line('832', '858', 4900, '301'),
  { from: '832', to: '888', ohm: [leg(0), leg(1), leg(2)], ratio: transformerRatio.wyeWye(LOW / KV) },
  line('834', '860', 2020, '301'),
  line('834', '842', 280, '301'),
  line('836', '840', 860, '301'),
  line('836', '862', 280, '301'),
  line('842', '844', 1350, '301'),
  line('844', '846', 3640, '301'),
  line('846', '848', 530, '301'),
  line('850', '816', 310, '301'),
  regulated([13, 11, 12], '852', 'R852'),
  line('R852', '832', 10, '301'),
  line('854', '856', 23330, '303'),
  line('854', '852', 36830, '301'),
  line('858', '864', 1620, '302'),
  line('858', '834', 5830, '301'),
  line('860', '836', 2680, '301'),
  line('862', '838', 4860, '304'),
  line('888', '890', 10560, '300'),
];

const spot = (node: string, model: Parameters<typeof loadRow>[0], values: readonly number[], kv = KV) =>
  loadRow(model, kv, values).map((l) => ({ ...l, node }));
const along = (from: string, to: string, model: Parameters<typeof loadRow>[0], values: readonly number[]) =>
  loadRow(model, KV, values).map((load) => ({ along: [from, to] as const, load }));

const spots = [
  ...spot('860', 'Y-PQ', [20, 16, 20, 16, 20, 16]),
  ...spot('840', 'Y-I', [9, 7, 9, 7, 9, 7]),
  ...spot('844', 'Y-Z', [135, 105, 135, 105, 135, 105]),
  ...spot('848', 'D-PQ', [20, 16, 20, 16, 20, 16]),
  ...spot('890', 'D-I', [150, 75, 150, 75, 150, 75], LOW),
  ...spot('830', 'D-Z', [10, 5, 10, 5, 25, 10]),
  // Capacitors.
  ...spot('844', 'Y-Z', [0, -100, 0, -100, 0, -100]),
  ...spot('848', 'Y-Z', [0, -150, 0, -150, 0, -150]),
];

export const spread34 = [
  ...along('802', '806', 'Y-PQ', [0, 0, 30, 15, 25, 14]),
  ...along('808', '810', 'Y-I', [0, 0, 16, 8, 0, 0]),
  ...along('818', '820', 'Y-Z', [34, 17, 0, 0, 0, 0]),
  ...along('820', '822', 'Y-PQ', [135, 70, 0, 0, 0, 0]),
  ...along('816', '824', 'D-I', [0, 0, 5, 2, 0, 0]),
  ...along('824', '826', 'Y-I', [0, 0, 40, 20, 0, 0]),
  ...along('824', '828', 'Y-PQ', [0, 0, 0, 0, 4, 2]),
  ...along('828', '830', 'Y-PQ', [7, 3, 0, 0, 0, 0]),
  ...along('854', '856', 'Y-PQ', [0, 0, 4, 2, 0, 0]),
  ...along('832', '858', 'D-Z', [7, 3, 2, 1, 6, 3]),
  ...along('858', '864', 'Y-PQ', [2, 1, 0, 0, 0, 0]),
  ...along('858', '834', 'D-PQ', [4, 2, 15, 8, 13, 7]),
  ...along('834', '860', 'D-Z', [16, 8, 20, 10, 110, 55]),
  ...along('860', '836', 'D-PQ', [30, 15, 10, 6, 42, 22]),
  ...along('836', '840', 'D-I', [18, 9, 22, 11, 0, 0]),
  ...along('862', '838', 'Y-PQ', [0, 0, 28, 14, 0, 0]),
  ...along('842', '844', 'Y-PQ', [9, 5, 0, 0, 0, 0]),
  ...along('844', '846', 'Y-PQ', [0, 0, 25, 12, 20, 11]),
  ...along('846', '848', 'Y-PQ', [0, 0, 23, 11, 0, 0]),
];

/** The feeder with its spread loads at the middle, the ends or the quarters of their lines. */
export const feeder34 = (how: Parameters<typeof spreadLoads>[2]): FeederSpec => {
  const spread = spreadLoads(segments, spread34, how);
  const v = (1.05 * KV) / Math.sqrt(3);
  return {
    source: '800',
    sourceV: [polar(v, 0), polar(v, -120), polar(v, 120)],
    segments: spread.segments,
    loads: [...spots, ...spread.loads],
  };
};

/** Printed volts per unit and angles by node, legs A, B, C, as far as they are remembered. */
export const printed34: Readonly<Record<string, readonly (readonly [number, number] | undefined)[]>> = {
  '802': [
    [1.0475, -0.05],
    [1.0484, -120.07],
    [1.0484, 119.95],
  ],
  '806': [
    [1.0457, -0.08],
    [1.0474, -120.11],
    [1.0474, 119.92],
  ],
  '808': [
    [1.0136, -0.75],
    [1.0296, -120.95],
    [1.0289, 119.3],
  ],
  '810': [undefined, [1.0294, -120.95], undefined],
  '812': [
    [0.9763, -1.57],
    [1.01, -121.92],
    [1.0069, 118.59],
  ],
  '814': [
    [0.9467, -2.26],
    [0.9945, -122.7],
    [0.9893, 118.01],
  ],
  '850': [
    [1.0176, -2.26],
    [1.0255, -122.7],
    [1.0203, 118.01],
  ],
  '816': [
    [1.0172, -2.26],
    [1.0253, -122.71],
    [1.02, 118.01],
  ],
  '818': [[1.0163, -2.27], undefined, undefined],
  '820': [[0.9926, -2.32], undefined, undefined],
  '822': [[0.9895, -2.33], undefined, undefined],
  '824': [
    [1.0082, -2.37],
    [1.0158, -122.94],
    [1.0116, 117.76],
  ],
  '826': [undefined, [1.0156, -122.94], undefined],
  '828': [
    [1.0074, -2.38],
    [1.0151, -122.95],
    [1.0109, 117.75],
  ],
  '830': [
    [0.9894, -2.63],
    [0.9982, -123.39],
    [0.9938, 117.25],
  ],
  '854': [
    [0.989, -2.64],
    [0.9978, -123.4],
    [0.9934, 117.24],
  ],
  '852': [
    [0.9581, -3.11],
    [0.968, -124.18],
    [0.9637, 116.33],
  ],
  '832': [
    [1.0359, -3.11],
    [1.0345, -124.18],
    [1.036, 116.33],
  ],
  '858': [
    [1.0336, -3.17],
    [1.0322, -124.28],
    [1.0338, 116.22],
  ],
  '834': [
    [1.0309, -3.24],
    [1.0295, -124.39],
    [1.0313, 116.09],
  ],
  '860': [
    [1.0305, -3.24],
    [1.0291, -124.39],
    [1.031, 116.09],
  ],
  '836': [
    [1.0303, -3.23],
    [1.0287, -124.39],
    [1.0308, 116.09],
  ],
  '838': [undefined, [1.0285, -124.39], undefined],
  '844': [
    [1.0307, -3.27],
    [1.0291, -124.42],
    [1.0311, 116.06],
  ],
  '856': [undefined, [0.9977, -123.41], undefined],
  '888': [
    [0.9996, -4.64],
    [0.9983, -125.73],
    [1.0, 114.82],
  ],
  '890': [
    [0.9167, -5.19],
    [0.9235, -126.78],
    [0.9177, 113.98],
  ],
};
