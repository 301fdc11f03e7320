/** The owner looks in: everything can be read, and nothing is offered that is not hers to do. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { amiss, comeIn } from '@/tests/support/browser';
import { plate, whenReady } from './board-page';
import { openDoors } from './doors-shop';
import type { Doors } from './doors-shop';
import { Journey } from './journey';

let doors: Doors;
let journey: Journey;

beforeAll(async () => {
  doors = await openDoors();
  journey = await Journey.at(doors.shop.address);
  // At her own desk, as in a shop of one's own: nobody else's PIN counts there.
  await doors.above.query('UPDATE shop_setting SET demo = false');
});
afterAll(async () => {
  await journey.close();
  await doors.close();
});

test('an owner’s look: the floor, a car, the log, people and tools', async () => {
  const watched = await journey.window('desk');
  const { page } = watched;
  const step = (name: string, act: () => Promise<unknown>): Promise<void> => journey.step(page, name, act);
  const goTo = (says: string): Promise<void> =>
    page
      .getByRole('navigation', { name: 'Main', exact: true })
      .getByRole('link', { name: says, exact: true })
      .click();
  let loose = '';

  await step('reads the board, and moves nothing', async () => {
    await comeIn(watched, 'ada', '/board');
    await whenReady(page);
    expect(await plate(page, 'C54-012').count()).toBe(0);
    const car = page.getByRole('link', { name: /^C54-012, / });
    loose = /(\d+) loose ends/.exec((await car.textContent()) ?? '')?.[1] ?? '';
    await car.click();
    await page.waitForURL((url) => url.pathname === '/cars/C54-012');
  });
  await step('reads the car: the same count, her own hold, nobody else’s forms', async () => {
    await page.getByRole('link', { name: `${loose} loose ends` }).waitFor();
    await page.getByRole('button', { name: /^H-1/ }).first().waitFor();
    const gate = page.getByRole('region', { name: /^Gate 6/ });
    await gate.getByText(/^Move to On wheels is not for Ada Quern\. That is for a lead/).waitFor();
    expect(await gate.getByRole('button').count()).toBe(0);
    await page.getByRole('button', { name: 'Send back', exact: true }).click();
    await page.getByText(/^Send back is not for Ada Quern\./).waitFor();
    expect(await page.getByRole('form', { name: 'Send back' }).count()).toBe(0);
    expect(await page.getByText('Whoever may gives their PIN').count()).toBe(0);
    // Her own hold she may release.
    const hold = page.getByRole('button', { name: /^H-1/ }).first();
    if ((await hold.getAttribute('aria-expanded')) === 'false') await hold.click();
    await page.getByRole('form', { name: 'Release', exact: true }).waitFor();
  });
  await step('reads the log', async () => {
    await goTo('Log');
    await page.waitForURL((url) => url.pathname === '/log');
    await page
      .getByRole('main')
      .getByRole('listitem')
      .filter({ hasText: 'The customer sits in it' })
      .first()
      .waitFor();
    expect(await page.getByRole('main').getByRole('form').count()).toBe(0);
  });
  await step('reads what must be bought, and why', async () => {
    await goTo('Hardware');
    await page.waitForURL((url) => url.pathname === '/hardware');
    await page.getByRole('heading', { name: 'Hardware demand' }).waitFor();
    const first = page.getByRole('rowheader').getByRole('button').first();
    await first.click();
    await page.getByRole('heading', { name: /^Why .* short/ }).waitFor();
    await page
      .getByRole('cell')
      .getByRole('link', { name: /^(C54|LGT)-/ })
      .first()
      .waitFor();
    expect(await amiss(watched, 'hardware')).toEqual([]);
    expect(await page.getByRole('main').getByText(/[£€$]/).count()).toBe(0);
  });
  await step('reads the tools', async () => {
    await goTo('Tools');
    await page.waitForURL((url) => url.pathname === '/tools');
    await page.getByRole('main').getByText('T-12').first().waitFor();
  });
  await step('and the people', async () => {
    await goTo('Set up');
    await page.waitForURL((url) => url.pathname === '/set-up');
    await page
      .getByRole('link', { name: /People/ })
      .last()
      .click();
    await page.waitForURL((url) => url.pathname === '/set-up/people');
    for (const name of ['Ada Quern', 'Mara Mill', 'Tobit Fenn', 'Ines Harrow', 'Oswin Slate'])
      await page.getByRole('main').getByText(name).first().waitFor();
  });
  journey.noFaults();
});
