/**
 * Pages that are used again: in a new one every script is read and compiled anew, which takes as long as the rest of a
 * short test. What a test left there is taken out: cookies, drafts, history, whatever else the page has put aside.
 */
import type { Browser, BrowserContext, Page } from 'playwright';

export interface Kept {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What went wrong on it since it was lent. */
  readonly faults: string[];
}

export interface Lent extends Kept {
  /** Leaves it as new for whoever comes next. Not after a clock was set in it, which no one can take out again. */
  readonly giveBack: () => Promise<void>;
}

const shelves = new WeakMap<Browser, Map<string, Kept[]>>();

/** Those of one kind that nobody uses now. */
const freeOnes = (browser: Browser, kind: string): Kept[] => {
  const ofBrowser = shelves.get(browser) ?? new Map<string, Kept[]>();
  shelves.set(browser, ofBrowser);
  const free = ofBrowser.get(kind) ?? [];
  ofBrowser.set(kind, free);
  return free;
};

export const lendPage = async (browser: Browser, baseURL: string, hasTouch: boolean): Promise<Lent> => {
  const free = freeOnes(browser, `${baseURL} ${String(hasTouch)}`);
  const kept = free.pop() ?? (await make(browser, baseURL, hasTouch));
  const giveBack = async (): Promise<void> => {
    if (kept.page.isClosed()) return;
    // What a page keeps for its own window can be taken out of it only while it is there.
    if (!kept.page.url().startsWith(baseURL)) {
      await kept.context.close();
      return;
    }
    await empty(kept, baseURL);
    free.push(kept);
  };
  return { ...kept, giveBack };
};

const make = async (browser: Browser, baseURL: string, hasTouch: boolean): Promise<Kept> => {
  const context = await browser.newContext({
    baseURL,
    hasTouch,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    timezoneId: 'UTC',
  });
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`script: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' && !isExpected(message.text())) faults.push(`console: ${message.text()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 500) faults.push(`${String(response.status())}: ${response.url()}`);
  });
  await page.exposeFunction('slipmarkCspViolation', (what: string) => faults.push(`policy: ${what}`));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (window as unknown as { slipmarkCspViolation: (what: string) => void })
        .slipmarkCspViolation;
      tell(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${String(event.lineNumber)}`);
    });
  });
  return { page, context, faults };
};

/** A refused command answers with 4xx, which a browser writes to its console as if it were a fault. */
const isExpected = (text: string): boolean =>
  /Failed to load resource: the server responded with a status of (400|401|403|404|409|422)/.test(text);

const empty = async ({ page, context, faults }: Kept, origin: string): Promise<void> => {
  await page.unrouteAll();
  await page.evaluate(() => sessionStorage.clear());
  await page.goto('about:blank');
  const session = await context.newCDPSession(page);
  await session.send('Page.resetNavigationHistory');
  await session.send('Storage.clearDataForOrigin', {
    origin,
    storageTypes: 'indexeddb,local_storage,cache_storage,service_workers',
  });
  await session.detach();
  await context.clearCookies();
  faults.length = 0;
};
