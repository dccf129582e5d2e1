import { beforeEach, describe, expect, it } from 'vitest';
import {
  assignAddresses,
  controlFindings,
  DEFAULT_ASSIGN,
  placeProblem,
  universeUse,
} from '../../../src/engines/control/index.ts';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { setDimmerPatch } from '../../../src/plan/edits/dimmer-patch.ts';
import { duplicateRecords } from '../../../src/plan/edits/duplicate.ts';
import { moveStretch } from '../../../src/plan/edits/patch.ts';
import { readPatchCsv, writePatchCsv } from '../../../src/plan/edits/patch-csv.ts';
import { placeBox } from '../../../src/plan/edits/place.ts';
import { plug } from '../../../src/plan/edits/plug.ts';
import { removeUniverse } from '../../../src/plan/edits/universes.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { inletsOf, outletsOf, waysOf } from '../../../src/plan/ports.ts';
import { controlBy } from '../../../src/report/control-by.ts';
import { filterRows, tableRows } from '../../../src/ui/control/rows.ts';
import { LineRig } from '../../support/line-rig.ts';
import { need } from '../../support/storage-world.ts';

const RACK = 'dimmer-6x2300w';
const KNOB = 'dimmer-line-600w';

let plan: Plan;
let rack: string;
let n: number;
const newId = (prefix: string) => `${prefix}-new${++n}`;
const add = (slug: string): string => {
  const kind = needKind('europe', slug, 'dimmer');
  const made = placeBox(plan, kind, 'floor', { xMm: 0, yMm: 5000 }, newId);
  plan = applyChanges(plan, made.changes);
  return made.box.id;
};
const patch = (id: string, universe: number, address: number): void => {
  plan = applyChanges(plan, need(setDimmerPatch(plan, id, { universe, address })));
};
const rules = (): readonly string[] => controlFindings(plan).map((f) => `${f.severity} ${f.rule}`);

beforeEach(() => {
  n = 0;
  const r = new LineRig();
  r.unit(1);
  r.unit(2);
  plan = r.b.plan();
  rack = add(RACK);
});

describe('the address of a dimmer', () => {
  it('control-use: its ways take a slot each, from its address on', () => {
    patch(rack, 1, 101);
    expect(recordOf(plan, 'box', rack)?.patch).toEqual({ universeId: 'u1', address: 101 });
    const use = universeUse(plan).find((u) => u.number === 1);
    expect(use?.rows.find((r) => r.fixtureId === rack)).toMatchObject({ address: 101, slots: 6, last: 106 });
    expect(use?.usedSlots).toBe(26);
    expect(referenceProblems(plan)).toEqual([]);
  });

  it('control-overlap: shared slots with a unit are a stop, side by side is none', () => {
    // The units take slots 1 to 20.
    patch(rack, 1, 21);
    expect(rules().filter((r) => r.includes('overlap'))).toEqual([]);
    patch(rack, 1, 20);
    expect(rules().filter((r) => r.includes('overlap'))).toEqual(['stop control-overlap']);
  });

  it('refuses what does not fit, and a knob, in words', () => {
    expect(setDimmerPatch(plan, rack, { universe: 1, address: 508 })).toMatchObject({
      ok: false,
      error: { todo: 'Choose an address from 1 to 507.' },
    });
    expect(setDimmerPatch(plan, rack, { universe: 0, address: 1 }).ok).toBe(false);
    const knob = add(KNOB);
    expect(setDimmerPatch(plan, knob, { universe: 1, address: 1 })).toMatchObject({
      ok: false,
      error: { what: expect.stringContaining('listens to no control data') },
    });
  });

  it('control-assign: addresses of units go round it; no unit may be moved onto it', () => {
    patch(rack, 1, 1);
    const made = need(assignAddresses(plan, { ...DEFAULT_ASSIGN, keepPatched: false }));
    const after = applyChanges(plan, made.changes);
    expect(controlFindings(after).filter((f) => f.rule === 'control-overlap')).toEqual([]);
    const row = universeUse(plan)[0]?.rows.find((r) => r.fixtureId !== rack);
    expect(row && placeProblem(plan, row, 'u1', 3)?.what).toContain('slots 1 to 6');
  });

  it('moves as a block, goes with its universe, and is not copied', () => {
    patch(rack, 1, 101);
    plan = applyChanges(plan, need(moveStretch(plan, rack, 1, 2, 7)));
    expect(recordOf(plan, 'box', rack)?.patch).toEqual({ universeId: 'u2', address: 7 });
    const twin = duplicateRecords(plan, new Set([rack]), { xMm: 500, yMm: 0 }, newId);
    const copies = recordsOf(applyChanges(plan, twin.changes), 'box').filter((b) => twin.copies.has(b.id));
    expect(copies.map((b) => b.patch)).toEqual([undefined]);
    const less = applyChanges(plan, removeUniverse(plan, 'u2'));
    expect(recordOf(less, 'box', rack)?.patch).toBeUndefined();
    plan = applyChanges(plan, need(setDimmerPatch(plan, rack, undefined)));
    expect(recordOf(plan, 'box', rack)?.patch).toBeUndefined();
  });

  it('control-line-universe: a dimmer on a line that carries another universe is a stop', () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    plan = r.b.plan();
    rack = add(RACK);
    patch(rack, 2, 1);
    const line = {
      id: 'l1',
      type: 'line' as const,
      label: 'L1',
      from: { recordId: 'd-D1', portId: 'out-1' },
      stops: [rack],
      routes: [],
      terminated: true,
    };
    plan = applyChanges(plan, { added: [line], updated: [], removed: [] });
    expect(rules()).toContain('stop control-line-universe');
    patch(rack, 1, 1);
    expect(rules()).not.toContain('stop control-line-universe');
  });

  it('tells a unit on a way the slot that dims it', () => {
    plan = samplePlugged();
    expect(words()).toBe('dimmed by DM1 way 2');
    patch(rack, 3, 101);
    expect(words()).toBe('dimmed by DM1 way 2, U3 102');
  });
});

