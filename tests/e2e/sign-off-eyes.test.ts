/** The second person, the second try, and bad news, on the sign-off sheet. */
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { amiss, openBrowser } from '@/tests/support/browser';
import { drawnJpeg } from '@/tests/support/photos';
import { Sheet, pinOf } from './sign-off-page';
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
  const car = `V-${String((cars += 1)).padStart(3, '0')}`;
  await shop.begin(car);
  return car;
};
const open = (car: string, joint: string, person: string): Promise<Sheet> =>
  Sheet.open(browser, { address: shop.shop.address, car, joint, person });

/** J-908, brought to final by Tobit. */
const finalCar = async (): Promise<string> => {
  const car = await newCar();
  await shop.give('tobit', {
    type: 'final-joint',
    car,
    joint: 'J-908',
    tool: 'T-91',
    passes: [[1, 2]],
    readings: ['45', '45.5'],
  });
  return car;
};

describe('verifying', () => {
  test('offers who may, says beside the others why not, and is done by the joint’s own method', async () => {
    const car = await finalCar();
    const sheet = await open(car, 'J-908', 'tobit');
    const { page } = sheet;
    const whos = page.getByRole('group', { name: 'Who verifies' });
    expect(await whos.innerText()).toContain('Tobit Fenn signed it, so can’t verify it');
    expect(await whos.getByRole('button', { name: /Tobit/ }).count()).toBe(0);
    expect(await page.locator('.so-look').innerText()).toMatch(/Look at the joint, not at the screen/);
    expect(await sheet.signKey.innerText()).toContain('choose who verifies');
    await whos.getByRole('button', { name: /Ines Harrow/ }).click();
    expect(await sheet.signKey.innerText()).toContain('choose the tool it is tried with');
    await page.getByRole('button', { name: /Tried with which tool/ }).click();
    const tools = page.getByRole('dialog', { name: 'Which tool' });
    expect(await tools.getByRole('button', { name: /^T-91/ }).innerText()).toMatch(/42 N·m/);
    await tools.getByRole('button', { name: /^T-91/ }).click();
    expect(await page.locator('.so-look').innerText()).toContain(
      'T-91 put on both nuts at 42 N·m: nothing moves',
    );
    // What is photographed outlives a reload, goes with the signature, and stands on the sheet from then on.
    const photos = page.getByRole('region', { name: 'Photographs' });
    const buffer = Buffer.from(drawnJpeg(640, 480));
    await photos
      .getByLabel('Take a photograph')
      .setInputFiles({ name: 'stripe.jpg', mimeType: 'image/jpeg', buffer });
    await photos.getByText('Kept fingerprint').waitFor();
    expect(await amiss(sheet.watched, 'sign-off-photo')).toEqual([]);
    await sheet.reload();
    await photos.getByText(/^Taken \d\d:\d\d, brought back/).waitFor();
    await whos.getByRole('button', { name: /Ines Harrow/ }).click();
    await page.getByRole('button', { name: /Tried with which tool/ }).click();
    await tools.getByRole('button', { name: /^T-91/ }).click();
    await page.getByText('One photograph goes with it').waitFor();
    await sheet.sign('ines');
    await sheet.note('Verified by Ines Harrow').waitFor();
    await sheet.level.getByText('verified').waitFor();
    await page.getByText('Nothing is asked now').waitFor();
    await photos.getByRole('button', { name: 'Open: J-908 Idler to bracket, as verified' }).waitFor();
    await photos.getByText('brought back').waitFor({ state: 'detached' });
    // Whoever only looks is not asked where they stand.
    await page.evaluate(() => sessionStorage.clear());
    await page.reload();
    await page.locator('.so-pad[data-ready]').waitFor();
    expect(await page.getByRole('button', { name: /^It is / }).count()).toBe(0);
    expect(await amiss(sheet.watched, 'sign-off-rest')).toEqual([]);
    expect((await shop.joint(car, 'J-908'))?.marks.at(-1)).toMatchObject({
      level: 'verified',
      by: 'ines',
      method: 're-applied',
      tool: 'T-91',
    });
    await sheet.close();
  });

  test('or does not agree: the joint is in doubt, a finding is open, and it is torqued again in full', async () => {
    const car = await finalCar();
    const sheet = await open(car, 'J-908', 'ines');
    const { page } = sheet;
    await page.getByRole('button', { name: 'Not right: say why' }).click();
    const dialog = page.getByRole('dialog', { name: 'What is not right?' });
    await dialog.getByRole('button', { name: 'Wrong hardware' }).click();
    await dialog.getByRole('button', { name: 'Not right', exact: true }).click();
    await sheet.level.getByText('in doubt').waitFor();
    expect(await shop.joint(car, 'J-908')).toMatchObject({
      level: 'final',
      doubts: [{ cause: 'rejected', remedy: 'retorque' }],
    });
    await sheet.ready();
    await sheet.enter('44', '44.5');
    await sheet.sign('ines');
    await sheet.note('Signed final by Ines Harrow').waitFor();
    expect((await shop.joint(car, 'J-908'))?.doubts).toEqual([]);
    await sheet.close();
  });

  test('by somebody else than who is signed in: a rejection asks who says it', async () => {
    const car = await finalCar();
    const sheet = await open(car, 'J-908', 'tobit');
    await sheet.page
      .getByRole('group', { name: 'Who verifies' })
      .getByRole('button', { name: /Oswin/ })
      .click();
    await sheet.page.getByRole('button', { name: 'Not right: say why' }).click();
    const dialog = sheet.page.getByRole('dialog', { name: 'What is not right?' });
    await dialog.getByRole('button', { name: 'Stripe is missing' }).click();
    await dialog.getByRole('button', { name: 'Not right', exact: true }).click();
    await sheet.givePin(pinOf('oswin'));
    await sheet.level.getByText('in doubt').waitFor();
    expect((await shop.joint(car, 'J-908'))?.doubts[0]?.because).toBe('rejected by oswin: Stripe is missing');
    await sheet.close();
  });
});

