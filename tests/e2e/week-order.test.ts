/** Suppliers, offers and the week's order in a real browser: what is cheapest, what one insists on, files, and who sees no price. */
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
  return watched.page;
};

const pence = (text: string): number =>
  Math.round(Number(/£([\d,.]+)/.exec(text)?.[1]?.replaceAll(',', '')) * 100);
const region = (page: Page, name: string | RegExp) => page.getByRole('region', { name });
const toPay = async (page: Page): Promise<number> =>
  pence(
    (await region(page, /^To pay/)
      .getByRole('paragraph')
      .first()
      .textContent()) ?? '',
  );

test('the owner reads what is cheapest, insists on something dearer, sees what that costs, and lets it go', async () => {
  const page = await openAs('ada', '/order');
  await page.getByRole('heading', { name: 'Proved the cheapest' }).waitFor();
  const total = await toPay(page);
  const parts = await page.locator('.week-sheets > section > header .total').allTextContents();
  expect(parts).toHaveLength(3);
  expect(parts.map(pence).reduce((sum, part) => sum + part, 0)).toBe(total);
  expect(await amiss(watched, 'week-order')).toEqual([]);
  expect(await styleLeaks(page)).toEqual([]);

  await page.getByRole('button', { name: /Otherwise ?: bolt 3\/8-24×1 g8$/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('From').selectOption({ label: 'Thornby Fixings' });
  expect(await amiss(watched, 'week-order-pin')).toEqual([]);
  await dialog.getByRole('button', { name: 'Insist on it' }).click();
  const insisted = region(page, 'Insisted on');
  const cost = (await insisted.getByText(/^costs £/).textContent()) ?? '';
  expect(cost).toMatch(/more/);
  await expect.poll(() => toPay(page), { timeout: 20_000 }).toBe(total + pence(cost));
  await insisted.getByRole('button', { name: /^Change what is insisted on/ }).click();
  await page.getByRole('button', { name: 'As is cheapest again' }).click();
  await insisted.waitFor({ state: 'detached' });
  await expect.poll(() => toPay(page), { timeout: 20_000 }).toBe(total);
});

test('the owner approves it with her PIN, a lead receives it in parts, and what will not come is short again', async () => {
  const page = await openAs('ada', '/order');
  await page.getByRole('button', { name: 'Approve three orders' }).click();
  await page.getByLabel('Ada Quern’s PIN').pressSequentially(secretsOf('ada').pin);
  await page.getByRole('button', { name: 'Approve as Ada Quern' }).click();
  const sent = region(page, 'On its way');
  await sent.getByText(/^Order 5, /).waitFor();
  await page.getByText('Nothing must be ordered this week.').first().waitFor();
  expect(await amiss(watched, 'week-ordered')).toEqual([]);
  await watched.done();

  const lead = await openAs('mara', '/orders');
  await lead.getByRole('link', { name: /^Order 3, / }).click();
  const goods = lead.getByRole('form', { name: 'Goods in' });
  const all = goods.getByRole('button', { name: /^All / });
  await all.first().waitFor();
  const lines = await all.count();
  expect(lines).toBeGreaterThan(2);
  await all.first().click();
  await goods
    .getByLabel(/^Damaged/)
    .nth(1)
    .fill('1');
  expect(await amiss(watched, 'goods-in')).toEqual([]);
  await goods.getByRole('button', { name: 'Take into stock: 2 lines' }).click();
  await goods.getByText('Taken into stock.').waitFor();
  await expect.poll(() => all.count()).toBe(lines - 1);
  await lead.getByText(/; 1 (?:m )?damaged/).waitFor();
  await lead.getByRole('button', { name: 'It will not come' }).click();
  await lead.getByRole('button', { name: 'None of the rest will come' }).click();
  await lead.getByText('nothing more is to come').waitFor();
  expect(await styleLeaks(lead)).toEqual([]);
  await lead.goto('/order');
  await lead.getByText('An owner approves it.').waitFor();
  expect(await lead.getByRole('button', { name: /^Approve/ }).count()).toBe(0);
});

test('a lead changes a price, and reads in a file: with a fault nothing of it is taken in, without one all', async () => {
  const page = await openAs('mara', '/suppliers');
  await page.getByRole('searchbox', { name: 'Find' }).fill('castle M16');
  await page.getByRole('button', { name: /change the offer of castle nut M16/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Price of a pack').fill('1: 1.20; 10: 1.05');
  await dialog.getByRole('button', { name: 'Set this price' }).click();
  await page.getByRole('button', { name: /£1\.20, from 10 £1\.05/ }).waitFor();
  await page.getByRole('searchbox', { name: 'Find' }).fill('');
  expect(await amiss(watched, 'suppliers')).toEqual([]);
  expect(await styleLeaks(page)).toEqual([]);

  const read = async (text: string): Promise<void> =>
    page
      .getByLabel('Read in')
      .first()
      .setInputFiles({ name: 'offers.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  const HEAD = 'supplier,item,pack,prices\r\n';
  await read(`${HEAD}thornby,M6x16,10,dear\r\n`);
  await page.getByText('Row 2, prices “dear” is no price').waitFor();
  await read(`${HEAD}thornby,M6x16,10,0.95\r\nthornby,GHOST,10,1.00\r\n`);
  await page.getByRole('button', { name: 'Take in 2 rows' }).click();
  await page.getByText(/^Row 3, item: There is no item “GHOST”/).waitFor();
  await page.getByRole('searchbox', { name: 'Find' }).fill('M6x16');
  expect(await page.getByRole('button', { name: /10 £0\.95|10£0\.95/ }).count()).toBe(0);
  await read(`${HEAD}thornby,M6x16,10,0.95\r\n`);
  await page.getByRole('button', { name: 'Take in 1 row' }).click();
  await page.getByText('£0.95').first().waitFor();

  const saved = await page.request.get('/api/suppliers/offers.csv');
  expect(await saved.text()).toContain('\r\nthornby,M6x16,10,0.95,,,\r\n');
});

test('a lead reads what a car cost, and it adds up; the owner says what an hour costs from a day on', async () => {
  const page = await openAs('mara', '/cars/C54-014');
  await page.getByRole('link', { name: 'Cost', exact: true }).click();
  await page.getByRole('heading', { name: 'By stage' }).waitFor();
  const [first] = await page.locator('.cost-main tfoot tr.all b').allTextContents();
  const stages = await page.locator('.cost-main tbody tr td:nth-child(6)').allTextContents();
  const [scrap = ''] = await page.locator('tfoot tr.apart b').allTextContents();
  const sum = stages.reduce(
    (all, text) => all + (text.includes('Together ·') ? 0 : pence(text)),
    pence(scrap),
  );
  expect(stages.length).toBeGreaterThan(9);
  expect(sum).toBe(pence(first ?? ''));
  expect(
    await region(page, /^So far/)
      .getByText(first ?? '')
      .count(),
  ).toBe(1);
  expect(await amiss(watched, 'car-cost')).toEqual([]);
  expect(await styleLeaks(page)).toEqual([]);
  expect(await page.getByRole('button', { name: 'Set the rate' }).count()).toBe(0);
  await page.getByText('Planned at other firms').click();
  await page.getByRole('button', { name: /^Say the price of P-51/ }).click();
  await page.getByLabel('It is expected to cost').fill('350.00');
  await page.getByRole('button', { name: 'Say the price', exact: true }).click();
  await page.getByRole('button', { name: /^Change the price of P-51/ }).waitFor();
  await watched.done();

  const own = await openAs('ada', '/cars/C54-014/cost');
  await own.getByRole('button', { name: 'Set the rate' }).click();
  await own.getByLabel('An hour costs').fill('99.00');
  await own.getByLabel('From').fill('2020-01-01');
  expect(await amiss(watched, 'car-cost-rate')).toEqual([]);
  await own.getByRole('dialog').getByRole('button', { name: 'Set the rate' }).click();
  await own.getByText('£99.00 from 1 Jan 2020').waitFor();
});

test('a technician sees neither page, no price anywhere, and no file', async () => {
  const page = await openAs('tobit', '/order');
  await page.getByRole('heading', { name: 'This is for a lead or an owner' }).waitFor();
  const paths = ['/order', '/orders', '/suppliers', '/log', '/hardware?show=all', '/stock?show=all'];
  for (const path of [...paths, '/cars/C54-014', '/cars/C54-014/cost'])
    expect([path, /£|3\.60|TF-41/.test(await (await page.request.get(path)).text())]).toEqual([path, false]);
  expect((await page.request.get('/api/suppliers/offers.csv')).status()).toBe(403);
  expect((await page.request.get('/api/orders/1.csv')).status()).toBe(403);
  expect(await page.getByRole('link', { name: 'Week’s order' }).count()).toBe(0);
});
