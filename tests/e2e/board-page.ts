/** The track board as a person finds it: by names of cars and stages, never by how it is made. */
import type { Locator, Page } from 'playwright';

export const row = (page: Page, car: string): Locator =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByRole('link', { name: new RegExp(`^${car}`) }) })
    .first();

/** The plate of who may move it; it says its number, its crew, its loose ends and its stage. */
export const plate = (page: Page, car: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^${car}, `) });

export const moveButton = (page: Page, car: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^Move ${car}`) });

/** One stage of one car. */
export const place = (page: Page, car: string, stage: string): Locator =>
  page
    .getByRole('list', { name: `The way of ${car}` })
    .getByRole('listitem')
    .filter({ hasText: new RegExp(`(Passed|Here|Ahead): ${stage}`) });

export const refusal = (page: Page, title: string): Locator => page.getByRole('dialog', { name: title });

/** The board answers to the hand only once its script has come: then the plates tell how they are moved. */
export const whenReady = async (page: Page): Promise<void> => {
  await page.locator('#how-to-move-a-plate').waitFor({ state: 'attached' });
};

export const standsIn = (page: Page, car: string, stage: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^${car}, .*stands in ${stage}$`) });

interface Point {
  readonly x: number;
  readonly y: number;
}

const middleOf = async (locator: Locator): Promise<Point> => {
  await locator.scrollIntoViewIfNeeded();
  const box = await locator.boundingBox();
  if (box === null) throw new Error('it is not to be seen');
  return { x: box.x + box.width / 2, y: box.y + Math.min(box.height / 2, 40) };
};

/** By mouse, in steps, as a hand does. */
export const dragByMouse = async (page: Page, car: string, stage: string): Promise<void> => {
  const from = await middleOf(plate(page, car));
  const to = await middleOf(place(page, car, stage));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 12, from.y, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 12 });
  await page.mouse.up();
};

/** By finger: held for a moment, or the page would be scrolled. */
export const dragByTouch = async (page: Page, car: string, stage: string): Promise<void> => {
  const from = await middleOf(plate(page, car));
  const to = await middleOf(place(page, car, stage));
  const client = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: Point | null): Promise<unknown> =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: at === null ? [] : [at] });
  await touch('touchStart', from);
  await page.locator('.platecard.drag').waitFor();
  for (const share of [0.1, 0.4, 0.7, 1])
    await touch('touchMove', { x: from.x + (to.x - from.x) * share, y: from.y });
  await touch('touchEnd', null);
  await client.detach();
};
