/** The least that so many pieces of one item cost, whoever brings them, freight apart: a table, exactly. */
import type { Offer } from '@/lib/domain/shop/order';

/** Beyond so many pieces the table is not worth its time. */
const MOST_PIECES = 20_000;

/** Null where the table would be too large, infinity where nobody sells it. */
export const cheapestGoods = (offers: readonly Offer[], quantity: number): number | null => {
  if (quantity > MOST_PIECES) return null;
  /** The least cost of at least so many pieces from the offers so far. */
  let least = Float64Array.from({ length: quantity + 1 }, (_, pieces) => (pieces === 0 ? 0 : Infinity));
  for (const offer of offers) {
    const next = least.slice();
    for (const { packs, cost } of waysOf(offer, quantity)) {
      const pieces = packs * offer.packSize;
      for (let wanted = 1; wanted <= quantity; wanted += 1) {
        const sum = (least[Math.max(0, wanted - pieces)] ?? Infinity) + cost;
        if (sum < (next[wanted] ?? Infinity)) next[wanted] = sum;
      }
    }
    least = next;
  }
  return least[quantity] ?? Infinity;
};

/** Numbers of packs worth asking about: up to what is wanted, and where a cheaper step begins beyond that. */
const waysOf = ({ steps, packSize }: Offer, quantity: number) => {
  const enough = Math.ceil(quantity / packSize);
  return steps.flatMap(({ fromPacks, price }, step) => {
    const before = (steps[step + 1]?.fromPacks ?? Infinity) - 1;
    const first = Math.max(1, fromPacks);
    const last = Math.max(first, Math.min(before, enough));
    return Array.from({ length: last - first + 1 }, (_, more) => ({
      packs: first + more,
      cost: price * (first + more),
    }));
  });
};
