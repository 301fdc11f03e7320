/** What goes into the box of an operation and comes out of it; its rows stand in `car/kit-rows.ts`. */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key, LotId, StateKey } from '@/lib/domain/base/vocabulary';
import type { KitRow } from '@/lib/domain/car/kit-rows';
import type { Boxed } from './shelf';
import { quantityOf, stockKey, stockText } from './stock';
import type { Drawn } from './stock';

type Boxes = Readonly<Record<StateKey, KitRow>>;

/** What lies in the box of an operation; nothing where there is none. */
export const inBox = ({ kits }: { readonly kits: Boxes }, operation: StateKey): readonly Drawn[] =>
  kits[operation]?.lines ?? [];

/** All that lies in the boxes of these cars, in the order of the cars and of their boxes. */
export const boxedOn = (cars: readonly { readonly id: CarId; readonly kits: Boxes }[]): readonly Boxed[] =>
  cars.flatMap(({ id, kits }) =>
    Object.values(kits).flatMap(({ lines }) => lines.map((line) => ({ car: id, ...line }))),
  );

/** How much of an item lies in it, from whichever lot. */
export const countInBox = (lines: readonly Drawn[], item: Key): Exact =>
  lines.reduce((sum, line) => (line.item === item ? add(sum, quantityOf(line.quantity)) : sum), ZERO);

export const withPicked = (lines: readonly Drawn[], picked: readonly Drawn[]): readonly Drawn[] => {
  const found = new Map(lines.map((line) => [stockKey(line), line]));
  for (const line of picked) {
    const before = found.get(stockKey(line));
    found.set(stockKey(line), {
      ...line,
      quantity: stockText(add(quantityOf(before?.quantity ?? '0'), quantityOf(line.quantity))),
    });
  }
  return [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, line]) => line);
};

/**
 * The box without this: never below nothing. From the same place first; what nobody said the lot of may have been of any, so
 * that a box never promises what may have gone.
 */
export const withoutTaken = (lines: readonly Drawn[], taken: readonly Drawn[]): readonly Drawn[] => {
  const left = lines.map((line) => ({ ...line, rest: quantityOf(line.quantity) }));
  for (const out of taken) {
    let open = quantityOf(out.quantity);
    const mayBe = left.filter(
      ({ item, lot }) => item === out.item && (lot === out.lot || lot === null || out.lot === null),
    );
    for (const line of mayBe.toSorted((a, b) => Number(b.lot === out.lot) - Number(a.lot === out.lot))) {
      const part = compare(line.rest, open) < 0 ? line.rest : open;
      line.rest = subtract(line.rest, part);
      open = subtract(open, part);
    }
  }
  return left
    .filter(({ rest }) => compare(rest, ZERO) > 0)
    .map(({ item, lot, rest }) => ({ item, lot, quantity: stockText(rest) }));
};

/** So much of an item as it lies in the box, place by place; what the box does not hold is left out. */
export const outOfBox = (
  lines: readonly Drawn[],
  { item, lot, quantity }: { readonly item: Key; readonly lot?: LotId; readonly quantity?: Exact },
): readonly Drawn[] => {
  let open = quantity ?? null;
  const found: Drawn[] = [];
  for (const line of lines) {
    if (line.item !== item || (lot !== undefined && line.lot !== lot)) continue;
    const there = quantityOf(line.quantity);
    const part = open === null || compare(there, open) < 0 ? there : open;
    if (open !== null) open = subtract(open, part);
    if (compare(part, ZERO) > 0) found.push({ item, lot: line.lot, quantity: stockText(part) });
  }
  return found;
};

/** The lot of what is taken without a word, where the box leaves no doubt: one lot of that item alone, and enough of it. */
export const lotInBox = (lines: readonly Drawn[], item: Key, wanted: Exact): LotId | null => {
  const [only, ...more] = lines.filter((line) => line.item === item);
  return only !== undefined && more.length === 0 && compare(quantityOf(only.quantity), wanted) >= 0
    ? only.lot
    : null;
};
