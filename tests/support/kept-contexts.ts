/**
 * Contexts that are used again: in a new one every script is read and compiled anew, which takes as long as the rest of
 * a short test. What a test left there is taken out: cookies, drafts, whatever else the page has put aside.
 */
import type { Browser, BrowserContext } from 'playwright';

const shelves = new WeakMap<Browser, Map<string, BrowserContext[]>>();

/** Those of one kind that nobody uses now. */
const freeOnes = (browser: Browser, kind: string): BrowserContext[] => {
  const ofBrowser = shelves.get(browser) ?? new Map<string, BrowserContext[]>();
  shelves.set(browser, ofBrowser);
  const free = ofBrowser.get(kind) ?? [];
  ofBrowser.set(kind, free);
  return free;
};

export interface Lent {
  readonly context: BrowserContext;
  /** Ends its pages and leaves it as new for whoever comes next. */
  readonly giveBack: () => Promise<void>;
}

export const lendContext = async (browser: Browser, baseURL: string, hasTouch: boolean): Promise<Lent> => {
  const free = freeOnes(browser, `${baseURL} ${String(hasTouch)}`);
  const context =
    free.pop() ??
    (await browser.newContext({
      baseURL,
      hasTouch,
      reducedMotion: 'reduce',
      locale: 'en-GB',
      timezoneId: 'UTC',
    }));
  const giveBack = async (): Promise<void> => {
    const [first, ...others] = context.pages();
    if (first === undefined) return;
    await Promise.all(others.map((page) => page.close()));
    await first.unrouteAll();
    await first.goto('about:blank');
    const session = await context.newCDPSession(first);
    await session.send('Storage.clearDataForOrigin', {
      origin: baseURL,
      storageTypes: 'indexeddb,local_storage,cache_storage,service_workers',
    });
    await context.clearCookies();
    await first.close();
    free.push(context);
  };
  return { context, giveBack };
};
