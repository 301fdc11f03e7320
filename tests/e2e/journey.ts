/** Whole days at the screens, as a person goes through them: by keys or by taps, each step named where one fails. */
import type { Browser, Locator, Page } from 'playwright';
import { expect } from 'vitest';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import type { DemoSignIn } from '@/seed/demo-shop';
import { axe, isTooWide, newPage, openBrowser, shoot } from '@/tests/support/browser';
import type { Size, Watched } from '@/tests/support/browser';

export const personOf = (id: string): DemoSignIn => {
  const found = DEMO_SIGN_INS.find(({ person }) => person === id);
  if (found === undefined) throw new Error(`nobody called ${id} works in the demo shop`);
  return found;
};

/** What a failing step says of the page it failed on: enough to know without looking. */
const SAID = 2500;

export class Journey {
  private readonly browser: Browser;
  private readonly address: string;
  private readonly windows: Watched[] = [];

  private constructor(browser: Browser, address: string) {
    this.browser = browser;
    this.address = address;
  }

  static async at(address: string): Promise<Journey> {
    return new Journey(await openBrowser(), address);
  }

  async window(size: Size): Promise<Watched> {
    const watched = await newPage(this.browser, { address: this.address, size });
    this.windows.push(watched);
    return watched;
  }

  /** One step of the day, on this page. */
  async step(page: Page, name: string, act: () => Promise<unknown>): Promise<void> {
    try {
      await act();
    } catch (error) {
      const said = await page
        .locator('main')
        .innerText()
        .catch(() => '');
      const why = error instanceof Error ? error.message : String(error);
      throw new Error(`${name}, at ${page.url()}: ${why}\n--- the page said:\n${said.slice(0, SAID)}`, {
        cause: error,
      });
    }
  }

  /** A screen or a state that was not looked at before: read by axe, and never wider than the window. */
  async look(watched: Watched, name: string): Promise<void> {
    await shoot(watched, `journey-${name}`);
    expect(await axe(watched.page), name).toEqual([]);
    expect(await isTooWide(watched.page), name).toBe(false);
  }

  /** No script failed, no answer of the server was a fault, no policy was broken, in any window, all day. */
  noFaults(): void {
    expect(this.windows.flatMap(({ faults }) => faults)).toEqual([]);
  }

  async close(): Promise<void> {
    await this.browser.close();
  }
}

/** With Tab alone, as far as it takes. */
export const tabTo = async (page: Page, target: Locator): Promise<void> => {
  const first = target.first();
  await first.waitFor({ state: 'attached' });
  const before = await page.evaluate(() => document.activeElement?.textContent.slice(0, 60));
  for (let steps = 0; steps < 250; steps += 1) {
    if (await first.evaluate((own) => own === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no Tab leads to ${target.toString()} from “${before ?? ''}”`);
};

/** Goes there and presses it. */
export const press = async (page: Page, target: Locator, key = 'Enter'): Promise<void> => {
  await tabTo(page, target);
  await page.keyboard.press(key);
};

export const write = async (page: Page, target: Locator, text: string): Promise<void> => {
  await tabTo(page, target);
  await page.keyboard.type(text);
};

/** The signature of who is signed in, by keys. */
export const signByKeys = async (page: Page, person: string): Promise<void> => {
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type(personOf(person).pin);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
};

/** Six figures on the keys of the screen, in whatever asks for them. */
export const tapPin = async (within: Page | Locator, person: string): Promise<void> => {
  const keys = within.getByRole('group', { name: 'Keys of the PIN' });
  for (const figure of personOf(person).pin)
    await keys.getByRole('button', { name: figure, exact: true }).tap();
};

export const signByTaps = async (page: Page, person: string): Promise<void> => {
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  await tapPin(dialog, person);
  await dialog.getByRole('button', { name: new RegExp(` as ${personOf(person).name}$`) }).tap();
  await dialog.waitFor({ state: 'detached' });
};

/** A name's tile, then the PIN, which sends itself at the sixth figure. */
export const comeByTaps = async (page: Page, person: string): Promise<void> => {
  await page.goto('/sign-in?at=bench');
  await page.getByRole('group', { name: 'Your name' }).getByText(personOf(person).name).tap();
  await tapPin(page, person);
  await page.waitForURL((url) => url.pathname !== '/sign-in');
};

/** From one page to another, by the strip or, where there is no room for it, by the menu. */
export const goByTaps = async (page: Page, says: string): Promise<void> => {
  const menu = page.getByRole('button', { name: 'Menu', exact: true });
  const straight = page.getByRole('navigation', { name: 'Main', exact: true }).getByRole('link', {
    name: says,
    exact: true,
  });
  if (await straight.isVisible()) await straight.tap();
  else {
    await menu.tap();
    await page.getByRole('navigation', { name: 'Main, in the menu' }).getByRole('link', { name: says }).tap();
  }
};

/** Text has to be typed, whatever the hand: by the tablet's own keyboard. */
export const tapAndType = async (page: Page, field: Locator, text: string): Promise<void> => {
  await field.tap();
  await page.keyboard.type(text);
};
