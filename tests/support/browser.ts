/** A real browser for the tests: pages in the sizes and themes of the shop, and what every page must keep to. */
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium } from 'playwright';
import type { Browser, BrowserContext, Page } from 'playwright';
import { inject } from 'vitest';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { ROOT } from './browser-global';
import { lendPage } from './kept-pages';
import { misplaced } from './targets';

export const SIZES = {
  desk: { width: 1440, height: 900 },
  tablet: { width: 768, height: 1024 },
  phone: { width: 360, height: 740 },
} as const;
export type Size = keyof typeof SIZES;
export type Theme = 'light' | 'dark';

/** A page that is opened needs no process of its own: a new one reads and compiles every script anew. */
const ONE_PROCESS = ['RenderDocument', 'ProactivelySwapBrowsingInstance', 'SpareRendererForSitePerProcess'];

/** No word to any host but ours, no sandbox, which root can't have, and nothing compiled twice that runs for a second. */
const ARGS = [
  '--renderer-process-limit=1',
  // The last such list holds, so Playwright's own that matter here are in it.
  `--disable-features=${[...ONE_PROCESS, 'PaintHolding', 'HttpsUpgrades', 'DestroyProfileOnBrowserClose'].join(',')}`,
  '--js-flags=--no-opt --no-maglev',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: inject('chromium'), args: ARGS });

/** A page and what went wrong on it so far: scripts' errors, refused styles and scripts, failed requests. */
export interface Watched {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  readonly size: Size;
  readonly theme: Theme;
  readonly faults: string[];
  /** Instead of closing the context; not after a clock was set in it. */
  readonly done: () => Promise<void>;
}

export interface PageOptions {
  readonly address: string;
  readonly size?: Size;
  readonly theme?: Theme;
}

/** With no cookie and no draft of another one. */
export const newPage = async (
  browser: Browser,
  { address, size = 'desk', theme = 'light' }: PageOptions,
): Promise<Watched> => {
  const { page, context, faults, giveBack } = await lendPage(browser, address, size !== 'desk');
  await page.setViewportSize(SIZES[size]);
  await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
  return { page, context, address, size, theme, faults, done: giveBack };
};

const require = createRequire(import.meta.url);
const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Every violation of WCAG 2.2 AA that axe finds, with its place; to be compared with an empty list. Of the page, or of
 * the dialog that makes the rest of it inert, which is looked at without it.
 */
export const axe = async (page: Page): Promise<readonly string[]> => {
  // Half a megabyte: sent to each page once.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  const found = await violationsNow(page);
  if (!found.some((each) => each.startsWith('document-title'))) return found;
  // While a page is asked for again, its title is taken out and put in.
  await page.waitForFunction(() => document.title !== '');
  return violationsNow(page);
};

const violationsNow = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async (rules) => {
    interface Found {
      readonly id: string;
      readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
    }
    const runner = (
      window as unknown as {
        axe: { run: (on: Document | Element, options: object) => Promise<{ violations: readonly Found[] }> };
      }
    ).axe;
    const { violations } = await runner.run(document.querySelector('dialog:modal') ?? document, {
      runOnly: rules,
      // A quarter of its time, for half of what `misplaced` asks for.
      rules: { 'target-size': { enabled: false } },
      resultTypes: ['violations'],
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`),
    );
  }, RULES);

/** With SHOTS=1 into .data/shots, for looking at; drawing whole pages takes time that other runs don’t have. */
export const shoot = async ({ page, size, theme }: Watched, name: string): Promise<void> => {
  if (process.env.SHOTS === undefined) return;
  const folder = join(ROOT, '.data', 'shots');
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}-${size}-${theme}.png`), fullPage: true });
};

/** Wider than the screen: a person would have to scroll sideways. */
export const isTooWide = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);

