/** How often a piece of an item may go in. */
import type { Key, Reuse } from '@/lib/domain/base/vocabulary';
import type { ItemEntry } from './document';
import { parseReuse } from './notation';

/** By the plan's word for the item; where it says none, always. */
export const reuseOf = (
  items: Readonly<Record<Key, Pick<ItemEntry, 'reuse'>>> | undefined,
  item: Key,
): Reuse => parseReuse(items?.[item]?.reuse ?? 'always') ?? { rule: 'always' };

/** May a piece that was fitted before, nobody knows how often but once at least, go in again? */
export const isForUsed = (reuse: Reuse): boolean =>
  reuse.rule === 'always' || (reuse.rule === 'times' && reuse.times > 1);
