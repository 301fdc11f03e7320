/** A shop of one's own in one sitting: from the owner's link to a car on the board; and a tool that fell. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { ownerLink } from '@/lib/cli/starting/own-shop';
import { ROLES } from '@/lib/domain/base/vocabulary';
import { openDatabase } from '@/lib/server/database';
import { newShop } from '@/lib/server/new-shop';
import { axe, comeIn, isTooWide, newPage, openBrowser, shoot, SIZES } from '@/tests/support/browser';
import type { Size, Watched } from '@/tests/support/browser';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { plate, whenReady } from './board-page';
import { Sheet } from './sign-off-page';
import { SignOffShop } from './sign-off-shop';

let browser: Browser;
let shop: OpenedShop;
let opened: Watched[] = [];

beforeAll(async () => {
  browser = await openBrowser();
});
afterEach(async () => {
  const faults = opened.flatMap((each) => each.faults);
  await Promise.all(opened.map(({ context }) => context.close()));
  opened = [];
  await shop.close();
  expect(faults).toEqual([]);
});
afterAll(() => browser.close());

const open = async (size: Size = 'desk'): Promise<Watched> => {
  const watched = await newPage(browser, { address: shop.address, size });
  opened.push(watched);
  return watched;
};

/** At every width, and one look by axe. */
const looksWell = async (watched: Watched, name: string): Promise<void> => {
  expect(await axe(watched.page)).toEqual([]);
  for (const size of ['phone', 'tablet', 'desk'] as const) {
    await watched.page.setViewportSize(SIZES[size]);
    expect(await isTooWide(watched.page), `${name} at ${size}`).toBe(false);
    await shoot({ ...watched, size }, name);
  }
  if (process.env.SHOTS === undefined) return;
  await watched.page.emulateMedia({ colorScheme: 'dark' });
  await shoot({ ...watched, theme: 'dark' }, name);
  await watched.page.emulateMedia({ colorScheme: 'light' });
};

const onFrom = (page: Page, says: string) =>
  page.getByRole('navigation', { name: 'On from this step' }).getByRole('link', { name: says });

