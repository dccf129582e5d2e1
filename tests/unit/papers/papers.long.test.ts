import { describe, expect, it } from 'vitest';
import { panelsOf } from '../../../src/papers/circuit-rows.ts';
import { readerOf } from '../../../src/papers/figures.ts';
import { circuitList, gearList } from '../../../src/papers/lists.ts';
import type { Page, PaperSet } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { acknowledge } from '../../../src/plan/edits/document.ts';
import { type Plan, planRecord } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const options = { revision: 'A', date: '2026-03-09', programVersion: '0.1.0' };
const papers = (plan: Plan, setupId?: string) =>
  paperSet(plan, assess(plan, { revision: 1 }), { ...options, setupId });
const change = (plan: Plan, id: string, patch: Record<string, unknown>): Plan => {
  const from = plan.records.get(id);
  if (!from) throw new Error(`no record ${id}`);
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, ...patch } as AnyRecord }],
  });
};
const onPaper = (plan: Plan, sheet: string, landscape = true): Plan =>
  change(plan, 'plan', { paper: { ...planRecord(plan).paper, sheet, landscape } });
const sheet = (set: PaperSet, title: string): Page =>
  set.pages.find((p) => p.title.endsWith(title)) ?? { title: '', widthMm: 0, heightMm: 0, items: [] };
const words = (plan: Plan, title = 'Lighting plot'): string[] =>
  papers(plan)
    .pages.filter((p) => p.title.endsWith(title))
    .flatMap(textsOf)
    .map((t) => t.text);

describe('every sheet', () => {
  it.each([
    ['ANSI B', true],
    ['A3', true],
    ['A4', false],
    ['A4', true],
    ['ANSI A', true],
    ['ARCH D', true],
    ['A3', false],
  ] as const)('of %s (landscape %s): no text touches another', (sheet, landscape) => {
    for (const page of papers(onPaper(samplePlan(), sheet, landscape)).pages)
      expect(touchingTexts(page), page.title).toEqual([]);
  });

  it('carries its number, the status and a caution', () => {
    const set = papers(samplePlan());
    set.pages.forEach((page, i) => {
      const all = textsOf(page).map((t) => t.text);
      expect(all).toContain(`E-${i + 1}, ${i + 1} of ${set.pages.length}`);
      expect(all).toContain('For review: 1 stop open');
      expect(all.join(' ')).toContain('A planning aid, not an electrical design.');
    });
  });

  it('says “for review” with the stops counted, whether or not a person noted them as known', () => {
    const plan = samplePlan();
    const stop = assess(plan, { revision: 1 }).findings.find((f) => f.severity === 'stop');
    if (!stop) throw new Error('the sample plan has lost its stop');
    const noted = applyChanges(
      plan,
      acknowledge(
        plan,
        { findingId: stop.id, severity: 'stop', reason: 'being changed', who: 'A. B.', when: '2026-03-09' },
        () => 'ak-1',
      ),
    );
    expect(assess(noted, { revision: 1 }).findings.find((f) => f.id === stop.id)?.acknowledged).toBeDefined();
    expect(words(noted)).toContain('For review: 1 stop open');
  });

  it('never says that anything is safe or compliant', () => {
    for (const page of papers(samplePlan()).pages)
      expect(
        textsOf(page)
          .map((t) => t.text)
          .join(' '),
      ).not.toMatch(/\b(safe|compliant|complies|permitted to energi[sz]e)\b/i);
  });

  it('has no text smaller than 1.8 mm', () => {
    for (const page of papers(samplePlan()).pages)
      for (const t of textsOf(page)) expect(t.capMm, t.text).toBeGreaterThanOrEqual(1.8);
  });
});