const words = (): string => {
  const f = recordOf(plan, 'fixture', 'f1');
  return f ? controlBy(plan, f).words : '';
};

/** The first unit, without modes, on the rack's second way. */
const samplePlugged = (): Plan => {
  const way = waysOf(plan, rack)[1];
  const out = outletsOf(plan, rack).find((o) => o.wayId === way?.id);
  const inlet = inletsOf(plan, 'f1')[0];
  const kind = needKind('europe', 'flex-1-5-blue', 'cable');
  if (!out || !inlet) throw new Error('no way to plug');
  return applyChanges(
    plan,
    plug(plan, { recordId: rack, portId: out.id }, { recordId: 'f1', portId: inlet.id }, kind, newId),
  );
};

describe('dimmers in the patch as CSV', () => {
  const read = (text: string) => need(readPatchCsv(plan, text, 'list.csv'));
  const labelOf = (id: string): string => recordOf(plan, 'box', id)?.label ?? '';

  it('are rows with a slot a way, come back as they were and are moved by the list', () => {
    patch(rack, 3, 101);
    const text = writePatchCsv(plan);
    const row = text.split(/\r?\n/).find((l) => l.startsWith('3,101,'));
    expect(row?.split(',').slice(0, 5)).toEqual(['3', '101', '6', '106', labelOf(rack)]);
    expect(read(text)).toMatchObject({ bad: 0, changed: 0 });
    const moved = read(`unit,address\n${labelOf(rack)},U4 7`);
    plan = applyChanges(plan, moved.changes);
    expect(recordOf(plan, 'box', rack)?.patch?.address).toBe(7);
    expect(recordsOf(plan, 'universe').map((u) => u.number)).toContain(4);
    plan = applyChanges(plan, read(`unit,address\n${labelOf(rack)},`).changes);
    expect(recordOf(plan, 'box', rack)?.patch).toBeUndefined();
    plan = applyChanges(plan, read(text).changes);
    expect(recordOf(plan, 'box', rack)?.patch?.address).toBe(101);
  });

  it('are refused where they do not fit or are locked, and a knob is none', () => {
    const knob = add(KNOB);
    expect(writePatchCsv(plan)).not.toContain(`,${labelOf(knob)},`);
    expect(read(`unit,address\n${labelOf(rack)},1/508`).rows[0]?.problem).toMatch(/from 1 to 507/);
    expect(read(`unit,address\n${labelOf(knob)},1/1`).bad).toBe(1);
    const box = recordOf(plan, 'box', rack);
    if (box) plan = { ...plan, records: new Map(plan.records).set(rack, { ...box, locked: true }) };
    expect(read(`unit,address\n${labelOf(rack)},1/1`).rows[0]?.problem).toMatch(/^Dimmer .* is locked/);
  });

  it('are told from a unit of the same name by their kind', () => {
    const box = recordOf(plan, 'box', rack);
    const unit = recordsOf(plan, 'fixture')[0];
    if (!box || !unit) throw new Error('both are in the rig');
    plan = { ...plan, records: new Map(plan.records).set(rack, { ...box, label: unit.unit }) };
    patch(rack, 2, 11);
    expect(read(`unit,address\n${unit.unit},1/1`).bad).toBe(1);
    const text = writePatchCsv(plan);
    expect(read(text)).toMatchObject({ bad: 0, changed: 0 });
  });
});

describe('dimmers in the patch table', () => {
  it('are rows among the units, found by word and universe, with the slots of their ways', () => {
    patch(rack, 3, 101);
    const knob = add(KNOB);
    const rows = tableRows(plan, []);
    expect(rows.map((r) => r.id)).toEqual(
      expect.arrayContaining(recordsOf(plan, 'fixture').map((f) => f.id)),
    );
    expect(rows.some((r) => r.id === knob)).toBe(false);
    const row = rows.find((r) => r.id === rack);
    expect(row).toMatchObject({ universe: 3, address: 101, slots: 6, last: '106', patched: true });
    const shown = filterRows(rows, { query: 'dimmer u3', show: 'patched', universe: 3, sort: 'address' });
    expect(shown.map((r) => r.id)).toEqual([rack]);
  });
});
