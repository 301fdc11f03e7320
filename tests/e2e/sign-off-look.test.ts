/** The sign-off sheet for small screens, keyboards and screen readers, in each of its states. */
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SIZES, amiss, openBrowser } from '@/tests/support/browser';
import type { Size } from '@/tests/support/browser';
import { Sheet } from './sign-off-page';
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

const newCar = async (): Promise<string> => {
  const car = `L-${String((cars += 1)).padStart(3, '0')}`;
  await shop.begin(car);
  return car;
};
interface Opening {
  readonly joint: string;
  readonly size?: Size;
  readonly car?: string;
}
const open = async ({ joint, size, car }: Opening): Promise<Sheet> =>
  Sheet.open(browser, { address: shop.shop.address, car: car ?? (await newCar()), joint, size });

describe('on a phone', () => {
  test('no figure signs: the signing key lies well below the keys; the entry box stays in sight above them', async () => {
    const sheet = await open({ joint: 'J-913', size: 'phone' });
    const { page } = sheet;
    const keys = await page.locator('.so-keys').boundingBox();
    const sign = await sheet.signKey.boundingBox();
    expect((sign?.y ?? 0) - (keys?.y ?? 0) - (keys?.height ?? 0)).toBeGreaterThanOrEqual(72);
    await page.locator('.so-keys button').last().scrollIntoViewIfNeeded();
    await page.evaluate(() => window.scrollBy(0, 120));
    await sheet.type('4');
    const entry = await page.locator('.so-entry').boundingBox();
    expect(entry?.y ?? -1).toBeGreaterThanOrEqual(0);
    expect((entry?.y ?? 9999) + (entry?.height ?? 0)).toBeLessThan(SIZES.phone.height);
    await sheet.close();
  });
});

describe('with a keyboard alone', () => {
  test('from the first figure to the signature', async () => {
    const sheet = await open({ joint: 'J-908' });
    const { page } = sheet;
    await page.keyboard.type('45');
    await page.keyboard.press('Enter');
    await page.keyboard.type('45,6');
    await page.keyboard.press('Enter');
    expect(await sheet.row(2).innerText()).toContain('in band');
    for (let step = 0; step < 40; step += 1) {
      await page.keyboard.press('Tab');
      if (await page.evaluate(() => document.activeElement?.classList.contains('so-signkey') ?? false)) break;
    }
    await page.keyboard.press('Enter');
    await sheet.pinDialog.waitFor();
    await page.keyboard.type('570931');
    await page.keyboard.press('Enter');
    await sheet.note('Signed final by Tobit Fenn').waitFor();
    await sheet.close();
  });

  test('Enter on a button is that button’s, and Escape closes what lies over the sheet', async () => {
    const sheet = await open({ joint: 'J-908' });
    const { page } = sheet;
    await page.locator('.so-pick').focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Which tool' });
    await dialog.waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await page.evaluate(() => document.activeElement?.className)).toContain('so-pick');
    await sheet.close();
  });
});

describe('in any size and theme nothing is amiss', () => {
  test('on the sheet while it is read, over, and behind its dialogs', async () => {
    const sheet = await open({ joint: 'J-908' });
    const { page } = sheet;
    // As it is before anybody has said that it is this car.
    await page.evaluate(() => sessionStorage.clear());
    await page.reload();
    await page.getByRole('button', { name: /^It is / }).waitFor();
    expect(await amiss(sheet.watched, 'sign-off-which-car')).toEqual([]);
    await sheet.ready();
    expect(await amiss(sheet.watched, 'sign-off-read')).toEqual([]);
    await page.locator('.so-pick').click();
    expect(await amiss(sheet.watched, 'sign-off-tools')).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change who does it' }).click();
    expect(await amiss(sheet.watched, 'sign-off-who')).toEqual([]);
    await page.keyboard.press('Escape');
    await sheet.enter('33');
    await page.getByRole('dialog', { name: 'Which unit does the tool show?' }).waitFor();
    expect(await amiss(sheet.watched, 'sign-off-unit')).toEqual([]);
    await page.getByRole('button', { name: 'I mistyped it' }).click();
    await sheet.enter('45', '49');
    await sheet.note('Taken down as read').waitFor();
    expect(await amiss(sheet.watched, 'sign-off-over')).toEqual([]);
    await page.getByRole('button', { name: 'I have new ones: renew' }).click();
    expect(await amiss(sheet.watched, 'sign-off-renew')).toEqual([]);
    expect(sheet.watched.faults).toEqual([]);
    await sheet.close();
  });

  test('with many fasteners, in the way, refused, by hand, snug, and for the second person', async () => {
    const car = await newCar();
    const sheet = await open({ joint: 'J-909', car });
    const { page } = sheet;
    expect(await amiss(sheet.watched, 'sign-off-many')).toEqual([]);
    for (const joint of ['J-902', 'J-903', 'J-904', 'J-905', 'J-906', 'J-907', 'J-910', 'J-912', 'J-914']) {
      await sheet.go(car, joint);
      expect(await amiss(sheet.watched, `sign-off-${joint}`), joint).toEqual([]);
    }
    await sheet.go(car, 'J-911');
    await sheet.enter('45', '45', '45', '45', '45', '45');
    await sheet.signKey.click();
    await sheet.pinDialog.waitFor();
    expect(await amiss(sheet.watched, 'sign-off-pin')).toEqual([]);
    await sheet.givePin('570931');
    await page.getByRole('region', { name: /Reported, not accepted/ }).waitFor();
    expect(await amiss(sheet.watched, 'sign-off-refused')).toEqual([]);
    await shop.give('tobit', {
      type: 'final-joint',
      car,
      joint: 'J-908',
      tool: 'T-91',
      passes: [[1, 2]],
      readings: ['45', '45.5'],
    });
    await sheet.go(car, 'J-908');
    expect(await amiss(sheet.watched, 'sign-off-verify')).toEqual([]);
    await page.getByRole('button', { name: 'Not right: say why' }).click();
    expect(await amiss(sheet.watched, 'sign-off-reject')).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Not as signed' }).click();
    expect(await amiss(sheet.watched, 'sign-off-recheck')).toEqual([]);
    expect(sheet.watched.faults).toEqual([]);
    await sheet.close();
  });
});

describe('the markup', () => {
  test('carries no style attribute from the server', async () => {
    const sheet = await open({ joint: 'J-901' });
    const html = await sheet.page.evaluate(() => fetch(location.href).then((response) => response.text()));
    expect(html).toContain('so-drawing');
    expect(html.match(/<[^>]*\sstyle=/g)).toBeNull();
    await sheet.close();
  });
});
