import type { Browser, Locator, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { axe, comeIn, isTooWide, newPage, openBrowser, shoot } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { form, sign } from './car-page';
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
  await watched.context.close();
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

const smallOnes = (): Promise<readonly string[]> =>
  page.locator('main :is(a, button, input, select, textarea)').evaluateAll((all) =>
    all
      .filter((one) => one.checkVisibility())
      .map((one) => (one.closest('label') ?? one) as HTMLElement)
      .map((one) => ({ name: one.textContent, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 48 || box.height < 48)
      .map(({ name, box }) => `${name}: ${String(box.width)} × ${String(box.height)}`),
  );

describe('a piece of a technician’s day', () => {
  test('cautions are read before Start, the work is left with a word, another takes it over and finishes', async () => {
    await shop.begin('D-01', 'oswin');
    await shop.free('ines');
    await open('oswin');
    // What was given to one comes before what one's stages ask.
    const next = list('Next').getByRole('link');
    await next.first().filter({ hasText: 'given to you' }).waitFor();
    await next.filter({ hasText: 'given to you' }).filter({ hasText: 'D-01' }).click();
    await job('Box on its bracket').waitFor();
    await job('Box on its bracket').getByText('Nobody goes under until all four pins are home.').waitFor();
    await acts().getByRole('button', { name: 'Start', exact: true }).click();
    await acts().getByText('Read the cautions and tick them first.').waitFor();
    expect((await shop.db.carOperation.findMany({ where: { carId: 'D-01' } })).length).toBe(0);
    await acts().getByLabel('I have read them').check();
    await acts().getByRole('button', { name: 'Start', exact: true }).click();
    await told(/begins now/);
    await page.getByRole('region', { name: 'Your clock' }).getByText('Running since').waitFor();
    await page.getByRole('region', { name: 'Cautions' }).waitFor();
    await page.getByText(/^set T-\d+ to$/).waitFor();
    await page.getByRole('region', { name: 'Hardware' }).getByText('Lock nut M8').waitFor();

    await acts().getByRole('button', { name: 'Pause', exact: true }).click();
    const pause = form(acts(), 'Pause');
    await pause.getByLabel('Left as').fill('nuts on by hand');
    await pause.getByRole('button', { name: 'Pause', exact: true }).click();
    await page.getByText('Your clock does not run.').waitFor();
    await page.getByText('nuts on by hand').first().waitFor();
    await watched.context.close();

    await open('ines');
    await openJob('D-01', 'BX-010');
    // Paused by another and given to another: from the car's page it is anybody's.
    await page.getByText(/settled by now, or is somebody else’s/).waitFor();
    await shop.must('mara', { type: 'assign', car: 'D-01', job: 'operation:BX-010:1', add: ['ines'] });
    await openJob('D-01', 'BX-010');
    await page.getByText('nuts on by hand').first().waitFor();
    await acts().getByRole('button', { name: 'Take over', exact: true }).click();
    await form(acts(), 'Take over').getByRole('button', { name: 'Take over', exact: true }).click();
    await told(/goes on with/);
    expect((await shop.status('D-01', 'BX-010')).present).toEqual(['ines']);

    await shop.must('ines', { type: 'snug-joint', car: 'D-01', joint: 'J-951' });
    await shop.must('ines', {
      type: 'final-joint',
      car: 'D-01',
      joint: 'J-951',
      tool: 'T-95',
      setting: '22',
      passes: [[1, 2]],
    });
    await openJob('D-01', 'BX-010');
    const check = page.getByRole('listitem').filter({ hasText: 'K-951' });
    await check.getByRole('button', { name: /^Do it/ }).click();
    await check
      .getByRole('button', { name: 'Passed', exact: true })
      .or(check.getByRole('button', { name: 'Pass', exact: true }))
      .first()
      .click();
    await sign(page, 'ines');
    await page.getByText('3 of 3 done').waitFor();
    await acts().getByRole('button', { name: 'Finish', exact: true }).first().click();
    await sign(page, 'ines');
    await page.getByText('Your clock does not run.').waitFor();
    expect((await shop.status('D-01', 'BX-010')).status).toBe('finished');
  });

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
    await watched.context.close();

    await open('mara');
    await list('You are asked')
      .getByRole('link', { name: /^Answer Which broom/ })
      .waitFor();
    await shop.must('mara', { type: 'add-note', car: 'D-02', of: 'BX-020', text: 'Answer: the wide one' });
    await page.reload();
    await page.getByRole('region', { name: 'Your clock' }).waitFor();
    expect(await page.getByText('Which broom?').count()).toBe(0);
    await watched.context.close();

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
    expect(await axe(page)).toEqual([]);
    expect(await smallOnes()).toEqual([]);
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
    await not.getByText(/signed it, so can’t verify it.*Ines Harrow.* can\./).waitFor();
    expect(await page.getByRole('link', { name: /^Verify J-951.* of D-04/ }).count()).toBe(0);
    // The same count on both pages.
    const count = await page.locator('.queue li').count();
    await page.goto('/my-work');
    await page
      .getByRole('link', { name: count === 0 ? 'Nothing to verify' : `${String(count)} to verify` })
      .waitFor();
  });
});

describe.each(['light', 'dark'] as const)('in %s', (theme) => {
  test.each(['desk', 'tablet', 'phone'] as const)(
    'nothing stands in anybody’s way on the %s',
    async (size) => {
      const car = `V-${theme}-${size}`;
      await shop.begin(car, 'oswin');
      await open('oswin', '/my-work', size, theme);
      await page.goto(`/my-work?car=${car}&job=${encodeURIComponent('operation:BX-010:1')}`);
      await job('Box on its bracket').waitFor();
      expect(await axe(page)).toEqual([]);
      expect(await isTooWide(page)).toBe(false);
      expect(await smallOnes()).toEqual([]);
      await shoot(watched, 'my-work');
      await page.goto('/verify');
      await page.getByRole('heading', { name: 'Waits for your eyes' }).waitFor();
      await page.locator('main [aria-busy]').waitFor({ state: 'detached' });
      expect(await axe(page)).toEqual([]);
      expect(await isTooWide(page)).toBe(false);
      expect(await smallOnes()).toEqual([]);
      await shoot(watched, 'verify');
      await watched.context.close();

      await open('tobit', '/my-work', size, theme);
      await page.getByRole('heading', { name: 'My work' }).waitFor();
      expect(await axe(page)).toEqual([]);
      expect(await isTooWide(page)).toBe(false);
      await shoot(watched, 'my-work-running');
    },
  );
});
