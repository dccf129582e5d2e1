import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { demoPlans } from '../../demo-sets/index.ts';
import { paperFile } from '../../src/output/paper-file.ts';
import type { PaperFonts } from '../../src/output/pdf.ts';
import { readPlan } from '../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import { kilobytes, line, ms, quantile, timed } from './measure.ts';

const font = (path: string): Uint8Array =>
  readFileSync(createRequire(import.meta.url).resolve(`@expo-google-fonts/source-sans-3/${path}`));

const fonts: PaperFonts = {
  regular: font('400Regular/SourceSans3_400Regular.ttf'),
  semibold: font('600SemiBold/SourceSans3_600SemiBold.ttf'),
};
const options = { revision: 'A', date: '', programVersion: '0' };

/** The same plan without what is remembered of it, so that nothing is at hand from the round before. */
const fresh = (plan: Plan): Plan => ({ ...plan, records: new Map(plan.records) });

const SETS = 3;

/** Milliseconds of processor time of this process. */
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** A full set made from nothing but the plan: figures, pages, file. Processor time too, as the machine may be busy. */
const fullSet = (name: string, plan: Plan): void => {
  let bytes = 0;
  let pages = 0;
  let peak = 0;
  const wall: number[] = [];
  const cpu: number[] = [];
  for (let round = 0; round < SETS; round++) {
    const own = fresh(plan);
    const before = cpuMs();
    wall.push(
      timed(() => {
        const file = paperFile(own, assess(own, { revision: 0 }), options, fonts);
        pages = file.pages;
        bytes = file.bytes?.length ?? 0;
      }),
    );
    cpu.push(cpuMs() - before);
    peak = Math.max(peak, process.memoryUsage().rss);
  }
  line(
    `${name}: full set, ${recordsOf(plan, 'fixture').length} fixtures, ${pages} pages`,
    ms(quantile(wall)),
    `${ms(quantile(cpu))} of processor, ${kilobytes(bytes / Math.max(1, pages))} a page, memory at most ${Math.round(peak / 2 ** 20)} MB`,
  );
};

/** Full sets of papers: those of the demos, and of the large plan. */
export const benchPapers = (plan: Plan): void => {
  for (const demo of demoPlans) {
    const read = readPlan(
      readFileSync(new URL(`../../demo-sets/${demo.slug}.plan.json`, import.meta.url), 'utf8'),
    );
    if (read.ok) fullSet(demo.slug, read.value.plan);
  }
  fullSet('large', plan);
};
