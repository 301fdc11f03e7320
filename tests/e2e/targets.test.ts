/** Whatever is pressed, on every screen and at every width, is large enough for a glove: measured, not looked at. */
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { comeIn, isTooWide, newPage, openBrowser, shoot } from '@/tests/support/browser';
import type { Watched } from '@/tests/support/browser';
import { SignOffShop } from './sign-off-shop';
import { styleLeaks } from './style-leaks';
import { SCREENS } from './targets-screens';

const WIDTHS = [1280, 768, 360] as const;

let shop: SignOffShop;
let browser: Browser;
const windows = new Map<string, Watched>();

beforeAll(async () => {
  [shop, browser] = await Promise.all([SignOffShop.open(), openBrowser()]);
  await shop.begin('T-001');
  await shop.give('tobit', {
    type: 'final-joint',
    car: 'T-001',
    joint: 'J-913',
    tool: 'T-91',
    passes: [[1, 3, 2, 4]],
    readings: ['45', '45', '45', '45'],
  });
});
afterAll(async () => {
  await browser.close();
  await shop.close();
});

/** One window for each person, as it is at a bench. */
const windowOf = async (who: string | null, path: string): Promise<Watched> => {
  const known = windows.get(who ?? '');
  const watched = known ?? (await newPage(browser, { address: shop.shop.address }));
  windows.set(who ?? '', watched);
  if (who === null || known !== undefined) await watched.page.goto(path);
  else await comeIn(watched, who, path);
  await watched.page.locator('main [aria-busy=true]').waitFor({ state: 'detached' });
  return watched;
};

interface Measured {
  readonly small: readonly string[];
  readonly near: readonly string[];
}

/** Of the page, or of the dialog that lies over it. */
const measure = (page: Page, isSheet: boolean): Promise<Measured> =>
  page.evaluate((isLarge) => {
    interface Target {
      readonly own: Element;
      readonly box: DOMRect;
      readonly name: string;
    }
    /** An input takes the whole box that is drawn around it; a tick the words beside it. */
    const pressed = (own: Element): Element =>
      own.matches('input')
        ? (own.closest('label, .so-entry, .pin-field, .pinfield') ??
          (own.id === '' ? null : document.querySelector(`label.choice[for="${own.id}"]`)) ??
          own)
        : own;
    const round = (value: number): string => value.toFixed(0);
    const root = document.querySelector('dialog[open]') ?? document.body;
    const targets = [
      ...new Set(
        [...root.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')]
          .filter(
            (own) => own.checkVisibility({ visibilityProperty: true }) && own.closest('[inert]') === null,
          )
          .map(pressed),
      ),
    ].flatMap((own): Target[] => {
      const box = own.getBoundingClientRect();
      const words = own.getAttribute('aria-label') ?? own.textContent.trim();
      return box.width > 1 && box.height > 1
        ? [{ own, box, name: `${own.tagName.toLowerCase()}.${own.className} “${words.slice(0, 40)}”` }]
        : [];
    });
    /** What signs, what is typed with, and the one filled act of a view. */
    const isKey = ({ own }: Target): boolean =>
      own.closest('.so-keys, .so-toggles') !== null ||
      own.matches('.so-enter, .so-signkey, .so-tap, .so-bigact, .so-yes, .so-way');
    const isPrimary = (target: Target): boolean =>
      isKey(target) || target.own.closest('.keypad') !== null || target.own.matches('.btn.main, .btn.go');
    const gap = (one: DOMRect, other: DOMRect): number =>
      Math.max(
        one.left - other.right,
        other.left - one.right,
        one.top - other.bottom,
        other.top - one.bottom,
      );
    const small = targets.flatMap((target) => {
      const least = isLarge && isKey(target) ? 72 : 48;
      const { width, height } = target.box;
      return width < least - 0.5 || height < least - 0.5
        ? [`${target.name}: ${round(width)} × ${round(height)}, least ${round(least)}`]
        : [];
    });
    const near = targets.flatMap((one, index) =>
      targets.slice(index + 1).flatMap((other) => {
        if (!isPrimary(one) && !isPrimary(other)) return [];
        if (one.own.contains(other.own) || other.own.contains(one.own)) return [];
        const between = gap(one.box, other.box);
        return between < 11.5 ? [`${one.name} and ${other.name}: ${round(between)} between`] : [];
      }),
    );
    return { small, near };
  }, isSheet);

test.each(SCREENS)('$name', async ({ name, who, path, open, isSheet = false }) => {
  const watched = await windowOf(who, path);
  const { page } = watched;
  await open?.(page);
  const wrong: string[] = [];
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    const { small, near } = await measure(page, isSheet);
    wrong.push(...[...small, ...near].map((each) => `${String(width)}: ${each}`));
    await shoot(watched, `targets-${name.replace(/[^a-z]+/gi, '-')}-${String(width)}`);
    if (await isTooWide(page)) wrong.push(`${String(width)}: wider than the window`);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  wrong.push(...(await styleLeaks(page)).map((each) => `another screen's style: ${each}`));
  expect(wrong).toEqual([]);
});
