import type { Browser, CDPSession, Page } from 'playwright';
import { serveHarness } from '../support/browser.ts';
import type {} from './canvas/main.tsx';
import { line, ms, quantile, ROUNDS, times } from './measure.ts';

const STEPS = 60;
/** Zooms: a room in the view, and nearly the whole plan. */
const ZOOMS = { near: 0.08, far: 0.012 } as const;
type Zoom = keyof typeof ZOOMS;
const WHAT = ['drag', 'pan', 'zoom'] as const;
type What = (typeof WHAT)[number];

const busyMs = async (cdp: CDPSession): Promise<number> => {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return (metrics.find((m) => m.name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
};

const frame = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => resolve(0))));

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Milliseconds the page's main thread was busy for each step, one step per frame. */
const perStep = async (page: Page, cdp: CDPSession, step: (i: number) => Promise<void>): Promise<number> => {
  const before = await busyMs(cdp);
  for (let i = 0; i < STEPS; i++) {
    await step(i);
    await frame(page);
  }
  return ((await busyMs(cdp)) - before) / STEPS;
};

/** The cost of one step of a real mouse or wheel. */
const cost = async (page: Page, cdp: CDPSession, what: What, from: Spot): Promise<number> => {
  await page.mouse.move(from.x, from.y);
  if (what === 'zoom') {
    await page.mouse.wheel(0, 1);
    await frame(page);
    // In and out again by a quarter, four times.
    return perStep(page, cdp, (i) => page.mouse.wheel(0, i % 14 < 7 ? -20 : 20));
  }
  const button = what === 'pan' ? 'middle' : 'left';
  await page.mouse.down({ button });
  await page.mouse.move(from.x + 8, from.y + 8);
  await frame(page);
  const found = await perStep(page, cdp, (i) => {
    const turn = (i / STEPS) * Math.PI * 2;
    return page.mouse.move(from.x + 60 * Math.sin(turn), from.y + 60 * (1 - Math.cos(turn)));
  });
  await page.mouse.up({ button });
  return found;
};

const openPage = async (browser: Browser, url: string): Promise<Page> => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(url);
  await page.waitForFunction(() => 'bench' in window);
  return page;
};

const cdpOf = async (page: Page): Promise<CDPSession> => {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  return cdp;
};

/** Frames while dragging, panning and zooming, and the first paint, against a bare scene of the same primitives. */
export const benchCanvas = async (browser: Browser): Promise<void> => {
  const site = await serveHarness('bench/canvas');
  const seen = new Map<string, number[]>();
  const note = (key: string, value: number): void => {
    seen.set(key, [...(seen.get(key) ?? []), value]);
  };
  for (let round = 0; round < ROUNDS; round++) {
    for (const zoom of Object.keys(ZOOMS) as Zoom[])
      for (const bare of [false, true]) {
        const page = await openPage(browser, site.url);
        const spot = await page.evaluate(([z, b]) => window.bench.ready(z, b), [ZOOMS[zoom], bare] as const);
        const cdp = await cdpOf(page);
        for (let i = 0; i < 5; i++) await frame(page);
        for (const what of WHAT) {
          note(`${what} ${zoom} ${bare ? 'bare' : 'ours'}`, await cost(page, cdp, what, spot));
          if (what === 'drag' && !bare && !(await page.evaluate(() => window.bench.moved())))
            throw new Error('the drag moved nothing, so its cost says nothing');
        }
        await page.close();
        if (round === 0 && !bare)
          line(
            `canvas, ${zoom}: items in and around the view`,
            String(spot.items),
            `of ${spot.placed} things on the floor, labels on`,
          );
      }
    for (const bare of [false, true]) {
      const page = await openPage(browser, site.url);
      note(`first ${bare ? 'bare' : 'ours'}`, await page.evaluate((b) => window.bench.firstPaint(b), bare));
      await page.close();
    }
  }
  const against = (name: string, key: string, per: string): void => {
    const [ours, bare] = [quantile(seen.get(`${key} ours`) ?? []), quantile(seen.get(`${key} bare`) ?? [])];
    line(`canvas, ${name}`, ms(ours), `${times(ours / bare)} ${per} ${ms(bare)}`);
  };
  for (const what of WHAT)
    for (const zoom of Object.keys(ZOOMS) as Zoom[])
      against(`${zoom}: ${what}, per frame`, `${what} ${zoom}`, 'a bare scene’s');
  against('first paint of the geometry, from its text', 'first', 'parsing and drawing a bare scene,');
  await benchTable(browser, site.url);
  await site.close();
};

/** Scrolling the table of everything, by the wheel. */
const benchTable = async (browser: Browser, url: string): Promise<void> => {
  const page = await openPage(browser, url);
  const { rows } = await page.evaluate(() => window.bench.table());
  const grid = page.getByRole('grid', { name: 'Floor table' });
  await grid.hover();
  const cdp = await cdpOf(page);
  const found = await perStep(page, cdp, () => page.mouse.wheel(0, 240));
  line('table: one step of scrolling', ms(found), `${rows} things`);
  await page.close();
};
