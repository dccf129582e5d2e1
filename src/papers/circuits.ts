import { cableLength } from '../derive/lengths.ts';
import { legName, systemShape } from '../derive/systems.ts';
import { stockText } from '../drawing/one-line/words.ts';
import { kindOf, planRecord, recordOf } from '../plan/plan.ts';
import type { Finding } from '../report/types.ts';
import {
  ampCells,
  cableCells,
  findingCell,
  findingsAbout,
  limitCells,
  powerCells,
  type Schedule,
  scheduleOf,
  unitCell,
  voltsCells,
  wayFindings,
} from './circuit-cells.ts';
import { type Circuit, type Panel, panelKindName, panelsOf } from './circuit-rows.ts';
import { cell, LEG_QUANTITIES, largestLegA, legsText } from './figures.ts';
import { findingSections } from './findings-list.ts';
import { type Block, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, headingBlock, stacked, tableHead, tableRow } from './table.ts';

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
  const add = (cells: Record<string, Cell>, last: boolean, ...ids: readonly (string | undefined)[]): void => {
    const first = rows.length === 0;
    rows.push(
      tableRow(s.columns, first ? { ...lead, ...cells } : cells, {
        keep: !last,
        ...(last ? {} : { ruleFrom: 'unit' }),
        mark: markFor(s.info, ...ids),
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
      findings: findingCell([
        ...(one ? wayFindings(s, c) : []),
        ...findingsAbout(s, b.cable ? [b.cable.recordId] : []),
      ]),
    };
    add(cells, one && i === total - 1, b.box.recordId, b.cable?.recordId);
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
      findings: findingCell([
        ...(one ? wayFindings(s, c) : []),
        ...findingsAbout(s, [
          l.load.recordId,
          ...(l.fixture ? [l.fixture.id] : []),
          ...(l.cable ? [l.cable.recordId] : []),
        ]),
      ]),
    };
    add(cells, one && i + c.boxes.length === total - 1, l.load.recordId, l.fixture?.id, l.cable?.recordId);
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
        findings: findingCell(wayFindings(s, c)),
      },
      true,
    );
  }
  return rows;
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
          ...(i === 0 ? { findings: findingCell(ownerFindings(s, p)) } : {}),
        },
        last ? { rule: 'thin' } : { keep: true, ruleFrom: 'leg' },
      ),
    );
  });
  return rows;
};

/** Findings about a source or box itself: all that name it but those shown at one of its ways. */
const ownerFindings = (s: Schedule, p: Panel): readonly Finding[] => {
  const shown = new Set(p.circuits.flatMap((c) => wayFindings(s, c)));
  return findingsAbout(s, [p.owner.recordId]).filter((f) => !shown.has(f));
};

const spareText = (p: Panel): string => {
  if (p.spare.length === 0) return '';
  return `Nothing on ${p.spare.length === 1 ? 'way' : 'ways'} ${p.spare.map((c) => c.wayLabel).join(', ')}.`;
};

/** What a box is plugged into, like `K1 way 4`. */
const fedFrom = (s: Schedule, p: Panel): string => {
  const parent = p.feed?.parentKey === undefined ? undefined : s.r.entity(p.feed.parentKey);
  return parent?.label ?? p.source.label;
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
    ? `from ${fedFrom(s, p)} by ${kindOf(s.info.plan, feed.kindId)?.name ?? 'cable'}, ${stockText(cableLength(s.info.plan, feed)?.piecesMm ?? [], s.info.units)}`
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
        findings: findingCell(findingsAbout(s, [load.recordId])),
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
