import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';
import { CELL_BAR, fixtureFile } from '../support/fixture-files.ts';

const app = appInBrowser();

test('kinds from a fixture file, a list and the form join the own book, are placed, and are there the next day', async () => {
  const context = await app.browser.newContext({
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Study, day');
  await page.getByRole('button', { name: 'Gear', exact: true }).click();

  // A broken file is refused with words, a good one is looked at before it is kept.
  await page.getByRole('button', { name: 'Import…' }).click();
  const file = page.getByLabel('File with kinds');
  await file.setInputFiles({
    name: 'torn.gdtf',
    mimeType: 'application/zip',
    buffer: Buffer.from('PK not a zip'),
  });
  await page.getByRole('alert').waitFor();
  await file.setInputFiles({
    name: 'bar.gdtf',
    mimeType: 'application/zip',
    buffer: Buffer.from(fixtureFile(CELL_BAR)),
  });
  await page.locator('.import-kind').waitFor();
  expect(await page.locator('.import-kind').textContent()).toContain('14');
  await page.getByRole('button', { name: /^Keep 1 in the own book/ }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });

  // A list with one good row and one bad one.
  await page.getByRole('button', { name: 'Import…' }).click();
  await page.getByLabel('File with kinds').setInputFiles({
    name: 'kinds.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(
      'name,watts,power factor,mass kg,length mm,width mm,mount\nSoft square, 250 W light,250,0.95,8,150,600,spigot-28\n"Soft square, 90 W",many,0.9,4,120,300,pin-16\n"Soft square, 80 W",80,0.9,4,120,300,pin-16\n',
    ),
  });
  await page.locator('.import-kind').first().waitFor();
  expect(await page.getByRole('dialog').locator('.field-error').count()).toBeGreaterThan(0);
  await page.getByRole('button', { name: /^Keep \d in the own book/ }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });

  // A list of other gear: the columns are told, what holds is asked for, what was left empty is marked.
  await page.getByRole('button', { name: 'Import…' }).click();
  await page.getByText('Columns of a list').click();
  await page.getByText('rated load kg').first().waitFor();
  await page.getByLabel('File with kinds').setInputFiles({
    name: 'grip.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(
      'family,name,offers,rated load kg,lowest mm,highest mm,leg circle mm,mass kg,sort,width mm,height mm\nstand,House stand tall,28,30,1500,3600,1250,11,,,\nstand,House stand low,28,,900,1800,1250,9,,,\nframe,Grey cloth,,,,,,4,diffusion,2000,2000\n',
    ),
  });
  await page.locator('.import-kind').nth(1).waitFor();
  const dialog = page.getByRole('dialog');
  expect(await dialog.locator('.field-error').allTextContents()).toEqual([
    expect.stringMatching(/needs “rated load kg”.*line 3/),
  ]);
  expect(await dialog.locator('.import-kind').nth(1).textContent()).toMatch(
    /Face in the wind 4 m² \(assumed\)/,
  );
  await page.getByRole('button', { name: 'Keep 2 in the own book' }).click();
  await dialog.waitFor({ state: 'detached' });

  // The form.
  await page.getByRole('button', { name: 'New kind…' }).click();
  await page.getByLabel('Name, a description').fill('Round mirror light, 120 W');
  await page.getByLabel('Input watts at full').fill('-5');
  await page.locator('.kind-preview .field-error').waitFor();
  await page.getByLabel('Input watts at full').fill('120');
  await page.getByRole('button', { name: 'Keep in the own book' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Place on the floor' }).click();
  await page.getByRole('heading', { name: /Round mirror light, 120 W/ }).waitFor();
  const kinds = recordsIn(await planText(page)).filter((r) => r.type === 'kind');
  expect(kinds.some((k) => k.name === 'Round mirror light, 120 W')).toBe(true);

  // The next day: the own book is still there, on another plan too.
  await page.close();
  const again = await context.newPage();
  await openStart(again, app.url);
  await openDemo(again, 'Street, night');
  await again.getByRole('combobox', { name: /Find gear/ }).fill('round mirror');
  await again.getByRole('option', { name: /Round mirror light/ }).waitFor();
  await figuresSettled(again);
  expect(trouble).toEqual([]);
  await context.close();
});
