/**
 * The day on which C54-012's gate is cleared, in two windows at once: the lead's board at the desk, and the tablet that
 * goes round the car. What is done in one is seen in the other; nobody reloads anything.
 */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { comeIn } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { dragByMouse, refusal, standsIn, whenReady } from './board-page';
import { sign } from './car-page';
import { Journey, signByTaps } from './journey';

const CAR = '/cars/C54-012';

let shop: OpenedShop;
let journey: Journey;
let lead: Watched;
let tablet: Watched;

beforeAll(async () => {
  shop = await openShop();
  journey = await Journey.at(shop.address);
  [lead, tablet] = await Promise.all([journey.window('desk'), journey.window('tablet')]);
  await Promise.all([comeIn(lead, 'mara', '/board'), comeIn(tablet, 'tobit', CAR)]);
  await whenReady(lead.page);
});
afterAll(async () => {
  await journey.close();
  await shop.close();
});

const panel = (): Locator => refusal(lead.page, 'C54-012 stays in Steering');
const left = (words: string): Promise<void> =>
  panel().getByText(`Changed since: ${words} to clear now before gate 6.`).waitFor();
/** The only form of this name on the page, its line opened first where it is folded. */
const formOf = async (page: Page, line: string, name: string): Promise<Locator> => {
  const button = page.getByRole('button', { name: new RegExp(`^${line}`) }).first();
  await button.waitFor();
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
  return page.getByRole('form', { name, exact: true }).first();
};

const torquesTheBracket = async (page: Page): Promise<void> => {
  await page.goto(`${CAR}/joints/J-213`);
  await page.getByRole('button', { name: 'It is C54-012' }).tap();
  await page.getByRole('region', { name: 'Value and tool' }).getByRole('button').tap();
  const tools = page.getByRole('dialog', { name: 'Which tool' });
  await tools
    .getByRole('listitem')
    .filter({ hasText: /^T-12.*suspect since/s })
    .waitFor();
  await tools
    .getByRole('button', { name: /^T-05 / })
    .first()
    .tap();
  for (const reading of ['45', '45.5']) {
    for (const key of reading)
      await page
        .getByRole('group', { name: 'Keys', exact: true })
        .getByRole('button', { name: key === '.' ? 'point' : key, exact: true })
        .tap();
    await page.getByRole('button', { name: /^(Next|Enter)/ }).tap();
  }
  await page.getByRole('button', { name: /^Sign final/ }).tap();
  await signByTaps(page, 'tobit');
};

/** On the same sheet and in other hands: who had a hand in it is not offered. */
const verifiesIt = async (page: Page): Promise<void> => {
  const who = page.getByRole('group', { name: 'Who verifies' });
  await who
    .getByText(/Ines Harrow/)
    .first()
    .waitFor();
  expect(await who.getByRole('button', { name: /Ines Harrow|Tobit Fenn/ }).count()).toBe(0);
  await who.getByRole('button', { name: /Oswin Slate/ }).tap();
  await page.getByRole('button', { name: /^Tried with which tool/ }).tap();
  await page.getByRole('dialog', { name: 'Which tool' }).getByRole('button', { name: /^T-06/ }).tap();
  await page.getByRole('button', { name: /^Verify/ }).tap();
  await signByTaps(page, 'oswin');
  await page.getByRole('list', { name: 'Joint is verified' }).waitFor();
};

const triesAgain = async (page: Page): Promise<void> => {
  await page.goto(CAR);
  const moved = await formOf(page, 'J-512', 'Nothing moved');
  await moved.getByLabel('Tool').selectOption('T-08');
  await moved.getByRole('button', { name: 'Nothing moved' }).tap();
  await sign(page, 'tobit');
};

const takesTheWrapsOut = async (page: Page): Promise<void> => {
  const wraps = await formOf(page, 'G-tap-1', 'Took out');
  await wraps.getByRole('button', { name: '2 out' }).tap();
  await sign(page, 'tobit');
};

const decidesAndReleases = async (page: Page): Promise<void> => {
  await panel()
    .getByRole('link', { name: /^See the hold/ })
    .click();
  const hold = page.getByRole('form', { name: 'Release', exact: true });
  await hold.getByLabel('Why it is over').fill('He fits.');
  await hold.getByRole('button', { name: 'Release' }).click();
  await sign(page, 'mara');
  const finding = await formOf(page, 'F-1', 'What is to be done');
  await finding.getByRole('radio', { name: /^Rework/ }).check();
  await finding.getByLabel('Reason, kept for good').fill('Shoes up two notches, then the cable.');
  await finding.getByRole('button', { name: 'Decide: rework' }).click();
  await sign(page, 'mara');
};

const passesTheCheck = async (page: Page): Promise<void> => {
  const check = await formOf(page, 'K-52', 'Passed');
  await check.getByLabel(/^travel/).fill('5');
  for (const statement of ['shoes', 'release'])
    await check
      .getByRole('group', { name: new RegExp(`^${statement}`) })
      .getByText('It is so')
      .tap();
  await check.getByRole('button', { name: 'Passed' }).tap();
  await sign(page, 'tobit');
};

test('a gate with five reasons, cleared by three people in two windows, and the car goes through', async () => {
  const atDesk = (name: string, act: () => Promise<unknown>): Promise<void> =>
    journey.step(lead.page, `lead: ${name}`, act);
  const atCar = (name: string, act: () => Promise<unknown>): Promise<void> =>
    journey.step(tablet.page, `tablet: ${name}`, act);

  await atDesk('drags it against the gate', async () => {
    await dragByMouse(lead.page, 'C54-012', 'On wheels');
    await panel().getByText('to clear before gate 6.').waitFor();
  });
  await atCar('torques the bracket', () => torquesTheBracket(tablet.page));
  await atCar('and the second person verifies it', () => verifiesIt(tablet.page));
  await atDesk('sees the open list shrink', () => left('five things'));
  await atCar('tries the neighbour again', () => triesAgain(tablet.page));
  await atDesk('sees it shrink', () => left('four things'));
  await atCar('takes the wraps out', () => takesTheWrapsOut(tablet.page));
  await atDesk('sees it shrink once more', async () => {
    await left('three things');
    await journey.look(lead, 'two-windows-follows');
  });
  await atDesk('decides and releases', () => decidesAndReleases(lead.page));
  await atDesk('is back at the board', async () => {
    await lead.page.getByRole('link', { name: 'Track board' }).first().click();
    await whenReady(lead.page);
    await lead.page.getByRole('button', { name: /^2 hold gate 6 of C54-012 closed$/ }).waitFor();
  });
  await atCar('passes the check, which closes its finding', () => passesTheCheck(tablet.page));
  await atDesk('sees the gate open, and moves the car', async () => {
    await lead.page.getByLabel('Gate 6 is open for C54-012').waitFor({ state: 'attached' });
    await dragByMouse(lead.page, 'C54-012', 'On wheels');
    await standsIn(lead.page, 'C54-012', 'On wheels').waitFor();
  });
  await atCar('sees where it stands now', async () => {
    await tablet.page.getByRole('heading', { name: /^In On wheels/ }).waitFor();
  });
  journey.noFaults();
});
