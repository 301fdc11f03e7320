/**
 * What the shop has of each thing, as two sums: what came and what went. Both only grow, so that two cars that draw from one
 * lot never wait for each other and no order of theirs matters.
 *
 * A count is soft: a bolt in hand is fitted though the books have none. More has gone than came then; the difference was
 * *found*, what is there is none, never fewer, and somebody is asked to count.
 */
import {
  ZERO,
  add,
  atLeastNone,
  compare,
  parseDecimal,
  subtract,
  toDecimalText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Instant, Key, LotId, PersonId } from '@/lib/domain/base/vocabulary';

/** A lot where it is traced; the item where it is bulk, or where nobody said which lot. Quantities are decimal text. */
export interface StockRow {
  readonly item: Key;
  readonly lot: LotId | null;
  readonly came: string;
  readonly went: string;
  /** When somebody last looked. */
  readonly counted: { readonly at: Instant; readonly by: PersonId } | null;
}

/** By `stockKey`. */
export type Stock = Readonly<Record<string, StockRow>>;

export interface StockPlace {
  readonly item: Key;
  readonly lot: LotId | null;
}

/** What one event adds to one place. */
export interface StockChange extends StockPlace {
  readonly came: Exact;
  readonly went: Exact;
  readonly counted: StockRow['counted'];
}

/** Taken for a joint or for work, as the event keeps it. */
export interface Drawn extends StockPlace {
  readonly quantity: string;
}

/** Why goods went that are in no car. */
export const OUT_REASONS = ['extra-taken', 'scrapped', 'lost', 'returned'] as const;
export type OutReason = (typeof OUT_REASONS)[number];

export interface DrawnOut {
  readonly reason: OutReason;
  /** The car that it was for, if it was for one. */
  readonly forCar: CarId | null;
}

/** Of one item off a donor, as the event keeps it. `lot`: what is good; null = none is. */
export interface KeptOffDonor extends StockPlace {
  readonly good: string;
  readonly scrapped: string;
}

export const stockKey = ({ item, lot }: StockPlace): string => `${item}|${lot ?? ''}`;

/** Beyond a millionth of a piece or a metre nobody counts; a share that does not end is rounded there. */
export const stockText = (quantity: Exact): string => toDecimalText(quantity, 6);

/** A quantity as rows and events keep it. */
export const quantityOf = (text: string): Exact => parseDecimal(text) ?? ZERO;

export const EMPTY_PLACE = { came: '0', went: '0', counted: null } as const;

/** What is there: never below nothing. */
export const onHand = ({ came, went }: Pick<StockRow, 'came' | 'went'>): Exact =>
  atLeastNone(subtract(quantityOf(came), quantityOf(went)));

/** How many more went than ever came: they were found, and nobody has counted since. */
export const foundBeyond = ({ came, went }: Pick<StockRow, 'came' | 'went'>): Exact =>
  atLeastNone(subtract(quantityOf(went), quantityOf(came)));

/** What a look at one place found, beside what the books said: as events keep it. */
export interface Recount extends StockPlace {
  readonly counted: string;
  readonly had: string;
  /** How the place differs from the books. */
  readonly more: string;
  readonly fewer: string;
  /** What had gone beyond what came; booked before the count. */
  readonly found: string;
}

/** So much lies there: what that adds to the books of the place. */
export const recount = (place: StockPlace, row: Pick<StockRow, 'came' | 'went'>, there: Exact): Recount => {
  const had = onHand(row);
  return {
    ...place,
    counted: stockText(there),
    had: stockText(had),
    more: stockText(atLeastNone(subtract(there, had))),
    fewer: stockText(atLeastNone(subtract(had, there))),
    found: stockText(foundBeyond(row)),
  };
};

export const withChange = (stock: Stock, change: StockChange): Stock => {
  const { item, lot, counted } = change;
  const key = stockKey(change);
  const before = stock[key] ?? { item, lot, ...EMPTY_PLACE };
  return {
    ...stock,
    [key]: {
      ...before,
      came: stockText(add(quantityOf(before.came), change.came)),
      went: stockText(add(quantityOf(before.went), change.went)),
      counted: counted ?? before.counted,
    },
  };
};

/** Changes of the same place as one, in the order of their keys: whoever writes them locks them in that order. */
export const summed = (changes: readonly StockChange[]): readonly StockChange[] => {
  const found = new Map<string, StockChange>();
  for (const change of changes) {
    const key = stockKey(change);
    const before = found.get(key);
    found.set(
      key,
      before === undefined
        ? change
        : {
            ...change,
            came: add(before.came, change.came),
            went: add(before.went, change.went),
            counted: change.counted ?? before.counted,
          },
    );
  }
  return [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, change]) => change);
};

/** What was taken, summed by place, in the order of their keys. Nothing is left out but nothing. */
export const drawnOf = (taken: readonly (StockPlace & { readonly quantity: Exact })[]): readonly Drawn[] =>
  summed(taken.map(({ item, lot, quantity }) => ({ item, lot, came: ZERO, went: quantity, counted: null })))
    .filter(({ went }) => compare(went, ZERO) > 0)
    .map(({ item, lot, went }) => ({ item, lot, quantity: stockText(went) }));
