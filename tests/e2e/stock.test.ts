/** Stock in a real browser: what wants a look, a count, and a bad lot traced to every joint it is in. */
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { amiss, comeIn, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { styleLeaks } from '@/tests/support/style-leaks';
import { openDoors, secretsOf } from './doors-shop';
import type { Doors } from './doors-shop';

let doors: Doors;
let browser: Browser;
let watched: Watched;

beforeAll(async () => {
  [doors, browser] = await Promise.all([openDoors(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await doors.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  await watched.done();
});

const openAs = async (person: string, path: string): Promise<Page> => {
  watched = await newPage(browser, { address: doors.shop.address });
  await comeIn(watched, person, path);
  await watched.page.locator('main [aria-busy]').waitFor({ state: 'detached' });
  return watched.page;
};

test('a technician finds what wants a count, counts it, and it wants none any more', async () => {
  const page = await openAs('tobit', '/stock');
  expect(await amiss(watched, 'stock')).toEqual([]);
  await page.getByRole('link', { name: /split pin 4×50.*more went than the books had: count it/ }).click();
  await page.getByRole('button', { name: /^Count/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/^How many lie in 12C/).fill('6');
  expect(await amiss(watched, 'stock-count')).toEqual([]);
  await dialog.getByRole('button', { name: 'There are 6' }).click();
  await dialog.waitFor({ state: 'detached' });
  await page.getByText(/^counted /).waitFor();
  expect(await styleLeaks(page)).toEqual([]);
  await page.goto('/stock');
  await page.getByRole('heading', { name: 'Stock and lots' }).waitFor();
  expect(await page.getByRole('link', { name: /split pin 4×50/ }).count()).toBe(0);
});

test('a bin is found by its item; a bad lot is kept apart, doubts its joints on every car at once, and a lead clears it', async () => {
  const page = await openAs('mara', '/stock');
  const find = page.getByRole('searchbox', { name: 'Find an item, a lot or a bin' });
  await find.fill('NC-M16F');
  await find.press('Enter');
  await page.getByRole('link', { name: /castle nut M16/ }).click();
  const where = page.getByRole('region', { name: 'Where it is' });
  await where.waitFor();
  const joints = await where.getByRole('link', { name: /^(?:snug|final|verified)/ }).count();
  expect(joints).toBeGreaterThan(3);
  await where.getByRole('button', { name: 'Keep apart' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText(`It is in ${String(joints)} joints`).waitFor();
  await dialog.getByLabel('What is wrong with it').fill('slots cut too shallow');
  await dialog.getByRole('button', { name: 'Keep it apart' }).click();
  await page.getByRole('region', { name: 'Kept apart' }).getByText('slots cut too shallow').waitFor();
  await where.getByText(`in ${String(joints)} joints, all in doubt by it`).waitFor();
  expect(await amiss(watched, 'stock-lot-apart')).toEqual([]);
  await where.getByRole('button', { name: 'Clear the lot, with a reason' }).click();
  await dialog.getByLabel('Why it is good after all').fill('measured six of them');
  await dialog.getByRole('button', { name: 'On to the PIN' }).click();
  await page.getByLabel('Mara Mill’s PIN').pressSequentially(secretsOf('mara').pin);
  await page.getByRole('button', { name: 'Clear as Mara Mill' }).click();
  await where.getByText(`in ${String(joints)} joints`, { exact: true }).waitFor();
  await page.goto('/stock/lots/L-7777');
  await page.getByRole('heading', { name: 'Nothing of that name is on the books' }).waitFor();
});
