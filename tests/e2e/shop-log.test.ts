import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { amiss, comeIn, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { BoardShop } from './board-shop';

let shop: BoardShop;
let browser: Browser;
let watched: Watched;

beforeAll(async () => {
  [shop, browser] = await Promise.all([BoardShop.open(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  await watched.done();
});

const open = async (person: string): Promise<void> => {
  watched = await newPage(browser, { address: shop.shop.address });
  await comeIn(watched, person, '/log');
};

test('the shop’s log tells of the books and of every car, and is narrowed to one', async () => {
  await shop.begin('L-01');
  await open('tobit');
  const { page } = watched;
  const entries = page.locator('ol.log').getByRole('listitem');
  await entries.filter({ hasText: 'Short r1' }).first().waitFor();
  await entries.filter({ hasText: 'L-01' }).first().waitFor();
  await page.getByRole('link', { name: /^The shop’s books/ }).click();
  await page.getByRole('heading', { name: 'The shop’s books' }).waitFor();
  expect(await entries.filter({ hasText: 'L-01' }).count()).toBe(0);
  await page.getByRole('link', { name: 'C54-012', exact: true }).click();
  await page.getByRole('heading', { name: 'C54-012' }).waitFor();
  await page.getByRole('link', { name: 'struck', exact: true }).click();
  await page.waitForURL(/kind=struck/);
  expect(new URL(page.url()).pathname).toBe('/cars/C54-012/log');
});

test('it can be read in any size and theme', async () => {
  await open('mara');
  expect(await amiss(watched, 'shop-log')).toEqual([]);
});
