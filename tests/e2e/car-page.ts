/** A car's page as a person uses it: lines by their names, forms by their titles, the PIN by its keys. */
import type { Locator, Page } from 'playwright';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';

/** A line of the page; its button tells the same name. */
export const line = (page: Page, name: string): Locator =>
  page.locator('[data-row]').filter({ has: page.getByRole('button', { name: new RegExp(`^${name}`) }) });

/** Opens it, if it is not. */
export const openLine = async (page: Page, name: string): Promise<Locator> => {
  const found = line(page, name).first();
  const button = found.getByRole('button', { name: new RegExp(`^${name}`) }).first();
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
  return found;
};

export const form = (within: Locator, title: string): Locator =>
  within.getByRole('form', { name: title, exact: true });

/** Folds of the page: work that waits, parts, conditions. */
export const openFold = async (page: Page, name: RegExp): Promise<void> => {
  const button = page.getByRole('button', { name }).first();
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
};

export const bad = (page: Page, name: string): Locator =>
  page.getByRole('region', { name: 'Something is wrong' }).getByRole('button', { name, exact: true });

export const troubleForm = (page: Page, title: string): Locator =>
  form(page.getByRole('region', { name: 'Something is wrong' }), title);

/** Gives a signature: who, then the six figures, then the button that says so. */
export const sign = async (page: Page, person: string): Promise<void> => {
  const found = DEMO_SIGN_INS.find((one) => one.person === person);
  if (found === undefined) throw new Error(`nobody called ${person} works in the demo shop`);
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  const other = dialog.getByRole('button', { name: 'Somebody else' });
  if (await other.isVisible()) await other.click();
  await dialog.getByRole('radio', { name: found.name }).check();
  for (const figure of found.pin) await dialog.getByRole('button', { name: figure, exact: true }).click();
  await dialog.getByRole('button', { name: new RegExp(` as ${found.name}$`) }).click();
  await dialog.waitFor({ state: 'detached' });
};

/** What the page says was recorded last. */
export const recorded = (page: Page, text: RegExp): Promise<void> =>
  page.getByRole('main').getByText('Recorded.').locator('..').filter({ hasText: text }).waitFor();
