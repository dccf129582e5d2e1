import { describe, expect, it } from 'vitest';
import { listToCsv } from '../../../src/output/csv.ts';
import { allLists, LIST_NAMES } from '../../../src/papers/all-lists.ts';
import { EACH_SETUP, LIST_DOCS } from '../../../src/papers/list-columns.ts';
import { SHEET_CHOICES } from '../../../src/papers/sheet-kinds.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addIssue } from '../../../src/plan/edits/issue.ts';
import { type Plan, recordsOf, setupsOf } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const options = { revision: 'A', date: '', programVersion: '0' };
const listsOf = (plan: Plan) => allLists(plan, assess(plan, { revision: 0 }), options);
const demos = (['study', 'street', 'stage'] as const).map((d) => [d, demoPlan(d)] as const);

/** CSV after RFC 4180 read back by its grammar alone: fields, quotes doubled, CRLF. */
const readCsv = (text: string): readonly (readonly string[])[] => {
  const rows: string[][] = [];
  const field = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n)/y;
  let row: string[] = [];
  while (field.lastIndex < text.length) {
    const at = field.lastIndex;
    const m = field.exec(text);
    if (!m) throw new Error(`no field at ${at}: ${JSON.stringify(text.slice(at, at + 60))}`);
    const raw = m[1] ?? '';
    row.push(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw);
    if (m[2] === '\r\n') {
      rows.push(row);
      row = [];
    }
  }
  return rows;
};