test('from nothing: owner, shop, people, a tablet, a tool, a plan from its file, a car on the board', async () => {
  shop = await openShop('nothing');
  const db = openDatabase(shop.database.url, 2);
  const owner = { id: 'nora', name: 'Nora Hallam', roles: ROLES };
  await newShop(db, { name: 'My shop', zone: 'UTC', owner }, new Date().toISOString());
  const { link } = (await ownerLink(db, shop.address)) ?? { link: '' };
  await db.$disconnect();
  const desk = await open();
  const { page } = desk;

  // The owner, by the link from the terminal.
  await page.goto(link);
  const password = 'tarpaulin over two lathes';
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByLabel('The password once more').fill(password);
  await page.getByLabel('PIN', { exact: true }).fill('806417');
  await page.getByLabel('The PIN once more').fill('806417');
  await page.getByRole('button', { name: 'Set it' }).click();
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL('**/set-up');
  await page.getByRole('heading', { name: 'One sitting, step by step' }).waitFor();
  await looksWell(desk, 'begin');

  // An empty board leads here.
  await page.getByRole('link', { name: 'Open the board' }).click();
  await page.getByRole('link', { name: 'Set up the shop' }).click();
  await page.getByRole('link', { name: 'Go on with Shop' }).click();

  await page.getByLabel('What the shop is called').fill('Hollin Bank');
  await page.getByLabel('Time zone').fill('Europe/Nowhere');
  await page.getByText('Europe/Nowhere is no time zone').waitFor();
  await page.getByLabel('Time zone').fill('Europe/London');
  await looksWell(desk, 'begin-shop');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('banner').getByText('Hollin Bank').first().waitFor();
  await onFrom(page, 'On to People').click();

  await page.getByLabel('Name', { exact: true }).fill('Elin Marsh');
  await page.getByLabel('Another qualification').fill('brakes');
  await page.getByRole('button', { name: 'Add it' }).click();
  await page.getByLabel('brakes until').fill('2031-06-30');
  await looksWell(desk, 'begin-people');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByRole('cell', { name: '30 Jun 2031' }).waitFor();
  await page.getByRole('button', { name: 'Make a link for Elin Marsh' }).click();
  await page.getByRole('button', { name: 'Make the link' }).click();
  const invitation = await page.getByLabel('The link', { exact: true }).inputValue();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'End a qualification of Elin Marsh' }).click();
  await looksWell(desk, 'end-qualification');
  await page.getByRole('button', { name: 'End brakes now' }).click();
  await page.getByRole('cell', { name: /^ended / }).waitFor();
  await onFrom(page, 'On to Tablets').click();

  // The technician’s tablet, by a code; their PIN, by the link.
  const another = page.getByRole('form', { name: 'Another tablet' });
  await another.getByLabel('Its name').fill('Bench 1');
  await looksWell(desk, 'begin-tablets');
  await another.getByRole('button', { name: 'Make a code' }).click();
  const code = (await page.locator('.code-big').innerText()).trim();
  const bench = await open('tablet');
  await bench.page.goto('/tablet');
  await bench.page.getByLabel('The code').fill(code);
  await bench.page.getByRole('button', { name: 'Enrol this tablet' }).tap();
  await bench.page.getByText('This is a tablet of the shop now').waitFor();
  await bench.page.goto(invitation);
  await bench.page.getByLabel('PIN', { exact: true }).fill('839201');
  await bench.page.getByLabel('The PIN once more').fill('839201');
  await bench.page.getByRole('button', { name: 'Set it' }).click();
  await bench.page.getByLabel('Elin Marsh’s PIN').fill('839201');
  await bench.page.waitForURL('**/board');
  await bench.page.getByText('A lead or an owner begins one').waitFor();

  // Tools are left for later, and come back to.
  await page.reload();
  await onFrom(page, 'On to Tools').click();
  await onFrom(page, 'Leave it for later, on to Build plan').click();

  // A plan with a fault is told by its line, and nothing of it is kept.
  const file = page.getByLabel('From a file');
  const lintel = readFileSync('seed/lintel-gt.yaml', 'utf8');
  await file.setInputFiles({
    name: 'faulty.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(`${lintel.trimEnd()}\nparst: {}\n`),
  });
  await page.getByRole('listitem').filter({ hasText: 'parst: {}' }).first().waitFor();
  expect(await page.getByRole('button', { name: 'Use this plan' }).count()).toBe(0);
  await looksWell(desk, 'begin-plan-faults');
  await file.setInputFiles('seed/lintel-gt.yaml');
  await page.getByRole('button', { name: 'Use this plan' }).waitFor();
  await looksWell(desk, 'begin-plan');
  await page.getByRole('button', { name: 'Use this plan' }).click();
  await page.getByText('Lintel GT r1 is released. A car').waitFor();

  await page
    .getByRole('navigation', { name: 'Setting up' })
    .getByRole('link', { name: /Tools.*left for later/s })
    .click();
  const form = page.getByRole('form', { name: 'Add a tool' });
  await form.getByLabel('Name').fill('Half inch click');
  await form.getByLabel('Lowest mark').fill('20');
  await form.getByLabel('Highest mark').fill('200');
  await form.getByLabel('Calibrated on').fill('2026-01-05');
  await form.getByLabel('Due again on').fill('2099-01-05');
  await form.getByLabel('Certificate').fill('CAL-4471');
  await looksWell(desk, 'begin-tools');
  await form.getByRole('button', { name: 'Add the tool' }).click();
  await page.getByRole('region', { name: 'On the wall' }).getByText('due 5 Jan 2099').waitFor();
  await form.getByLabel('Kind').selectOption('gauge');
  await form.getByLabel('Name').fill('Brake pressure');
  await form.getByLabel('Lowest mark').fill('0');
  await form.getByLabel('Highest mark').fill('100');
  await form.getByLabel('Unit', { exact: true }).selectOption('bar');
  await form.getByRole('button', { name: 'Add the tool' }).click();
  await page.getByRole('region', { name: 'Gauges' }).getByText('0 to 100 bar').waitFor();
  await onFrom(page, 'On to Build plan').click();
  await onFrom(page, 'On to Begin a car').click();

  await page.getByLabel('Chassis number').fill('HB-001');
  await looksWell(desk, 'begin-car');
  await page.getByRole('button', { name: 'Begin HB-001' }).click();
  await page.getByText('HB-001 is begun. Its plate').waitFor();
  await page.getByRole('main').getByRole('link', { name: 'Open the board', exact: true }).click();
  await whenReady(page);
  await plate(page, 'HB-001').waitFor();
  await looksWell(desk, 'begun-board');
  // The technician’s tablet, which waited on an empty board, shows it too.
  await bench.page
    .getByRole('link', { name: /^HB-001/ })
    .first()
    .waitFor();
});

test('a tool is calibrated with its certificate; “it fell” is read on its page and on the sign-off sheet', async () => {
  const bench = await SignOffShop.open();
  ({ shop } = bench);
  await bench.begin('OW-1');
  await bench.db.$disconnect();
  const desk = await open();
  await comeIn(desk, 'mara', '/set-up/tools/T-91');
  const { page } = desk;
  const form = page.getByRole('form', { name: 'Record a calibration' });
  await form.getByLabel('Due again on').fill('2099-03-01');
  await form.getByLabel('Certificate').fill('CAL-5120');
  await form.getByLabel('Reading 1: set to').fill('50');
  await form.getByLabel('Reading 1: it gave').fill('50.2');
  await form.getByRole('button', { name: 'Record the calibration' }).click();
  await page.getByText('certificate CAL-5120').waitFor();
  await looksWell(desk, 'tool');

  const tablet = await open('tablet');
  await comeIn(tablet, 'tobit', '/tools');
  await tablet.page.getByRole('button', { name: /It fell\s*: T-91/ }).tap();
  await looksWell(tablet, 'it-fell');
  await tablet.page.getByRole('button', { name: 'Make it suspect' }).tap();
  await tablet.page
    .getByRole('region', { name: 'On the wall' })
    .getByRole('listitem')
    .filter({ hasText: 'T-91' })
    .getByText('suspect: it fell')
    .waitFor();

  const sheet = Sheet.on(tablet);
  await sheet.go('OW-1', 'J-901');
  await tablet.page.locator('.so-pick').tap();
  const tools = tablet.page.getByRole('dialog', { name: 'Which tool' });
  await tools.getByText('T-91').first().waitFor();
  expect(await tools.innerText()).toMatch(/T-91 dial wrench[^\n]*\n[^\n]*suspect since/);

  // The lead’s page of the tool follows by itself.
  await page.getByText(/^Suspect: it fell, from/).waitFor();
});
