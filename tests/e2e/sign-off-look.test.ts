/** The sign-off sheet for gloves, small screens, keyboards and screen readers: measured, in each of its states. */
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SIZES, axe, isTooWide, openBrowser, shoot } from '@/tests/support/browser';
import type { Size, Theme } from '@/tests/support/browser';
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
  readonly theme?: Theme;
  readonly car?: string;
}
const open = async ({ joint, size, theme, car }: Opening): Promise<Sheet> =>
  Sheet.open(browser, { address: shop.shop.address, car: car ?? (await newCar()), joint, size, theme });

interface Box {
  readonly what: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Everything that can be pressed and is seen now: of the page, or of the dialog that lies over it. */
const targets = (page: Page, within: string): Promise<readonly Box[]> =>
  page.evaluate((selector) => {
    const root = document.querySelector('dialog[open]') ?? document.querySelector(selector);
    const found = [...(root?.querySelectorAll('button, a[href], input, select, textarea') ?? [])];
    return found.flatMap((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      const isSeen = width > 0 && height > 0 && getComputedStyle(each).visibility !== 'hidden';
      return isSeen
        ? [{ what: `${each.className || each.tagName}: ${each.textContent.trim()}`, x, y, width, height }]
        : [];
    });
  }, within);

const small = (boxes: readonly Box[], least: number): readonly string[] =>
  boxes
    .filter(({ width, height }) => width < least - 0.5 || height < least - 0.5)
    .map(({ what, width, height }) => `${what} ${width.toFixed(0)} × ${height.toFixed(0)}`);

/** An input that is drawn within a larger box takes that whole box. */
const isInBox = ({ what }: Box): boolean => !/^(num|INPUT|TEXTAREA)/.test(what);

describe.each(Object.keys(SIZES) as readonly Size[])('at %s', (size) => {
  test('keys are 72 px with 12 px between them, and nothing that is pressed is under 48', async () => {
    const sheet = await open({ joint: 'J-901', size });
    await sheet.tap(4);
    const boxes = (await targets(sheet.page, 'main')).filter(isInBox);
    const keys = boxes.filter(({ what }) => /^(alt: Clear|BUTTON: [\d.])/.test(what));
    expect(keys).toHaveLength(12);
    expect(small(keys, 72)).toEqual([]);
    expect(small(boxes, 48)).toEqual([]);
    const [seven, eight, , four] = keys;
    if (seven === undefined || eight === undefined || four === undefined) throw new Error('keys are missing');
    expect(Math.round(eight.x - seven.x - seven.width)).toBe(12);
    expect(Math.round(four.y - seven.y - seven.height)).toBe(12);
    const sign = boxes.find(({ what }) => what.startsWith('so-signkey'));
    const lowest = Math.max(...keys.map(({ y, height }) => y + height));
    expect((sign?.height ?? 0) >= 72).toBe(true);
    expect((sign?.y ?? 0) - lowest).toBeGreaterThanOrEqual(72);
    expect(await isTooWide(sheet.page)).toBe(false);
    await shoot(sheet.watched, 'sign-off');
    await sheet.close();
  });

  test('what is tapped is large: clicks, tools, the ones to choose', async () => {
    const sheet = await open({ joint: 'J-902', size });
    const { page } = sheet;
    const tap = await page.locator('.so-tap').boundingBox();
    expect((tap?.height ?? 0) >= 200 && (tap?.width ?? 0) >= 200).toBe(true);
    await sheet.tap(3);
    await shoot(sheet.watched, 'sign-off-click');
    await page.locator('.so-pick').click();
    expect(small(await targets(page, 'main'), 48)).toEqual([]);
    expect(
      small(
        (await targets(page, 'main')).filter(({ what }) => what.startsWith('so-way')),
        72,
      ),
    ).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    await shoot(sheet.watched, 'sign-off-tools');
    await sheet.close();
  });
});

describe('on a phone', () => {
  test('the entry box stays in sight above the keys', async () => {
    const sheet = await open({ joint: 'J-913', size: 'phone' });
    const { page } = sheet;
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

describe.each(['light', 'dark'] as const)('in %s, axe finds nothing', (theme) => {
  test('on the sheet while it is read, over, and behind its dialogs', async () => {
    const sheet = await open({ joint: 'J-908', theme });
    const { page } = sheet;
    expect(await axe(page)).toEqual([]);
    await page.locator('.so-pick').click();
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change who does it' }).click();
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await sheet.enter('33');
    await page.getByRole('dialog', { name: 'Which unit does the tool show?' }).waitFor();
    expect(await axe(page)).toEqual([]);
    await page.getByRole('button', { name: 'I mistyped it' }).click();
    await sheet.enter('45', '49');
    await sheet.note('Taken down as read').waitFor();
    expect(await axe(page)).toEqual([]);
    await shoot(sheet.watched, 'sign-off-over');
    await page.getByRole('button', { name: 'I have new ones: renew' }).click();
    expect(await axe(page)).toEqual([]);
    expect(sheet.watched.faults).toEqual([]);
    await sheet.close();
  });

  test('with many fasteners, in the way, refused, by hand, snug, and for the second person', async () => {
    const car = await newCar();
    const sheet = await open({ joint: 'J-909', theme, car });
    const { page } = sheet;
    expect(await axe(page)).toEqual([]);
    await shoot(sheet.watched, 'sign-off-many');
    for (const joint of ['J-903', 'J-904', 'J-905', 'J-906', 'J-907', 'J-910', 'J-912', 'J-914']) {
      await sheet.go(car, joint);
      expect([joint, await axe(page)]).toEqual([joint, []]);
      await shoot(sheet.watched, `sign-off-${joint}`);
    }
    await sheet.go(car, 'J-911');
    await sheet.enter('45', '45', '45', '45', '45', '45');
    await sheet.signKey.click();
    await sheet.pinDialog.waitFor();
    expect(await axe(page)).toEqual([]);
    await sheet.givePin('570931');
    await page.getByRole('region', { name: /Reported, not accepted/ }).waitFor();
    expect(await axe(page)).toEqual([]);
    await shoot(sheet.watched, 'sign-off-refused');
    await shop.give('tobit', {
      type: 'final-joint',
      car,
      joint: 'J-908',
      tool: 'T-91',
      passes: [[1, 2]],
      readings: ['45', '45.5'],
    });
    await sheet.go(car, 'J-908');
    expect(await axe(page)).toEqual([]);
    await shoot(sheet.watched, 'sign-off-verify');
    await page.getByRole('button', { name: 'Not right: say why' }).click();
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Not as signed' }).click();
    expect(await axe(page)).toEqual([]);
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
