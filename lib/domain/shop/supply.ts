/** What the shop has or has coming, and which car gets it: the earliest need first, from what goes off first. */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key, LotId } from '@/lib/domain/base/vocabulary';

export type Source =
  | { readonly kind: 'lot'; readonly lot: LotId }
  /** Counted by bin, or of a traced thing what nobody said the lot of. */
  | { readonly kind: 'bulk' }
  /** Hardware that was good to use again, off the donor of that car. */
  | { readonly kind: 'donor'; readonly lot: LotId; readonly car: CarId }
  | { readonly kind: 'order'; readonly order: string; readonly due: Day };

export interface Supply {
  readonly item: Key;
  /** What is left of it. */
  readonly quantity: Exact;
  readonly source: Source;
  /** Last day on which it may be fitted; null = keeps. */
  readonly goodUntil: Day | null;
  /** Put aside for one car (in its kit, off its own donor): nobody else’s. */
  readonly onlyFor: CarId | null;
}

export interface Wanted {
  readonly car: CarId;
  readonly by: Day;
  readonly quantity: Exact;
  /** The car's plan takes none that was fitted before; absent = it does. */
  readonly mustBeNew?: true;
}

export interface Allocation {
  readonly car: CarId;
  readonly by: Day;
  readonly quantity: Exact;
  readonly source: Source;
  /** On order, and due only after the day it is needed. */
  readonly isLate: boolean;
}

export interface Allocated {
  readonly allocations: readonly Allocation[];
  /** Wants that nothing is left for, earliest first. */
  readonly unmet: readonly Wanted[];
  /** What nobody wants. */
  readonly left: Exact;
}

const RANK: Readonly<Record<Source['kind'], number>> = { lot: 0, bulk: 1, donor: 2, order: 3 };
const LAST: Day = '9999-12-31';

/** What is here before what is coming; of those what goes off, or comes, first; then by name, so that it is always the same. */
const earlier = (a: Supply, b: Supply): number => {
  const own = Number(b.onlyFor !== null) - Number(a.onlyFor !== null);
  const rank = RANK[a.source.kind] - RANK[b.source.kind];
  const [left, right] = [whenOf(a), whenOf(b)];
  return own || rank || (left < right ? -1 : left > right ? 1 : nameOf(a) < nameOf(b) ? -1 : 1);
};
const whenOf = ({ source, goodUntil }: Supply): Day =>
  source.kind === 'order' ? source.due : (goodUntil ?? LAST);
const nameOf = ({ source }: Supply): string => {
  switch (source.kind) {
    case 'lot':
      return source.lot;
    case 'bulk':
      return '';
    case 'donor':
      return source.lot;
    case 'order':
      return source.order;
  }
};

/**
 * Shares one item out. The earliest want goes first and takes what goes off first among what is still good on that day: of lots
 * that anybody may have no other sharing serves more. What is put aside for a car is given to it first, whatever its age.
 */
export const allocate = (wanted: readonly Wanted[], supply: readonly Supply[]): Allocated => {
  const rest = [...supply].sort(earlier).map((each) => ({ ...each }));
  const allocations: Allocation[] = [];
  const unmet: Wanted[] = [];
  const order = [...wanted].sort((a, b) =>
    a.by !== b.by ? (a.by < b.by ? -1 : 1) : a.car < b.car ? -1 : a.car > b.car ? 1 : 0,
  );
  for (const wants of order) {
    const { car, by, quantity } = wants;
    let open = quantity;
    for (const each of rest) {
      if (compare(open, ZERO) <= 0) break;
      const isFor =
        (each.onlyFor ?? car) === car &&
        (each.goodUntil === null || by <= each.goodUntil) &&
        !(wants.mustBeNew === true && each.source.kind === 'donor');
      if (!isFor || compare(each.quantity, ZERO) <= 0) continue;
      const taken = compare(each.quantity, open) < 0 ? each.quantity : open;
      each.quantity = subtract(each.quantity, taken);
      open = subtract(open, taken);
      const { source } = each;
      allocations.push({
        car,
        by,
        quantity: taken,
        source,
        isLate: source.kind === 'order' && source.due > by,
      });
    }
    if (compare(open, ZERO) > 0) unmet.push({ ...wants, quantity: open });
  }
  return { allocations, unmet, left: rest.reduce((sum, each) => add(sum, each.quantity), ZERO) };
};
