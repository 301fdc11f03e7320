import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Car } from '@/lib/domain/car/rows';
import { loadCar } from '@/lib/server/load/car';
import { amiss, axe, comeIn, isTooWide, newPage, openBrowser, shoot, SIZES } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { place, whenReady } from './board-page';
import { BoardShop } from './board-shop';

let shop: BoardShop;
let browser: Browser;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  [shop, browser] = await Promise.all([BoardShop.open(), openBrowser()]);
  // With the demo's own, at least a dozen cars.
  for (let car = 1; car < 10; car += 1) await shop.begin(`B-0${String(car)}`);
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

const chip = (name: string) => page.getByRole('region', { name: 'People' }).getByRole('button', { name });
const says = (words: string) => page.locator('.crewsaid').getByText(words);

const given = async (car: string, stage: string): Promise<readonly string[]> => {
  const found: Car | null = await loadCar(shop.db, car);
  return found?.assignments[`stage:${stage}`]?.people ?? [];
};

interface Point {
  readonly x: number;
  readonly y: number;
}
const middle = async (of: ReturnType<typeof chip>): Promise<Point> => {
  const box = await of.boundingBox();
  if (box === null) throw new Error('it is not to be seen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

const putByMouse = async (name: string, car: string, stage: string): Promise<void> => {
  await place(page, car, stage).scrollIntoViewIfNeeded();
  const from = await middle(chip(name));
  const to = await middle(place(page, car, stage));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 12, from.y + 6, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 12 });
  await page.mouse.up();
};

describe('a lead gives a stage', () => {
  test('by dragging a chip with the mouse, and keeps those who are there', async () => {
    await open('mara');
    await putByMouse('Tobit', 'B-01', 'Second');
    await says('is on Second of B-01').waitFor();
    await putByMouse('Mara', 'B-01', 'Second');
    await says('Mara Mill is on Second of B-01').waitFor();
    expect(await given('B-01', 'TWO')).toEqual(['tobit', 'mara']);
    await place(page, 'B-01', 'Second')
      .getByText(/Given to .*Mara Mill/)
      .waitFor({ state: 'attached' });
  });

  test('by finger', async () => {
    await open('mara', 'tablet');
    await place(page, 'B-02', 'Second').scrollIntoViewIfNeeded();
    const from = await middle(chip('Tobit'));
    const to = await middle(place(page, 'B-02', 'Second'));
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: Point | null): Promise<unknown> =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: at === null ? [] : [at] });
    await touch('touchStart', from);
    await page.locator('.personchip.flying').waitFor();
    for (const share of [0.1, 0.4, 0.7, 1])
      await touch('touchMove', {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
      });
    await touch('touchEnd', null);
    await client.detach();
    await says('is on Second of B-02').waitFor();
    expect(await given('B-02', 'TWO')).toEqual(['tobit']);
  });

  test('by a chip and a cell’s button, and takes them off by the same', async () => {
    await open('mara');
    await chip('Tobit').click();
    expect(await axe(page)).toEqual([]);
    await shoot(watched, 'crew-in-hand');
    await page.getByRole('button', { name: /^Put Tobit .* on Third of B-03$/ }).click();
    await says('is on Third of B-03').waitFor();
    await page.getByRole('button', { name: /^Take Tobit .* off Third of B-03$/ }).click();
    await says('is off Third of B-03').waitFor();
    expect(await given('B-03', 'THREE')).toEqual([]);
    await page.keyboard.press('Escape');
    await page
      .getByRole('button', { name: /^Put Tobit/ })
      .first()
      .waitFor({ state: 'detached' });
  });

  test('by check boxes on a phone, which say what somebody lacks', async () => {
    await open('mara', 'phone');
    await page.getByRole('button', { name: 'Crew of C54-012' }).tap();
    const dialog = page.getByRole('dialog', { name: /^Crew/ });
    await dialog.getByLabel('Stage').selectOption({ label: '2 Frame' });
    await dialog
      .getByText(/Not qualified for .*, which some of its work asks for/)
      .first()
      .waitFor();
    await dialog.getByLabel('Stage').selectOption({ label: '10 Proving' });
    expect(await amiss(watched, 'crew-boxes')).toEqual([]);
    await shoot(watched, 'crew-dialog');
    await dialog.getByRole('checkbox', { name: /Mara Mill/ }).check();
    await dialog.getByRole('button', { name: 'Give it' }).tap();
    await dialog.waitFor({ state: 'detached' });
    const car = await loadCar(shop.db, 'C54-012');
    const people = Object.entries(car?.assignments ?? {}).filter(([, row]) => row.people.includes('mara'));
    expect(people.length).toBeGreaterThan(0);
    expect(await isTooWide(page)).toBe(false);
  });
});

test('who gives no work sees no chips', async () => {
  await open('tobit');
  expect(await page.getByRole('region', { name: 'People' }).count()).toBe(0);
  expect(await page.getByRole('button', { name: /^Crew of/ }).count()).toBe(0);
});

test('a dozen cars fit every size, in both themes', async () => {
  await open('mara');
  expect(await page.getByRole('list', { name: /^The way of/ }).count()).toBeGreaterThanOrEqual(12);
  expect(await amiss(watched, 'board-twelve')).toEqual([]);
  for (const size of ['desk', 'tablet', 'phone'] as const) {
    await page.setViewportSize(SIZES[size]);
    const tallest = await page
      .locator('.track .rows > .row')
      .evaluateAll((rows) => Math.max(...rows.map((row) => row.getBoundingClientRect().height)));
    expect(tallest, size).toBeLessThan(size === 'desk' ? 160 : 240);
    const small = await page.locator('.track .move, .personchip').evaluateAll((all) =>
      all
        .filter((one) => one.checkVisibility())
        .flatMap((one) => {
          const { width, height } = one.getBoundingClientRect();
          return width < 48 || height < 48
            ? [`${one.textContent}: ${String(width)} × ${String(height)}`]
            : [];
        }),
    );
    expect(small, size).toEqual([]);
  }
});
