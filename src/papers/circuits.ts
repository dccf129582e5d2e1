import { cableLength } from '../derive/lengths.ts';
import { legName, systemShape } from '../derive/systems.ts';
import type { SupplyEntity } from '../derive/types.ts';
import { BUBBLE_CAP_MM } from '../drawing/label-place.ts';
import { formatCableLength, MM_PER_FOOT } from '../kernel/units.ts';
import { kindOf, planRecord, recordOf } from '../plan/plan.ts';
import type { Finding } from '../report/types.ts';
import { loadBar } from './bars.ts';
import { type Circuit, type CircuitLoad, type Panel, panelKindName, panelsOf } from './circuit-rows.ts';
import { cell, LEG_QUANTITIES, largestLegA, legsText, pctOf, type Reader, readerOf } from './figures.ts';
import { findingSections } from './findings-list.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import {
  type Cell,
  type Column,
  headingBlock,
  type PlacedColumn,
  placeColumns,
  stacked,
  tableHead,
  tableRow,
} from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'way', head: 'Way', leastMm: 11 },
  { id: 'breaker', head: 'Breaker', leastMm: 15, dispensable: 3 },
  { id: 'leg', head: 'Leg', leastMm: 12 },
  { id: 'unit', head: 'Unit and use', leastMm: 52, grow: 4 },
  { id: 'cable', head: 'Cable', leastMm: 32, grow: 1, group: 'Cable', dispensable: 4 },
  { id: 'stock', head: 'Stock', leastMm: 21, group: 'Cable', dispensable: 6 },
  { id: 'route', head: 'Route', leastMm: 12, align: 'right', group: 'Cable', dispensable: 5 },
  { id: 'w', head: 'W', leastMm: 11, align: 'right', group: 'Load, this setup' },
  { id: 'pf', head: 'PF', leastMm: 8, align: 'right', group: 'Load, this setup', dispensable: 9 },
  { id: 'va', head: 'VA', leastMm: 11, align: 'right', group: 'Load, this setup', dispensable: 8 },
  { id: 'here', head: 'this setup', leastMm: 15, align: 'right', group: 'Amps' },
  { id: 'worst', head: 'worst', leastMm: 10, align: 'right', group: 'Amps' },
  { id: 'limit', head: 'limit', leastMm: 9, align: 'right', group: 'Amps' },
  { id: 'bar', head: '% of limit, worst', leastMm: 27, dispensable: 7 },
  { id: 'pct', head: '%', leastMm: 8, align: 'right' },
  { id: 'volts', head: 'Volts', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'drop', head: 'Drop', leastMm: 12, align: 'right', group: 'At the end, worst' },
  { id: 'findings', head: 'Findings', leastMm: 30, grow: 2 },
];

interface Schedule {
  readonly info: SetInfo;
  readonly r: Reader;
  readonly columns: readonly PlacedColumn[];
  readonly byRecord: ReadonlyMap<string, readonly Finding[]>;
}

const scheduleOf = (info: SetInfo): Schedule => {
  const byRecord = new Map<string, Finding[]>();
  for (const f of info.assessment.findings) {
    for (const id of f.recordIds) {
      const list = byRecord.get(id);
      if (list) list.push(f);
      else byRecord.set(id, [f]);
    }
  }
  return {
    info,
    r: readerOf(info.assessment, info.setupId),
    columns: placeColumns(COLUMNS, flowArea(info).w),
    byRecord,
  };
};

/** Findings about any of these records, each once, as signs with numbers. */
const findingCell = (s: Schedule, ids: readonly string[]): Cell => {
  const own = [...new Set(ids.flatMap((id) => s.byRecord.get(id) ?? []))];
  return {
    draw: (ink, c) => {
      const base = c.y + c.h / 2 + CAP.note / 2;
      let x = c.x;
      own.forEach((f, i) => {
        const w = 5.5 + widthOf(`${f.severity.toUpperCase()} ${f.number}`, { weight: 'semibold' });
        const last = i === own.length - 1;
        if (x + w + (last ? 0 : 7) > c.x + c.w) {
          if (x < c.x + c.w - 6) ink.text(x, base, `+${own.length - i}`, { role: 'ink-soft' });
          x = Number.POSITIVE_INFINITY;
          return;
        }
        x = severityTag(ink, f.severity, f.number, x, base) + 2;
      });
    },
  };
};

