import type { Browser, Locator, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { amiss, axe, comeIn, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { form } from './car-page';
import { MyWorkShop } from './my-work-shop';

let shop: MyWorkShop;
let browser: Browser;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  [shop, browser] = await Promise.all([MyWorkShop.open(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  await watched.done();
});

const open = async (
  person: string,
  to = '/my-work',
  size: Watched['size'] = 'desk',
  theme: Watched['theme'] = 'light',
): Promise<void> => {
  watched = await newPage(browser, { address: shop.shop.address, size, theme });
  ({ page } = watched);
  await comeIn(watched, person, to);
  await page.locator('main [aria-busy]').waitFor({ state: 'detached' });
};

const job = (name: string): Locator => page.getByRole('article', { name });
const list = (title: string): Locator => page.getByRole('region', { name: title });
const acts = (): Locator => page.getByRole('region', { name: 'What can be done now' });
const told = (text: RegExp): Promise<void> =>
  page.getByRole('article').getByText('Recorded.').locator('..').filter({ hasText: text }).waitFor();
/** The page is read again once the act is done. */
const openJob = (car: string, key: string): Promise<unknown> =>
  page.goto(`/my-work?car=${car}&job=${encodeURIComponent(`operation:${key}:1`)}`);

describe('a piece of a technician’s day', () => {
  test('who begins elsewhere pauses the first by the same button, and one clock runs', async () => {
    await shop.begin('D-02', 'oswin');
    await shop.must('oswin', { type: 'start-operation', car: 'D-02', operation: 'BX-010' });
    await shop.must('mara', { type: 'assign', car: 'D-02', job: 'operation:BX-020:1', add: ['oswin'] });
    await open('oswin');
    await openJob('D-02', 'BX-020');
    await acts().getByRole('button', { name: 'Start', exact: true }).click();
    const refusal = page.getByRole('region', { name: /Start: refused/ });
    await refusal
      .getByText(/one running clock/)
      .first()
      .waitFor();
    expect(await axe(page)).toEqual([]);
    await refusal.getByLabel(/How BX-010 of D-02 is left/).fill('two nuts on');
    await refusal.getByRole('button', { name: 'Leave BX-010, then start' }).click();
    await told(/BX-020.* begins now/);
    expect((await shop.status('D-02', 'BX-010')).status).toBe('paused');
    expect((await shop.status('D-02', 'BX-020')).present).toEqual(['oswin']);
    await list('At hand').getByText('left as: two nuts on').waitFor();
  });

  test('asks the lead, whose answer comes back to the job', async () => {
    await open('oswin');
    await openJob('D-02', 'BX-020');
    await page.getByRole('button', { name: 'Ask the lead' }).click();
    await page.getByLabel(/What do you want to know/).fill('Which broom?');
    await form(page.getByRole('article'), 'Ask the lead')
      .getByRole('button', { name: 'Ask', exact: true })
      .click();
    await list('Asked about this').getByText('not answered yet').waitFor();
    await watched.done();

    await open('mara');
    await list('You are asked')
      .getByRole('link', { name: /^Answer Which broom/ })
      .waitFor();
    await shop.must('mara', { type: 'add-note', car: 'D-02', of: 'BX-020', text: 'Answer: the wide one' });
    await page.reload();
    await page.getByRole('region', { name: 'Your clock' }).waitFor();
    expect(await page.getByText('Which broom?').count()).toBe(0);
    await watched.done();

    await open('oswin');
    await openJob('D-02', 'BX-020');
    await list('Asked about this').getByText('the wide one').waitFor();
  });
});

describe('the second person', () => {
  test('goes from the queue to the sheet, verifies, and it is gone from the queue', async () => {
    await shop.toFinal('D-03', 'oswin');
    await open('ines', '/verify');
    await page
      .getByRole('region', { name: 'D-03' })
      .getByText(/waiting \d+ min/)
      .waitFor();
    await page.getByRole('link', { name: /^Verify J-951.* of D-03/ }).click();
    await page.waitForURL(/\/cars\/D-03\/joints\/J-951$/);
    await shop.must('ines', { type: 'verify-joint', car: 'D-03', joint: 'J-951', method: 'seen' });
    await page.goto('/verify');
    await page.getByRole('heading', { name: 'Waits for your eyes' }).waitFor();
    expect(await page.getByRole('link', { name: /of D-03/ }).count()).toBe(0);
  });

  test('who torqued it is told why it is not for them, and who may', async () => {
    await shop.toFinal('D-04', 'oswin');
    await open('oswin', '/verify');
    const not = list('Not for you').getByRole('listitem').filter({ hasText: 'D-04' });
    await not.getByText(/You signed it\. .*Ines Harrow.* can\./).waitFor();
    expect(await page.getByRole('link', { name: /^Verify J-951.* of D-04/ }).count()).toBe(0);
    // The same count on both pages, and in the strip of each.
    const count = await page.locator('.queue li').count();
    const inStrip = page.getByRole('navigation', { name: 'Main', exact: true }).getByRole('link', {
      name: count === 0 ? 'Verify' : new RegExp(`^Verify ?${String(count)} joints? waits? for you$`),
    });
    await inStrip.waitFor();
    await page.goto('/my-work');
    await page
      .getByRole('link', { name: count === 0 ? 'Nothing to verify' : `${String(count)} to verify` })
      .waitFor();
  });
});

test('nothing stands in anybody’s way, in any size or theme', async () => {
  await shop.begin('V-look', 'oswin');
  await open('oswin', '/my-work');
  await page.goto(`/my-work?car=V-look&job=${encodeURIComponent('operation:BX-010:1')}`);
  await job('Box on its bracket').waitFor();
  expect(await amiss(watched, 'my-work')).toEqual([]);
  await page.goto('/verify');
  await page.getByRole('heading', { name: 'Waits for your eyes' }).waitFor();
  await page.locator('main [aria-busy]').waitFor({ state: 'detached' });
  expect(await amiss(watched, 'verify')).toEqual([]);
  await watched.done();

  await open('tobit', '/my-work');
  await page.getByRole('heading', { name: 'My work' }).waitFor();
  expect(await amiss(watched, 'my-work-running')).toEqual([]);
});
