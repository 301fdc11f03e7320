/** Signing in and setting up in a real browser: by pointer, by keys, by pasting; each screen in its sizes and themes. */
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { amiss, comeIn, newPage, openBrowser, signIn } from '@/tests/support/browser';
import type { PageOptions, Watched } from '@/tests/support/browser';
import { styleLeaks } from '@/tests/support/style-leaks';
import { openDoors, secretsOf } from './doors-shop';
import type { Doors } from './doors-shop';

let doors: Doors;
let browser: Browser;
let opened: Watched[] = [];

beforeAll(async () => {
  [doors, browser] = await Promise.all([openDoors(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await doors.close();
});
afterEach(async () => {
  const faults = opened.flatMap((each) => each.faults);
  await Promise.all(opened.map(({ done }) => done()));
  opened = [];
  await doors.above.query('DELETE FROM throttle');
  expect(faults).toEqual([]);
});

const open = async (options: Omit<PageOptions, 'address'> = {}): Promise<Watched> => {
  const watched = await newPage(browser, { address: doors.shop.address, ...options });
  opened.push(watched);
  return watched;
};

describe('in any size and theme', () => {
  test('before signing in: bench, desk, wrong, resting, a link that is no longer good', async () => {
    const watched = await open();
    const { page } = watched;
    for (const [name, path] of [
      ['bench', '/sign-in?at=bench'],
      ['desk', '/sign-in?at=desk'],
      ['no-link', '/set-up/enrol?token=x'],
    ] as const) {
      await page.goto(path);
      expect(await amiss(watched, name)).toEqual([]);
    }
    for (let nr = 0; nr < 5; nr += 1) {
      await page.goto('/sign-in?at=bench&name=ines');
      await page.getByLabel('Ines Harrow’s PIN').pressSequentially(`10029${String(nr)}`);
      await page
        .getByRole('alert')
        .filter({ hasText: nr < 4 ? 'This is not' : 'rests until' })
        .waitFor();
      if (nr === 0 || nr === 4) expect(await amiss(watched, nr === 0 ? 'wrong' : 'resting')).toEqual([]);
    }
  });

  test('setting up: every page', async () => {
    const watched = await open();
    await signIn(watched, 'ada');
    for (const page of ['', '/shop', '/people', '/tools', '/plans', '/cars']) {
      await watched.page.goto(`/set-up${page}`);
      expect(await amiss(watched, `set-up${page.replace('/', '-')}`)).toEqual([]);
    }
  });
});

test('no style sheet of one screen reaches another, which a day of clicking brings into one page', async () => {
  const watched = await open();
  await signIn(watched, 'ada');
  const car = '/cars/C54-012';
  for (const path of [
    '/board',
    car,
    `${car}/joints/J-212`,
    `${car}/log`,
    '/my-work',
    '/verify',
    '/hardware',
    '/cutting',
    '/order',
    '/suppliers',
    '/stock',
    '/stock/lots/L-0941',
    '/tools',
    '/set-up',
  ]) {
    await watched.page.goto(path);
    await watched.page.locator('[aria-busy=true]').first().waitFor({ state: 'detached' });
    expect(await styleLeaks(watched.page), path).toEqual([]);
  }
});

describe('signing in', () => {
  test('at the bench by keys alone, to one’s own work', async () => {
    const { page } = await open();
    await page.goto('/');
    await page.keyboard.press('Tab');
    while (!(await page.evaluate(() => document.activeElement?.getAttribute('type') === 'radio')))
      await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    while (!(await page.getByRole('radio', { name: 'Tobit Fenn' }).isChecked()))
      await page.keyboard.press('ArrowDown');
    await page.keyboard.type(secretsOf('tobit').pin);
    await page.waitForURL('**/my-work');
  });

  test('at the bench by the keys on the screen, with one taken back', async () => {
    const { page } = await open({ size: 'tablet' });
    await page.goto('/sign-in?at=bench');
    await page.getByText('Tobit Fenn').tap();
    await page.getByRole('button', { name: '0', exact: true }).tap();
    await page.getByRole('button', { name: 'Back' }).tap();
    for (const figure of secretsOf('tobit').pin)
      await page.getByRole('button', { name: figure, exact: true }).tap();
    await page.waitForURL('**/board');
  });

  test('at the bench by pasting, and at the desk as a password manager fills', async () => {
    const { page } = await open();
    await page.goto('/sign-in?at=bench');
    await page.getByText('Tobit Fenn').click();
    await page.getByLabel('Tobit Fenn’s PIN').fill(secretsOf('tobit').pin);
    await page.waitForURL('**/board');
    const other = (await open()).page;
    await other.goto('/sign-in?at=desk');
    await other.locator('[autocomplete=username]').fill('Mara Mill');
    await other.locator('[autocomplete=current-password]').fill(secretsOf('mara').password);
    await other.keyboard.press('Enter');
    await other.waitForURL('**/board');
  });

  test('before any script has come', async () => {
    const context = await browser.newContext({ baseURL: doors.shop.address, javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto('/sign-in?at=bench');
    await page.getByRole('radio', { name: 'Tobit Fenn' }).check({ force: true });
    await page.getByRole('textbox', { name: 'PIN' }).fill(secretsOf('tobit').pin);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL('**/board');
    await context.close();
  });

  test('leads back to the page that was asked for; signing out leads to the door, and back shows nothing', async () => {
    const watched = await open();
    const { page } = watched;
    await page.goto('/set-up/tools');
    await page.getByRole('link', { name: /Mara Mill/ }).click();
    await page.getByLabel('Password', { exact: true }).fill(secretsOf('mara').password);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL('**/set-up/tools');
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByText('Signed out').waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: /Who is at the bench|Sign in at the desk/ }).waitFor();
    expect(await page.getByText('On the wall').count()).toBe(0);
  });
});

describe('setting up', () => {
  test('somebody new: added, qualified, given a link, sets a PIN, signs in; removed, is out', async () => {
    const lead = await open();
    await comeIn(lead, 'mara', '/set-up/people');
    const { page } = lead;
    await page.getByLabel('Name', { exact: true }).fill('Wes Pardoe');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByText('Wes Pardoe is on the books. Make').waitFor();
    await page.getByRole('button', { name: 'Qualify Wes Pardoe' }).click();
    await page.getByLabel('Qualification', { exact: true }).fill('upholstery');
    await page.getByRole('dialog').getByRole('button', { name: 'Qualify' }).click();
    await page.getByRole('columnheader', { name: 'upholstery' }).waitFor();
    await page.getByRole('button', { name: 'Link for the first PIN of Wes Pardoe' }).click();
    await page.getByRole('button', { name: 'Make the link' }).click();
    const link = await page.getByLabel('The link', { exact: true }).inputValue();
    await page.getByRole('button', { name: 'Close' }).click();

    const own = (await open({ size: 'phone' })).page;
    await own.goto(link);
    await own.getByLabel('PIN', { exact: true }).fill('123456');
    await own.getByLabel('The PIN once more').fill('123456');
    await own.getByRole('button', { name: 'Set it' }).click();
    await own.getByText('everybody tries first').waitFor();
    await own.getByLabel('PIN', { exact: true }).fill('839201');
    await own.getByLabel('The PIN once more').fill('839201');
    await own.getByRole('button', { name: 'Set it' }).click();
    await own.getByText('It is set').waitFor();
    await own.getByLabel('Wes Pardoe’s PIN').fill('839201');
    await own.waitForURL('**/board');
    await own.goto('/set-up');
    await own.getByRole('heading', { name: 'This is for a lead or an owner' }).waitFor();

    await page.getByRole('button', { name: 'Remove Wes Pardoe' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Remove Wes Pardoe' }).click();
    await page.getByRole('button', { name: 'Qualify Wes Pardoe' }).waitFor({ state: 'detached' });
    await own.goto('/board');
    expect(new URL(own.url()).pathname).toBe('/sign-in');
  });

  test('a tool that is refused says why, and is added once it is right', async () => {
    const lead = await open();
    await comeIn(lead, 'mara', '/set-up/tools');
    const form = lead.page.getByRole('form', { name: 'Add a tool' });
    await form.getByLabel('Name').fill('Quarter inch click');
    await form.getByLabel('Lowest mark').fill('25');
    await form.getByLabel('Highest mark').fill('5');
    await form.getByRole('button', { name: 'Add the tool' }).click();
    await form.getByRole('alert').filter({ hasText: 'low to high' }).waitFor();
    await form.getByLabel('Lowest mark').fill('5');
    await form.getByLabel('Highest mark').fill('25');
    await form.getByRole('button', { name: 'Add the tool' }).click();
    await form.getByText('Quarter inch click is on the wall').waitFor();
    await lead.page.getByRole('region', { name: 'On the wall' }).getByText('never calibrated').waitFor();
  });

  test('a plan is read with every fault at its line, then released, and a car is begun on it', async () => {
    const lead = await open();
    await comeIn(lead, 'mara', '/set-up/plans');
    const { page } = lead;
    await page.getByLabel('Or pasted').fill('plan: Trailer\nrevision: 1\nstages:\n  A: {name: Frame}\n');
    await page.getByRole('button', { name: 'Read it' }).click();
    await page.getByText('2:11').waitFor();
    expect(await page.getByRole('button', { name: 'Use this plan' }).count()).toBe(0);
    await page.getByLabel('Or pasted').fill('plan: Trailer\nrevision: "1"\nstages:\n  A: {name: Frame}\n');
    await page.getByRole('button', { name: 'Read it' }).click();
    await page.getByRole('button', { name: 'Use this plan' }).click();
    await page.getByText('Trailer 1 is released. A car').waitFor();
    await page.getByRole('link', { name: 'Begin a car on it' }).click();
    await page.getByLabel('Plan', { exact: true }).selectOption({ label: 'Trailer, revision 1' });
    await page.getByLabel('Chassis number').fill('TR-001');
    await page.getByRole('button', { name: 'Begin TR-001' }).click();
    await page.getByRole('link', { name: 'Open the board' }).click();
    await page.waitForURL('**/board');
    expect(await doors.count(`car WHERE id = 'TR-001'`)).toBe(1);
  });
});
