/** Screens that are open at once, on two servers of one shop. */
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { axe, comeIn, isTooWide, newPage, openBrowser, shoot, SIZES } from '@/tests/support/browser';
import type { Size, Watched } from '@/tests/support/browser';
import type { Instance } from '@/tests/support/browser-server';
import { moveButton, plate, standsIn, whenReady } from './board-page';
import { BoardShop } from './board-shop';
import { bad, form, line, openLine, sign, troubleForm } from './car-page';
import { wasLit, watchAnswers, watchRow, whenAnswered, whenSeen } from './live-clock';

let shop: BoardShop;
let second: Instance;
let browser: Browser;
let windows: Watched[] = [];

beforeAll(async () => {
  [shop, browser] = await Promise.all([BoardShop.open(), openBrowser()]);
  second = await shop.shop.serveAgain();
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  const faults = windows.flatMap((each) => each.faults);
  await Promise.all(windows.map(({ context }) => context.close()));
  windows = [];
  expect(faults.filter((fault) => !isCut(fault))).toEqual([]);
});

/** What a browser writes down of itself while a server is away, or about to go. */
const isCut = (fault: string): boolean =>
  /ERR_(CONNECTION_REFUSED|INCOMPLETE_CHUNKED_ENCODING)|^503: .*\/api\/live$|status of 503/.test(fault);

const open = async (person: string, address: string, to: string, size: Size = 'desk'): Promise<Watched> => {
  const watched = await newPage(browser, { address, size });
  windows.push(watched);
  await comeIn(watched, person, to);
  await inStep(watched.page);
  return watched;
};

const wire = (page: Page) => page.locator('[data-touch]');
/** The line is open: the page has been told where all stands. */
const inStep = (page: Page): Promise<void> => page.locator('[data-touch=in-step][data-heard=true]').waitFor();

const openBoard = async (person: string, address: string, size: Size = 'desk'): Promise<Page> => {
  const { page } = await open(person, address, '/board', size);
  await whenReady(page);
  return page;
};

describe('a lead’s board', () => {
  test('follows what a technician signs on another server’s page within a second, and lights its plate once', async () => {
    const board = await openBoard('mara', shop.shop.address);
    const { page: bench } = await open('tobit', second.address, '/cars/C54-012');
    await watchRow(board, 'C54-012');
    await watchAnswers(bench);

    const doubted = form(await openLine(bench, 'J-512'), 'Nothing moved');
    await doubted.getByLabel('Tool').selectOption('T-08');
    await doubted.getByRole('button', { name: 'Nothing moved' }).click();
    await sign(bench, 'tobit');
    const [answered, seen] = [await whenAnswered(bench), await whenSeen(board)];
    expect(seen - answered).toBeLessThan(1000);
    await board.waitForFunction(() => document.querySelector('.platecard.lit') === null);
    expect(await wasLit(board)).toBe(true);
    expect(await board.locator('h1').evaluate((own) => own.ownerDocument.activeElement?.tagName)).toBe(
      'BODY',
    );
  });

  test('follows a plate that was moved on the other, which does not light up over its own move', async () => {
    await shop.beginReady('L-02');
    const board = await openBoard('mara', shop.shop.address);
    const other = await openBoard('mara', second.address, 'tablet');
    await watchRow(board, 'L-02');
    await watchRow(other, 'L-02');
    await watchAnswers(other);
    await moveButton(other, 'L-02').click();
    await other.getByRole('button', { name: 'Move to Second' }).click();
    const [answered, seen] = [await whenAnswered(other), await whenSeen(board)];
    expect(seen - answered).toBeLessThan(1000);
    await standsIn(board, 'L-02', 'Second').waitFor();
    await standsIn(other, 'L-02', 'Second').waitFor();
    expect(await wasLit(board)).toBe(true);
    expect(await wasLit(other)).toBe(false);
    // What stands above the rows keeps step with them.
    await board.getByText('taken', { exact: true }).first().waitFor();
    await shop.must('mara', { type: 'send-back', car: 'L-02', to: 'ONE', reason: 'the room is wanted' });
    await standsIn(board, 'L-02', 'First').waitFor();
  });

  test('shows a car that is begun elsewhere, counted above', async () => {
    const board = await openBoard('mara', second.address);
    const says = board.locator('.pagetop p');
    const before = await says.textContent();
    await shop.begin('L-03');
    await plate(board, 'L-03').waitFor();
    expect(await says.textContent()).not.toBe(before);
  });
});

