/** The sign-off sheet in a real browser: what is read, tapped, over, and signed. */
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '@/tests/support/browser';
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
  const car = `E-${String((cars += 1)).padStart(3, '0')}`;
  await shop.begin(car);
  return car;
};
const open = async (joint: string, person = 'tobit'): Promise<{ sheet: Sheet; car: string }> => {
  const car = await newCar();
  return { car, sheet: await Sheet.open(browser, { address: shop.shop.address, car, joint, person }) };
};
const isFinal = async (sheet: Sheet): Promise<void> => {
  await sheet.note('Signed final by Tobit Fenn').waitFor();
  await sheet.level.getByText('final').waitFor();
};

describe('a dial wrench', () => {
  test('is read at its value, nut after nut in the plan’s order, and signed with a PIN', async () => {
    const { sheet, car } = await open('J-913');
    const { page } = sheet;
    expect(await page.locator('.so-set').innerText()).toMatch(/read the tool at\s+45\s*N·m/i);
    expect(await page.locator('.so-axis-scale text').allTextContents()).toEqual(['42.0', '45.0', '48.0']);
    expect(await page.locator('.so-row .so-n').allTextContents()).toEqual([
      'No. 1',
      'No. 3',
      'No. 2',
      'No. 4',
    ]);
    await sheet.enter('44.8', '45', '45.3');
    expect(await sheet.row(2).innerText()).toContain('in band');
    expect(await sheet.signKey.innerText()).toContain('fastener 4 to read');
    await sheet.enter('47.9');
    await sheet.sign('tobit');
    await isFinal(sheet);
    const row = await shop.joint(car, 'J-913');
    expect(row).toMatchObject({ level: 'final', cycle: 1 });
    expect(row?.marks[0]).toMatchObject({
      by: 'tobit',
      delivered: { 1: '224/5', 2: '453/10', 3: '45/1', 4: '479/10' },
    });
    await sheet.reload();
    expect(await page.getByText('brought back').count()).toBe(0);
    expect(sheet.watched.faults).toEqual([]);
    await sheet.close();
  });

  test('with a crow’s-foot is read at the corrected value; the sum stands beside it, and so do the tools that can’t', async () => {
    const { sheet, car } = await open('J-901');
    const { page } = sheet;
    await page.locator('.so-pick').click();
    const tools = page.getByRole('dialog', { name: 'Which tool' });
    await tools.getByText('T-03').first().waitFor();
    const text = await tools.innerText();
    expect(text).toMatch(/T-03 click wrench.*\n?.*not in calibration on \d+ \w+: its last counts to \d+ \w+/);
    expect(text).toMatch(/T-12 dial wrench[^\n]*\n[^\n]*suspect since \w{3} \d+ \w{3}/);
    expect(text).toMatch(/T-01 click wrench[^\n]*\n[^\n]*tightened by dial/);
    expect(text).not.toMatch(/\d{4}-\d{2}-\d{2}/);
    await tools.getByRole('button', { name: /T-91.*A-91/ }).click();
    await page.locator('.so-most', { hasText: /^40\.7\s*N·m$/ }).waitFor();
    expect(await page.locator('.so-set').innerText()).toMatch(/pass 2, read at/i);
    await sheet.tap(4);
    expect(await page.locator('.so-set').innerText()).toContain('45 × 362 / (362 + 38) = 40.725');
    await sheet.enter('40.5', '41', '40.9', '40.6');
    expect(await sheet.row(1).innerText()).toMatch(/44\.8 at nut/);
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-901'))?.marks[0]).toMatchObject({ tool: 'T-91', adapter: 'A-91' });
    await sheet.close();
  });

  test('below the window it goes on, and can’t be signed so', async () => {
    const { sheet } = await open('J-913');
    await sheet.enter('41.9');
    expect(await sheet.row(1).innerText()).toContain('under 0.1');
    expect(await sheet.page.locator('.so-said').innerText()).toMatch(/go on/i);
    expect(await sheet.signKey.getAttribute('aria-disabled')).toBe('true');
    await sheet.enter('42');
    expect(await sheet.row(1).innerText()).toContain('in band');
    await sheet.close();
  });

  test('a value that fits another unit asks once which unit the tool shows', async () => {
    const { sheet, car } = await open('J-913');
    await sheet.enter('33');
    const asked = sheet.page.getByRole('dialog', { name: 'Which unit does the tool show?' });
    await asked.getByRole('button', { name: '33 lbf·ft' }).click();
    expect(await sheet.row(1).innerText()).toContain('in band');
    await sheet.enter('33', '33.5', '33');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-913'))?.marks[0]?.delivered?.['1']).toMatch(/\d+\/\d+/);
    await sheet.close();
  });

  test('another tool starts the pass again, and says what goes', async () => {
    const { sheet } = await open('J-913');
    await sheet.enter('45', '45');
    await sheet.page.locator('.so-pick').click();
    await sheet.page
      .getByRole('dialog', { name: 'Which tool' })
      .getByRole('button', { name: /^T-91 dial wrench 20/ })
      .click();
    const dialog = sheet.page.getByRole('dialog', { name: 'Which tool' });
    expect(await dialog.innerText()).toContain('2 fasteners of the draft is discarded');
    await dialog.getByRole('button', { name: 'Discard, start the pass again' }).click();
    expect(await sheet.row(1).innerText()).toContain('now');
    await sheet.close();
  });
});

