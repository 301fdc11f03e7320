/** Rests of tube, strap and bar in the rack: what lies there of an item, as somebody counted it and the saw has changed it since. */
import { ZERO, compare } from '@/lib/domain/base/exact';
import type { Instant, Key, PersonId } from '@/lib/domain/base/vocabulary';
import { parseLength } from '@/lib/domain/plan/cut';
import type { Remnant } from './cut-list';
import { isLength } from './sawn';
import type { SawnBar } from './sawn';

export interface RemnantRow {
  readonly item: Key;
  /** As they were measured, with their unit; the longest first. */
  readonly lengths: readonly string[];
  /** Who counted last; where nobody has, who sawed first. */
  readonly by: PersonId;
  readonly at: Instant;
  /** Who has sawn since; absent where nobody has. */
  readonly sawn?: { readonly by: PersonId; readonly at: Instant };
  /** Nobody has ever counted: here is only what sawing left. */
  readonly isUncounted?: true;
}

/** The rack after a bar: its rest is off the list, and what is left of it on. The longest first. */
export const afterBar = (
  lengths: readonly string[],
  { from, length, left }: Pick<SawnBar, 'from' | 'length' | 'left'>,
): readonly string[] => {
  const taken = from === 'rest' ? indexOf(lengths, length) : -1;
  const kept = lengths.filter((_, index) => index !== taken);
  return left === null ? kept : sortedLengths([...kept, left]);
};

/** Where a rest of that length stands in the list, whatever its unit; -1 where none is. */
export const indexOf = (lengths: readonly string[], length: string): number => {
  const wanted = parseLength(length);
  return wanted === null ? -1 : lengths.findIndex((text) => isLength(text, wanted));
};

/** The longest first, so that the rack reads as one looks along it; each as it was said. */
export const sortedLengths = (lengths: readonly string[]): readonly string[] =>
  lengths.toSorted((a, b) => compare(parseLength(b) ?? ZERO, parseLength(a) ?? ZERO));

/** For the cut lists: each is one of its kind, numbered as it stands in the row. */
export const remnantsOf = (
  rows: Readonly<Record<Key, RemnantRow>>,
): Readonly<Record<Key, readonly Remnant[]>> =>
  Object.fromEntries(
    Object.values(rows).map(({ item, lengths }) => [
      item,
      lengths.flatMap((text, index) => {
        const length = parseLength(text);
        return length === null ? [] : [{ key: String(index + 1), length }];
      }),
    ]),
  );
