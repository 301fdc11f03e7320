/** The second person: from the queue to the joint and back, with a scanner in the hand. */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { comeIn } from '@/tests/support/browser';
import { Journey, personOf } from './journey';
import { SignOffShop } from './sign-off-shop';

let shop: SignOffShop;
let journey: Journey;

/** Two joints of one car wait: one is tried again with a tool, the other is looked at. */
beforeAll(async () => {
  shop = await SignOffShop.open();
  journey = await Journey.at(shop.shop.address);
  await shop.begin('V-01');
  const on = { type: 'final-joint', car: 'V-01' } as const;
  await shop.give('tobit', {
    ...on,
    joint: 'J-908',
    tool: 'T-91',
    passes: [[1, 2]],
    readings: ['45', '45.5'],
  });
  await shop.give('tobit', { ...on, joint: 'J-902', tool: 'T-92', setting: '22', passes: [[1, 3, 2, 4]] });
});
afterAll(async () => {
  await journey.close();
  await shop.close();
});

const queue = (page: Page): Locator => page.getByRole('region', { name: 'V-01' });
const toVerify = (page: Page, joint: string): Locator =>
  page.getByRole('link', { name: new RegExp(`^Verify ${joint}.* of V-01`) });
const openSheet = async (page: Page, joint: string): Promise<void> => {
  await toVerify(page, joint).click();
  await page.waitForURL(new RegExp(`/cars/V-01/joints/${joint}$`));
};
/** A scanner types, and ends with Enter; nobody has to aim first. */
const scan = async (page: Page, code: string): Promise<void> => {
  await page.keyboard.type(code);
  await page.keyboard.press('Enter');
};
const givePin = async (page: Page): Promise<void> => {
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type(personOf('oswin').pin);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
};

test('a second person: verifies one, rejects another, each by its method, and both are off the list', async () => {
  const watched = await journey.window('desk');
  const { page } = watched;
  const step = (name: string, act: () => Promise<unknown>): Promise<void> => journey.step(page, name, act);

  await step('reads the list', async () => {
    await comeIn(watched, 'oswin', '/verify');
    await queue(page)
      .getByText(/^re-apply /)
      .first()
      .waitFor();
  });
  await step('stands at the right car: the plate of another is not taken', async () => {
    await openSheet(page, 'J-908');
    const which = page.getByRole('region', { name: 'Which car' });
    await which.getByRole('button', { name: 'It is V-01' }).waitFor();
    await scan(page, 'C54-012');
    await which.getByText(/The plate says C54-012; this sheet is for V-01/).waitFor();
    await journey.look(watched, 'second-wrong-plate');
    await scan(page, 'v01');
    await which.getByText('this car, you said').waitFor();
  });
  await step('tries it again and verifies', async () => {
    const key = page.getByRole('button', { name: /^Verify/ });
    await key.filter({ hasText: 'choose the tool it is tried with' }).waitFor();
    await page.getByRole('button', { name: /^Tried with which tool/ }).click();
    await page.getByRole('dialog', { name: 'Which tool' }).getByRole('button', { name: /^T-91/ }).click();
    await page.getByText('T-91 put on both nuts at 42 N·m: nothing moves').waitFor();
    await key.click();
    await givePin(page);
    await page.getByText('Verified by Oswin Slate').first().waitFor();
  });
  await step('looks at the other and rejects it, without being asked for the car again', async () => {
    await page
      .getByRole('navigation', { name: 'Main', exact: true })
      .getByRole('link', { name: 'Verify' })
      .click();
    await page.waitForURL((url) => url.pathname === '/verify');
    await toVerify(page, 'J-908').waitFor({ state: 'detached' });
    await openSheet(page, 'J-902');
    await page.getByRole('region', { name: 'Which car' }).getByText('this car, you said').waitFor();
    expect(await page.getByRole('button', { name: /^It is V-01/ }).count()).toBe(0);
    await page.getByRole('button', { name: 'Not right: say why' }).click();
    const reject = page.getByRole('dialog', { name: 'What is not right?' });
    await reject.getByRole('button', { name: 'Stripe is missing' }).click();
    await reject.getByRole('button', { name: 'Not right', exact: true }).click();
    await page.getByRole('list', { name: 'Joint is final, in doubt' }).waitFor();
  });
  await step('finds the same on the list, on the car and in the record', async () => {
    await page.goto('/verify');
    await page.getByRole('heading', { name: 'Waits for your eyes' }).waitFor();
    for (const joint of ['J-902', 'J-908']) expect(await toVerify(page, joint).count()).toBe(0);
    await page.goto('/cars/V-01');
    await page
      .getByRole('region', { name: 'Loose ends' })
      .getByRole('button', { name: /^J-902/ })
      .first()
      .waitFor();
    expect(await shop.joint('V-01', 'J-908')).toMatchObject({ level: 'verified' });
    expect(await shop.joint('V-01', 'J-902')).toMatchObject({
      level: 'final',
      doubts: [{ cause: 'rejected', because: 'rejected by oswin: Stripe is missing' }],
    });
  });
  journey.noFaults();
});