describe('over the window', () => {
  test('is stored the moment it is entered, stays as read, and asks for new hardware and the full pass', async () => {
    const { sheet, car } = await open('J-908');
    const { page } = sheet;
    await sheet.enter('45', '48.1');
    await sheet.note('Taken down as read').waitFor();
    expect(await sheet.note('is over').innerText()).toMatch(/Nut 2 is over: 48\.1 at the nut, limit 48/);
    expect(await shop.told(car, 'joint-over-torqued')).toBe(1);
    expect((await shop.joint(car, 'J-908'))?.doubts).toMatchObject([
      { cause: 'over-torque', fasteners: [2] },
    ]);
    expect(await page.locator('.so-keys button').first().getAttribute('aria-disabled')).toBe('true');
    expect(await sheet.signKey.innerText()).toContain('nut 2 over');
    await sheet.reload();
    expect(await sheet.row(2).innerText()).toContain('over 0.1');
    expect(await shop.told(car, 'joint-over-torqued')).toBe(1);

    await page.getByRole('button', { name: 'I have new ones: renew' }).click();
    await page.getByRole('button', { name: 'Opened: nut 2' }).click();
    await sheet.note('A new cycle begins').waitFor();
    await page.getByText('cycle 2').first().waitFor();
    await sheet.ready();
    await sheet.enter('45', '45.2');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect(await shop.joint(car, 'J-908')).toMatchObject({ level: 'final', cycle: 2, doubts: [] });
    await sheet.close();
  });

  test('on another tablet is to be renewed, with what it got', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('49');
    await sheet.note('Taken down as read').waitFor();
    const other = await Sheet.open(browser, {
      address: shop.shop.address,
      car,
      joint: 'J-908',
      person: 'ines',
    });
    expect(await other.note('In doubt').innerText()).toContain('no. 1 got 49 N·m');
    await other.page.getByRole('button', { name: 'Opened: renew nut 1' }).waitFor();
    await other.close();
    await sheet.close();
  });
});

describe('other methods', () => {
  test('a click wrench is set once and clicks once for each nut: no number is asked or kept for a nut', async () => {
    const { sheet, car } = await open('J-902');
    const { page } = sheet;
    expect(await page.locator('.so-set').innerText()).toMatch(/set the tool to\s+22\s*N·m/i);
    expect(await page.locator('.so-keys').count()).toBe(0);
    await sheet.tap(5);
    expect(await page.locator('.so-taps').innerText()).toContain('all clicked');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect(await shop.joint(car, 'J-902')).toMatchObject({ level: 'final', tool: 'T-02' });
    await sheet.close();
  });

  test('a click wrench set otherwise is typed; too high is set again, and nothing was over', async () => {
    const { sheet, car } = await open('J-902');
    const { page } = sheet;
    await page.getByRole('button', { name: 'It is set otherwise' }).click();
    await sheet.enter('24.5');
    expect(await page.locator('.so-said').innerText()).toMatch(/too high/i);
    await sheet.enter('23');
    await sheet.tap(4);
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect(await shop.told(car, 'joint-over-torqued')).toBe(0);
    await sheet.close();
  });

  test('prevailing torque: the drag first, then the reading over it', async () => {
    const { sheet, car } = await open('J-903');
    await sheet.enter('4');
    expect(await sheet.page.locator('.so-most').innerText()).toMatch(/^52\.8\s*N·m$/);
    await sheet.enter('53', '5', '54');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-903'))?.level).toBe('final');
    await sheet.close();
  });

  test('torque and angle: all seated, then each turned on', async () => {
    const { sheet, car } = await open('J-904');
    await sheet.enter('30', '30.5');
    expect(await sheet.page.locator('.so-set').innerText()).toMatch(/now turn on by\s+90/i);
    await sheet.enter('90', '91');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-904'))?.level).toBe('final');
    await sheet.close();
  });

  test('a sequence: step by step, with a value or done', async () => {
    const { sheet, car } = await open('J-905');
    await sheet.enter('31');
    expect(await sheet.page.locator('.so-said').innerText()).toMatch(/do that step again/i);
    await sheet.enter('28');
    await sheet.tap(1);
    await sheet.enter('3');
    await sheet.tap(1);
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-905'))?.level).toBe('final');
    await sheet.close();
  });

  test('firm: what firm means, and no value', async () => {
    const { sheet, car } = await open('J-906');
    expect(await sheet.page.locator('main').innerText()).toMatch(
      /lock nut held, pin split\. No value is published/,
    );
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect((await shop.joint(car, 'J-906'))?.marks[0]).toMatchObject({ tool: null, delivered: null });
    await sheet.close();
  });

  test('no value yet: snug, and no further', async () => {
    const { sheet, car } = await open('J-907');
    expect(await sheet.page.locator('main').innerText()).toContain('The plan has no torque for it yet');
    await sheet.sign('tobit');
    await sheet.note('Signed snug').waitFor();
    await sheet.page.getByText('Snug is all it can be').waitFor();
    expect((await shop.joint(car, 'J-907'))?.level).toBe('snug');
    await sheet.close();
  });

  test('no tool in the shop can make it: it says so, and why of each', async () => {
    const { sheet } = await open('J-912');
    expect(await sheet.page.locator('.so-pick').innerText()).toContain(
      'No tool in the shop can make this now',
    );
    await sheet.page.locator('.so-pick').click();
    await sheet.page
      .getByText(/900 N·m lies outside what T-09 can do|lies outside what T-09/)
      .first()
      .waitFor();
    await sheet.close();
  });
});