/** Unit bubble, name and use of a load, cut to the cell. */
const unitCell = (s: Schedule, l: CircuitLoad): Cell => ({
  draw: (ink, c) => {
    const base = c.y + c.h / 2 + CAP.note / 2;
    let x = c.x + l.depth * 3;
    const f = l.fixture;
    if (f) {
      const r = Math.max(2, widthOf(f.unit, { capMm: CAP.note }) / 2 + 0.6);
      ink.add([
        { kind: 'circle', xMm: x + r, yMm: c.y + c.h / 2, rMm: r, stroke: { role: 'ink', weightMm: 0.18 } },
      ]);
      ink.text(x + r, base, f.unit, { align: 'center', maxMm: BUBBLE_CAP_MM * 4 });
      x += 2 * r + 1.6;
    }
    const name = f ? (kindOf(s.info.plan, f.kindId)?.name ?? l.load.label) : l.load.label;
    const full = [name, f?.use ?? '', l.outlet ? `at ${l.outlet.label}` : ''].filter(Boolean).join(', ');
    ink.text(x, base, full, { maxMm: c.x + c.w - x });
  },
});

const stockText = (piecesMm: readonly number[], units: 'imperial' | 'metric'): string => {
  if (piecesMm.length === 0) return '–';
  const number = (mm: number): string =>
    units === 'imperial' ? String(Math.round(mm / MM_PER_FOOT)) : String(Number((mm / 1000).toFixed(1)));
  return `${piecesMm.map(number).join(' + ')} ${units === 'imperial' ? 'ft' : 'm'}`;
};

const cableCells = (s: Schedule, cable: SupplyEntity | undefined): Record<string, Cell> => {
  const record = cable && recordOf(s.info.plan, 'cable', cable.recordId);
  if (!record) return {};
  const length = cableLength(s.info.plan, record);
  return {
    cable: kindOf(s.info.plan, record.kindId)?.name ?? '–',
    stock: length ? stockText(length.piecesMm, s.info.units) : '–',
    route: length ? formatCableLength(length.drawnMm + length.risesMm, s.info.units) : '–',
  };
};

/** A box to write a measured value in. */
const measureCell: Cell = {
  draw: (ink, c) => {
    ink.rect(c.x + Math.max(0, c.w - 10), c.y + 0.7, Math.min(10, c.w), c.h - 1.4, { weightMm: 0.25 });
  },
};

const voltsCells = (s: Schedule, key: string): Record<string, Cell> => {
  const v = s.r.worst(key, 'voltsV');
  const drop = s.r.worst(key, 'dropPct');
  const dropV = s.r.worst(key, 'dropV');
  if (!Number.isFinite(v))
    return { volts: measureCell, drop: Number.isFinite(dropV) ? `${dropV.toFixed(1)} V` : '–' };
  return { volts: cell(v, 1), drop: `${cell(drop, 1)} %` };
};

const ampCells = (s: Schedule, e: SupplyEntity, limit: number | undefined): Record<string, Cell> => {
  const here = largestLegA(s.r, e, 'here');
  const worst = largestLegA(s.r, e, 'worst');
  return {
    here: cell(here, 1),
    worst: { text: cell(worst, 1), weight: 'semibold' },
    ...limitCells(here, worst, limit),
  };
};

const limitCells = (here: number, worst: number, limit: number | undefined): Record<string, Cell> => {
  const pct = pctOf(worst, limit);
  const over = pct > 100;
  return {
    limit: limit === undefined ? '–' : cell(limit),
    bar: { draw: (ink: Ink, c) => loadBar(ink, c.x, c.y + 1.4, c.w, c.h - 2.8, { here, worst, limit }) },
    pct: { text: cell(pct), weight: over ? 'semibold' : 'regular', role: over ? 'stop' : 'ink' },
  };
};

const powerCells = (s: Schedule, key: string): Record<string, Cell> => {
  const w = s.r.here(key, 'loadW');
  const va = s.r.here(key, 'loadVa');
  return { w: cell(w), pf: va > 0 ? cell(w / va, 2) : '–', va: cell(va) };
};

