/** When something was seen on one page and done on another, by the clock of the pages themselves: they share a machine. */
import type { Page } from 'playwright';

interface Clocked {
  seenAt?: number;
  wasLit?: boolean;
  answeredAt?: number;
}

/** From now on the page notes when the row of this car first says something else, and whether its plate lit up. */
export const watchRow = async (page: Page, car: string): Promise<void> => {
  await page.evaluate((wanted) => {
    const clocked = window as unknown as Clocked;
    delete clocked.seenAt;
    clocked.wasLit = false;
    const row = Array.from(document.querySelectorAll('.track li.row')).find((each) =>
      each.textContent.startsWith(wanted),
    );
    if (row === undefined) throw new Error(`no row of ${wanted}`);
    const before = row.textContent;
    new MutationObserver(() => {
      if (row.textContent !== before) clocked.seenAt ??= Date.now();
      clocked.wasLit ||= row.querySelector('.platecard.lit') !== null;
    }).observe(row, { subtree: true, childList: true, characterData: true, attributes: true });
  }, car);
};

/** The page notes when a command of its own is accepted. */
export const watchAnswers = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    const clocked = window as unknown as Clocked;
    const send = window.fetch.bind(window);
    window.fetch = async (...given) => {
      const answer = await send(...given);
      if (given[0] === '/api/commands' && answer.ok) clocked.answeredAt = Date.now();
      return answer;
    };
  });
};

export const whenSeen = async (page: Page): Promise<number> => {
  const handle = await page.waitForFunction(() => (window as unknown as Clocked).seenAt);
  return Number(await handle.jsonValue());
};

export const whenAnswered = async (page: Page): Promise<number> => {
  const handle = await page.waitForFunction(() => (window as unknown as Clocked).answeredAt);
  return Number(await handle.jsonValue());
};

export const wasLit = (page: Page): Promise<boolean> =>
  page.evaluate(() => (window as unknown as Clocked).wasLit === true);