describe('a car’s page', () => {
  test('follows what others do to the car, and keeps a half typed remark and the cursor in it', async () => {
    await shop.begin('L-04');
    const { page } = await open('tobit', shop.shop.address, '/cars/L-04');
    await bad(page, 'Remark').click();
    const remark = troubleForm(page, 'Remark').getByLabel('What others should know');
    await remark.pressSequentially('left rear spring is ');
    await shop.must('mara', { type: 'place-hold', car: 'L-04', scope: 'work', reason: 'wait for the jig' });
    await line(page, 'H-1').first().waitFor();
    expect(await remark.inputValue()).toBe('left rear spring is ');
    expect(await remark.evaluate((own) => own === document.activeElement)).toBe(true);
    await remark.pressSequentially('soft');
    // Several in a row are followed to the last.
    for (const reason of ['one', 'two', 'three'])
      await shop.must('mara', { type: 'place-hold', car: 'L-04', scope: 'gate', reason });
    await line(page, 'H-4').first().waitFor();
    expect(await remark.inputValue()).toBe('left rear spring is soft');
    expect(await remark.evaluate((own) => own === document.activeElement)).toBe(true);
  });

  test('the log of it follows too', async () => {
    await shop.begin('L-05');
    const { page } = await open('tobit', second.address, '/cars/L-05/log');
    await shop.must('mara', { type: 'place-hold', car: 'L-05', scope: 'work', reason: 'cracked jig' });
    await page.getByText('cracked jig').first().waitFor();
  });

  test('and the list of people', async () => {
    const { page } = await open('mara', second.address, '/set-up/people');
    await shop.must('mara', { type: 'add-person', person: 'wen', name: 'Wen Ashby', roles: ['technician'] });
    await page.getByText('Wen Ashby').first().waitFor();
  });
});

test('what is told is neither packed nor kept on its way', async () => {
  const { page } = await open('tobit', shop.shop.address, '/board');
  const headers = await page.evaluate(async () => {
    const leave = new AbortController();
    const answer = await fetch('/api/live', { signal: leave.signal });
    const found = Object.fromEntries(answer.headers);
    leave.abort();
    return found;
  });
  expect(headers['content-type']).toBe('text/event-stream; charset=utf-8');
  expect(headers['cache-control']).toMatch(/no-store/);
  expect(headers['cache-control']).toMatch(/no-transform/);
  expect(headers['content-encoding']).toBeUndefined();
  expect(headers['x-accel-buffering']).toBe('no');
  expect(headers['x-content-type-options']).toBe('nosniff');
});

describe('a server that goes away', () => {
  test('ends at once though screens are open; they say since when they are out of touch, and are in step after', async () => {
    await shop.begin('L-06');
    const page = await openBoard('mara', second.address);
    const began = performance.now();
    await second.stop();
    // After five seconds it would have been killed.
    expect(performance.now() - began).toBeLessThan(4000);
    await wire(page)
      .filter({ hasText: /^Out of touch since \d\d:\d\d; what you see is of then$/ })
      .waitFor();
    expect(await axe(page)).toEqual([]);
    for (const [size, viewport] of Object.entries(SIZES)) {
      await page.setViewportSize(viewport);
      const [shown] = windows;
      if (shown !== undefined) await shoot({ ...shown, size: size as Size }, 'out-of-touch');
      expect(await isTooWide(page), size).toBe(false);
    }
    await page.setViewportSize(SIZES.desk);
    await shop.must('mara', {
      type: 'place-hold',
      car: 'L-06',
      scope: 'work',
      reason: 'nobody there heard it',
    });
    await second.start();
    await inStep(page);
    await page.getByRole('button', { name: /^L-06, H-1 stands/ }).waitFor();
  });
});

test('a person who was removed sees nothing new, and is told', async () => {
  const { page } = await open('oswin', shop.shop.address, '/board');
  await shop.must('mara', { type: 'remove-person', person: 'oswin' });
  await wire(page)
    .filter({ hasText: /Signed out/ })
    .waitFor();
  await shop.begin('L-07');
  await wire(page).getByRole('link', { name: 'Sign in to go on' }).click();
  await page.waitForURL(/\/sign-in/);
});