describe('the circuit schedule', () => {
  const plan = samplePlan();
  const assessment = assess(plan, { revision: 1 });
  const r = readerOf(assessment, 'su-1');

  it('lists every load that is plugged in once', () => {
    const listed = panelsOf(plan, r).flatMap((p) =>
      p.circuits.flatMap((c) => c.loads.map((l) => l.load.key)),
    );
    const fed = assessment.entities
      .filter((e) => e.what === 'load' && e.sourceId !== undefined)
      .map((e) => e.key);
    expect([...listed].sort()).toEqual([...fed].sort());
  });

  it('adds up: loads to their way, ways to their box and source', () => {
    for (const p of panelsOf(plan, r)) {
      let panelW = 0;
      for (const c of p.circuits) {
        const rows = [
          ...c.loads.map((l) => r.here(l.load.key, 'loadW')),
          ...c.boxes.map((b) => r.here(b.box.key, 'loadW')),
        ];
        const sum = rows.reduce((a, b) => a + b, 0);
        expect(sum).toBeCloseTo(r.here(c.way.key, 'loadW'), 6);
        panelW += sum;
      }
      expect(panelW).toBeCloseTo(r.here(p.owner.key, 'loadW'), 6);
    }
  });

  it('prints those sums', () => {
    const all = words(plan, 'Circuit schedule');
    expect(all).toContain(String(Math.round(r.here('bx-1', 'loadW'))));
    expect(all).toContain(r.worst('bx-1', 'leg0A').toFixed(1));
  });

  it.each(['su-1', 'su-2'])('prints each load’s own figures in its row, for setup %s', (setupId) => {
    const rs = readerOf(assessment, setupId);
    const pages = papers(plan, setupId)
      .pages.filter((p) => p.title.includes('Circuit schedule'))
      .map(textsOf);
    for (const p of panelsOf(plan, rs)) {
      for (const { load, fixture } of p.circuits.flatMap((c) => c.loads)) {
        // Numerals of zones stand alone; a unit number has a whole row beside it.
        const row =
          pages
            .flatMap((own) =>
              own
                .filter((t) => t.text === fixture?.unit && t.align === 'center')
                .map((u) => own.filter((t) => Math.abs(t.yMm - u.yMm) < 0.01 && t.align !== 'center')),
            )
            .map((own) => own.map((t) => t.text))
            .find((own) => own.length > 5) ?? [];
        const largest = (which: 'here' | 'worst') =>
          Math.max(...(['leg0A', 'leg1A', 'leg2A'] as const).map((q) => rs[which](load.key, q))).toFixed(1);
        const index = assessment.setups.findIndex((s) => s.id === setupId);
        expect(row, load.label).toContain(assessment.figures.get(load.key, 'loadW', index).toFixed(0));
        expect(row, load.label).toContain(largest('here'));
        expect(row, load.label).toContain(largest('worst'));
        const volts = rs.worst(load.key, 'voltsV');
        if (Number.isFinite(volts)) {
          expect(row, load.label).toContain(volts.toFixed(1));
          expect(row, load.label).toContain(`${rs.worst(load.key, 'dropPct').toFixed(1)} %`);
        } else expect(row.filter((t) => t.endsWith(' %'))).toEqual([]);
      }
    }
  });

  it('leaves a box to write in where volts are not known, and never a figure', () => {
    const rows = circuitList(plan, assessment, 'su-1');
    const volts = rows.head.indexOf('volts worst');
    const house = rows.rows.filter((row) => row[0] === 'House panel');
    expect(house.length).toBe(2);
    for (const row of house) expect(row[volts]).toBeNaN();
    expect(words(plan, 'Circuit schedule').join(' ')).toContain('house volts not known: measure');
  });

  it('puts every finding into words, with its number at the circuit', () => {
    const pages = papers(plan)
      .pages.filter((p) => p.title.includes('Circuit schedule'))
      .flatMap((p) => textsOf(p).map((t) => t.text));
    for (const f of assessment.findings) {
      expect(
        pages.some((t) => t.endsWith(` ${f.number}`)),
        f.number,
      ).toBe(true);
      expect(pages.join(' ')).toContain(findingText(plan, f).head.slice(0, 40));
    }
  });

  it('repeats the heading and the head of the table on every further page', () => {
    // A hundred and twenty more units on the box: the schedule runs over several sheets.
    const fixture = plan.records.get('fx-09');
    const cable = [...plan.records.values()].find((c) => c.type === 'cable' && c.to.recordId === 'fx-09');
    if (fixture?.type !== 'fixture' || cable?.type !== 'cable') throw new Error('the sample has unit 9');
    const added = Array.from({ length: 120 }, (_, i): AnyRecord[] => [
      { ...fixture, id: `fx-x${i}`, unit: String(100 + i), support: { on: 'rigged' } },
      { ...cable, id: `cb-x${i}`, to: { recordId: `fx-x${i}`, portId: cable.to.portId } },
    ]).flat();
    const big = applyChanges(plan, { added, removed: [], updated: [] });
    const set = papers(big);
    const schedules = set.pages
      .filter((p) => p.title.includes('Circuit schedule'))
      .map((p) => textsOf(p).map((t) => t.text));
    expect(schedules.length).toBeGreaterThan(3);
    const continued = schedules.filter((t) => t.includes('K1 (continued)'));
    expect(continued.length).toBeGreaterThanOrEqual(2);
    for (const t of continued) expect(t).toContain('Unit and use');
    const units = schedules.flat().filter((t) => /^1\d\d$|^2[01]\d$/.test(t));
    for (let n = 100; n < 220; n++) expect(units).toContain(String(n));
    for (const page of set.pages) expect(touchingTexts(page), page.title).toEqual([]);
    // All of them stand on one spot: the plot leaves out what it cannot write and says how many.
    const caption = textsOf(sheet(set, 'Lighting plot'))
      .map((t) => t.text)
      .join(' ');
    expect(caption).toMatch(/\d+ of 134 units? without room for a number/);
  });
});

