/**
 * What lies where, as a sum of moves. A count is soft: a bolt in hand is fitted though the books have none, and is booked as
 * found first; so no balance is ever below zero, and somebody is asked to count.
 */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Instant, Key, LotId } from '@/lib/domain/base/vocabulary';

/** Why goods came or went. `found` and `counted` are the books giving way to the shelf. */
export const MOVE_REASONS = [
  'received',
  'found',
  'counted',
  'put-back',
  'fitted',
  'extra-taken',
  'scrapped',
  'lost',
  'returned',
  'moved',
] as const;
export type MoveReason = (typeof MOVE_REASONS)[number];

/** One shelf place of one item: a lot where it is traced, a bin where it is bulk. */
export interface StockPlace {
  readonly item: Key;
  readonly lot: LotId | null;
  /** `09C`; null = not put away. */
  readonly bin: string | null;
}

export interface StockMove extends StockPlace {
  /** Above zero: came; below: went. */
  readonly quantity: Exact;
  readonly reason: MoveReason;
  readonly at: Instant;
}

export const placeKey = ({ item, lot, bin }: StockPlace): string => `${item}|${lot ?? ''}|${bin ?? ''}`;

/** What lies in each place. */
export const balancesOf = (moves: readonly StockMove[]): ReadonlyMap<string, Exact> => {
  const found = new Map<string, Exact>();
  for (const move of moves) {
    const key = placeKey(move);
    found.set(key, add(found.get(key) ?? ZERO, move.quantity));
  }
  return found;
};

export type OutReason = Extract<
  MoveReason,
  'fitted' | 'extra-taken' | 'scrapped' | 'lost' | 'returned' | 'moved'
>;

/** The moves of taking so much from a place that holds `balance`: what is not on the books is found first. */
export const taking = (
  place: StockPlace,
  balance: Exact,
  quantity: Exact,
  reason: OutReason,
  at: Instant,
): readonly StockMove[] => {
  if (compare(quantity, ZERO) <= 0) return [];
  const { item, lot, bin } = place;
  const missing = subtract(quantity, balance);
  const out: StockMove = { item, lot, bin, quantity: subtract(ZERO, quantity), reason, at };
  return compare(missing, ZERO) > 0 ? [{ ...out, quantity: missing, reason: 'found' }, out] : [out];
};

/** The move that brings the books to what was counted, by nothing where they agree: that somebody looked is worth keeping. */
export const counting = (place: StockPlace, balance: Exact, counted: Exact, at: Instant): StockMove => {
  const { item, lot, bin } = place;
  const seen = compare(counted, ZERO) < 0 ? ZERO : counted;
  const quantity = subtract(seen, balance);
  return { item, lot, bin, quantity, reason: 'counted', at };
};

/** Places where something was found that the books did not have, and nobody has counted since: in the order of their finding. */
export const countsAsked = (moves: readonly StockMove[]): readonly StockPlace[] => {
  const open = new Map<string, StockPlace>();
  for (const { item, lot, bin, reason } of moves) {
    const place = { item, lot, bin };
    if (reason === 'found') open.set(placeKey(place), open.get(placeKey(place)) ?? place);
    if (reason === 'counted') open.delete(placeKey(place));
  }
  return [...open.values()];
};
