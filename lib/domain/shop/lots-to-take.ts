/**
 * From which lots something is taken, in the order to take it: what lies in the box of the work, then what came off the car's
 * own donor, then what lies open on the shelf and goes off first. The sign-off sheet, the forms of a car, the finish of work and a kit's list all propose by this.
 */
import { ZERO, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key, LotId } from '@/lib/domain/base/vocabulary';
import { lotOf, openOf } from './shelf';
import type { OnShelf } from './shelf';
import { quantityOf } from './stock';
import type { Drawn } from './stock';

export interface LotThere {
  /** Null = it lies there, and nobody said from which lot. */
  readonly lot: LotId | null;
  readonly quantity: Exact;
  /** It is there for this car alone: in the box of its work, or off its own donor. */
  readonly isAside: boolean;
  /** It was fitted before: off a donor. What lies in a box was looked at when it was picked. */
  readonly isUsed: boolean;
}

/** What a piece of work of the car may take of an item, in that order. On the shelf only what is of a known lot, good and in nobody's box. */
export const lotsAtHand = (
  box: readonly Drawn[],
  shelf: readonly OnShelf[],
  item: Key,
  car: CarId,
): readonly LotThere[] => [
  ...box.flatMap((line) =>
    line.item === item
      ? [{ lot: line.lot, quantity: quantityOf(line.quantity), isAside: true, isUsed: false }]
      : [],
  ),
  ...openOf(shelf, item, car)
    .map((each) => ({
      lot: lotOf(each),
      quantity: each.quantity,
      isAside: each.onlyFor !== null,
      isUsed: each.source.kind === 'donor',
    }))
    .filter(({ lot }) => lot !== null),
];

/** So much of what lies in one place. */
type Part = Pick<LotThere, 'lot' | 'quantity'>;

export interface LotByLot {
  readonly taken: readonly Part[];
  /** What none of them holds. */
  readonly rest: Exact;
}

/** So much of what can be divided, or is taken piece by piece: all of the first lot, then of the next. */
export const lotByLot = (there: readonly Part[], wanted: Exact): LotByLot => {
  let open = wanted;
  const taken: Part[] = [];
  for (const { lot, quantity } of there) {
    const part = compare(quantity, open) < 0 ? quantity : open;
    open = subtract(open, part);
    if (compare(part, ZERO) > 0) taken.push({ lot, quantity: part });
  }
  return { taken, rest: open };
};
