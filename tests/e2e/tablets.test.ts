/** A shop of one's own: tablets that an owner enrols and takes off; a screen that locks and keeps everybody's drafts apart. */
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { amiss, newPage, openBrowser, signIn } from '@/tests/support/browser';
import type { PageOptions, Watched } from '@/tests/support/browser';
import { openDoors, secretsOf } from './doors-shop';
import type { Doors } from './doors-shop';
import { Sheet, pathOf } from './sign-off-page';
import { beginCar, furnish } from './sign-off-shop';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';

let doors: Doors;
let browser: Browser;
let db: Database;
let opened: Watched[] = [];
let plan = '';

beforeAll(async () => {
  [doors, browser] = await Promise.all([openDoors(), openBrowser()]);
  db = openDatabase(doors.shop.database.url, 2);
  plan = await furnish(db);
});
afterAll(async () => {
  await browser.close();
  await db.$disconnect();
  await doors.close();
});
afterEach(async () => {
  const faults = opened.flatMap((each) => each.faults);
  await Promise.all(opened.map(({ context }) => context.close()));
  opened = [];
  await doors.above.query('DELETE FROM throttle; UPDATE shop_setting SET demo = true');
  expect(faults).toEqual([]);
});

const ownShop = () => doors.above.query('UPDATE shop_setting SET demo = false');
const open = async (options: Omit<PageOptions, 'address'> = {}): Promise<Watched> => {
  const watched = await newPage(browser, { address: doors.shop.address, ...options });
  opened.push(watched);
  return watched;
};

/** With the clock in the test's hand; the sheet of a joint with a reading half typed. */
const halfTyped = async (car: string): Promise<Sheet> => {
  await beginCar(db, plan, car);
  const watched = await open();
  await watched.page.clock.install();
  await signIn(watched, 'tobit', pathOf(car, 'J-908'));
  const sheet = Sheet.on(watched);
  await sheet.ready();
  await sheet.enter('45.5');
  await sheet.type('4');
  return sheet;
};

const rest = async ({ page }: Sheet, minutes: string): Promise<void> => {
  await page.clock.fastForward(minutes);
};

describe('in a shop of one’s own', () => {
  test('a browser that nobody enrolled says so and whom to ask; a code makes it a tablet; taken off, it is out', async () => {
    await ownShop();
    const tablet = await open({ size: 'tablet' });
    await tablet.page.goto('/sign-in?at=bench');
    await tablet.page.getByRole('heading', { name: 'This tablet is not known here' }).waitFor();
    expect(await tablet.page.locator('main').innerText()).toContain('can enrol it');
    expect(await tablet.page.locator('input[type=password]').count()).toBe(0);

    const desk = await open();
    await signIn(desk, 'ada', '/set-up/tablets');
    const another = desk.page.getByRole('form', { name: 'Another tablet' });
    await another.getByLabel('Its name').fill('Bench 7');
    await another.getByRole('button', { name: 'Make a code' }).click();
    const code = (await desk.page.locator('.code-big').innerText()).trim();

    await tablet.page.getByRole('link', { name: 'Type the code' }).tap();
    await tablet.page.getByLabel('The code').fill('AAAA-AAAA');
    await tablet.page.getByRole('button', { name: 'Enrol this tablet' }).tap();
    await tablet.page.getByText('No such code').waitFor();
    await tablet.page.getByLabel('The code').fill(code.toLowerCase());
    await tablet.page.getByRole('button', { name: 'Enrol this tablet' }).tap();
    await tablet.page.getByText('This is a tablet of the shop now').waitFor();
    await signIn(tablet, 'ines');

    await desk.page.reload();
    const line = desk.page
      .getByRole('region', { name: 'Enrolled' })
      .getByRole('listitem')
      .filter({ hasText: 'Bench 7' });
    expect(await line.innerText()).toMatch(/last in touch.*Ines Harrow is signed in on it/s);
    await line.getByRole('button', { name: 'Take off' }).click();
    await desk.page.getByRole('button', { name: 'Take it off' }).click();
    await desk.page.getByText(/taken off by/).waitFor();

    await tablet.page.goto('/board');
    await tablet.page.getByRole('heading', { name: /Sign in at the desk|taken off/ }).waitFor();
    await tablet.page.goto('/sign-in?at=bench');
    await tablet.page.getByRole('heading', { name: 'This tablet was taken off' }).waitFor();
  });

  test('an owner makes the browser before them a tablet with one press; a lead may not', async () => {
    await ownShop();
    const lead = await open();
    await signIn(lead, 'mara', '/set-up/tablets');
    expect(await lead.page.getByRole('button', { name: 'Make this a shop tablet' }).count()).toBe(0);
    const client = await doors.signedIn('mara');
    const asked = JSON.stringify({ act: 'enrol-this', name: 'Mine', minutes: 5 });
    expect((await client.post('/api/set-up/tablets', asked, 'application/json')).status).toBe(403);

    const desk = await open();
    await signIn(desk, 'ada', '/set-up/tablets');
    const here = desk.page.getByRole('form', { name: 'This browser' });
    await here.getByLabel('Its name').fill('Bench 8');
    await here.getByRole('button', { name: 'Make this a shop tablet' }).click();
    await desk.page.getByText('is a tablet of the shop: Bench 8').waitFor();
    await desk.context.clearCookies({ name: /session/ });
    await signIn(desk, 'tobit');
  });
});

