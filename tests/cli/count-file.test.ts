import { expect, test } from 'vitest';
import { readCountFile, writeCountFile } from '@/lib/wire/count-file';

const ROWS = [
  { bin: '09C', item: 'NL-M10', name: 'insert lock nut M10, class 8', lot: 'L-0834', books: '96' },
  { bin: '11C', item: 'W-M8', name: 'washer M8', lot: '', books: '84' },
];

test('the list goes out with what the books have, and an empty column for what is counted', () => {
  expect(writeCountFile(ROWS)).toBe(
    'bin,item,name,lot,books,counted\r\n' +
      '09C,NL-M10,"insert lock nut M10, class 8",L-0834,96,\r\n' +
      '11C,W-M8,washer M8,,84,\r\n',
  );
});

test('it comes back with counts: rows without one are nobody’s count', () => {
  const text = writeCountFile(ROWS).replace('96,', '96,90');
  expect(readCountFile(text)).toEqual({
    ok: true,
    value: [{ item: 'NL-M10', lot: 'L-0834', counted: '90' }],
  });
  expect(readCountFile('item,counted\r\nW-M8,"12,5"\r\n')).toEqual({
    ok: true,
    value: [{ item: 'W-M8', counted: '12,5' }],
  });
});

test.each([
  ['no count at all', writeCountFile(ROWS), [{ row: 1, column: 'counted', says: 'is empty in every row' }]],
  [
    'what is no number',
    'item,counted\r\nW-M8,3\r\nNL-M10,some\r\n,4\r\n',
    [
      { row: 3, column: 'counted', says: '“some” is no count; write a number, 0 or more' },
      { row: 4, column: 'item', says: 'is empty' },
    ],
  ],
])('%s: every fault by its row, and nothing of it', (_, text, faults) => {
  expect(readCountFile(text)).toEqual({ ok: false, error: faults });
});