describe('trying again', () => {
  test('a neighbour was opened: recheck with a good tool, nothing moved', async () => {
    const car = await finalCar();
    await shop.give('tobit', {
      type: 'final-joint',
      car,
      joint: 'J-901',
      tool: 'T-91',
      passes: [
        [1, 3, 2, 4],
        [1, 3, 2, 4],
      ],
      readings: ['45', '45', '45', '45'],
    });
    await shop.give('tobit', { type: 'open-joint', car, joint: 'J-901', fasteners: [1] });
    const sheet = await open(car, 'J-908', 'tobit');
    expect(await sheet.note('In doubt').innerText()).toMatch(/J-901 was opened/);
    await sheet.page.getByRole('button', { name: /Tried with which tool/ }).click();
    await sheet.page
      .getByRole('dialog', { name: 'Which tool' })
      .getByRole('button', { name: /^T-91/ })
      .click();
    await sheet.sign('tobit');
    await sheet.note('Recheck signed').waitFor();
    expect(await shop.joint(car, 'J-908')).toMatchObject({ level: 'final', doubts: [] });
    await sheet.close();
  });

  test('a broken stripe is reported by who sees it, and the drawing breaks it', async () => {
    const car = await finalCar();
    const sheet = await open(car, 'J-908', 'ines');
    await sheet.page.getByRole('button', { name: 'Not as signed' }).click();
    const dialog = sheet.page.getByRole('dialog', { name: 'It is not as it was signed' });
    await dialog.getByRole('button', { name: 'nut 2' }).click();
    await dialog.getByRole('button', { name: 'Stripe broken' }).click();
    await sheet.level.getByText('in doubt').waitFor();
    expect((await shop.joint(car, 'J-908'))?.doubts).toMatchObject([
      { cause: 'stripe-broken', fasteners: [2] },
    ]);
    await sheet.close();
  });

  test('opened: a new cycle, told with what it was', async () => {
    const car = await finalCar();
    const sheet = await open(car, 'J-908', 'tobit');
    await sheet.page.getByRole('button', { name: 'It was opened' }).click();
    const dialog = sheet.page.getByRole('dialog', { name: 'Which nuts were loosened?' });
    await dialog.getByRole('button', { name: 'All' }).click();
    await dialog.getByLabel('Why').fill('to shift the idler');
    await dialog.getByRole('button', { name: 'Opened: both nuts' }).click();
    await sheet.level.getByText('was final').waitFor();
    expect(await shop.joint(car, 'J-908')).toMatchObject({ level: 'open', cycle: 2 });
    expect(await sheet.page.locator('.so-facts').first().innerText()).toContain('spent; a new one goes in');
    await sheet.close();
  });
});