describe('who and what may', () => {
  test('what stands in the way is said before the hand turns, and what is refused after it hangs in the sheet', async () => {
    const { sheet, car } = await open('J-911');
    const { page } = sheet;
    const way = page.getByRole('region', { name: /Not to be signed final yet/ });
    expect(await way.innerText()).toContain('“standing” is not so, and must be');
    expect(await way.getByRole('link').first().getAttribute('href')).toBe(`/cars/${car}#condition:standing`);
    await sheet.enter('45', '45', '45', '45', '45', '45');
    await sheet.sign('tobit');
    const refused = page.getByRole('region', { name: /Reported, not accepted/ });
    expect(await refused.innerText()).toContain('“standing” is not so, and must be');
    expect(await sheet.row(6).innerText()).toContain('in band');
    await sheet.reload();
    expect(await sheet.row(6).innerText()).toContain('in band');

    await shop.give('oswin', { type: 'pause-operation', car, operation: 'ST-080' });
    await shop.give('oswin', { type: 'start-operation', car, operation: 'WH-010' });
    await shop.give('oswin', { type: 'finish-operation', car, operation: 'WH-010' });
    await sheet.reload();
    await sheet.sign('tobit');
    await isFinal(sheet);
    await sheet.close();
  });

  test('hardware from a lot; one kept apart can’t be chosen and says why', async () => {
    const { sheet, car } = await open('J-914');
    const { page } = sheet;
    await page.getByText('goes in new (used once, spent at final torque); lot L-9101').waitFor();
    await page.getByRole('button', { name: 'Which insert lock nut M10 class 8' }).click();
    const dialog = page.getByRole('dialog', { name: 'What goes in' });
    expect(await dialog.innerText()).toContain('threads rough');
    expect(await dialog.getByRole('button', { name: /L-9102/ }).count()).toBe(0);
    await dialog.getByRole('button', { name: /lot L-9101.*to be taken first/ }).click();
    await dialog.waitFor({ state: 'detached' });
    await sheet.sign('tobit');
    await sheet.note('Signed snug').waitFor();
    expect((await shop.joint(car, 'J-914'))?.lots).toEqual(['L-9101']);
    await sheet.close();
  });

  test('a wrong PIN signs nothing and loses nothing', async () => {
    const { sheet, car } = await open('J-908');
    await sheet.enter('45', '45');
    await sheet.sign('tobit', '111111');
    await sheet.pinDialog
      .getByText(/not Tobit Fenn’s PIN/)
      .first()
      .waitFor();
    expect((await shop.joint(car, 'J-908'))?.level ?? 'open').toBe('open');
    await sheet.pinDialog.getByRole('button', { name: 'Not now' }).click();
    expect(await sheet.row(2).innerText()).toContain('in band');
    await sheet.sign('tobit');
    await isFinal(sheet);
    expect(await shop.told(car, 'joint-marked')).toBe(1);
    await sheet.close();
  });
});
