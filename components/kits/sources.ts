import { ZERO, compare, parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { KitLine } from '@/lib/domain/kit-claims';
import { lotByLot } from '@/lib/domain/shop/lots-to-take';
import { stockText } from '@/lib/domain/shop/stock';
import type { KitPickLine } from '@/lib/wire/views/kits';

/** So many of a line, lot by lot as they are to be taken; what is beyond the books comes from the last of them. */
export const takenFrom = ({ item, from }: KitPickLine, quantity: string): readonly KitLine[] => {
  const there = from.map((each) => ({ lot: each.lot, quantity: parseDecimal(each.quantity) ?? ZERO }));
  const { taken, rest } = lotByLot(there, parseDecimal(quantity) ?? ZERO);
  return [...taken, { lot: there.at(-1)?.lot ?? null, quantity: rest }]
    .filter((each) => compare(each.quantity, ZERO) > 0)
    .map(({ lot, quantity: part }) => ({
      item,
      quantity: stockText(part),
      ...(lot === null ? {} : { lot }),
    }));
};

/** `2` of `4` → `2`: how many are missing. */
export const shortOf = (wanted: string, has: string): string => {
  const short = subtract(parseDecimal(wanted) ?? ZERO, parseDecimal(has) ?? ZERO);
  return compare(short, ZERO) > 0 ? stockText(short) : '0';
};
