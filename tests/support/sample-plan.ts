import { needKind } from '../../src/gear/index.ts';
import { idMaker } from '../../src/kernel/ids.ts';
import { applyChanges, type ChangeSet, Draft } from '../../src/plan/change-set.ts';
import { plug } from '../../src/plan/edits/plug.ts';
import { ensureKind } from '../../src/plan/edits/shared.ts';
import { emptyPlan, type Plan } from '../../src/plan/plan.ts';
import type { AnyRecord } from '../../src/plan/records/index.ts';

const FT = 304.8;

/** A repeatable stand-in for random numbers, so that ids are the same on every run. */
export const seeded = (seed: number): (() => number) => {
  let s = seed >>> 0;
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 4294967296;
  };
};

const P = 'north-america';
const CORD = 'cord-12-3';
const FEEDER = 'feeder-2-3ph';

/** An invented boathouse kitchen, 24 by 18 ft inside: a house panel with two outlets, a generator and one box. */
export const samplePlan = (): Plan => {
  const newId = idMaker(seeded(7));
  let plan: Plan = emptyPlan;
  const apply = (c: ChangeSet): void => {
    plan = applyChanges(plan, c);
  };
  const put = (...records: AnyRecord[]): void => apply({ added: records, updated: [], removed: [] });
  /** The kind from the book, put into the plan. Ask for it before reading `plan`. */
  const kind = <F extends Parameters<typeof needKind>[2]>(slug: string, family: F) => {
    const k = needKind(P, slug, family);
    const draft = new Draft(plan);
    ensureKind(draft, k);
    apply(draft.changes());
    return k;
  };
  const at = (xFt: number, yFt: number) => ({ xMm: Math.round(xFt * FT), yMm: Math.round(yFt * FT) });

  put(
    {
      id: 'plan',
      type: 'plan',
      title: 'Lighting plot',
      production: 'Letters at Low Tide',
      scene: '12 / Boathouse kitchen, int. day',
      location: 'Stage 2',
      drawingNumber: 'LT-12A-E-1',
      owner: 'Saltmarsh Pictures',
      dates: ['2026-03-09'],
      people: {
        'director-of-photography': 'N. Abara',
        gaffer: 'R. Osei',
        'best-boy': 'T. Lund',
        'drawn-by': 'T. Lund',
      },
      practice: P,
      lengthUnits: 'imperial',
      frequencyHz: 60,
      ambientC: 30,
      limits: [],
      paper: { sheet: 'ANSI B', landscape: true },
    },
    { id: 'fl-1', type: 'floor', name: 'Kitchen', levelMm: 0, ceilingMm: 12 * FT, northDeg: 255 },
    { id: 'su-1', type: 'setup', order: 1, name: '12A window day', scene: '12' },
    { id: 'su-2', type: 'setup', order: 2, name: '12C night', scene: '12' },
    { id: 'un-1', type: 'universe', number: 2, name: '', colorIndex: 0 },
  );
  const t = 150;
  const W = Math.round(24.25 * FT);
  const H = Math.round(18.33 * FT);
  const corners = [
    { xMm: -t / 2, yMm: -t / 2 },
    { xMm: W + t / 2, yMm: -t / 2 },
    { xMm: W + t / 2, yMm: H + t / 2 },
    { xMm: -t / 2, yMm: H + t / 2 },
  ];
  corners.forEach((from, i) => {
    put({
      id: `wl-${i + 1}`,
      type: 'wall',
      floorId: 'fl-1',
      from,
      to: corners[(i + 1) % 4] ?? from,
      thicknessMm: t,
      heightMm: 12 * FT,
      material: 'plasterboard',
    });
  });
  put(
    {
      id: 'op-1',
      type: 'opening',
      wallId: 'wl-2',
      what: 'window',
      offsetMm: 4.25 * FT,
      widthMm: 8.5 * FT,
      heightMm: 1500,
      sillMm: 900,
    },
    {
      id: 'op-2',
      type: 'opening',
      wallId: 'wl-3',
      what: 'door',
      offsetMm: 12.75 * FT,
      widthMm: 3 * FT,
      heightMm: 2050,
      sillMm: 0,
      swing: 'right-start',
    },
    piece('sp-1', at(7, 1), 14 * FT, 2 * FT, 'Counter'),
    piece('sp-2', at(15.2, 1.25), 2.4 * FT, 2.5 * FT, 'Stove'),
    piece('sp-3', at(12, 9.2), 6.2 * FT, 3.1 * FT, 'Table'),
    piece('sp-4', at(10.4, 11.6), 1.3 * FT, 1.3 * FT, ''),
    piece('sp-5', at(13.6, 11.6), 1.3 * FT, 1.3 * FT, ''),
    {
      id: 'mk-1',
      type: 'mark',
      floorId: 'fl-1',
      what: 'talent',
      at: at(10.8, 6.7),
      heightMm: 1600,
      facingDeg: 100,
      name: 'Ines',
    },
    {
      id: 'mk-2',
      type: 'mark',
      floorId: 'fl-1',
      what: 'camera',
      at: at(4, 9),
      heightMm: 1500,
      facingDeg: -12,
      name: 'Cam A, 35 mm',
      viewDeg: 38,
    },
  );

  const panel = kind('house-panel-120-240', 'source');
  put({
    id: 'so-1',
    type: 'source',
    floorId: 'fl-1',
    kindId: panel.id,
    at: at(-4.5, 1),
    rotationDeg: 0,
    label: 'House panel',
    ways: [
      { id: '3', label: '3', breakerA: 20, poles: 1, curve: 'na', legs: [0] },
      { id: '5', label: '5', breakerA: 20, poles: 1, curve: 'na', legs: [1] },
    ],
  });
  put(outlet('ou-1', 'W1', '3', at(17, 18.33), 270), outlet('ou-2', 'W2', '5', at(0, 9.5), 0));

  const gen = kind('generator-20kw-3ph', 'source');
  put({
    id: 'so-2',
    type: 'source',
    floorId: 'fl-1',
    kindId: gen.id,
    at: at(32, 27),
    rotationDeg: 0,
    label: 'G1',
    voltsV: 120,
  });
  const box = kind('box-100-6x20', 'box');
  put({
    id: 'bx-1',
    type: 'box',
    floorId: 'fl-1',
    kindId: box.id,
    at: at(26, 22.5),
    rotationDeg: 90,
    label: 'K1',
  });

  const cord = kind(CORD, 'cable');
  const feeder = kind(FEEDER, 'cable');
  const fixtures: readonly FixtureRow[] = [
    ['1', 'discharge-par-1200w', 30, 7, 180, 10, 'stand-combo-3', 'window push', '1', 'mk-1'],
    ['2', 'discharge-par-1200w', 30, 12.5, 180, 10, 'stand-combo-3', 'window push', '2', ''],
    ['3', 'led-spot-1200w', 29.4, 0.5, 240, 12, 'stand-combo-3', 'sky top', '1b', ''],
    ['4', 'led-tube-120', 4, 0.3, 90, 4.5, '', 'under shelf, left', '', ''],
    ['5', 'led-tube-120', 10, 0.3, 90, 4.5, '', 'under shelf, right', '', ''],
    ['6', 'led-panel-60x60', 3.7, 21.5, 250, 7, 'stand-baby-3', 'hall, night only', '4', ''],
    ['7', 'led-panel-60x60', 5, 12.7, -45, 7.5, 'stand-combo-2', 'key, Ines', '4b', 'mk-1'],
    ['8', 'led-spot-120w', 15.4, 4, 90, 3.5, '', 'stove kick', '', ''],
    ['9', 'led-spot-350w', 2.5, 4, 20, 8, 'stand-baby-3', 'edge', '5', ''],
    ['10', 'led-spot-120w', 23, 3.3, 150, 5, '', 'sill kick', '', ''],
    ['11', 'led-tube-120', 19.4, 2.2, 120, 5.5, '', 'shelf glow', '', ''],
    ['12', 'tungsten-fresnel-650w', 16.5, 15.5, -50, 6.5, 'stand-baby-2', 'hall edge', 'W1', ''],
    ['13', 'led-spot-120w', 22, 15, -160, 5.7, 'stand-baby-2', 'eye light', '', ''],
    ['14', 'practical-table-60w', 0.7, 1, 0, 4.2, '', 'table lamp, night only', 'W2', ''],
  ];
  for (const [unit, slug, x, y, deg, hFt, standSlug, use, feed, mark] of fixtures) {
    const k = kind(slug, 'fixture');
    const id = `fx-${unit.padStart(2, '0')}`;
    if (standSlug) {
      const s = kind(standSlug, 'stand');
      put({
        id: `st-${unit}`,
        type: 'stand',
        floorId: 'fl-1',
        kindId: s.id,
        at: at(x, y),
        rotationDeg: 30,
        heightMm: hFt * FT,
      });
    }
    const mode = k.modes[0];
    put({
      id,
      type: 'fixture',
      floorId: 'fl-1',
      kindId: k.id,
      at: at(x, y),
      heightMm: Math.round(hFt * FT),
      aim: mark ? { at: 'mark', markId: mark } : { at: 'facing', facingDeg: deg, tiltDeg: -20 },
      support: standSlug ? { on: 'stand', standId: `st-${unit}` } : { on: 'rigged' },
      unit,
      channel: '',
      use,
      gel: '',
      link: 'none',
      onPacks: feed === '',
      ...(mode
        ? { patch: { modeId: mode.id, universeId: 'un-1', address: Number(unit) * 10 + 1, paired: false } }
        : {}),
    });
    if (unit === '6' || unit === '14') {
      put({ id: `level:su-1:${id}`, type: 'level', setupId: 'su-1', fixtureId: id, levelPct: 0 });
    }
    let inletOwner = id;
    let inlet = k.inlets[0];
    if (k.needsBallast) {
      const b = kind('ballast-1200w', 'ballast');
      inletOwner = `bl-${unit}`;
      inlet = b.inlets[0];
      put({
        id: inletOwner,
        type: 'ballast',
        floorId: 'fl-1',
        kindId: b.id,
        at: at(x + 2.2, y + 0.2),
        rotationDeg: 90,
        fixtureId: id,
        headCableMm: 7500,
      });
    }
    if (feed && inlet) {
      const outletId = feed.startsWith('W') ? 'out' : /[a-z]$/.test(feed) ? feed : `${feed}a`;
      const recordId = feed === 'W1' ? 'ou-1' : feed === 'W2' ? 'ou-2' : 'bx-1';
      apply(
        plug(plan, { recordId, portId: outletId }, { recordId: inletOwner, portId: inlet.id }, cord, newId),
      );
    }
  }
  apply(plug(plan, { recordId: 'so-2', portId: '1' }, { recordId: 'bx-1', portId: 'in' }, feeder, newId));
  return plan;
};

type FixtureRow = readonly [
  unit: string,
  slug: string,
  xFt: number,
  yFt: number,
  facingDeg: number,
  heightFt: number,
  stand: string,
  use: string,
  feed: string,
  mark: string,
];

const piece = (
  id: string,
  at: { xMm: number; yMm: number },
  lengthMm: number,
  widthMm: number,
  label: string,
): AnyRecord => ({
  id,
  type: 'setPiece',
  floorId: 'fl-1',
  at,
  rotationDeg: 0,
  outline: { shape: 'rect', lengthMm, widthMm },
  heightMm: 900,
  label,
  line: 'solid',
});

const outlet = (
  id: string,
  label: string,
  wayId: string,
  at: { xMm: number; yMm: number },
  rotationDeg: number,
): AnyRecord => ({
  id,
  type: 'outlet',
  floorId: 'fl-1',
  at,
  rotationDeg,
  heightMm: 400,
  sourceId: 'so-1',
  wayId,
  connector: 'nema-5-20',
  legs: 1,
  neutral: true,
  label,
});
