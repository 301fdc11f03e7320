/** Whatever is pressed is large enough for a glove, and what matters stands apart: measured, not looked at. */
import type { Page } from 'playwright';

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
        [
          ...root.querySelectorAll(
            'a[href], button, input:not([type=hidden]), select, textarea, summary, [role=button], [tabindex="0"]',
          ),
        ]
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

/**
 * What is too small or too near on the page as it stands: 48 px each way, the sign-off sheet's own keys 72, and 12 px
 * around what signs, what is typed with and the one filled act of a view. To be compared with an empty list.
 */
export const misplaced = async (page: Page): Promise<readonly string[]> => {
  const { small, near } = await measure(page, /\/joints\//.test(page.url()));
  return [...small, ...near];
};