/** What rests on colours differs by theme, what rests on room by size: two of each find what six would. */
const LOOKS = [
  // Narrower than most desks: what fits there fits more.
  { size: 'desk', width: 1280, theme: 'light' },
  { size: 'tablet', width: 768, theme: 'light' },
  { size: 'phone', width: 360, theme: 'dark' },
] as const;

/** How often each screen of each shop was looked at. */
const looked = new Map<string, number>();

/**
 * In which sizes axe reads the screen, which takes longer than all else: at the desk and on the phone the first time, and in
 * one of them, by turns, when it is looked at once more in another state. What has a number in its address is one of many.
 */
const readIn = (page: Page): readonly Size[] => {
  const screen = page
    .url()
    .replace(/[?#].*$/, '')
    .replace(/(?<=:\d+\/.*)[^/]*\d[^/]*/g, '*');
  const times = looked.get(screen) ?? 0;
  looked.set(screen, times + 1);
  return times === 0 ? ['desk', 'phone'] : times % 2 === 0 ? ['desk'] : ['phone'];
};

/** Both at once: each by itself would have the whole page laid out and drawn anew. */
const look = async (page: Page, size: { width: number; height: number }, theme: Theme): Promise<void> => {
  await Promise.all([page.setViewportSize(size), page.emulateMedia({ colorScheme: theme })]);
};

/**
 * What is amiss with the page as it stands, in the sizes and themes of the shop: axe's violations, where one would have
 * to scroll sideways, and what is too small for a glove. To be compared with an empty list. The page is left in its own
 * size and theme.
 */
export const amiss = async (watched: Watched, name: string): Promise<readonly string[]> => {
  const { page } = watched;
  const found: string[] = [];
  const read = readIn(page);
  for (const { size, width, theme } of LOOKS) {
    await look(page, { ...SIZES[size], width }, theme);
    const wrong = [...(read.includes(size) ? await axe(page) : []), ...(await misplaced(page))];
    if (await isTooWide(page)) wrong.push('wider than the screen');
    found.push(...wrong.map((each) => `${size}, ${theme}: ${each}`));
    await shoot({ ...watched, size, theme }, name);
  }
  await look(page, SIZES[watched.size], watched.theme);
  return found;
};

/** Signs a person of the demo in, by their id: owners and leads at the desk, the others at the bench. */
export const signIn = async ({ page }: Watched, person: string, to = '/board'): Promise<void> => {
  const found = DEMO_SIGN_INS.find((one) => one.person === person);
  if (found === undefined) throw new Error(`nobody called ${person} works in the demo shop`);
  const isDesk = found.roles.some((role) => role === 'owner' || role === 'lead');
  await page.goto(`/sign-in?${new URLSearchParams({ at: isDesk ? 'desk' : 'bench', to }).toString()}`);
  if (isDesk) {
    await page.getByLabel('Name', { exact: true }).fill(found.name);
    await page.getByLabel('Password', { exact: true }).fill(found.password);
    await page.getByRole('button', { name: 'Sign in' }).click();
  } else {
    await page.getByRole('radio', { name: found.name }).check({ force: true });
    // It sends itself at the sixth figure.
    await page
      .getByLabel(/PIN$/, { exact: false })
      .locator('visible=true')
      .first()
      .pressSequentially(found.pin);
  }
  await page.waitForURL((url) => url.pathname === to);
};

const kept = new Map<string, Awaited<ReturnType<BrowserContext['cookies']>>>();

/** As `signIn`, but by a session that the person has already, where one still stands: signing in takes two seconds. */
export const comeIn = async (watched: Watched, person: string, to = '/board'): Promise<void> => {
  const { page, context, address } = watched;
  const session = `${person} at ${address}`;
  const cookies = kept.get(session);
  if (cookies !== undefined) {
    await context.addCookies(cookies);
    await page.goto(to);
    if (new URL(page.url()).pathname === to) return;
  }
  await signIn(watched, person, to);
  kept.set(session, await context.cookies());
};
