/** Every screen and state on which something is pressed, and how one comes there. */
import type { Page } from 'playwright';

interface Screen {
  readonly name: string;
  /** Null: nobody is signed in. */
  readonly who: 'mara' | 'ada' | 'tobit' | 'oswin' | null;
  readonly path: string;
  /** What is opened there; without it the page is measured as it comes. */
  readonly open?: (page: Page) => Promise<unknown>;
  /** The sign-off sheet: everything large. */
  readonly isSheet?: true;
}

const click = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).first().click();
const isThere = (page: Page): Promise<void> => page.getByRole('dialog').first().waitFor();
/** Until the keys are in one's hands. */
const sure = async (page: Page): Promise<void> => {
  await page
    .getByText(/It is |this car, you said/)
    .first()
    .waitFor();
  const yes = page.getByRole('region', { name: 'Which car' }).getByRole('button', { name: /^It is / });
  if ((await yes.count()) > 0) await yes.click();
};
const sheet = (joint: string): string => `/cars/T-001/joints/${joint}`;

export const SCREENS: readonly Screen[] = [
  { name: 'sign-in at the bench', who: null, path: '/sign-in?at=bench' },
  { name: 'sign-in at the desk', who: null, path: '/sign-in?at=desk' },
  { name: 'a tablet’s code', who: null, path: '/tablet' },
  { name: 'board', who: 'mara', path: '/board' },
  {
    name: 'what closes a gate',
    who: 'mara',
    path: '/board',
    open: async (page) => {
      await page.locator('#how-to-move-a-plate').waitFor({ state: 'attached' });
      await click(page, /hold gate 6 of C54-012 closed/);
      await isThere(page);
    },
  },
  {
    name: 'moving by buttons',
    who: 'mara',
    path: '/board',
    open: async (page) => {
      await page.locator('#how-to-move-a-plate').waitFor({ state: 'attached' });
      await click(page, /^Move C54-012/);
      await isThere(page);
    },
  },
  {
    name: 'crew by buttons',
    who: 'mara',
    path: '/board',
    open: async (page) => {
      await page.locator('#how-to-move-a-plate').waitFor({ state: 'attached' });
      await click(page, 'Crew of C54-012');
      await isThere(page);
    },
  },
  { name: 'board, who moves nothing', who: 'tobit', path: '/board' },
  { name: 'car', who: 'mara', path: '/cars/C54-012' },
  { name: 'car, its forms', who: 'mara', path: '/cars/C54-012', open: (page) => click(page, /^F-1/) },
  {
    name: 'who signs',
    who: 'mara',
    path: '/cars/C54-012',
    open: async (page) => {
      await click(page, /^J-512/);
      const form = page.getByRole('form', { name: 'Nothing moved' });
      await form.getByLabel('Tool').selectOption('T-08');
      await form.getByRole('button', { name: 'Nothing moved' }).click();
      await isThere(page);
    },
  },
  { name: 'log of a car', who: 'mara', path: '/cars/C54-012/log' },
  { name: 'log', who: 'mara', path: '/log' },
  { name: 'tools', who: 'mara', path: '/tools' },
  { name: 'no such car', who: 'mara', path: '/cars/C54-099' },
  { name: 'setting up', who: 'ada', path: '/set-up' },
  { name: 'people', who: 'ada', path: '/set-up/people' },
  { name: 'books of tools', who: 'ada', path: '/set-up/tools' },
  { name: 'a tool', who: 'ada', path: '/set-up/tools/T-02' },
  { name: 'tablets', who: 'ada', path: '/set-up/tablets' },
  { name: 'plans', who: 'ada', path: '/set-up/plans' },
  { name: 'first cars', who: 'ada', path: '/set-up/cars' },
  { name: 'my work', who: 'tobit', path: '/my-work' },
  { name: 'verify', who: 'oswin', path: '/verify' },
  // Before the car is confirmed anywhere.
  { name: 'sheet: which car', who: 'tobit', path: sheet('J-901'), isSheet: true },
  { name: 'sheet: readings', who: 'tobit', path: sheet('J-908'), isSheet: true, open: sure },
  { name: 'sheet: taps', who: 'tobit', path: sheet('J-902'), isSheet: true, open: sure },
  { name: 'sheet: many', who: 'tobit', path: sheet('J-909'), isSheet: true, open: sure },
  { name: 'sheet: snug', who: 'tobit', path: sheet('J-914'), isSheet: true, open: sure },
  { name: 'sheet: second person', who: 'oswin', path: sheet('J-913'), isSheet: true, open: sure },
  {
    name: 'sheet: not right',
    who: 'oswin',
    path: sheet('J-913'),
    isSheet: true,
    open: async (page) => {
      await sure(page);
      await click(page, 'Not right: say why');
      await isThere(page);
    },
  },
  {
    name: 'sheet: which tool',
    who: 'tobit',
    path: sheet('J-908'),
    isSheet: true,
    open: async (page) => {
      await sure(page);
      await page.getByRole('region', { name: 'Value and tool' }).getByRole('button').click();
      await isThere(page);
    },
  },
  {
    name: 'sheet: PIN',
    who: 'tobit',
    path: sheet('J-914'),
    isSheet: true,
    open: async (page) => {
      await sure(page);
      await click(page, /^Sign snug/);
      await isThere(page);
    },
  },
];
