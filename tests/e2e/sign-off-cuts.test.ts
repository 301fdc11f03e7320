/** Nothing typed is lost and nothing is signed twice: reloads, other people, and a network that is cut at the worst moment. */
import type { Browser, Page, Route } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, signIn } from '@/tests/support/browser';
import { Sheet, pathOf, pinOf } from './sign-off-page';
import { SignOffShop } from './sign-off-shop';

let shop: SignOffShop;
let browser: Browser;
let cars = 0;

beforeAll(async () => {
  [shop, browser] = await Promise.all([SignOffShop.open(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});

const open = async (joint: string, person = 'tobit'): Promise<{ sheet: Sheet; car: string }> => {
  const car = `D-${String((cars += 1)).padStart(3, '0')}`;
  await shop.begin(car);
  return { car, sheet: await Sheet.open(browser, { address: shop.shop.address, car, joint, person }) };
};

const DOOR = '**/api/commands';
/** What happens to each request at the door, in turn; those after the last go through. */
type Cut = 'lost' | 'answer lost' | 'through';
const cut = async (page: Page, ...cuts: readonly Cut[]): Promise<{ readonly seen: () => number }> => {
  let seen = 0;
  await page.route(DOOR, async (route: Route) => {
    const way = cuts[seen] ?? 'through';
    seen += 1;
    if (way === 'answer lost') await route.fetch();
    if (way === 'through') await route.continue();
    else await route.abort('connectionreset');
  });
  return { seen: () => seen };
};
const signedOnce = async (car: string, joint: string): Promise<void> => {
  expect((await shop.joint(car, joint))?.marks).toHaveLength(1);
  expect(await shop.told(car, 'joint-marked')).toBe(1);
};

describe('drafts', () => {
  test('a reload keeps what was read, tapped and half typed', async () => {
    const { sheet } = await open('J-901');
    await sheet.tap(4);
    await sheet.enter('41');
    await sheet.type('4');
    await sheet.kept('"typed":"4"');
    await sheet.reload();
    expect(await sheet.row(1).innerText()).toContain('41');
    expect(await sheet.page.locator('.so-entry input').inputValue()).toBe('4');
    await sheet.page.getByText(/Draft of \d\d:\d\d brought back/).waitFor();
    await sheet.type('1');
    await sheet.page.locator('.so-enter').click();
    expect(await sheet.row(3).innerText()).toContain('in band');
    await sheet.close();
  });

  test('of another person is named, and neither shown nor gone on with', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45.5');
    await sheet.kept('45.5');
    // The same device, after a lock: somebody else signs in.
    await sheet.watched.context.clearCookies({ name: /session/ });
    await signIn(sheet.watched, 'ines', pathOf(car, 'J-908'));
    await sheet.ready();
    const note = sheet.note('Tobit Fenn has a draft here');
    expect(await note.innerText()).toMatch(/1 nut with T-\d+.*whoever goes on makes the pass again/s);
    expect(await sheet.page.locator('main').innerText()).not.toContain('45.5');
    expect(await sheet.row(1).innerText()).toContain('now');
    await sheet.page.getByRole('button', { name: 'Change who does it' }).click();
    const hands = sheet.page.getByRole('dialog', { name: 'Whose hands?' });
    expect(await hands.innerText()).toMatch(/Tobit Fenn\s+has a draft here/);
    await hands.getByRole('button', { name: 'Close' }).click();
    // And it is still there for who began it.
    await sheet.watched.context.clearCookies({ name: /session/ });
    await signIn(sheet.watched, 'tobit', pathOf(car, 'J-908'));
    await sheet.ready();
    expect(await sheet.row(1).innerText()).toContain('45.5');
    await sheet.close();
  });

  test('leaving half way says what goes, and lets it go visibly', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45');
    await sheet.page.getByRole('link', { name: `Back to ${car}` }).click();
    const dialog = sheet.page.getByRole('dialog', { name: 'Leave half way?' });
    expect(await dialog.innerText()).toContain('1 nut of this pass is done and not signed');
    await dialog.getByRole('button', { name: 'Stay and finish' }).click();
    expect(await sheet.row(1).innerText()).toContain('in band');
    await sheet.page.getByRole('link', { name: `Back to ${car}` }).click();
    await dialog.getByRole('button', { name: 'Discard and leave' }).click();
    await sheet.page.waitForURL((url) => url.pathname === `/cars/${car}`);
    await sheet.go(car, 'J-908');
    expect(await sheet.row(1).innerText()).toContain('now');
    await sheet.close();
  });
});

describe('a cut in the middle of signing', () => {
  test('after the server had it: it is asked again, and ends signed, once', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    const door = await cut(sheet.page, 'answer lost', 'answer lost');
    await sheet.sign('tobit');
    await sheet.note('No answer yet').waitFor();
    await sheet.note('Signed final by Tobit Fenn').waitFor({ timeout: 30_000 });
    expect(door.seen()).toBe(3);
    await signedOnce(car, 'J-908');
    await sheet.close();
  });

  test('before the server had it: the same, once', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    const door = await cut(sheet.page, 'lost', 'lost', 'through');
    await sheet.sign('tobit');
    await sheet.note('Signed final by Tobit Fenn').waitFor({ timeout: 30_000 });
    expect(door.seen()).toBe(3);
    await signedOnce(car, 'J-908');
    await sheet.close();
  });

  test('for longer: it never says failed, keeps all, and can be asked again', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    await cut(sheet.page, 'answer lost', ...Array.from({ length: 7 }, (): Cut => 'lost'));
    await sheet.sign('tobit');
    const unknown = sheet.note('Not known');
    await unknown.waitFor({ timeout: 60_000 });
    expect(await unknown.innerText()).toMatch(/may be recorded or not/);
    expect(await sheet.page.locator('main').innerText()).not.toMatch(/fail/i);
    await unknown.getByRole('button', { name: 'Ask again' }).click();
    await sheet.note('Signed final by Tobit Fenn').waitFor();
    await signedOnce(car, 'J-908');
    await sheet.close();
  });

  test('and a reload before any answer: the record has it, so nothing is left to ask', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    await cut(sheet.page, 'answer lost', ...Array.from({ length: 7 }, (): Cut => 'lost'));
    await sheet.sign('tobit');
    await sheet.note('No answer yet').waitFor();
    await sheet.page.unroute(DOOR);
    await sheet.reload();
    await sheet.level.getByText('final').waitFor();
    expect(await sheet.page.getByText('has had no answer').count()).toBe(0);
    expect(await sheet.page.getByText('brought back').count()).toBe(0);
    await signedOnce(car, 'J-908');
    await sheet.close();
  });

  test('and a reload while the server never had it: it is asked about under the same id', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    await cut(sheet.page, ...Array.from({ length: 8 }, (): Cut => 'lost'));
    await sheet.sign('tobit');
    await sheet.note('No answer yet').waitFor();
    await sheet.page.unroute(DOOR);
    await sheet.reload();
    const owed = sheet.note('has had no answer');
    expect(await owed.innerText()).toMatch(/Final of \d\d:\d\d by Tobit Fenn has had no answer/);
    expect(await sheet.page.locator('.so-keys button').first().getAttribute('aria-disabled')).toBe('true');
    await owed.getByRole('button', { name: 'Ask again' }).click();
    await sheet.givePin(pinOf('tobit'));
    await sheet.note('signed by Tobit Fenn').waitFor();
    await signedOnce(car, 'J-908');
    await sheet.close();
  });

  test('a reading over the window is kept and sent until the server has it, once', async () => {
    const { sheet, car } = await open('J-908');
    await cut(sheet.page, 'answer lost', 'lost');
    await sheet.enter('50');
    const over = sheet.note('Nut 1 is over');
    expect(await over.innerText()).toContain('Kept on this device');
    await sheet.note('Taken down as read').waitFor({ timeout: 30_000 });
    expect(await shop.told(car, 'joint-over-torqued')).toBe(1);
    expect((await shop.joint(car, 'J-908'))?.doubts).toHaveLength(1);
    await sheet.close();
  });

  test('a reading over the window outlives a reload before the server had it', async () => {
    const { sheet, car } = await open('J-908');
    await cut(sheet.page, ...Array.from({ length: 9 }, (): Cut => 'lost'));
    await sheet.enter('50');
    await sheet.note('Nut 1 is over').waitFor();
    await sheet.kept('"reading":"50"');
    await sheet.page.unroute(DOOR);
    await sheet.reload();
    await sheet.note('Taken down as read').waitFor({ timeout: 30_000 });
    expect(await shop.told(car, 'joint-over-torqued')).toBe(1);
    await sheet.close();
  });
});
