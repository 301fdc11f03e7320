/** A kit picked on a phone, by touch: one line whole, one short, and what everybody reads of it then (D59, D61). */
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { amiss, comeIn, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { MyWorkShop } from './my-work-shop';

let shop: MyWorkShop;
let browser: Browser;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  [shop, browser] = await Promise.all([MyWorkShop.open(), openBrowser()]);
  await shop.begin('K-01', 'oswin');
  const goods = [
    { item: 'NUT-95', quantity: '6' },
    { item: 'PAINT', quantity: '3' },
  ];
  await shop.must('mara', { type: 'receive-stock', goods });
  const places = [
    { item: 'NUT-95', bin: '09D' },
    { item: 'PAINT', bin: '04B' },
  ];
  await shop.must('mara', { type: 'put-away', places });
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  await watched.done();
});

const kitOf = async (car: string): Promise<unknown> => {
  const rows = await shop.db.carKit.findMany({ where: { carId: car } });
  return rows.map(({ row }) => (row as { lines: unknown }).lines);
};
const at = (name: string): Promise<void> => page.getByRole('heading', { name, exact: true }).waitFor();

test('one line whole, one short: the box, the bin, the list and the job say the same', async () => {
  watched = await newPage(browser, { address: shop.shop.address, size: 'phone' });
  ({ page } = watched);
  await comeIn(watched, 'oswin', '/kits');
  await page.locator('main [aria-busy]').waitFor({ state: 'detached' });
  expect(await amiss(watched, 'kits')).toEqual([]);
  await page.getByRole('link', { name: /K-01.*BX-010/ }).tap();

  // In the order of the bins.
  await at('Slip-mark paint');
  expect(await amiss(watched, 'kit')).toEqual([]);
  const big = page.getByRole('button', { name: '1 in the box' });
  const box = await big.boundingBox();
  expect(box?.height ?? 0).toBeGreaterThanOrEqual(72);
  await big.tap();

  await at('Lock nut M8');
  await page.getByRole('button', { name: 'Fewer' }).tap();
  await page.getByRole('button', { name: '1', exact: true }).tap();
  await page.getByText('becomes ready but for parts').waitFor();
  expect(await amiss(watched, 'kit-short')).toEqual([]);
  await page.getByRole('button', { name: '1 in the box, 1 short' }).tap();
  await at('The kit stays open for one line');
  expect(await amiss(watched, 'kit-done')).toEqual([]);
  expect(await kitOf('K-01')).toEqual([
    [
      { item: 'NUT-95', lot: null, quantity: '1' },
      { item: 'PAINT', lot: null, quantity: '1' },
    ],
  ]);

  const lacks = 'Ready but for parts: 1 × Lock nut M8 (none on order)';
  await page.getByRole('link', { name: 'Next kit' }).tap();
  await page.getByRole('link', { name: /K-01/ }).filter({ hasText: lacks }).waitFor();
  await page.goto('/my-work?car=K-01&job=operation%3ABX-010%3A1');
  await page.getByRole('region', { name: 'Hardware' }).getByText(lacks).waitFor();
  await page
    .getByRole('link', { name: /K-01 BX-010/ })
    .filter({ hasText: lacks })
    .waitFor();
  expect(await amiss(watched, 'kit-my-work')).toEqual([]);
  await page.goto('/stock?q=NUT-95');
  await page
    .getByRole('link', { name: /Lock nut M8/ })
    .filter({ hasText: '1 in kits' })
    .waitFor();
});

test('the wrong part in the bin is said with two taps, and the line stays open with the word on it', async () => {
  watched = await newPage(browser, { address: shop.shop.address, size: 'phone', theme: 'dark' });
  ({ page } = watched);
  await shop.begin('K-02', 'oswin');
  await comeIn(watched, 'oswin', '/kits/K-02/BX-010');
  await at('Slip-mark paint');
  await page.getByRole('button', { name: 'Wrong part' }).tap();
  await page.getByRole('button', { name: 'Another part lies in the bin' }).tap();
  await at('Lock nut M8');
  await page.getByText(/wrong part, said Oswin/).waitFor();
  expect(await amiss(watched, 'kit-wrong')).toEqual([]);
  await page.goto('/kits/K-02/NO-010');
  await at('There is no such kit');
  await page.goto('/kits/C54-015/AX-080');
  await page.locator('.kitcols').waitFor();
  expect(await amiss(watched, 'kit-demo')).toEqual([]);
});