describe('the plot', () => {
  const scaled = (scale: number): Plan =>
    change(samplePlan(), 'plan', { paper: { sheet: 'ANSI B', landscape: true, scale } });

  it('takes the scale that is asked for when it fits', () => {
    expect(
      words(change(samplePlan(), 'plan', { paper: { sheet: 'ANSI D', landscape: true, scale: 48 } })),
    ).toContain('Scale ¼″ = 1′-0″');
  });

  it('comes in parts with match marks where it does not fit on one sheet, every unit on one of them', () => {
    const set = papers(scaled(24));
    expect(set.notices.join(' ')).toMatch(/does not fit on one sheet.*in \d+ parts with match marks/);
    const parts = set.pages.filter((p) => p.title.endsWith('Lighting plot'));
    expect(parts.length).toBeGreaterThan(3);
    const numbers = new Set<string>();
    for (const p of parts) {
      const all = textsOf(p).map((t) => t.text);
      expect(all).toContain('Scale ½″ = 1′-0″');
      expect(all.filter((t) => t.startsWith('Match line: part ')).length).toBeGreaterThan(0);
      for (const t of textsOf(p)) if (t.align === 'center' && t.capMm > 1.9) numbers.add(t.text);
      expect(touchingTexts(p), p.title).toEqual([]);
    }
    for (let n = 1; n <= 14; n++) expect(numbers).toContain(String(n));
  });

  it('names on each match line the sheet that shows the other side, and that one names it back', () => {
    const parts = papers(scaled(24)).pages.filter((p) => p.title.endsWith('Lighting plot'));
    const leads = new Map(
      parts.map((p) => [
        p.title.split(' ')[0],
        textsOf(p).flatMap((t) => /^Match line: part \S+, sheet (\S+)$/.exec(t.text)?.[1] ?? []),
      ]),
    );
    let pairs = 0;
    for (const [from, list] of leads)
      for (const to of list) {
        expect(leads.get(to), `${from} to ${to}`).toContain(from);
        pairs++;
      }
    expect(pairs).toBeGreaterThan(7);
  });

  it('is drawn smaller where it would take too many sheets, and says so', () => {
    expect(papers(scaled(4)).notices.join(' ')).toMatch(/as asked the plot would take \d+ sheets.*drawn at/);
    expect(words(scaled(4))).toContain('Scale 3/16″ = 1′-0″');
  });

  it('counts the gear in its key', () => {
    const all = words(samplePlan());
    expect(all).toContain('All units, rated input');
    const gear = gearList(samplePlan()).rows.filter((row) => row[0] === 'fixture');
    expect(gear.reduce((n, row) => n + Number(row[2]), 0)).toBe(14);
    expect(all.filter((t) => t === '14').length).toBeGreaterThanOrEqual(2);
  });

  it('tags a stop at the box it is about', () => {
    expect(words(samplePlan())).toContain('STOP F1');
  });

  it('shows the setup asked for', () => {
    const set = papers(samplePlan(), 'su-2');
    expect(textsOf(sheet(set, 'Lighting plot')).map((t) => t.text)).toContain('Plan, setup 12C night');
  });

  it('stays whole on a floor where nothing is drawn', () => {
    const plan = samplePlan();
    const head = plan.records.get('plan');
    const floor = plan.records.get('fl-1');
    const setup = plan.records.get('su-1');
    const bare: Plan = {
      ...plan,
      records: new Map([head, floor, setup].flatMap((r) => (r ? [[r.id, r] as const] : []))),
    };
    const set = papers(bare);
    expect(textsOf(sheet(set, 'Lighting plot')).map((t) => t.text)).toContain(
      'Nothing is drawn on this floor.',
    );
  });
});

describe('names a person might type', () => {
  const name = `${'Very long production name '.repeat(16)}end`;

  it('are cut with an ellipsis where they do not fit, and the notices say so', () => {
    let plan = change(samplePlan(), 'plan', { production: name, owner: name, scene: name });
    plan = change(plan, 'fx-07', { use: name });
    plan = change(plan, 'mk-1', { name });
    plan = change(plan, 'bx-1', { label: name });
    const set = papers(plan);
    expect(set.notices.join(' ')).toMatch(/too long/);
    for (const page of set.pages) {
      expect(touchingTexts(page), page.title).toEqual([]);
      for (const t of textsOf(page)) expect(t.text).not.toContain(name);
    }
  });

  it('in scripts the font lacks print as a mark and are listed', () => {
    let plan = change(samplePlan(), 'plan', { production: '灯光 🎬 <b>x</b>' });
    plan = change(plan, 'fx-07', { use: 'שלום' });
    const set = papers(plan);
    expect(words(plan)).toContain('□□ □ <b>x</b>');
    expect(words(plan)).toContain('□□□□');
    expect(set.notices.join(' ')).toContain('U+706F');
    expect(set.notices.join(' ')).toContain('U+05E9');
  });
});
