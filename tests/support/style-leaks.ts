/**
 * A day of clicking brings one screen's style sheets after another's into the same page, and none is taken out again:
 * a sheet may therefore not reach what another screen draws.
 */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { PAGES, ROOT } from './browser-global';

const CHUNKS = join(ROOT, PAGES, 'static/chunks');

/** What looks different once the style sheets of every other screen are in the page too. */
export const styleLeaks = async (page: Page): Promise<readonly string[]> => {
  const sheets = (await readdir(CHUNKS)).filter((name) => name.endsWith('.css'));
  if (sheets.length < 5) throw new Error(`too few style sheets under ${CHUNKS} to prove anything`);
  return page.evaluate(async (all) => {
    const PROPERTIES = ['display', 'color', 'background-color', 'font-size', 'font-weight', 'padding', 'gap'];
    const drawn = [...document.body.querySelectorAll('*')].filter((own) => own.checkVisibility());
    const looks = (): readonly string[] =>
      drawn.map((own) => {
        const style = getComputedStyle(own);
        return PROPERTIES.map((each) => `${each} ${style.getPropertyValue(each)}`).join('; ');
      });
    // What is just fading would differ from itself.
    for (const each of document.getAnimations()) each.cancel();
    const before = looks();
    const here = new Set(
      [...document.querySelectorAll<HTMLLinkElement>('link[rel=stylesheet]')].map(({ href }) =>
        href.slice(href.lastIndexOf('/') + 1),
      ),
    );
    await Promise.all(
      all
        .filter((name) => !here.has(name))
        .map(
          (name) =>
            new Promise((resolve) => {
              const link = document.createElement('link');
              link.rel = 'stylesheet';
              link.href = `/_next/static/chunks/${name}`;
              link.onload = resolve;
              link.onerror = resolve;
              document.head.append(link);
            }),
        ),
    );
    const after = looks();
    const leaks = drawn.flatMap((own, index) =>
      before[index] === after[index]
        ? []
        : [
            `${own.tagName.toLowerCase()}.${own.getAttribute('class') ?? ''}: ${before[index] ?? ''} → ${after[index] ?? ''}`,
          ],
    );
    return [...new Set(leaks)].slice(0, 12);
  }, sheets);
};
