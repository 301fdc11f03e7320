import { ZERO, compare, parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { KitLine } from '@/lib/domain/kit-claims';
import { stockText } from '@/lib/domain/shop/stock';
import type { KitPickLine } from '@/lib/wire/views/kits';

/** So many of a line, lot by lot as they are to be taken; what is beyond the books comes from the last of them. */
export const takenFrom = ({ item, from }: KitPickLine, quantity: string): readonly KitLine[] => {
  let open = parseDecimal(quantity) ?? ZERO;
  const found: KitLine[] = [];
  const places = from.length === 0 ? [{ lot: null, quantity: '0' }] : from;
  for (const [index, { lot, quantity: there }] of places.entries()) {
    const has = parseDecimal(there) ?? ZERO;
    const isLast = index === places.length - 1;
    const part = !isLast && compare(has, open) < 0 ? has : open;
    open = subtract(open, part);
    if (compare(part, ZERO) > 0)
      found.push({ item, quantity: stockText(part), ...(lot === null ? {} : { lot }) });
  }
  return found;
};

/** `2` of `4` → `2`: how many are missing. */
export const shortOf = (wanted: string, has: string): string => {
  const short = subtract(parseDecimal(wanted) ?? ZERO, parseDecimal(has) ?? ZERO);
  return compare(short, ZERO) > 0 ? stockText(short) : '0';
};