const circuitBlocks = (s: Schedule, c: Circuit): readonly Block[] => {
  const practice = planRecord(s.info.plan).practice;
  const lead: Record<string, Cell> = {
    way: { text: c.wayLabel, weight: 'semibold' },
    breaker: c.breaker,
    leg: { text: legsText(practice, c.way), weight: 'semibold' },
  };
  const limit = c.way.legLimit?.limitA;
  const one = c.loads.length + c.boxes.length === 1;
  const rows: Block[] = [];
  const total = c.loads.length + c.boxes.length;
  const add = (cells: Record<string, Cell>, last: boolean): void => {
    const first = rows.length === 0;
    rows.push(
      tableRow(s.columns, first ? { ...lead, ...cells } : cells, {
        keep: !last,
        ...(last ? {} : { ruleFrom: 'unit' }),
      }),
    );
  };
  c.boxes.forEach((b, i) => {
    const cells = {
      unit: `feeds ${b.box.label}`,
      ...cableCells(s, b.cable),
      ...powerCells(s, b.box.key),
      ...ampCells(s, b.box, one ? limit : undefined),
      ...voltsCells(s, b.box.key),
      findings: findingCell(s, [...(b.cable ? [b.cable.recordId] : [])]),
    };
    add(cells, one && i === total - 1);
  });
  c.loads.forEach((l, i) => {
    const cells: Record<string, Cell> = {
      unit: unitCell(s, l),
      ...cableCells(s, l.cable),
      ...powerCells(s, l.load.key),
      ...(one
        ? ampCells(s, l.load, limit)
        : {
            here: cell(largestLegA(s.r, l.load, 'here'), 1),
            worst: cell(largestLegA(s.r, l.load, 'worst'), 1),
          }),
      ...voltsCells(s, l.load.key),
      findings: findingCell(s, [
        l.load.recordId,
        ...(l.fixture ? [l.fixture.id] : []),
        ...(l.cable ? [l.cable.recordId] : []),
      ]),
    };
    add(cells, one && i + c.boxes.length === total - 1);
  });
  if (!one) {
    add(
      {
        unit: {
          text: c.way.what === 'way' ? `Way ${c.wayLabel} together` : 'All its outlets together',
          weight: 'semibold',
        },
        ...powerCells(s, c.way.key),
        ...ampCells(s, c.way, limit),
        findings: wayFindings(s, c),
      },
      true,
    );
  }
  return rows;
};

/** Findings whose figure is the way's own: those that name its box and were counted on this way. */
const wayFindings = (s: Schedule, c: Circuit): Cell => {
  const own = (s.byRecord.get(c.way.recordId) ?? []).filter((f) => f.figureKey?.includes(`@${c.way.key}@`));
  return own.length === 0 ? '' : findingCell({ ...s, byRecord: new Map([[c.way.key, own]]) }, [c.way.key]);
};

const totalBlocks = (s: Schedule, p: Panel): readonly Block[] => {
  const practice = planRecord(s.info.plan).practice;
  const e = p.owner;
  const rows: Block[] = [
    tableRow(
      s.columns,
      {
        way: { text: 'Total', weight: 'semibold' },
        unit: { text: `All of ${e.label}`, weight: 'semibold' },
        ...powerCells(s, e.key),
      },
      { keep: true, ruleFrom: 'leg' },
    ),
  ];
  const lines: {
    name: string;
    q: (typeof LEG_QUANTITIES)[number] | 'neutralA';
    limit: number | undefined;
    leg: string;
  }[] = e.legs.map((l) => ({
    name: `Leg ${legName(practice, e.system, l)} at ${e.label}`,
    q: LEG_QUANTITIES[l] ?? 'leg0A',
    limit: e.legLimit?.limitA,
    leg: legName(practice, e.system, l),
  }));
  if (e.neutral)
    lines.push({ name: 'Neutral, phasor sum', q: 'neutralA', limit: e.neutralLimit?.limitA, leg: 'N' });
  lines.forEach((line, i) => {
    const here = s.r.here(e.key, line.q);
    const worst = s.r.worst(e.key, line.q);
    const last = i === lines.length - 1;
    rows.push(
      tableRow(
        s.columns,
        {
          leg: { text: line.leg, weight: 'semibold' },
          unit: line.name,
          here: cell(here, 1),
          worst: { text: cell(worst, 1), weight: 'semibold' },
          ...limitCells(here, worst, line.limit),
          ...(i === 0 ? voltsCells(s, e.key) : {}),
          ...(i === 0 ? { findings: ownerFindings(s, p) } : {}),
        },
        last ? { rule: 'thin' } : { keep: true, ruleFrom: 'leg' },
      ),
    );
  });
  return rows;
};

