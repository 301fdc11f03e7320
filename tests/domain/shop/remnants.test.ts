/** Rests in the rack: counted whole, read back as lengths for the cut lists. Lengths are invented. */
import { expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { remnantsOf } from '@/lib/domain/shop/remnants';
import { plan, shopWith } from '@/tests/support/shop';

const shop = () => shopWith(plan({ stages: { FR: { name: 'Frame' } }, operations: {} }));
const count = (...lengths: readonly string[]) => ({ type: 'count-remnants', item: 'T60', lengths }) as const;

test('a count is all that lies there, the longest first, in whatever unit it was measured', () => {
  const books = shop();
  books.does('tom', count('640 mm', '1.2 m', '25 in'));
  const read = remnantsOf(books.world.shop.remnants)['T60'] ?? [];
  // An inch is 25.4 mm exactly (ISO 31-1).
  expect(read.map(({ key, length }) => [key, toDecimalText(length, 1)])).toEqual([
    ['1', '1200'],
    ['2', '640'],
    ['3', '635'],
  ]);
  books.does('tess', count());
  expect(remnantsOf(books.world.shop.remnants)['T60']).toEqual([]);
});

test('each length that can’t be read is named, and none of the count is kept', () => {
  const books = shop();
  expect(books.refused('tom', count('640 mm', '1200', '0 mm', 'long'))).toMatchObject(
    ['1200', '0 mm', 'long'].map((text) => ({ code: 'value-unreadable', details: { text } })),
  );
  expect(books.world.shop.remnants).toEqual({});
});
