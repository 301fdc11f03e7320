/** A donor graded by keys, parts counted in from a trip and looked over, in a real browser. */
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { amiss, newPage, openBrowser, signIn } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { styleLeaks } from '@/tests/support/style-leaks';
import { openDoors } from './doors-shop';
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
  await signIn(watched, person);
  await watched.page.goto(path);
  await watched.page.locator('main [aria-busy]').waitFor({ state: 'detached' });
  return watched.page;
};

test('a technician grades by keys alone; what is to be bought follows at once', async () => {
  const page = await openAs('tobit', '/cars/C54-015/donor');
  const toBuy = page.getByRole('region', { name: 'To be bought for it' });
  await toBuy.getByText('alternator (P-12)').waitFor();
  await page.getByRole('group', { name: 'Grade of alternator' }).getByRole('button').first().focus();
  await page.keyboard.press('2');
  await toBuy.getByText('alternator (P-12)').waitFor({ state: 'detached' });
  // The next part has the focus, so that a whole donor is graded without a hand on the mouse.
  const next = page.getByRole('group', { name: 'Grade of distributor' });
  expect(
    await next.getByRole('button', { name: 'reuse' }).evaluate((it) => it === document.activeElement),
  ).toBe(true);
  await page.keyboard.press('4');
  await toBuy.getByText('distributor (P-13)').waitFor();
  expect(await next.getByRole('button', { name: 'scrap' }).getAttribute('aria-pressed')).toBe('true');
  await page.getByRole('button', { name: /place, number, remark and photographs of distributor$/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Where it lies').fill('skip');
  await dialog.getByLabel('How it was found').fill('shaft seized');
  await dialog.getByRole('button', { name: 'Keep it' }).click();
  await page.getByText('shaft seized').waitFor();
  // What left this car for another one can't be graded here any more.
  expect(await page.getByRole('group', { name: 'Grade of starter motor' }).count()).toBe(0);
  // Hardware that came off with it, and a part that wants a look before it counts as here.
  await page.getByRole('button', { name: 'Keep some' }).click();
  await dialog.getByLabel('What', { exact: true }).selectOption('C516x0.75');
  await dialog.getByLabel('Good', { exact: true }).fill('6');
  await dialog.getByRole('button', { name: 'Put it aside' }).click();
  await dialog.getByText(/^Put aside as L-\d+/).waitFor();
  await dialog.getByRole('button', { name: 'Not now' }).click();
  await page.getByRole('button', { name: /Look it over/ }).click();
  await dialog.getByLabel('What was looked at or measured').fill('splines whole, disc sound');
  await dialog.getByRole('button', { name: 'Here and good' }).click();
  await page.getByRole('button', { name: /Look it over/ }).waitFor({ state: 'detached' });
  expect(await amiss(watched, 'donor')).toEqual([]);
  expect(await styleLeaks(page)).toEqual([]);
});

test('parts of a trip are counted in, and count as here only after a look; no price reaches a technician', async () => {
  const page = await openAs('oswin', '/trips/2');
  const slate = page.getByRole('region', { name: 'C54-015' });
  await slate.getByRole('button', { name: 'All 2 back, done' }).click();
  await slate.getByRole('button', { name: 'Look over flywheel' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Here and good' }).click();
  await dialog.getByText('Say what you looked at or measured').waitFor();
  await dialog.getByLabel('What was looked at or measured').fill('run-out 0.06, no cracks');
  await dialog.getByRole('button', { name: 'Here and good' }).click();
  await slate.getByText('looked over by Oswin Slate: run-out 0.06, no cracks').waitFor();
  expect(await amiss(watched, 'trip')).toEqual([]);
  await page.goto('/trips/1');
  await page.getByRole('heading', { name: 'Trip 1: Oakum Street Machine' }).waitFor();
  expect(await page.content()).not.toMatch(/£|38\.00/u);
});

test('a lead plans a trip, says what is in the van, and enters what it cost', async () => {
  const page = await openAs('mara', '/trips');
  await page.getByRole('button', { name: 'Plan a trip' }).click();
  const dialog = page.getByRole('dialog');
  expect(await amiss(watched, 'trip-plan')).toEqual([]);
  await dialog.getByRole('button', { name: 'Plan it' }).click();
  await page.getByRole('heading', { name: 'Trip 3: Oakum Street Machine' }).waitFor();
  const van = page.getByRole('form', { name: 'Into the van, of C54-014' });
  await van.getByRole('checkbox', { name: /^radiator/ }).check();
  expect(await van.getByLabel('What is to be done to radiator').inputValue()).toBe('flow and re-core');
  await van.getByRole('button', { name: 'In the van: 1' }).click();
  await page.getByRole('region', { name: 'C54-014' }).getByText('flow and re-core').waitFor();
  await page.getByRole('button', { name: 'Enter a bill' }).click();
  await dialog.getByLabel('C54-014, radiator').fill('62.50');
  await dialog.getByLabel('The way there and back').fill('9');
  await dialog.getByRole('button', { name: 'Enter it' }).click();
  await page.getByRole('row', { name: 'In all £71.50' }).waitFor();
  expect(await amiss(watched, 'trips-bill')).toEqual([]);
});