describe('the lists of a plan', () => {
  it('are all documented, column by column in their order', () => {
    expect(LIST_DOCS.map((d) => d.name)).toEqual(LIST_NAMES);
    for (const [, plan] of demos) {
      const setups = setupsOf(plan).map((s) => [s.scene, s.name].filter(Boolean).join(' '));
      for (const list of listsOf(plan)) {
        const doc = LIST_DOCS.find((d) => d.name === list.name);
        expect(
          doc?.columns.flatMap((c) => (c.head === EACH_SETUP ? setups : [c.head])),
          list.name,
        ).toEqual(list.head);
        for (const c of doc?.columns ?? [])
          expect(c.meaning.length, `${list.name} ${c.head}`).toBeGreaterThan(3);
      }
    }
  });

  it('cover every sheet that is a list: none is on paper only', () => {
    const drawings = new Set(['plot', 'one-line', 'cards', 'unit-labels', 'cable-labels']);
    const covered = new Set(LIST_DOCS.map((d) => d.sheet));
    for (const s of SHEET_CHOICES) expect(drawings.has(s.id) !== covered.has(s.id), s.id).toBe(true);
    for (const d of LIST_DOCS) if (d.sheet) expect(SHEET_CHOICES.map((s) => s.id)).toContain(d.sheet);
  });

  it.each(demos)(
    'of the %s demo have as many cells in each row as in the head, and come back from CSV',
    (_, plan) => {
      for (const list of listsOf(plan)) {
        for (const row of list.rows) expect(row.length, list.name).toBe(list.head.length);
        const back = readCsv(listToCsv(list));
        expect(back.length, list.name).toBe(list.rows.length + 1);
        expect(back[0], list.name).toEqual(list.head);
        list.rows.forEach((row, r) => {
          row.forEach((v, c) => {
            const cell = back[r + 1]?.[c] ?? '';
            if (typeof v === 'number') expect(cell, list.name).toBe(Number.isFinite(v) ? String(v) : '');
            else expect(cell.replace(/^'(?=[=+\-@\t\r])/, ''), list.name).toBe(v);
            // Nothing a spreadsheet takes for a formula, whatever it is; a negative number is one.
            if (typeof v === 'string') expect(cell, list.name).not.toMatch(/^[=+\-@\t\r]/);
          });
        });
      }
    },
  );

  it('have figures as numbers: no cell of a column with a unit in its head is a text', () => {
    for (const [, plan] of demos)
      for (const list of listsOf(plan)) {
        list.head.forEach((head, c) => {
          if (!/ (m|W|VA|A|V|%|kg|L|kWh|min|dB|dBm|MHz|Hz|N|m\/s|m²|kbit\/s)$/.test(head)) return;
          for (const row of list.rows) expect(typeof row[c], `${list.name} ${head}`).toBe('number');
        });
      }
  });

  it('tell names that would be formulas as texts, in every list they stand in', () => {
    const evil = '=HYPERLINK("http://x";"y")';
    const plan = samplePlan();
    const bad = applyChanges(plan, {
      added: [],
      removed: [],
      updated: recordsOf(plan, 'fixture').map((from) => ({
        from,
        to: { ...from, use: evil, gel: '+1', channel: '-1', unit: `@${from.unit}` } as AnyRecord,
      })),
    });
    const text = listsOf(bad).map(listToCsv).join('');
    expect(text).toContain('HYPERLINK');
    expect(text).not.toMatch(/(^|,|\n)"?[=+@]/m);
    expect(text).not.toMatch(/(^|,|\n)"?-\D/m);
  });

  it('give crossings with what they take, and spares of cable as on the paper', () => {
    const plan = applyChanges(samplePlan(), {
      added: [
        {
          id: 'cr-1',
          type: 'crossing',
          floorId: 'fl-1',
          at: { xMm: 1000, yMm: 1000 },
          rotationDeg: 0,
          lengthMm: 2700,
          how: 'ramp',
          heightMm: 0,
          channels: 5,
        },
      ],
      updated: [],
      removed: [],
    });
    const lists = listsOf(plan);
    const crossings = lists.find((l) => l.name === 'crossings');
    expect(crossings?.rows[0]?.slice(0, 2)).toEqual(['ramp', recordsOf(plan, 'floor')[0]?.name]);
    expect(crossings?.rows[0]?.[4]).toBe(2.7);
    const cables = lists.find((l) => l.name === 'cables');
    for (const row of cables?.rows ?? []) {
      const [, , each, pieces, spare, order, all] = row as [
        string,
        string,
        number,
        number,
        number,
        number,
        number,
      ];
      expect(spare).toBe(Math.ceil(pieces / 10));
      expect(order).toBe(pieces + spare);
      expect(all).toBeCloseTo(each * order, 1);
    }
  });

  it('list what changed since the issue before, with the letters of both', () => {
    const plan = samplePlan();
    const made = addIssue(plan, { date: '2026-03-02', note: '', by: '' }, (p) => `${p}-1`);
    expect(made.issue.revision).toBe('A');
    const f = recordsOf(plan, 'fixture')[0];
    if (!f) throw new Error('the sample had units');
    const after = applyChanges(plan, {
      added: [],
      removed: [],
      updated: [{ from: f, to: { ...f, gel: 'CTO' } }],
    });
    const changes = allLists(after, assess(after, { revision: 0 }), {
      ...options,
      revision: 'B',
      since: { plan, revision: 'A' },
    }).find((l) => l.name === 'changes');
    expect(changes?.rows).toEqual([
      [
        'A',
        'B',
        'changed',
        `Unit ${f.unit} gel now CTO, was ${f.gel || 'none'}`,
        recordsOf(plan, 'floor')[0]?.name,
      ],
    ]);
  });

  it('name every source, outlet, box and piece of control gear once, and count all gear of the plan', () => {
    const plan = demoPlan('stage');
    const lists = listsOf(plan);
    const list = (name: string) => lists.find((l) => l.name === name);
    const placed = list('placed')?.rows.map((r) => r[0]);
    for (const type of ['source', 'outlet', 'box', 'device'] as const)
      for (const r of recordsOf(plan, type)) expect(placed?.filter((x) => x === r.label)).toEqual([r.label]);
    const counted = (list('gear')?.rows ?? []).reduce((n, r) => n + (r[0] === 'node' ? Number(r[2]) : 0), 0);
    const nodes = recordsOf(plan, 'device').filter(
      (d) => (plan.records.get(d.kindId) as { family?: string } | undefined)?.family === 'node',
    );
    expect(nodes.length).toBeGreaterThan(0);
    expect(counted).toBe(nodes.length);
  });
});
