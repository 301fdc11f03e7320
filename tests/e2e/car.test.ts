import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Claim } from '@/lib/domain/commands';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';
import { amiss, comeIn, newPage, openBrowser } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { freeClock } from '@/tests/support/free-clock';
import { bad, form, openFold, openLine, line, recorded, sign, troubleForm } from './car-page';

const CAR = '/cars/C54-012';
const YOUNG = '/cars/C54-015';

let shop: OpenedShop;
let db: Database;
let browser: Browser;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  [shop, browser] = await Promise.all([openShop(), openBrowser()]);
  db = openDatabase(shop.database.url, 2);
});
afterAll(async () => {
  await db.$disconnect();
  await browser.close();
  await shop.close();
});
afterEach(async () => {
  expect(watched.faults).toEqual([]);
  await watched.done();
});

const open = async (
  person: string,
  to: string,
  size: Watched['size'] = 'desk',
  theme: Watched['theme'] = 'light',
): Promise<void> => {
  watched = await newPage(browser, { address: shop.address, size, theme });
  ({ page } = watched);
  await comeIn(watched, person, to);
  await page.getByRole('heading', { name: 'Loose ends' }).waitFor();
};

const give = async (actor: string, claim: Claim): Promise<void> => {
  const now = new Date().toISOString();
  const command = { id: randomUUID(), doneAt: now, claim };
  const from = { present: null, device: null, lastContact: null, isInOrder: true };
  const answer = await runCommand(db, 'UTC', { command, actor, ...from, now });
  expect(answer.outcome).toBe('accepted');
};

const gate = () => page.getByRole('region', { name: /^Gate|^Delivery/ });

describe('what a car says', () => {
  beforeEach(() => open('mara', CAR));

  // Of every car of the demo: tests/integration/demo.test.ts and board/reachable.test.ts; here that a browser does it too.
  test('counts its loose ends as the board does, a line for each', async () => {
    const ends = page.getByRole('region', { name: 'Loose ends' });
    // The count leads to its list, and unfolds what later gates ask.
    const count = page.getByRole('link', { name: /loose ends$/ });
    await count.click();
    await page.waitForURL(/#loose$/);
    await ends.getByRole('button', { name: /Asked later/, expanded: false }).waitFor({ state: 'detached' });
    const rows = await ends.locator('[data-row]').count();
    expect(await page.locator('[data-count=loose]').textContent()).toBe(String(rows));
    expect(await count.textContent()).toBe(`${String(rows)} loose ends`);
    await page.goto('/board');
    const chassis = CAR.replace('/cars/', '');
    await page
      .getByRole('button', { name: new RegExp(`^${chassis}, .*\\b${String(rows)} loose ends`) })
      .waitFor();
  });

  test('explains the two counts, and each opens its list', async () => {
    const held = await gate().getByRole('listitem').count();
    const first = page.getByRole('link', { name: /holds? gate 6$/ });
    expect(await first.textContent()).toContain(String(held));
    await first.click();
    await page.waitForURL(/#move$/);
  });

  test('has a place for every line that closes its gate', async () => {
    const links = gate().getByRole('listitem').getByRole('link');
    await links.first().waitFor();
    const hrefs = await links.evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''));
    expect(hrefs.length).toBeGreaterThan(0);
    for (const href of hrefs.filter((each) => each.includes('#'))) {
      const anchor = decodeURIComponent(href.slice(href.indexOf('#') + 1));
      await page.goto(href);
      const place = page.locator(`[id="${anchor}"]`);
      await place.waitFor();
      expect(await place.evaluate((element) => element.getBoundingClientRect().top < innerHeight)).toBe(true);
    }
  });

  test('opens what the address asks for by its job', async () => {
    await page.goto(`${YOUNG}?job=${encodeURIComponent('operation:AX-030:1')}`);
    await form(line(page, 'AX-030'), 'Start').waitFor();
  });
});