const ownerFindings = (s: Schedule, p: Panel): Cell => {
  const ways = p.circuits.filter((c) => c.loads.length + c.boxes.length > 1).map((c) => `@${c.way.key}@`);
  const own = (s.byRecord.get(p.owner.recordId) ?? []).filter(
    (f) => !ways.some((w) => f.figureKey?.includes(w)),
  );
  return own.length === 0 ? '' : findingCell({ ...s, byRecord: new Map([['own', own]]) }, ['own']);
};

const spareText = (p: Panel): string => {
  if (p.spare.length === 0) return '';
  return `Nothing on ${p.spare.length === 1 ? 'way' : 'ways'} ${p.spare.map((c) => c.wayLabel).join(', ')}.`;
};

const remark = (s: Schedule, p: Panel): string => {
  const shape = p.owner.system ? systemShape(p.owner.system) : undefined;
  const source = recordOf(s.info.plan, 'source', p.owner.recordId);
  const volts =
    source === undefined
      ? ''
      : source.voltsV === undefined
        ? 'house volts not known: measure'
        : `${source.voltsV} V line to neutral as given`;
  const feed = p.feed && recordOf(s.info.plan, 'cable', p.feed.recordId);
  const feedText = feed
    ? `from ${p.source.label} by ${kindOf(s.info.plan, feed.kindId)?.name ?? 'cable'}, ${stockText(cableLength(s.info.plan, feed)?.piecesMm ?? [], s.info.units)}`
    : '';
  return [
    panelKindName(s.info.plan, p.owner),
    source ? (shape?.name ?? '') : '',
    volts,
    feedText,
    p.owner.notComputed ?? '',
    spareText(p),
  ]
    .filter(Boolean)
    .join('; ');
};

const panelSection = (s: Schedule, p: Panel): Section => ({
  head: (continued) =>
    stacked(
      headingBlock(continued ? `${p.owner.label} (continued)` : p.owner.label, remark(s, p)),
      tableHead(s.columns),
    ),
  blocks: [...p.circuits.flatMap((c) => circuitBlocks(s, c)), ...totalBlocks(s, p)],
});

/** Loads the plan has and the supply does not reach. */
const unpluggedSection = (s: Schedule): Section | undefined => {
  const loads = s.info.assessment.entities.filter((e) => e.what === 'load' && e.sourceId === undefined);
  if (loads.length === 0) return undefined;
  return {
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? 'Not plugged (continued)' : 'Not plugged',
          'no feed is drawn; nothing is computed',
        ),
        tableHead(s.columns),
      ),
    blocks: loads.map((load) => {
      const ballast = recordOf(s.info.plan, 'ballast', load.recordId);
      const fixture = recordOf(s.info.plan, 'fixture', ballast ? ballast.fixtureId : load.recordId);
      return tableRow(s.columns, {
        unit: unitCell(s, { load, cable: undefined, fixture, depth: 0, outlet: undefined }),
        findings: findingCell(s, [load.recordId]),
      });
    }),
  };
};

const NOTES = [
  'Amps are rms on the fullest leg. Load is rated input at its level in this setup, cable loss left out. Drop and volts are the worst of all setups.',
  'A load that passes power on is shown with what it passes on. Bars: filled is the worst setup, dotted tick this setup, heavy tick the limit.',
];

/** The circuit schedule, findings and assumptions, on as many pages as they need. */
export const circuitPages = (info: SetInfo): readonly PageMaker[] => {
  const s = scheduleOf(info);
  const panels = panelsOf(info.plan, s.r).filter((p) => p.circuits.length > 0 || p.owner === p.source);
  const unplugged = unpluggedSection(s);
  const sections = [
    ...panels.map((p) => panelSection(s, p)),
    ...(unplugged ? [unplugged] : []),
    ...findingSections(info),
  ];
  return flowPages(
    info,
    {
      title: 'Circuit schedule',
      subtitle: 'Loads, legs and volts, grouped by box, with findings',
      documentType: 'Schedule',
      scale: 'none',
      units: info.units === 'imperial' ? 'A, V, W, ft' : 'A, V, W, m',
    },
    sections,
    NOTES,
  );
};
