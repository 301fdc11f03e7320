/** Rests of tube, strap and bar in the rack: what lies there of an item, as somebody last counted it. */
import type { Instant, Key, PersonId } from '@/lib/domain/base/vocabulary';
import { parseLength } from '@/lib/domain/plan/cut';
import type { Remnant } from './cut-list';

export interface RemnantRow {
  readonly item: Key;
  /** As they were measured, with their unit; the longest first. */
  readonly lengths: readonly string[];
  readonly by: PersonId;
  readonly at: Instant;
}

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