describe('a screen at rest', () => {
  test('warns, stays at a touch, then covers the page; the same person finds it as it was', async () => {
    const sheet = await halfTyped('L-001');
    const { page } = sheet;
    await rest(sheet, '04:35');
    await page.getByText('Locks in half a minute').waitFor();
    await page.keyboard.press('Shift');
    await page.getByText('Locks in half a minute').waitFor({ state: 'detached' });
    await rest(sheet, '05:01');
    const lock = page.getByRole('dialog', { name: /^Locked/ });
    await lock.waitFor();
    await lock.getByText('Ines Harrow').waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    expect(await lock.isVisible()).toBe(true);
    await page.keyboard.type(secretsOf('ines').pin);
    await lock.getByText('This is not Tobit Fenn’s PIN').waitFor();
    await page.keyboard.type(secretsOf('tobit').pin);
    await lock.waitFor({ state: 'detached' });
    expect(await sheet.row(1).innerText()).toContain('45.5');
    expect(await page.locator('.so-entry input').inputValue()).toBe('4');
  });

  test('is locked for the server too: no page, no command, nothing beneath on reload', async () => {
    const sheet = await halfTyped('L-002');
    const { page } = sheet;
    await rest(sheet, '05:01');
    await page
      .getByRole('dialog', { name: /^Locked/ })
      .getByText('Ines Harrow')
      .waitFor();
    const status = await page.evaluate(async () => {
      const body = {
        command: {
          id: crypto.randomUUID(),
          doneAt: new Date().toISOString(),
          claim: { type: 'add-note', car: 'L-002', of: 'car', text: 'x' },
        },
      };
      const headers = { 'content-type': 'application/json' };
      return (await fetch('/api/commands', { method: 'POST', headers, body: JSON.stringify(body) })).status;
    });
    expect(status).toBe(401);
    await page.reload();
    await page.waitForURL(/\/locked\?to=/);
    expect(await page.locator('body').innerText()).not.toContain('45.5');
    await page.getByRole('dialog', { name: /^Locked/ }).waitFor();
    await page.keyboard.type(secretsOf('tobit').pin);
    await page.waitForURL(
      (url) =>
        url.pathname === decodeURIComponent(pathOf('L-002', 'J-908')) ||
        url.pathname === pathOf('L-002', 'J-908'),
    );
    await sheet.ready();
    expect(await sheet.row(1).innerText()).toContain('45.5');
  });

  test('another takes over in a session of their own and never sees the draft; it waits for who began it', async () => {
    const sheet = await halfTyped('L-003');
    const { page } = sheet;
    await rest(sheet, '05:01');
    const lock = page.getByRole('dialog', { name: /^Locked/ });
    await lock.getByText('Ines Harrow').click();
    await page.keyboard.type(secretsOf('ines').pin);
    await page.waitForURL('**/board');
    expect(await page.locator('header.strip').innerText()).toContain('Ines Harrow');
    await sheet.go('L-003', 'J-908');
    await sheet.note('Tobit Fenn has a draft here').waitFor();
    expect(await page.locator('main').innerText()).not.toContain('45.5');
    await sheet.watched.context.clearCookies({ name: /session/ });
    await signIn(sheet.watched, 'tobit', pathOf('L-003', 'J-908'));
    await sheet.ready();
    expect(await sheet.row(1).innerText()).toContain('45.5');
    expect(await page.locator('.so-entry input').inputValue()).toBe('4');
  });
});

test('what a technician’s browser receives holds no hash, no token, no other’s rest, no owner’s page', async () => {
  await doors.above.query(
    `INSERT INTO throttle (person, place, wrong, last_at, until) VALUES ('ines', 'new', 5, now(), now() + interval '9 minutes')`,
  );
  const { rows } = await doors.above.query<{ secret: string | null }>(
    `SELECT password_hash AS secret FROM credential UNION SELECT pin_hash FROM credential
     UNION SELECT id FROM session UNION SELECT token FROM enrolment UNION SELECT code FROM tablet_code`,
  );
  const secrets = rows.map(({ secret }) => secret).filter((secret) => secret !== null);
  const client = await doors.signedIn('tobit');
  for (const path of [
    '/board',
    '/tools',
    '/cars/C54-011',
    '/cars/C54-011/log',
    pathOf('C54-011', 'J-110@L'),
    '/set-up/people',
    '/set-up/tablets',
  ]) {
    const kinds: readonly Readonly<Record<string, string>>[] = [{}, { rsc: '1' }];
    for (const headers of kinds) {
      const { text } = await client.ask(path, { headers });
      for (const secret of secrets) expect(text.includes(secret), path).toBe(false);
      expect(text, path).not.toMatch(/argon2|passwordHash|pinHash|restsUntil|lockMinutes|last in touch/);
      expect(text, path).not.toContain(client.cookies.get('slipmark.device') ?? 'none');
    }
  }
});

test('each new screen looks well in any size and theme', async () => {
  const watched = await open();
  const { page } = watched;
  await ownShop();
  await page.goto('/sign-in?at=bench');
  expect(await amiss(watched, 'tablet-unknown')).toEqual([]);
  await page.goto('/tablet?says=wrong');
  expect(await amiss(watched, 'tablet-code')).toEqual([]);
  await doors.above.query('UPDATE shop_setting SET demo = true');
  await page.clock.install();
  await signIn(watched, 'ada', '/set-up/tablets');
  expect(await amiss(watched, 'set-up-tablets')).toEqual([]);
  await page.goto('/tools');
  expect(await amiss(watched, 'tools')).toEqual([]);
  await page
    .getByRole('button', { name: /^It fell/ })
    .first()
    .click();
  await page.getByRole('dialog').waitFor();
  expect(await amiss(watched, 'tool-fell')).toEqual([]);
  await page.goto('/set-up/tools/T-02');
  expect(await amiss(watched, 'set-up-tool')).toEqual([]);
  await page.clock.fastForward('01:00:01');
  await page
    .getByRole('dialog', { name: /^Locked/ })
    .getByText('Ines Harrow')
    .waitFor();
  expect(await amiss(watched, 'locked')).toEqual([]);
});
