import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDict, PDFDocument, PDFName, PDFRawStream, PDFStream } from 'pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { papersCommand } from '../../../src/cli/papers.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { type Plan, planRecord } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { readPdf } from '../../support/read-pdf.ts';

const fonts = paperFonts();
const demos = ['study', 'street', 'stage'] as const;

/** The same plan with nothing remembered of it. */
const afresh = (plan: Plan): Plan => {
  const read = readPlan(serialisePlan(plan));
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};
const filesOf = async (plan: Plan, date?: string) =>
  (
    await papersCommand(plan, assess(plan, { revision: 0 }), {
      fonts,
      date,
      programVersion: '0.1.0',
      formats: ['pdf', 'csv', 'xlsx', 'svg', 'dxf', 'plan'],
    })
  ).files;

const folder = mkdtempSync(join(tmpdir(), 'lampwright-pdf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const installed = (tool: string): boolean => spawnSync(tool, ['--version']).error === undefined;

describe.each(demos)('the papers of the %s demo as files', (name) => {
  let pdf: Uint8Array = new Uint8Array();
  const plan = demoPlan(name);
  beforeAll(async () => {
    pdf = (await filesOf(plan, '2026-03-09'))[0]?.bytes ?? pdf;
  }, 60_000);

  it('are the same bytes from the same plan and date, every format, and other bytes on another date', async () => {
    const [one, two] = [await filesOf(plan, '2026-03-09'), await filesOf(afresh(plan), '2026-03-09')];
    expect(one.map((f) => f.name)).toEqual(two.map((f) => f.name));
    for (const [i, f] of one.entries())
      expect(Buffer.compare(Buffer.from(f.bytes), Buffer.from(two[i]?.bytes ?? [])), f.name).toBe(0);
    const later = (await filesOf(plan, '2026-03-10'))[0]?.bytes ?? new Uint8Array();
    expect(Buffer.compare(Buffer.from(pdf), Buffer.from(later))).not.toBe(0);
    // No clock: neither this year's date nor this hour is in it.
    const { info } = await readPdf(pdf);
    expect(String(info.CreationDate)).toContain('20260309');
  }, 120_000);

  it('open in two independent readers with nothing amiss, with title, bookmarks and pages counted', async () => {
    const lib = await PDFDocument.load(pdf, { throwOnInvalidObject: true, updateMetadata: false });
    const js = await readPdf(pdf);
    expect(lib.getPageCount()).toBe(js.pages.length);
    lib.getPages().forEach((p, i) => {
      expect((p.getWidth() * 25.4) / 72).toBeCloseTo(js.pages[i]?.widthMm ?? 0, 2);
      expect((p.getHeight() * 25.4) / 72).toBeCloseTo(js.pages[i]?.heightMm ?? 0, 2);
    });
    const head = planRecord(plan);
    expect(lib.getTitle()).toBe(`${head.production} – ${head.title}`);
    expect(lib.getAuthor()).toBe(head.people['drawn-by']);
    expect(js.bookmarks.length).toBe(js.pages.length);
    js.pages.forEach((p, i) => {
      const sheet = js.bookmarks[i]?.split(' ')[0];
      // Labels have no title block; nothing else is without its number.
      expect(
        p.texts.some((t) => t.text === `${sheet}, ${i + 1} of ${js.pages.length}`),
        `page ${i + 1}`,
      ).toBe(true);
    });
  }, 60_000);

  it('have every font embedded and cut down to what is used', async () => {
    const lib = await PDFDocument.load(pdf, { throwOnInvalidObject: true, updateMetadata: false });
    const whole = fonts.regular.length + fonts.semibold.length;
    let fontBytes = 0;
    let descriptors = 0;
    for (const [, o] of lib.context.enumerateIndirectObjects()) {
      if (!(o instanceof PDFDict) || o.get(PDFName.of('Type')) !== PDFName.of('FontDescriptor')) continue;
      descriptors += 1;
      const file = lib.context.lookup(o.get(PDFName.of('FontFile2')));
      expect(file).toBeInstanceOf(PDFStream);
      if (file instanceof PDFRawStream) fontBytes += file.contents.length;
    }
    expect(descriptors).toBe(2);
    expect(fontBytes).toBeGreaterThan(1000);
    expect(fontBytes).toBeLessThan(whole / 3);
    for (const [, o] of lib.context.enumerateIndirectObjects())
      if (o instanceof PDFDict && o.get(PDFName.of('Subtype')) === PDFName.of('Type1'))
        throw new Error('a font that is not embedded');
  }, 60_000);

  it('have links from the index to every sheet and from every finding to its working, all to pages there are', async () => {
    const doc = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
    const reached = new Set<number>();
    let links = 0;
    for (let n = 1; n <= doc.numPages; n++)
      for (const a of await (await doc.getPage(n)).getAnnotations()) {
        if (a.subtype !== 'Link' || !Array.isArray(a.dest)) continue;
        const page = typeof a.dest[0] === 'number' ? a.dest[0] : await doc.getPageIndex(a.dest[0]);
        expect(page).toBeLessThan(doc.numPages);
        reached.add(page);
        links += 1;
      }
    await doc.destroy();
    const { bookmarks } = await readPdf(pdf);
    const first = (title: string): number => bookmarks.findIndex((b) => b.endsWith(title));
    for (const title of ['Lighting plot', 'Circuit schedule', 'Unit list', 'Gear list', 'Workings'])
      expect(reached.has(first(title)), title).toBe(true);
    expect(links).toBeGreaterThan(assess(plan, { revision: 0 }).findings.length);
  }, 60_000);

  it.runIf(installed('qpdf'))('are whole by qpdf', () => {
    const path = join(folder, `${name}.pdf`);
    writeFileSync(path, pdf);
    const r = spawnSync('qpdf', ['--check', path], { encoding: 'utf8' });
    expect(r.status, r.stdout + r.stderr).toBe(0);
    expect(r.stdout).toContain('No syntax or stream encoding errors found');
    expect(r.stdout + r.stderr).not.toContain('WARNING');
  });

  it.runIf(installed('mutool'))('draw in mutool without a word', () => {
    const path = join(folder, `${name}-m.pdf`);
    writeFileSync(path, pdf);
    const r = spawnSync('mutool', ['draw', '-q', '-F', 'txt', '-o', '/dev/null', path], { encoding: 'utf8' });
    expect(r.status, r.stderr).toBe(0);
    // How it was built is no matter of the file.
    expect(r.stderr.replace(/.*ICC support is not available.*/g, '')).not.toMatch(/warning|error|repair/i);
  });
});
