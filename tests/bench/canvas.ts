import type { Browser, CDPSession, Page } from 'playwright';
import { serveHarness } from '../support/browser.ts';
import type {} from './canvas/main.tsx';
import { line, ms, quantile, ROUNDS, times } from './measure.ts';

const STEPS = 60;
/** Zooms: a room in the view, and nearly the whole plan. */
const ZOOMS = { near: 0.08, far: 0.012 } as const;
type Zoom = keyof typeof ZOOMS;
type What = 'drag' | 'pan';

const busyMs = async (cdp: CDPSession): Promise<number> => {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return (metrics.find((m) => m.name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
};

const frame = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => resolve(0))));

/** Milliseconds the page's main thread was busy for each step of a real mouse, one step per frame. */
const cost = async (
  page: Page,
  cdp: CDPSession,
  what: What,
  from: { x: number; y: number },
): Promise<number> => {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down({ button: what === 'pan' ? 'middle' : 'left' });
  await page.mouse.move(from.x + 8, from.y + 8);
  await frame(page);
  const before = await busyMs(cdp);
  for (let i = 0; i < STEPS; i++) {
    const turn = (i / STEPS) * Math.PI * 2;
    await page.mouse.move(from.x + 60 * Math.sin(turn), from.y + 60 * (1 - Math.cos(turn)));
    await frame(page);
  }
  const after = await busyMs(cdp);
  await page.mouse.up({ button: what === 'pan' ? 'middle' : 'left' });
  return (after - before) / STEPS;
};

/** Frames while dragging one unit and while panning, against a bare scene of the same primitives. */
export const benchCanvas = async (browser: Browser): Promise<void> => {
  const site = await serveHarness('bench/canvas');
  const seen = new Map<string, number[]>();
  let items = 0;
  for (let round = 0; round < ROUNDS; round++)
    for (const zoom of Object.keys(ZOOMS) as Zoom[])
      for (const bare of [false, true]) {
        const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
        await page.goto(site.url);
        await page.waitForFunction(() => 'ready' in window);
        const spot = await page.evaluate(([z, b]) => window.ready(z, b), [ZOOMS[zoom], bare] as const);
        items = spot.items;
        const cdp = await page.context().newCDPSession(page);
        await cdp.send('Performance.enable');
        for (let i = 0; i < 5; i++) await frame(page);
        for (const what of ['drag', 'pan'] as const) {
          const key = `${what} ${zoom} ${bare ? 'bare' : 'ours'}`;
          seen.set(key, [...(seen.get(key) ?? []), await cost(page, cdp, what, spot)]);
          if (what === 'drag' && !bare && !(await page.evaluate(() => window.movedFixture())))
            throw new Error('the drag moved nothing, so its cost says nothing');
        }
        await page.close();
        if (round === 0 && !bare) line(`canvas, ${zoom}: items in and around the view`, String(items));
      }
  for (const what of ['drag', 'pan'] as const)
    for (const zoom of Object.keys(ZOOMS) as Zoom[]) {
      const ours = quantile(seen.get(`${what} ${zoom} ours`) ?? []);
      const bare = quantile(seen.get(`${what} ${zoom} bare`) ?? []);
      line(
        `canvas, ${zoom}: ${what}, per frame`,
        ms(ours),
        `${times(ours / bare)} a bare scene’s ${ms(bare)}`,
      );
    }
  await site.close();
};
