/** Comma-separated values by RFC 4180, section 2 (the numbers are its paragraphs), and the files of items and offers. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readCsv, writeCsv } from '@/lib/wire/csv';
import { amount } from '@/lib/domain/base/money';
import { moneyText, readMoney } from '@/lib/wire/money';
import {
  pricesText,
  readBox,
  readItemsFile,
  readOffersFile,
  readPrices,
  writeItemsFile,
  writeOffersFile,
} from '@/lib/wire/supply-files';

const fieldsOf = (text: string) => {
  const read = readCsv(text);
  return read.ok ? read.value.map(({ fields }) => fields) : read.error;
};

describe('RFC 4180', () => {
  test.each([
    [
      '2.1 each record on its own line',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2.2 the last line break may be missing',
      'aaa,bbb\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    ['2.4 spaces belong to the field', ' a , b \r\n', [[' a ', ' b ']]],
    [
      '2.5 fields may be enclosed',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2.6 line breaks, quotation marks and commas in them',
      '"aaa","b\r\nbb","c,c"\r\n',
      [['aaa', 'b\r\nbb', 'c,c']],
    ],
    ['2.7 a quotation mark is written twice', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    [
      'empty fields, and plain line ends too',
      ',\n"",x\n',
      [
        ['', ''],
        ['', 'x'],
      ],
    ],
    ['a mark of the order of bytes, as spreadsheets write it', '\uFEFFa,b\r\n', [['a', 'b']]],
  ])('%s', (_, text, fields) => {
    expect(fieldsOf(text)).toEqual(fields);
    expect(fieldsOf(writeCsv(fields))).toEqual(fields);
  });

  test.each([
    ['2.4 the same number of fields throughout', 'a,b\r\n1\r\n', 2, ''],
    ['2.5 no quotation mark inside a field without them', 'a,b\r\n1,2"x\r\n', 2, '2'],
    ['2.5 nothing behind the closing one', 'a,b\r\n"1"x,2\r\n', 2, '1'],
    ['2.6 it is closed', 'a,b\r\n1,"2\r\n', 2, '2'],
  ])('%s', (_, text, row, column) => {
    expect(fieldsOf(text)).toMatchObject([{ row, column }]);
  });

  test('rows are counted as a spreadsheet counts them, with line breaks in fields and empty lines', () => {
    const read = readCsv('a,b\r\n"1\r\n1",2\r\n\r\n3,4\r\n');
    expect(read.ok ? read.value.map(({ row }) => row) : read.error).toEqual([1, 2, 4]);
  });
});

describe('a file of offers', () => {
  const HEAD = 'supplier,item,pack,prices,weight,number,deposit\r\n';

  test('columns in any order, steps of prices, and nothing where nothing is said', () => {
    const read = readOffersFile('item,prices,pack,supplier\r\nNUT,"1: 4.20; 10: 3,90",50,H\r\n');
    expect(read).toEqual({
      ok: true,
      value: [
        {
          supplier: 'H',
          item: 'NUT',
          pack: '50',
          prices: [
            { fromPacks: 1, price: 420 },
            { fromPacks: 10, price: 390 },
          ],
        },
      ],
    });
  });

  test.each([
    ['a column that nobody knows', 'supplier,item,pack,prices,wieght\r\nH,NUT,1,1,2\r\n', [[1, 'wieght']]],
    ['a column twice', 'supplier,item,item,pack,prices\r\nH,NUT,NUT,1,1\r\n', [[1, 'item']]],
    ['one that must be there', 'supplier,item,pack\r\nH,NUT,1\r\n', [[1, 'prices']]],
    ['only a head', HEAD, [[1, '']]],
    [
      'every fault of every row',
      `${HEAD}H,NUT,50,dear,1.5,,half\r\n,NUT,50,4.20,,,18.00\r\n`,
      [
        [2, 'prices'],
        [2, 'weight'],
        [2, 'deposit'],
        [3, 'supplier'],
      ],
    ],
  ])('%s', (_, text, places) => {
    const read = readOffersFile(text);
    expect(read.ok ? [] : read.error.map(({ row, column }) => [row, column])).toEqual(places);
  });

  test('what is written out reads the same', () => {
    const read = readOffersFile(readFileSync('seed/offers.csv', 'utf8'));
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value.length).toBeGreaterThanOrEqual(150);
    expect(readOffersFile(writeOffersFile(read.value))).toEqual(read);
  });
});

describe('a file of items', () => {
  test('a name that is a size is read as one; terms as they stand', () => {
    const read = readItemsFile(
      'item,name,comes with,opened days,minimum\r\nX,3/8-16 x 2 gr 5,,,\r\nSET,damper set,NUT 2; RUBBER 4,7,1.5\r\n',
    );
    expect(read.ok && read.value).toEqual([
      { item: 'X', size: '3/8-16 x 2 gr 5' },
      { item: 'SET', name: 'damper set', comesWith: { NUT: 2, RUBBER: 4 }, openedDays: 7, minimum: '1.5' },
    ]);
  });

  test('faults by row and column, and what is written out reads the same', () => {
    const read = readItemsFile('item,trace,comes with,shelf months\r\nX,box,NUT,1.5\r\n');
    expect(read.ok ? [] : read.error.map(({ column }) => column)).toEqual([
      'shelf months',
      'trace',
      'comes with',
    ]);
    const items = readItemsFile(readFileSync('seed/items.csv', 'utf8'));
    expect(items.ok && readItemsFile(writeItemsFile(items.value))).toEqual(items);
  });

  test.each(['NUT', 'NUT x', 'NUT 2; NUT 3', '__proto__ 1', ''])('“%s” is no list of a box', (text) => {
    expect(readBox(text)).toBeNull();
  });
});

describe('money', () => {
  test.each([
    ['4.20', 420],
    ['4,2', 420],
    ['£4', 400],
    ['4.205', null],
    ['-1', null],
    ['1,250', null],
    ['', null],
  ])('“%s” is %s', (text, minor) => {
    expect(readMoney(text)).toBe(minor);
  });

  test('as it is written', () => {
    expect([0, 5, 37_085, 123_456_789, -420].map(moneyText)).toEqual([
      '£0.00',
      '£0.05',
      '£370.85',
      '£1,234,567.89',
      '−£4.20',
    ]);
    expect(amount(129_050)).toBe('1290.50');
  });

  test.each(['4.20', '5: 4.20', '1: 4.20; 10: 3.90'])('prices “%s” are read and written the same', (text) => {
    expect(pricesText(readPrices(text) ?? [])).toBe(text);
  });
  test.each(['x', '4.20;', '1: 2: 3'])('“%s” is no price', (text) => {
    expect(readPrices(text)).toBeNull();
  });
});
