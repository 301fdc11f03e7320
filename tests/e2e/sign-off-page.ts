/** The sign-off sheet as a hand uses it. */
import type { Browser, Locator, Page } from 'playwright';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { comeIn, newPage } from '@/tests/support/browser';
import type { Size, Theme, Watched } from '@/tests/support/browser';

export const pinOf = (person: string): string => {
  const found = DEMO_SIGN_INS.find((each) => each.person === person);
  if (found === undefined) throw new Error(`nobody called ${person}`);
  return found.pin;
};

export const pathOf = (car: string, joint: string): string =>
  `/cars/${encodeURIComponent(car)}/joints/${encodeURIComponent(joint)}`;

export class Sheet {
  readonly watched: Watched;
  readonly page: Page;

  private constructor(watched: Watched) {
    this.watched = watched;
    this.page = watched.page;
  }

  static on(watched: Watched): Sheet {
    return new Sheet(watched);
  }

  static async open(
    browser: Browser,
    options: {
      readonly address: string;
      readonly car: string;
      readonly joint: string;
      readonly person?: string;
      readonly size?: Size;
      readonly theme?: Theme;
    },
  ): Promise<Sheet> {
    const { address, car, joint, person = 'tobit', size = 'desk', theme = 'light' } = options;
    const sheet = new Sheet(await newPage(browser, { address, size, theme }));
    await comeIn(sheet.watched, person, pathOf(car, joint));
    await sheet.ready();
    return sheet;
  }

  /** Drawn, its drafts looked for, and the car confirmed, which is asked once for each car and sitting. */
  async ready(): Promise<void> {
    await this.page.locator('.so-pad[data-ready]').waitFor();
    const which = this.page.getByRole('region', { name: 'Which car' });
    const yes = which.getByRole('button', { name: /^It is / });
    if ((await yes.count()) > 0) await yes.click();
  }

  /** Until the device has written this into a draft of its own. */
  async kept(text: string): Promise<void> {
    await this.page.waitForFunction(async (wanted) => {
      // Opening one that is not there would make an empty one, which the page could not use.
      const known = await indexedDB.databases();
      if (!known.some(({ name }) => name === 'slipmark-drafts')) return false;
      const all = await new Promise<unknown>((resolve) => {
        const opening = indexedDB.open('slipmark-drafts');
        opening.onsuccess = () => {
          const reading = opening.result.transaction('drafts').objectStore('drafts').getAll();
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result);
          };
        };
      });
      return JSON.stringify(all).includes(wanted);
    }, text);
  }

  async go(car: string, joint: string): Promise<void> {
    await this.page.goto(pathOf(car, joint));
    await this.ready();
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.ready();
  }

  /** On the keys of the sheet, as with a glove. */
  async type(text: string): Promise<void> {
    for (const key of text)
      await this.page
        .locator('.so-keys')
        .getByRole('button', { name: key === '.' ? 'point' : key, exact: true })
        .click();
  }

  async enter(...texts: readonly string[]): Promise<void> {
    for (const text of texts) {
      await this.type(text);
      await this.page.locator('.so-enter').click();
    }
  }

  async tap(times: number): Promise<void> {
    for (let count = 0; count < times; count += 1) {
      const before = await this.page.locator('.so-tap b').textContent();
      await this.page.locator('.so-tap').click();
      if (count < times - 1)
        await this.page.waitForFunction(
          (text) => document.querySelector('.so-tap b')?.textContent !== text,
          before,
        );
    }
  }

  get signKey(): Locator {
    return this.page.locator('.so-signkey');
  }

  get pinDialog(): Locator {
    return this.page.locator('dialog.pin[open]');
  }

  /** Presses the signing key and gives the PIN, right or wrong; what comes of it is the test's to look at. */
  async sign(person: string, pin = pinOf(person)): Promise<void> {
    await this.signKey.click();
    await this.givePin(pin);
  }

  async givePin(pin: string): Promise<void> {
    await this.pinDialog.waitFor();
    await this.page.keyboard.type(pin);
    await this.pinDialog.locator('.pin-sign').click();
  }

  /** What stands at a fastener's row: `in band`, `over 0.7`. */
  row(fastener: number): Locator {
    return this.page.locator('.so-row', {
      has: this.page.locator('.so-n', { hasText: new RegExp(`${String(fastener)}$`) }),
    });
  }

  get level(): Locator {
    return this.page.locator('.so-states [aria-current=step]');
  }

  note(text: string | RegExp): Locator {
    return this.page.locator('.so-note, .refusal', { hasText: text });
  }

  async close(): Promise<void> {
    await this.watched.done();
  }
}
