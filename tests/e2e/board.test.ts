import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { amiss, axe, comeIn, isTooWide, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import {
  dragByMouse,
  dragByTouch,
  moveButton,
  place,
  plate,
  refusal,
  standsIn,
  whenReady,
} from './board-page';
import { BoardShop } from './board-shop';

let shop: BoardShop;
let browser: Browser;
let watched: Watched;
let page: Page;

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

const open = async (
  person: string,
  size: Watched['size'] = 'desk',
  theme: Watched['theme'] = 'light',
): Promise<void> => {
  watched = await newPage(browser, { address: shop.shop.address, size, theme });
  ({ page } = watched);
  await comeIn(watched, person);
  await whenReady(page);
};

describe('a lead at the desk', () => {
  beforeEach(() => open('mara'));

  test('drags a plate through an open gate, and it stands there for everybody', async () => {
    await shop.beginReady('B-01');
    await page.reload();
    await whenReady(page);
    await dragByMouse(page, 'B-01', 'Second');
    await standsIn(page, 'B-01', 'Second').waitFor();
    expect(await shop.stageOf('B-01')).toBe(1);
    await page.reload();
    await standsIn(page, 'B-01', 'Second').waitFor();
    await shop.must('mara', {
      type: 'send-back',
      car: 'B-01',
      to: 'ONE',
      reason: 'the next test needs the room',
    });
  });

  test('is held back at a closed gate with everything that closes it, each with its place', async () => {
    await dragByMouse(page, 'C54-012', 'On wheels');
    const why = refusal(page, 'C54-012 stays in Steering');
    await why.waitFor();
    await standsIn(page, 'C54-012', 'Steering').waitFor();
    const count = await page.getByRole('button', { name: /hold gate 6 of C54-012 closed/ }).textContent();
    const links = why.getByRole('listitem').getByRole('link');
    const hrefs = await links.evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''));
    expect(hrefs.length).toBeGreaterThanOrEqual(Number(count));
    for (const href of hrefs) expect(href).toMatch(/^\/cars\/C54-012(#[a-z]+:.+|\/joints\/[^/]+)$/);
  });

  test('closes the refusal with Escape, has the focus back, and opens it again by its count', async () => {
    await plate(page, 'C54-012').focus();
    await page.keyboard.press('Space');
    await page.locator('.platecard.drag').waitFor();
    // It hears keys from the next turn of the page on.
    await page.evaluate(() => new Promise<void>((done) => setTimeout(done)));
    await page.keyboard.press('ArrowRight');
    await page.getByText('C54-012 over On wheels, the next stage.').waitFor({ state: 'attached' });
    await page.keyboard.press('Space');
    const why = refusal(page, 'C54-012 stays in Steering');
    await why.waitFor();
    expect(await why.evaluate((panel) => panel.contains(document.activeElement))).toBe(true);
    expect(await page.getByRole('alert').first().textContent()).toContain('C54-012 stays in Steering');
    await page.keyboard.press('Escape');
    await why.waitFor({ state: 'detached' });
    expect(await plate(page, 'C54-012').evaluate((own) => own === document.activeElement)).toBe(true);
    await page.getByRole('button', { name: /hold gate 6 of C54-012 closed/ }).press('Enter');
    await refusal(page, 'Gate 6 of C54-012').waitFor();
  });

  test('moves one stage at a time, and is told what this gate wants', async () => {
    await shop.begin('B-02');
    await page.reload();
    await whenReady(page);
    await dragByMouse(page, 'B-02', 'Third');
    const why = refusal(page, 'B-02 stays in First');
    await why
      .getByText(/one stage at a time/i)
      .first()
      .waitFor();
    await why
      .getByText(/Look it over.* is not started/)
      .first()
      .waitFor();
    await why
      .getByText(/All of it is there.* is not done/)
      .first()
      .waitFor();
  });

  test('is asked for a reason where the bay is full, and it goes in with one', async () => {
    await shop.beginReady('B-03');
    await shop.advance('B-03');
    await shop.beginReady('B-04');
    await page.reload();
    await whenReady(page);
    await dragByMouse(page, 'B-04', 'Second');
    const full = page.getByRole('dialog', { name: 'Second is full' });
    await full.getByText(/B-03 stands there/).waitFor();
    expect(await axe(page)).toEqual([]);
    await full.getByRole('button', { name: 'Move B-04 all the same' }).click();
    await full.getByText('Say why it goes in all the same.').waitFor();
    await full.getByLabel('Reason').fill('one goes out at noon');
    await full.getByRole('button', { name: 'Move B-04 all the same' }).click();
    await standsIn(page, 'B-04', 'Second').waitFor();
    expect(await shop.stageOf('B-04')).toBe(1);
  });

  test('drags a plate back and says why', async () => {
    await dragByMouse(page, 'B-04', 'First');
    const back = page.getByRole('dialog', { name: /^Send back/ });
    expect(await back.getByLabel('To stage').inputValue()).toBe('0');
    await back.getByLabel('Reason').fill('the door hangs');
    await back.getByRole('button', { name: 'Send it back to First' }).click();
    await standsIn(page, 'B-04', 'First').waitFor();
  });

  test('is told when no answer comes, and the car moves once when one does', async () => {
    await shop.must('mara', { type: 'send-back', car: 'B-03', to: 'ONE', reason: 'room for the next' });
    await page.reload();
    await whenReady(page);
    let lost = 0;
    await page.route('**/api/commands', (route) => ((lost += 1) < 3 ? route.abort() : route.continue()));
    await dragByMouse(page, 'B-04', 'Second');
    await refusal(page, 'No answer yet about B-04').waitFor();
    await standsIn(page, 'B-04', 'Second').waitFor();
    expect(await shop.stageOf('B-04')).toBe(1);
    await refusal(page, 'No answer yet about B-04').waitFor({ state: 'detached' });
    expect(watched.faults.every((fault) => fault.includes('net::ERR_FAILED'))).toBe(true);
    watched.faults.length = 0;
  });
});

describe('by other means', () => {
  test('a finger drags a plate on the tablet', async () => {
    await open('mara', 'tablet');
    await dragByTouch(page, 'C54-012', 'On wheels');
    await refusal(page, 'C54-012 stays in Steering').waitFor();
  });

  test('two taps move it on a phone, and the page never scrolls sideways', async () => {
    await shop.beginReady('B-05');
    await shop.must('mara', { type: 'send-back', car: 'B-04', to: 'ONE', reason: 'room for the next' });
    await open('mara', 'phone');
    expect(await isTooWide(page)).toBe(false);
    await moveButton(page, 'B-05').tap();
    await page.getByRole('button', { name: 'Move to Second' }).tap();
    await standsIn(page, 'B-05', 'Second').waitFor();
    await moveButton(page, 'C54-012').tap();
    await page.getByRole('button', { name: 'Move to On wheels' }).tap();
    await refusal(page, 'C54-012 stays in Steering').waitFor();
    expect(await isTooWide(page)).toBe(false);
  });

  test('who is no lead sees the plates lie still, and who may move them', async () => {
    await open('tobit');
    await page
      .getByText(/Moving a car is for a lead: Mara Mill/)
      .first()
      .waitFor();
    expect(await plate(page, 'C54-012').count()).toBe(0);
    await page.getByRole('link', { name: /^C54-012, / }).waitFor();
    // It says that it can't be used, and why when it is tried.
    await moveButton(page, 'C54-012').press('Enter');
    await refusal(page, 'C54-012 stays in Steering')
      .getByText(/Mara Mill/)
      .waitFor();
    expect(await place(page, 'C54-012', 'Steering').count()).toBe(1);
    expect(await amiss(watched, 'board-still')).toEqual([]);
  });
});

test('nothing stands in anybody’s way, in any size or theme', async () => {
  await open('mara');
  expect(await amiss(watched, 'board')).toEqual([]);
  await page.getByRole('button', { name: /hold gate 6 of C54-012 closed/ }).click();
  await refusal(page, 'Gate 6 of C54-012').waitFor();
  expect(await amiss(watched, 'board-refused')).toEqual([]);
  await page.keyboard.press('Escape');
  await moveButton(page, 'C54-012').click();
  expect(await amiss(watched, 'board-move')).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Menu' }).click();
  expect(await axe(page)).toEqual([]);
});
