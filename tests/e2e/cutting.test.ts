/** The cut plan in the built shop: solved in a thread beside the server, drawn to scale, chosen by car, printed. */
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { amiss, comeIn, newPage, openBrowser, shoot } from '@/tests/support/browser';
import type { PageOptions, Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';

let shop: OpenedShop;
let browser: Browser;
let watched: Watched;

beforeAll(async () => {
  [shop, browser] = await Promise.all([openShop(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  expect(shop.said()).toBe('');
  await watched.done();
});

const open = async (person: string, path: string, options: Partial<PageOptions> = {}) => {
  watched = await newPage(browser, { address: shop.address, ...options });
  await comeIn(watched, person, path);
  await watched.page.locator('main [aria-busy=true]').first().waitFor({ state: 'detached' });
  return watched.page;
};

test('what five cars take together is proved, drawn true to length, and fit for every screen', async () => {
  const page = await open('tobit', '/cutting');
  const tube = page.getByRole('region', { name: /^Tube 25×25×1.5/ });
  await tube.getByText(/^Two new lengths, the fewest\.$/).waitFor();
  const bars = tube.getByRole('img', { name: /^length \d/ });
  expect(await bars.count()).toBe(2);
  // Each piece as wide as it is long: what is told in words against what is drawn.
  for (const bar of await bars.all()) {
    const { width } = (await bar.boundingBox()) ?? { width: 0 };
    const said = [...((await bar.getAttribute('aria-label')) ?? '').matchAll(/[A-Z] ([\d,]+)/gu)];
    const drawn = await bar
      .locator('rect.piece')
      .evaluateAll((pieces) => pieces.map((piece) => piece.getBoundingClientRect().width));
    expect(drawn.length).toBe(said.length);
    said.forEach(([, length = ''], at) =>
      expect(Math.abs((drawn[at] ?? 0) - (Number(length.replace(',', '')) / 6000) * width)).toBeLessThan(2.5),
    );
  }
  expect(await amiss(watched, 'cutting')).toEqual([]);

  await tube.getByRole('button', { name: /^Sawn ?: length 1/ }).click();
  await tube.getByText('One bar is sawn').waitFor();
  await page
    .getByRole('region', { name: /^Sawn, and not built in/ })
    .getByText('tower brace', { exact: true })
    .waitFor();
  expect(await amiss(watched, 'cutting-sawn')).toEqual([]);
});

test('the reader says for which cars; a strap that cracked is cut again', async () => {
  const page = await open('mara', '/cutting');
  for (const box of await page.getByRole('checkbox').all())
    if ((await box.getAttribute('value')) !== 'C54-014') await box.uncheck();
  await page.getByRole('button', { name: 'Plan these' }).click();
  await page.waitForURL(/\?car=C54-014$/);
  await page.getByText(/still takes, for C54-014\./).waitFor();
  const row = page.getByRole('row').filter({ hasText: 'tank strap half' });
  expect(await row.getByRole('cell').allInnerTexts()).toEqual([
    'tank strap half LN-050',
    'C54-014',
    '285',
    '4',
  ]);
  await page.getByRole('link', { name: 'All cars' }).click();
  await page
    .getByText(/for .*C54-015/)
    .first()
    .waitFor();
});

test('on paper it is light, 186 mm wide, and nothing but the cut sheet', async () => {
  const page = await open('tobit', '/cutting', { theme: 'dark' });
  await page.emulateMedia({ media: 'print' });
  const main = page.getByRole('main');
  expect(Math.round((((await main.boundingBox())?.width ?? 0) / 96) * 25.4)).toBe(186);
  expect(await main.evaluate((drawn) => getComputedStyle(drawn).color)).toBe('rgb(0, 0, 0)');
  expect(await page.getByRole('navigation').first().isVisible()).toBe(false);
  for (const name of ['Print cut sheet', /^Sawn/])
    expect(await page.getByRole('button', { name }).first().isVisible()).toBe(false);
  await page.getByText(/^Cut sheet as of /).waitFor();
  await shoot(watched, 'cutting-print');
});
