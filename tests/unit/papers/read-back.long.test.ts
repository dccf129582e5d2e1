import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import { LEG_QUANTITIES, largestLegA, readerOf } from '../../../src/papers/figures.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { drawnFloors } from '../../../src/papers/sheet-kinds.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { kindOf, type Plan, recordsOf, setupsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { universeUse } from '../../../src/report/control.ts';
import { largePlan } from '../../bench/large-plan.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { type PdfPage, type PdfText, readPdf } from '../../support/read-pdf.ts';

const folder = new URL('../../../demo-sets/', import.meta.url);
const demo = (file: string): Plan => {
  const read = readPlan(readFileSync(new URL(file, folder), 'utf8'), file);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};
const plans: readonly (readonly [string, () => Plan])[] = [
  ...readdirSync(folder)
    .filter((f) => f.endsWith('.plan.json'))
    .map((f) => [f, () => demo(f)] as const),
  ['600 fixtures', () => largePlan(600, 3)],
];

type Row = readonly string[];

/** Texts of a page by the line they stand on, from left to right, the frame and what is below the list left out. */
const rowsOf = (page: PdfPage): readonly Row[] => {
  const lines = new Map<number, PdfText[]>();
  for (const t of page.texts) {
    if (
      t.text.trim() === '' ||
      t.xMm < 20.5 ||
      t.xMm > page.widthMm - 10.5 ||
      t.yMm < 10 ||
      t.yMm > page.heightMm - 66
    )
      continue;
    const y = Math.round(t.yMm * 20);
    const key = [y, y - 1, y + 1].find((k) => lines.has(k)) ?? y;
    lines.set(key, [...(lines.get(key) ?? []), t]);
  }
  return [...lines]
    .sort(([a], [b]) => a - b)
    .map(([, texts]) => texts.sort((a, b) => a.xMm - b.xMm).map((t) => t.text));
};

interface ReadBack {
  readonly plan: Plan;
  readonly setupId: string | undefined;
  readonly assessment: ReturnType<typeof assess>;
  readonly rows: (sheet: string) => readonly Row[];
  readonly pages: (sheet: string) => readonly PdfPage[];
}

/** The papers as they come back from the file, by sheet. */
const readBack = async (plan: Plan): Promise<ReadBack> => {
  const assessment = assess(plan, { revision: 0 });
  const set = paperSet(plan, assessment, {
    revision: 'A',
    date: '',
    programVersion: '0',
    sheets: ['plot', 'circuits', 'patch', 'legs'],
  });
  const read = await readPdf(pagesToPdf(set.pages, paperFonts(), { title: 't', subject: '', author: '' }));
  const pages = (sheet: string): readonly PdfPage[] =>
    read.pages.filter((_, i) => set.pages[i]?.title.replace(/^E-\d+ /, '') === sheet);
  return {
    plan,
    setupId: setupsOf(plan)[0]?.id,
    assessment,
    pages,
    rows: (sheet) => pages(sheet).flatMap(rowsOf),
  };
};

const counted = (list: readonly string[]): Readonly<Record<string, number>> => {
  const out: Record<string, number> = {};
  for (const x of list) out[x] = (out[x] ?? 0) + 1;
  return out;
};

describe.each(plans)('%s, its papers read back from the PDF', (_, make) => {
  const whole = readBack(make());

  it('has one row in the patch sheet for each place a unit takes, with its address', async () => {
    const { plan, rows } = await whole;
    const expected = universeUse(plan).flatMap((u) =>
      u.rows.map(
        (r) =>
          `${u.number} ${r.address} ${r.last} ${recordsOf(plan, 'fixture').find((f) => f.id === r.fixtureId)?.unit ?? ''}`,
      ),
    );
    const printed = rows('Patch sheet').flatMap((row) => {
      const at = /^U(\d+) (\d+)$/.exec(row[0] ?? '');
      return at ? [`${at[1]} ${at[2]} ${row[1]} ${row[3]}`] : [];
    });
    expect(printed.sort()).toEqual(expected.sort());
  });

  it('has one row in the circuit schedule for each load that is plugged in, with its watts', async () => {
    const { assessment, rows, setupId, plan } = await whole;
    const r = readerOf(assessment, setupId);
    const loads = assessment.entities.filter((e) => e.what === 'load' && e.sourceId !== undefined);
    const unitOf = (recordId: string): string | undefined => {
      const ballast = recordsOf(plan, 'ballast').find((b) => b.id === recordId);
      return recordsOf(plan, 'fixture').find((f) => f.id === (ballast?.fixtureId ?? recordId))?.unit;
    };
    const expected = loads.flatMap((e) => {
      const unit = unitOf(e.recordId);
      const w = r.here(e.key, 'loadW');
      return unit === undefined ? [] : [`${unit} ${Number.isFinite(w) ? w.toFixed(0) : '–'}`];
    });
    const units = new Set(recordsOf(plan, 'fixture').map((f) => f.unit));
    const names = [...new Set(recordsOf(plan, 'fixture').map((f) => kindOf(plan, f.kindId)?.name ?? ''))];
    const isName = (t: string | undefined): boolean =>
      t !== undefined && t.length > 4 && names.some((n) => n.startsWith(t.replace(/,$/, '')));
    // Unit, name, …, watts, power factor, volt-amperes, amps: the power factor is the figure with two places.
    const printed = rows('Circuit schedule').flatMap((whole) => {
      // The reader joins a number and the name after it where they are of one size and close.
      const row = whole.flatMap((t) => {
        const at = /^(\S+) (.+)$/.exec(t);
        return at && units.has(at[1] ?? '') && isName(at[2]) ? [at[1] ?? '', at[2] ?? ''] : [t];
      });
      const unit = row.findIndex((t, i) => units.has(t) && isName(row[i + 1]));
      const pf = row.findIndex(
        (t, i) => i > unit + 1 && /^(\d\.\d\d|–)$/.test(t) && /^[\d–]+$/.test(row[i + 1] ?? ''),
      );
      return unit >= 0 && pf > 0 ? [`${row[unit]} ${row[pf - 1]}`] : [];
    });
    expect(counted(printed)).toEqual(counted(expected));
  });

  it('prints for every source and box the watts and the amps of each leg that were computed', async () => {
    const { assessment, rows, setupId } = await whole;
    const r = readerOf(assessment, setupId);
    const list = rows('Circuit schedule');
    const owners = assessment.entities.filter((e) => e.what === 'source' || e.what === 'box');
    // Copies of a plan side by side have boxes of the same name: all of a name are held against all rows of it.
    const expected = owners.flatMap((e) => [
      `${e.label} ${r.here(e.key, 'loadW').toFixed(0)} W`,
      ...e.legs.map((l) => {
        const q = LEG_QUANTITIES[l] ?? 'leg0A';
        return `${e.label} ${r.here(e.key, q).toFixed(1)} ${r.worst(e.key, q).toFixed(1)} A`;
      }),
    ]);
    const printed = list.flatMap((row) => {
      const all = row.findIndex((t) => t.startsWith('All of '));
      if (all >= 0) return [`${row[all]?.slice(7)} ${row[all + 1]} W`];
      const leg = row.findIndex((t) => /^Leg \S+ at /.test(t));
      return leg >= 0 ? [`${row[leg]?.replace(/^Leg \S+ at /, '')} ${row[leg + 1]} ${row[leg + 2]} A`] : [];
    });
    const shown = new Set(printed.map((t) => t.split(' ')[0]));
    expect(counted(printed)).toEqual(counted(expected.filter((t) => shown.has(t.split(' ')[0]))));
    expect(shown.size).toBeGreaterThan(0);
    expect(Math.max(...owners.map((e) => largestLegA(r, e, 'worst')))).toBeGreaterThan(0);
  });

  it('draws one symbol for each unit on the plot of its floor', async () => {
    const { plan, pages } = await whole;
    const [plot, ...more] = pages('Lighting plot');
    const floors = drawnFloors(plan);
    // A plot in parts shows what lies in the overlap on both; one of several setups draws again what moves.
    if (!plot || more.length > 0 || floors.length !== 1) return;
    const drawn = (
      ['fixture', 'box', 'source', 'outlet', 'ballast', 'device', 'charger', 'mark'] as const
    ).reduce((n, type) => n + recordsOf(plan, type).filter((r) => !r.hidden).length, 0);
    expect(plot.forms).toBeGreaterThanOrEqual(drawn);
    const numbers = new Set(plot.texts.map((t) => t.text));
    for (const f of recordsOf(plan, 'fixture')) expect(numbers.has(f.unit), f.unit).toBe(true);
  });
});

describe('reading back', () => {
  it('sees a row that is missing', async () => {
    const plan = demo('street.plan.json');
    const { rows } = await readBack(plan);
    const printed = rows('Patch sheet').filter((row) => /^U\d+ \d+$/.test(row[0] ?? ''));
    const first = recordsOf(plan, 'fixture').find((f) => f.patch);
    const without: Plan = {
      ...plan,
      records: new Map([...plan.records].filter(([id]) => id !== first?.id)),
    };
    const less = await readBack(without);
    expect(less.rows('Patch sheet').filter((row) => /^U\d+ \d+$/.test(row[0] ?? '')).length).toBeLessThan(
      printed.length,
    );
  });
});

/** Readers of other makers that may be on this machine; where they are not, only pdf.js reads the file back. */
const has = (command: string, ...args: readonly string[]): boolean =>
  spawnSync(command, args, { stdio: 'ignore' }).error === undefined;

describe('other readers', () => {
  const bytes = (): Uint8Array => {
    const plan = demo('street.plan.json');
    const set = paperSet(plan, assess(plan, { revision: 0 }), {
      revision: 'A',
      date: '',
      programVersion: '0',
    });
    return pagesToPdf(set.pages, paperFonts(), { title: 't', subject: '', author: '' });
  };
  const inFile = <T>(use: (path: string) => T): T => {
    const dir = mkdtempSync(join(tmpdir(), 'papers-'));
    try {
      const path = join(dir, 'set.pdf');
      writeFileSync(path, bytes());
      return use(path);
    } finally {
      rmSync(dir, { recursive: true });
    }
  };

  it.skipIf(!has('qpdf', '--version'))('qpdf finds nothing to repair', () => {
    const r = inFile((path) => spawnSync('qpdf', ['--check', path], { encoding: 'utf8' }));
    expect(r.stderr).toBe('');
    expect(r.status).toBe(0);
  });

  it.skipIf(!has('mutool', '-v'))('mutool opens it without repair and reads the same sums', () => {
    const plan = demo('street.plan.json');
    const a = assess(plan, { revision: 0 });
    const r = inFile((path) =>
      spawnSync('mutool', ['draw', '-F', 'text', path], { encoding: 'utf8', maxBuffer: 1 << 28 }),
    );
    expect(r.stderr).not.toMatch(/repair|error/i);
    const read = readerOf(a, setupsOf(plan)[0]?.id);
    for (const e of a.entities.filter((x) => x.what === 'source'))
      expect(r.stdout).toContain(read.here(e.key, 'loadW').toFixed(0));
    expect(r.stdout).toContain('Circuit schedule');
  });
});