describe('a technician', () => {
  test('starts work by keyboard alone, once its cautions are read', async () => {
    await freeClock(db, 'ines');
    await open('ines', YOUNG);
    await page
      .getByRole('button', { name: /^AX-030/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    const start = form(line(page, 'AX-030'), 'Start');
    await start.getByRole('button', { name: 'Start' }).focus();
    await page.keyboard.press('Enter');
    await start.getByText('Read the cautions and tick them first.').waitFor();
    await start.getByRole('checkbox', { name: /I have read/ }).focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await recorded(page, /AX-030 .* begins now/);
    await form(line(page, 'AX-030'), 'Finish').waitFor();
  });

  test('is refused a finish with every reason, and keeps the form', async () => {
    await open('tobit', YOUNG);
    const finish = form(await openLine(page, 'AX-080'), 'Finish');
    await finish.getByRole('button', { name: 'Finish' }).click();
    await sign(page, 'tobit');
    const refusal = finish.getByRole('region', { name: /Finish: refused for/ });
    await refusal.waitFor();
    expect(await refusal.getByRole('link').count()).toBeGreaterThan(3);
    await finish.getByRole('button', { name: 'Finish' }).waitFor();
  });

  test('pauses with what whoever goes on must know, and it stands with the work', async () => {
    await open('tobit', YOUNG);
    const row = await openLine(page, 'AX-080');
    await row.getByRole('button', { name: 'Pause', exact: true }).first().click();
    await form(row, 'Pause')
      .getByLabel(/Left as/)
      .fill('left side done');
    await form(row, 'Pause').getByRole('button', { name: 'Pause' }).click();
    await recorded(page, /AX-080 .* stops for now/);
    await line(page, 'AX-080').getByText('Left as: left side done').waitFor();
    // Refused for a hold, which somebody else releases meanwhile: the open refusal says so, and offers the act again.
    await give('mara', { type: 'place-hold', car: 'C54-015', scope: 'work', reason: 'jig is checked' });
    const goOn = form(line(page, 'AX-080'), 'Go on');
    await goOn.getByRole('button', { name: 'Go on' }).click();
    await goOn
      .getByRole('region', { name: 'Go on: refused for one reason' })
      .getByText('jig is checked')
      .first()
      .waitFor();
    // The page has heard of it: only what it has said can be followed.
    await page.getByRole('region', { name: 'Loose ends' }).getByText('jig is checked').first().waitFor();
    const { key } = await db.carHold.findFirstOrThrow({
      where: { carId: 'C54-015' },
      orderBy: { key: 'desc' },
    });
    await give('mara', { type: 'release-hold', car: 'C54-015', hold: key });
    const free = goOn.getByRole('region', { name: 'Go on: all that stood in the way is cleared' });
    await free.getByText('Cleared since').waitFor();
    expect(await amiss(watched, 'car-refusal-cleared')).toEqual([]);
    await free.getByRole('button', { name: 'Go on now' }).click();
    await form(line(page, 'AX-080'), 'Finish').waitFor();
  });

  test('says bad news in two taps, and is told what it brings', async () => {
    await open('tobit', YOUNG);
    await bad(page, 'Joint opened').click();
    const opened = troubleForm(page, 'Opened');
    await opened.getByLabel('Joint').selectOption('J-206@L');
    await opened.getByText(/open from now on, and was verified/).waitFor();
    await opened
      .getByText(/used up, new ones go in/)
      .first()
      .waitFor();
    await opened.getByRole('button', { name: 'no. 1' }).waitFor({ state: 'detached' });
    await opened.getByRole('button', { name: 'Opened' }).click();
    await recorded(page, /J-206@L .* was loosened/);
    await line(page, 'J-206@L')
      .getByText(/It was verified; opened/)
      .waitFor();
  });

  test('may not send a car back, and a lead’s PIN does', async () => {
    await open('tobit', YOUNG);
    await bad(page, 'Send back').click();
    const back = troubleForm(page, 'Send back');
    await back.getByText(/Tobit Fenn may not. That is for a lead/).waitFor();
    await back.getByLabel('Why').fill('its frame was measured with another rod');
    await back.getByRole('button', { name: 'Back to Frame' }).click();
    await page
      .getByRole('dialog')
      .getByText(/Ines Harrow.*may not/s)
      .waitFor();
    await sign(page, 'mara');
    await page.getByRole('heading', { name: /^In Frame/ }).waitFor();
  });

  test('gets a wrong PIN told in the dialog, and nothing is recorded', async () => {
    await open('oswin', YOUNG);
    await openFold(page, /Asked later/);
    const row = await openLine(page, 'J-205@L');
    const verify = form(row, 'Verify');
    await verify.getByLabel('Tool').selectOption({ index: 1 });
    await verify.getByRole('button', { name: 'Verify' }).click();
    const dialog = page.getByRole('dialog');
    await page.keyboard.type('000000');
    await dialog.getByRole('button', { name: /Verify as Oswin Slate/ }).click();
    await dialog.getByText('This is not Oswin Slate’s PIN. Nothing was signed.').first().waitFor();
    expect(await amiss(watched, 'car-pin')).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(
      await verify.getByRole('button', { name: 'Verify' }).evaluate((own) => own === document.activeElement),
    ).toBe(true);
  });
});

describe('the log of a car', () => {
  test('is told newest first, with what was struck and what was refused', async () => {
    await open('mara', '/cars/C54-011');
    await page.goto(`${CAR}/log`);
    await page.getByRole('heading', { name: 'Log' }).waitFor();
    expect(await amiss(watched, 'car-log')).toEqual([]);
    await page.getByRole('link', { name: 'struck', exact: true }).click();
    await page.waitForURL(/kind=struck/);
    await page.locator('s', { hasText: 'J-213' }).first().waitFor();
    await page.getByRole('link', { name: 'signatures', exact: true }).click();
    await page.waitForURL(/kind=signatures/);
    await page.getByRole('link', { name: 'Tobit Fenn' }).click();
    await page.waitForURL(/by=tobit/);
    await page.getByRole('link', { name: 'Older' }).click();
    await page
      .getByText(/page 2 of/)
      .first()
      .waitFor();
    await page
      .getByRole('link', { name: /^Strike/ })
      .first()
      .click();
    await troubleForm(page, 'Strike a signature').waitFor();
  });
});

describe('what is not there', () => {
  test('is said so, with what is near it', async () => {
    await open('tobit', CAR);
    const answer = await page.goto('/cars/C54-021');
    expect(answer?.status()).toBe(404);
    await page.getByRole('heading', { name: 'There is no C54-021' }).waitFor();
    await page.getByRole('link', { name: /C54-011/ }).waitFor();
    expect(await amiss(watched, 'car-none')).toEqual([]);
    expect((await page.goto(`${CAR}/joints/J-231`))?.status()).toBe(404);
    await page.getByRole('heading', { name: 'C54-012 has no joint J-231' }).waitFor();
    await page.getByRole('link', { name: /^J-213 / }).waitFor();
  });
});

test('everything can be read and reached, in any size and theme', async () => {
  await open('mara', CAR);
  expect(await amiss(watched, 'car')).toEqual([]);
  for (const name of ['Asked later', 'Later, in Body', 'all parts']) await openFold(page, new RegExp(name));
  await openLine(page, 'J-110@L');
  await bad(page, 'Hold').click();
  await troubleForm(page, 'Hold').waitFor();
  expect(await amiss(watched, 'car-open')).toEqual([]);
});
