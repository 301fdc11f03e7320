/** A lead's morning at the desk, by keys alone. */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Watched } from '@/tests/support/browser';
import { plate, refusal, standsIn, whenReady } from './board-page';
import { BoardShop } from './board-shop';
import { Journey, personOf, press, signByKeys, tabTo, write } from './journey';

let shop: BoardShop;
let journey: Journey;

beforeAll(async () => {
  shop = await BoardShop.open();
  journey = await Journey.at(shop.shop.address);
});
afterAll(async () => {
  await journey.close();
  await shop.close();
});

const heard = (page: Page, text: string | RegExp): Promise<void> =>
  page.getByText(text).first().waitFor({ state: 'attached' });

/** What is picked up hears keys from the next turn of the page on: no hand is as quick, a test may be. */
const hearsKeys = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => setTimeout(done)));

/** Picked up, one stage on, put down; the page says each of it. */
const moveOn = async (page: Page, car: string): Promise<void> => {
  await press(page, plate(page, car), 'Space');
  await heard(page, new RegExp(`^${car} (picked up in|over) `));
  await hearsKeys(page);
  await page.keyboard.press('ArrowRight');
  await heard(page, new RegExp(`^${car} over .*, the next stage\\.`));
  await page.keyboard.press('Space');
};
const held = (page: Page): Locator => page.getByRole('button', { name: /holds? gate 6 of C54-012 closed$/ });
const goTo = (page: Page, says: string): Promise<void> =>
  press(page, page.getByRole('navigation', { name: 'Main', exact: true }).getByRole('link', { name: says }));

const signsIn = async ({ page }: Watched): Promise<void> => {
  const mara = personOf('mara');
  await page.goto('/sign-in?at=desk&to=%2Fboard');
  await write(page, page.getByLabel('Name', { exact: true }), mara.name);
  await write(page, page.getByLabel('Password', { exact: true }), mara.password);
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => url.pathname === '/board');
  await whenReady(page);
};

const putsInesOnAStage = async ({ page }: Watched): Promise<void> => {
  const chip = page.getByRole('region', { name: 'People' }).getByRole('button', { name: 'Ines' });
  await press(page, chip, 'Space');
  await heard(page, /^Ines Harrow (picked up|over|is over)/);
  await hearsKeys(page);
  await page.keyboard.press('ArrowDown');
  await heard(page, /^Ines Harrow over /);
  const before = await page.getByText(/^Ines Harrow over /).textContent();
  await page.keyboard.press('ArrowRight');
  const over = page.getByText(/^Ines Harrow over /).filter({ hasNotText: before ?? '' });
  await over.waitFor({ state: 'attached' });
  const spot = /over (.+?)\./.exec((await over.textContent()) ?? '')?.[1] ?? '';
  await page.keyboard.press('Space');
  await page.getByRole('region', { name: 'People' }).getByText(`Ines Harrow is on ${spot}`).waitFor();
};

const readsFiveReasons = async ({ page }: Watched): Promise<void> => {
  await moveOn(page, 'C54-012');
  const why = refusal(page, 'C54-012 stays in Steering');
  await why.waitFor();
  for (const reason of ['J-213', 'J-512', 'K-52', 'tie wrap', 'H-1'])
    await why.getByRole('listitem').filter({ hasText: reason }).first().waitFor();
  expect(await why.evaluate((panel) => panel.contains(document.activeElement))).toBe(true);
};

const decidesWhatALeadCan = async ({ page }: Watched): Promise<void> => {
  await press(page, refusal(page, 'C54-012 stays in Steering').getByRole('link', { name: /^See the hold/ }));
  await page.waitForURL((url) => url.pathname === '/cars/C54-012');
  const hold = page.getByRole('form', { name: 'Release', exact: true });
  await write(page, hold.getByLabel('Why it is over'), 'He fits.');
  await press(page, hold.getByRole('button', { name: 'Release' }));
  await signByKeys(page, 'mara');
  await heard(page, /H-1 is over/);
  const line = page.getByRole('button', { name: /^F-1/ }).first();
  await tabTo(page, line);
  if ((await line.getAttribute('aria-expanded')) === 'false') await page.keyboard.press('Enter');
  const finding = page.getByRole('form', { name: 'What is to be done' });
  await press(page, finding.getByRole('radio', { name: /^Rework/ }), 'Space');
  await write(page, finding.getByLabel('Reason, kept for good'), 'Shoes up two notches.');
  await press(page, finding.getByRole('button', { name: 'Decide: rework' }));
  await signByKeys(page, 'mara');
  await heard(page, /F-1 about .*rework/);
};

test('a lead’s morning: what waits, who does it, what is held, what is decided, and where it stands written', async () => {
  await shop.beginReady('B-01');
  await shop.advance('B-01');
  await shop.beginReady('B-02');
  const watched = await journey.window('desk');
  const { page } = watched;
  const step = (name: string, act: () => Promise<unknown>): Promise<void> => journey.step(page, name, act);

  await step('signs in', () => signsIn(watched));
  await step('reads what waits', async () => {
    await held(page).filter({ hasText: '6' }).waitFor();
    await page.getByLabel('Gate 1 is open for B-02').waitFor({ state: 'attached' });
  });
  await step('puts Ines on a stage', () => putsInesOnAStage(watched));
  await step('drags a car against its closed gate', async () => {
    await readsFiveReasons(watched);
  });
  await step('decides what a lead can decide', async () => {
    await decidesWhatALeadCan(watched);
    await journey.look(watched, 'lead-car');
  });
  await step('finds the same count on the board', async () => {
    await page
      .getByRole('link', { name: /holds? gate 6$/ })
      .filter({ hasText: /^5 / })
      .waitFor();
    await goTo(page, 'Track board');
    await page.waitForURL((url) => url.pathname === '/board');
    await whenReady(page);
    await held(page).filter({ hasText: '5' }).waitFor();
  });
  await step('gives a reason where a bay is full', async () => {
    await moveOn(page, 'B-02');
    const full = page.getByRole('dialog', { name: 'Second is full' });
    await full.waitFor();
    await journey.look(watched, 'lead-full');
    await press(page, full.getByRole('button', { name: 'Move B-02 all the same' }));
    await full.getByText('Say why it goes in all the same.').waitFor();
    await write(page, full.getByLabel('Reason'), 'one goes out at noon');
    await press(page, full.getByRole('button', { name: 'Move B-02 all the same' }));
    await standsIn(page, 'B-02', 'Second').waitFor();
  });
  await step('moves the other one on', async () => {
    await moveOn(page, 'B-01');
    await standsIn(page, 'B-01', 'Third').waitFor();
    expect(await shop.stageOf('B-01')).toBe(2);
  });
  await step('finds all of it in the log', async () => {
    await goTo(page, 'Log');
    await page.waitForURL((url) => url.pathname === '/log');
    const entries = page.getByRole('main').getByRole('listitem');
    await entries
      .filter({ hasText: 'one goes out at noon' })
      .filter({ hasText: 'Mara Mill' })
      .first()
      .waitFor();
    await entries.filter({ hasText: 'Shoes up two notches.' }).first().waitFor();
    await press(page, page.getByRole('link', { name: 'refused', exact: true }));
    await page.waitForURL(/kind=refused/);
    await entries.filter({ hasText: 'C54-012' }).filter({ hasText: 'Mara Mill' }).first().waitFor();
  });
  journey.noFaults();
});
