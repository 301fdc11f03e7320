/** Where a typed value lies, by the rulebook's exact numbers: the screen must not round what the rules don't. */
import { compare, parseDecimal } from '@/lib/domain/base/exact';
import type { CheckValue } from '@/lib/wire/views/desk';

export type ValuePlace = 'inside' | 'outside' | 'unreadable' | 'empty';

/** A bare number is in the limit's own unit; one with another unit behind it the rules read themselves. */
export const placeOfText = (value: Extract<CheckValue, { kind: 'window' }>, typed: string): ValuePlace => {
  if (typed === '') return 'empty';
  const number = parseDecimal(typed);
  if (number === null) return 'unreadable';
  const low = value.low === null ? null : parseDecimal(value.low);
  const high = value.high === null ? null : parseDecimal(value.high);
  if (low !== null && compare(number, low) < 0) return 'outside';
  return high !== null && compare(number, high) > 0 ? 'outside' : 'inside';
};
