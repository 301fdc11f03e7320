/** A technician's day on a bench tablet, by taps alone; only words are typed. */
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import type { Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { freeClock } from '@/tests/support/free-clock';
import { Journey, comeByTaps, goByTaps, signByTaps, tapAndType, tapPin } from './journey';
import { DAY } from './journey-plan';
import { give } from './sign-off-shop';

let shop: OpenedShop;
let db: Database;
let journey: Journey;

/** Two cars: one is Tobit's from its beginning, of the other Ines left something half done. */
beforeAll(async () => {
  shop = await openShop();
  db = openDatabase(shop.database.url, 2);
  journey = await Journey.at(shop.address);
  const kept = await keepPlan(db, DAY);
  if (!('hash' in kept)) throw new Error(`the plan is there already: ${kept.taken}`);
  await give(db, 'mara', { type: 'release-plan', plan: kept.hash });
  for (const [car, colour] of [
    ['D-01', 'Bottle green'],
    ['D-02', 'Slate blue'],
  ] as const)
    await give(db, 'mara', { type: 'start-car', car, plan: kept.hash, chassis: car, colour });
  await freeClock(db, 'ines');
  await give(db, 'ines', { type: 'start-operation', car: 'D-02', operation: 'BX-020' });
  const left = {
    type: 'pause-operation',
    car: 'D-02',
    operation: 'BX-020',
    leftAs: 'swept to the door',
  } as const;
  await give(db, 'ines', left);
  for (const [car, job] of [
    ['D-01', 'operation:BX-010:1'],
    ['D-02', 'operation:BX-020:1'],
  ] as const)
    await give(db, 'mara', { type: 'assign', car, job, add: ['tobit'] });
});
afterAll(async () => {
  await journey.close();
  await db.$disconnect();
  await shop.close();
});

const acts = (page: Page): Locator => page.getByRole('region', { name: 'What can be done now' });
const act = (page: Page, name: string): Locator =>
  acts(page).getByRole('button', { name, exact: true }).first();
const told = (page: Page, text: RegExp): Promise<void> =>
  page.getByRole('article').getByText('Recorded.').locator('..').filter({ hasText: text }).waitFor();
const openJob = (page: Page, car: string): Promise<void> =>
  page
    .getByRole('main')
    .getByRole('link')
    .filter({ hasText: car })
    .filter({ hasText: /given to you|begun by you/ })
    .first()
    .tap();
const keys = (page: Page): Locator => page.getByRole('group', { name: 'Keys', exact: true });
const enter = async (page: Page, text: string): Promise<void> => {
  for (const key of text)
    await keys(page)
      .getByRole('button', { name: key === '.' ? 'point' : key, exact: true })
      .tap();
};
const onward = (page: Page): Promise<void> => page.getByRole('button', { name: /^(Next nut|Enter)/ }).tap();
const signKey = (page: Page): Locator => page.getByRole('button', { name: /^Sign final/ });

const startsOnceTheOtherIsPaused = async (page: Page): Promise<void> => {
  await openJob(page, 'D-01');
  const job = page.getByRole('article', { name: 'Box on its bracket' });
  await job.getByText('Nobody goes under until all four pins are home.').waitFor();
  await act(page, 'Start').tap();
  await acts(page).getByText('Read the cautions and tick them first.').waitFor();
  await acts(page).getByLabel('I have read them').tap();
  await act(page, 'Start').tap();
  const refused = page.getByRole('region', { name: /^Start: refused/ });
  await tapAndType(page, refused.getByLabel(/^How .* is left$/), 'left side done');
  await refused.getByRole('button', { name: /^Leave .*, then start$/ }).tap();
  await told(page, /Box on its bracket.* begins now/);
};

const pauses = async (page: Page, leftAs: string): Promise<void> => {
  await act(page, 'Pause').tap();
  const pause = acts(page).getByRole('form', { name: 'Pause' });
  await tapAndType(page, pause.getByLabel('Left as'), leftAs);
  await pause.getByRole('button', { name: 'Pause', exact: true }).tap();
  await page.getByText('Your clock does not run.').waitFor();
};

const takesOverAndFinishes = async (page: Page): Promise<void> => {
  await openJob(page, 'D-02');
  await page.getByRole('article', { name: 'Sweep the bay' }).waitFor();
  await page.getByText('swept to the door').first().waitFor();
  await act(page, 'Take over').tap();
  await acts(page).getByRole('form', { name: 'Take over' }).getByRole('button', { name: 'Take over' }).tap();
  await told(page, /goes on with .*Sweep the bay/);
  await act(page, 'Finish').tap();
  await signByTaps(page, 'tobit');
  await page.getByText('Your clock does not run.').waitFor();
};

const saysWhichCarAndTool = async (page: Page): Promise<void> => {
  const which = page.getByRole('region', { name: 'Which car' });
  await which.getByText('Bottle green').waitFor();
  await signKey(page).filter({ hasText: 'first say that it is this car' }).waitFor();
  expect(await keys(page).getByRole('button').first().getAttribute('aria-disabled')).toBe('true');
  await which.getByRole('button', { name: 'It is D-01' }).tap();
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
  await tools.waitFor({ state: 'hidden' });
};

const goesOverOnceAndRenews = async ({ page }: Watched): Promise<void> => {
  await enter(page, '45');
  await onward(page);
  await enter(page, '49');
  await onward(page);
  await page.getByText('Taken down as read.').waitFor();
};

test('a technician’s day: the next job, the cautions, the clock, the sheet, an over, a lock, and the end of it', async () => {
  const watched = await journey.window('tablet');
  const { page } = watched;
  const step = (name: string, run: () => Promise<unknown>): Promise<void> => journey.step(page, name, run);
  await page.clock.install();

  await step('signs in by tile and PIN', () => comeByTaps(page, 'tobit'));
  await step('looks at the day', async () => {
    await goByTaps(page, 'My work');
    await page.getByRole('region', { name: 'Your clock' }).getByText('Running since').waitFor();
  });
  await step('starts, once the other work is paused', () => startsOnceTheOtherIsPaused(page));
  await step('pauses', () => pauses(page, 'nuts on by hand'));
  await step('takes over what another left, and finishes it', () => takesOverAndFinishes(page));
  await step('goes on where it was left', async () => {
    await openJob(page, 'D-01');
    await page.getByRole('article', { name: 'Box on its bracket' }).waitFor();
    await page.getByText('nuts on by hand').first().waitFor();
    await act(page, 'Go on').tap();
    await told(page, /goes on/);
    // The page that says so stands still only once it has followed.
    await page.getByRole('region', { name: 'Your clock' }).getByText('Running since').waitFor();
    await page
      .getByRole('link', { name: /^Sign-off/ })
      .first()
      .tap();
    await page.waitForURL(/\/cars\/D-01\/joints\/J-961$/);
  });
  await step('says which car, and with which tool', async () => {
    await page.getByRole('button', { name: 'It is D-01' }).waitFor();
    await saysWhichCarAndTool(page);
  });
  await step('goes over', async () => {
    await goesOverOnceAndRenews(watched);
    await page.getByRole('button', { name: 'I have new ones: renew' }).tap();
    await page.getByRole('button', { name: 'Opened: nut 2' }).tap();
    await page.getByText('cycle 2').first().waitFor();
  });
  await step('finds it as it was after the screen has locked', async () => {
    await enter(page, '45.2');
    await onward(page);
    await enter(page, '4');
    await page.clock.fastForward('05:01');
    const lock = page.getByRole('dialog', { name: /^Locked/ });
    await lock.getByText('Ines Harrow').waitFor();
    await tapPin(lock, 'tobit');
    await lock.waitFor({ state: 'detached' });
    expect(await page.getByRole('textbox', { name: /^Nut 2/ }).inputValue()).toBe('4');
  });
  await step('signs', async () => {
    await enter(page, '5');
    await onward(page);
    await signKey(page).tap();
    await signByTaps(page, 'tobit');
    await page.getByText('Signed final by Tobit Fenn').first().waitFor();
  });
  await step('passes the check and finishes', async () => {
    await goByTaps(page, 'My work');
    const check = page.getByRole('listitem').filter({ hasText: 'K-961' });
    await check.getByRole('button', { name: /^Do it/ }).tap();
    await check.getByRole('button', { name: 'Passed', exact: true }).tap();
    await signByTaps(page, 'tobit');
    await page.getByText('2 of 2 done').waitFor();
    await act(page, 'Finish').tap();
    await signByTaps(page, 'tobit');
    await page.getByText('Your clock does not run.').waitFor();
  });
  journey.noFaults();
});
