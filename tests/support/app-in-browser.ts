import type { Browser } from 'playwright';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser, type Served, serveApp } from './browser.ts';

/** The built app served, and a browser beside it, for all stories of a file. Both are there once its tests run. */
export const appInBrowser = (): { readonly url: string; readonly browser: Browser } => {
  let site: Served | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    site = await serveApp();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });
  const there = <T>(x: T | undefined): T => {
    if (x === undefined) throw new Error('the app is served once the tests of this file run');
    return x;
  };
  return {
    get url() {
      return there(site).url;
    },
    get browser() {
      return there(browser);
    },
  };
};
