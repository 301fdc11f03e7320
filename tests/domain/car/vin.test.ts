/**
 * ISO 3779:2009 (length, characters) and 49 CFR 565.15 (check digit). The numbers are made up by us; `ZZ9` is no maker. Worked
 * by hand, ZZ9DM18S?KT004417: letters as figures 9 9 9 4 4 1 8 2 · 2 3 0 0 4 4 1 7, times 8 7 6 5 4 3 2 10 · 9 8 7 6 5 4 3 2, is
 * 72+63+54+20+16+3+16+20+18+24+0+0+20+16+3+14 = 359 = 32 × 11 + 7.
 */
import { expect, test } from 'vitest';
import { vinDoubtWords, vinDoubts } from '@/lib/domain/car/vin';

test.each([
  ['359 leaves 7', 'ZZ9DM18S7KT004417'],
  ['361 leaves 9', 'ZZ9DM18S9KT004418'],
  ['352 leaves nothing', 'ZZ9DM18S0KT004422'],
  ['417 leaves 10, written X', 'ZZ9LA54CXRW100206'],
  ['as people write it', 'zz9-dm18s7 kt004417'],
])('nothing is amiss where %s', (_, vin) => {
  expect(vinDoubts(vin, null)).toEqual([]);
});

test.each([
  ['the last figure misread', 'ZZ9DM18S7KT004411', { kind: 'check-digit', stands: '7', expected: '6' }],
  ['an X for a 9', 'ZZ9DM18SXKT004418', { kind: 'check-digit', stands: 'X', expected: '9' }],
  ['O for 0, I for 1', 'ZZ9DMI8S7KTOO4417', { kind: 'characters', characters: ['I', 'O'] }],
  ['one short', 'ZZ9DM18S7KT00441', { kind: 'length', length: 16 }],
  ['a chassis number of old', 'DS-04417', { kind: 'length', length: 7 }],
])('%s is said', (_, vin, doubt) => {
  expect(vinDoubts(vin, null)).toEqual([doubt]);
  expect(vinDoubts(vin, 1981)).toEqual([doubt]);
});

test('of a car too old to have one nothing is', () => {
  expect(vinDoubts('DS-04417', 1967)).toEqual([]);
  expect(vinDoubts('ZZ9DM18S7KT004411', 1980)).toEqual([]);
  expect(vinDoubts(' ', null)).toEqual([]);
});

test('what is amiss is said with what to look at', () => {
  expect(vinDoubts('ZZ9DMI8S7KT004417', null).map(vinDoubtWords)).toEqual([
    'I stands in no such number (ISO 3779): look at the plate again, I for 1, O or Q for 0.',
  ]);
  expect(vinDoubts('ZZ9DM18SXKT004418', null).map(vinDoubtWords)).toEqual([
    'The ninth character is X, and by the rest it would be 9. On a car built for North America one of them was misread; others need no check digit.',
  ]);
  expect(vinDoubts('DS-04417', null).map(vinDoubtWords)).toEqual([
    'It has 7 characters; since 1981 they have 17 (ISO 3779). Right for an older car: give its year.',
  ]);
});
